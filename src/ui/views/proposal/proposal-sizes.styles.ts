import { css } from 'lit';

/** The table of keys on every screen and on paper. */
export const proposalSizeStyles = css`
  .pp-head,
  .pp-row {
    display: grid;
    grid-template-columns: 11.5rem 10rem 10.75rem 5.25rem minmax(0, 1fr) 5.5rem;
    gap: 0 var(--vw-space-3);
    align-items: center;
  }
  .pp-head {
    padding: 0.25rem 0.4rem;
    font-size: var(--vw-text-aside);
    font-weight: 600;
    background: var(--vw-well);
  }
  .pp-row {
    padding: 0.2rem 0.4rem;
    border-bottom: 1px solid var(--vw-well);
  }
  .pp-name a {
    display: inline-flex;
    align-items: center;
    gap: 0.4rem;
    min-height: var(--vw-touch);
    color: var(--vw-ink);
    text-decoration-color: var(--vw-edge);
    text-underline-offset: 3px;
  }
  .pp-place {
    margin-left: 0.35rem;
    padding: 0.05rem 0.35rem;
    font-size: var(--vw-text-fine);
    color: var(--vw-try);
    background: var(--vw-try-weak);
    border-radius: var(--vw-round);
  }
  .pp-found {
    color: var(--vw-found);
  }
  .pp-proposed {
    font-weight: 600;
    color: var(--vw-try);
  }
  .pp-row[data-reason='stays'] .pp-proposed,
  .pp-row[data-reason='locked'] .pp-proposed {
    font-weight: 400;
    color: var(--vw-soft);
  }
  .pp-move {
    font-weight: 600;
  }
  .pp-why {
    font-size: var(--vw-text-control);
  }
  .pp-lock .rg-quiet {
    width: 100%;
  }

  @media (max-width: 1100px) {
    .pp-page {
      grid-template-columns: minmax(0, 1fr);
      grid-template-areas: 'answer' 'take' 'pitch' 'keys' 'cautions';
      grid-template-rows: none;
    }
    .pp-head {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    .pp-row {
      grid-template-columns: minmax(0, 1.3fr) minmax(0, 1fr) minmax(0, 1fr) 4.5rem 5.5rem;
      grid-template-areas: 'name found proposed move lock' 'why why why why lock';
      padding-block: 0.35rem;
    }
    .pp-name {
      grid-area: name;
    }
    .pp-found {
      grid-area: found;
    }
    .pp-proposed {
      grid-area: proposed;
    }
    .pp-move {
      grid-area: move;
    }
    .pp-why {
      grid-area: why;
    }
    .pp-lock {
      grid-area: lock;
    }
  }

  @media (max-width: 640px) {
    .pp-take vw-choice {
      --vw-choice-pad: 0.35rem;
      --vw-choice-size: 0.8125rem;
    }
    .pp-buttons {
      flex-direction: column;
    }
    .pp-row {
      display: flex;
      flex-wrap: wrap;
      gap: 0.1rem 0.5rem;
    }
    .pp-name {
      flex: 1 1 calc(100% - 11.5rem);
    }
    .pp-move {
      flex: 0 0 4.8rem;
      text-align: right;
    }
    .pp-name a {
      min-width: 0;
    }
    .pp-lock {
      order: 1;
      flex: 0 0 5.2rem;
    }
    .pp-found,
    .pp-proposed {
      order: 2;
      flex: 0 0 calc(50% - 0.25rem);
      font-size: var(--vw-text-control);
    }
    .pp-why {
      order: 3;
      flex: 1 0 100%;
    }
    .pp-found::before,
    .pp-proposed::before {
      content: attr(data-label);
      display: block;
      font-size: var(--vw-text-fine);
      font-weight: 400;
      color: var(--vw-soft);
    }
    .pp-picture text {
      font-size: 22px;
    }
    .pp-picture circle {
      r: 8px;
    }
    .pp-picture .wide {
      display: none;
    }
  }

  @media print {
    .pp-page {
      display: block;
      padding: 0;
    }
    .pp-take,
    .pp-lock,
    .pp-notes {
      display: none;
    }
    .pp-pitch,
    .pp-keys {
      margin-top: 0.4rem;
      padding: 0.3rem 0.4rem;
    }
    .pp-page .pp-answer,
    .pp-spread {
      min-height: 0;
    }
    .pp-picture {
      max-height: 34mm;
    }
    .pp-head {
      position: static;
      width: auto;
      height: auto;
      clip-path: none;
    }
    .pp-head,
    .pp-row {
      display: grid;
      grid-template-columns: 7.6rem 7rem 7.3rem 3.5rem minmax(0, 1fr);
      gap: 0 0.4rem;
      grid-template-areas: none;
      padding: 0.05rem 0.2rem;
      font-size: var(--vw-text-cell);
    }
    .pp-head > :last-child {
      display: none;
    }
    .pp-row > * {
      grid-area: auto;
    }
    .pp-row {
      break-inside: avoid;
    }
    .pp-name a {
      min-height: 0;
      text-decoration: none;
    }
    .pp-place {
      padding: 0;
      font-size: inherit;
      background: none;
    }
    .pp-why,
    .pp-found,
    .pp-proposed {
      font-size: inherit;
    }
    .pp-found::before,
    .pp-proposed::before {
      content: none;
    }
  }
`;
