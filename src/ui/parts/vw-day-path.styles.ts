import { css } from 'lit';

/** The line under the head, and the steps it unfolds to. */
export const dayPathStyles = css`
  section {
    border-bottom: 1px solid var(--vw-edge);
    background: var(--vw-well);
  }
  .line {
    display: flex;
    align-items: center;
    gap: 0.25rem 0.9rem;
    min-height: var(--vw-touch);
    padding: 0 1rem;
  }
  .keys {
    flex: none;
    width: 17.9rem;
    height: 1.625rem;
  }
  .key {
    flex: none;
    width: 2.5rem;
    height: 2.5rem;
  }
  .tube,
  .arm,
  .idle {
    fill: none;
    stroke: var(--vw-soft);
    stroke-width: 1.4;
  }
  .idle {
    stroke-dasharray: 2 2;
  }
  .post,
  .pad {
    fill: var(--vw-sheet);
    stroke: var(--vw-ink);
    stroke-width: 1.2;
  }
  .pad.begun {
    fill: var(--vw-leather);
  }
  .pad.done {
    fill: var(--vw-ink);
  }
  .here {
    fill: none;
    stroke: var(--vw-try);
    stroke-width: 3.2;
  }
  p {
    margin: 0;
  }
  .where {
    flex: 1;
    min-width: 0;
    overflow: hidden;
    white-space: nowrap;
    text-overflow: ellipsis;
    font-size: var(--vw-text-control);
    color: var(--vw-soft);
  }
  button {
    min-height: calc(var(--vw-touch) - 6px);
    margin: 3px 0;
    padding: 0 0.8rem;
    color: var(--vw-ink);
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
    cursor: pointer;
  }
  .line button {
    min-height: var(--vw-touch);
    margin: 0;
    background: none;
    border-color: transparent;
  }
  .line .next {
    font-weight: 700;
    color: var(--vw-try);
    text-align: left;
  }
  .line .next::after {
    content: ' ▸';
  }
  button:hover {
    border-color: var(--vw-soft);
  }
  .through {
    font-weight: 700;
  }
  .fold {
    display: flex;
    align-items: center;
    gap: 0.3rem;
    white-space: nowrap;
    font-size: var(--vw-text-control);
  }
  .hook {
    width: 0.75rem;
    height: 0.75rem;
    fill: none;
    stroke: currentColor;
    stroke-width: 2;
  }
  [aria-expanded='true'] .hook {
    transform: rotate(180deg);
  }
  #steps {
    position: absolute;
    inset: auto;
    width: 46rem;
    max-width: calc(100vw - 1rem);
    margin: 0;
    padding: 0;
    overflow-y: auto;
    overscroll-behavior: contain;
    visibility: hidden;
    color: var(--vw-ink);
    background: var(--vw-sheet);
    border: 2px solid var(--vw-ink);
    border-radius: var(--vw-round);
  }
  #steps[data-placed] {
    visibility: visible;
  }
  ol {
    list-style: none;
    margin: 0;
    padding: 0 1rem;
    background: var(--vw-sheet);
  }
  li {
    display: flex;
    align-items: center;
    gap: 0.25rem 0.9rem;
    padding: 0.25rem 0;
    border-bottom: 1px solid var(--vw-edge);
  }
  li.is-next .go {
    font-weight: 700;
    color: var(--vw-try);
    border-color: var(--vw-try);
  }
  .words {
    flex: 1;
    min-width: 0;
  }
  .name span,
  .told,
  .away {
    font-size: var(--vw-text-control);
    color: var(--vw-soft);
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    justify-content: flex-end;
    gap: 0 0.35rem;
  }
  .acts button,
  .away button {
    min-height: var(--vw-touch);
  }
  .acts button:not(.go) {
    padding: 0 0.5rem;
    font-size: var(--vw-text-control);
    color: var(--vw-soft);
    background: none;
    border-color: transparent;
    text-decoration: underline;
    text-underline-offset: 0.2em;
  }
  .away {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.25rem 0.9rem;
    padding: 0.25rem 1rem;
  }
  @media (max-width: 900px) {
    .where {
      display: none;
    }
    .line {
      justify-content: space-between;
    }
  }
  @media (max-width: 700px) {
    .line {
      gap: var(--vw-space-1);
      padding: 0 0.25rem;
    }
    .line .keys,
    .word {
      display: none;
    }
    .line button {
      padding: 0 0.5rem;
    }
    /* Along the foot: what the view answers stays in sight over it. */
    #steps {
      position: fixed;
      inset: auto 0 0;
      width: 100vw;
      max-width: none;
      max-height: 45vh;
      padding-bottom: env(safe-area-inset-bottom);
      border-width: 2px 0 0;
      border-radius: var(--vw-round) var(--vw-round) 0 0;
    }
    ol {
      padding: 0 0.5rem;
    }
    li {
      flex-wrap: wrap;
    }
    .words {
      flex: 1 1 70%;
    }
    .acts {
      flex: 1 1 100%;
      flex-wrap: nowrap;
      justify-content: flex-start;
      gap: 0;
      padding: 0;
    }
    .acts .go {
      padding: 0 0.6rem;
    }
    .acts button:not(.go) {
      padding: 0 0.4rem;
      font-size: var(--vw-text-aside);
      white-space: nowrap;
    }
  }
  @media print {
    :host {
      display: none;
    }
  }
`;
