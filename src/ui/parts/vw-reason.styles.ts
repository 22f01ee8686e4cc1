import { css } from 'lit';

/** A figure in its line, and the panel that belongs to it. */
export const reasonStyles = css`
  /* Nothing but the figure takes room in its line. */
  :host {
    display: inline-flex;
    max-width: 100%;
    white-space-collapse: collapse;
  }
  * {
    box-sizing: border-box;
  }
  .figure {
    position: relative;
    margin: 0;
    padding: 0;
    font: inherit;
    color: inherit;
    text-align: inherit;
    letter-spacing: inherit;
    background: none;
    border: 0;
    text-decoration: underline dotted 0.09em;
    text-underline-offset: 0.22em;
    text-decoration-color: color-mix(in srgb, currentcolor 60%, transparent);
    cursor: help;
  }
  /* A finger finds it without the line growing; one that stands alone in its row reaches as far as a touch. */
  .figure::before {
    content: '';
    position: absolute;
    inset: 50% -0.35rem auto;
    height: var(--vw-reason-reach, max(1lh, 1.5rem));
    transform: translateY(-50%);
  }
  .figure:hover,
  .figure[aria-expanded='true'] {
    text-decoration: underline solid 0.09em;
  }
  :focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
  .panel {
    position: absolute;
    inset: auto;
    width: 25rem;
    max-width: calc(100vw - 1rem);
    max-height: min(34rem, 80vh);
    margin: 0;
    padding: 0;
    overflow-y: auto;
    overscroll-behavior: contain;
    visibility: hidden;
    font-family: inherit;
    font-size: var(--vw-text-control);
    font-weight: 400;
    font-style: normal;
    line-height: 1.45;
    letter-spacing: normal;
    text-align: left;
    text-transform: none;
    text-wrap: wrap;
    white-space: normal;
    color: var(--vw-ink);
    background: var(--vw-sheet);
    border: 2px solid var(--vw-ink);
    border-radius: var(--vw-round);
  }
  .panel[data-placed] {
    visibility: visible;
  }
  .panel:focus-visible {
    outline: none;
  }
  header {
    position: sticky;
    top: 0;
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: start;
    gap: 0 var(--vw-space-2);
    padding: 0.6rem 0 0.35rem 1rem;
    background: var(--vw-sheet);
    border-bottom: 1px solid var(--vw-edge);
  }
  header b {
    display: block;
    font-size: var(--vw-text-head);
    line-height: 1.3;
  }
  header span {
    color: var(--vw-soft);
  }
  .close {
    width: var(--vw-touch);
    height: var(--vw-touch);
    margin-top: -0.35rem;
    font: inherit;
    font-size: var(--vw-text-head);
    color: inherit;
    background: none;
    border: 0;
    border-radius: var(--vw-round);
    cursor: pointer;
  }
  .body {
    display: grid;
    gap: 0.65rem;
    padding: 0.65rem 1rem 0.25rem;
  }
  p,
  dl,
  dd,
  ul {
    margin: 0;
    padding: 0;
  }
  .label {
    margin-bottom: 0.1rem;
    font-size: var(--vw-text-note);
    font-weight: 600;
    color: var(--vw-soft);
  }
  .word {
    font-style: italic;
  }
  ul {
    list-style: none;
  }
  li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 0 var(--vw-space-3);
    padding: 0.2rem 0;
    border-bottom: 1px solid var(--vw-well);
  }
  li:last-child {
    border-bottom: 0;
  }
  li span:nth-child(2) {
    text-align: right;
    white-space: nowrap;
  }
  small {
    grid-column: 1 / -1;
    font-size: var(--vw-text-note);
    color: var(--vw-soft);
  }
  .note {
    display: flex;
    align-items: center;
    min-height: var(--vw-touch);
    color: var(--vw-try);
  }

  /* From below, under the figure: the page is moved so that it stays in sight. */
  @media (max-width: 700px) {
    .panel {
      position: fixed;
      inset: auto 0 0;
      width: 100vw;
      max-width: none;
      max-height: 58vh;
      padding-bottom: env(safe-area-inset-bottom);
      border-width: 2px 0 0;
      border-radius: var(--vw-round) var(--vw-round) 0 0;
    }
    li span:nth-child(2) {
      white-space: normal;
    }
  }

  @media print {
    .figure,
    .figure[aria-expanded] {
      text-decoration: none;
    }
    /* Nobody presses paper, and the reach would widen it. */
    .figure::before {
      content: none;
    }
    .panel {
      display: none;
    }
  }
`;
