import { css } from 'lit';

/** Where the parts of the page stand: answer first, picture second, numbers third. */
export const planStyles = css`
  .ks-page {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 452px;
    grid-template-rows: auto auto auto minmax(0, 1fr);
    grid-template-areas: 'keys keys' 'answer answer' 'curve try' 'curve side' 'sure sure' 'inputs inputs' 'table table' 'foot foot';
    gap: var(--vw-space-2) var(--vw-space-3);
    max-width: 1500px;
    margin: 0 auto;
    padding: 0.5rem 0.75rem 1.5rem;
  }
  .ks-linked {
    grid-template-rows: auto auto auto auto minmax(0, 1fr);
    grid-template-areas: 'keys keys' 'answer answer' 'links links' 'curve try' 'curve side' 'sure sure' 'inputs inputs' 'table table' 'foot foot';
  }
  .ks-keys {
    grid-area: keys;
    min-width: 0;
  }
  .ks-key {
    margin: 0.25rem 0.25rem 0;
    font-size: var(--vw-text-control);
    color: var(--vw-soft);
    min-height: 1.4em;
  }
  .ks-key b {
    color: var(--vw-ink);
  }
  .ks-answer {
    display: grid;
    grid-template-columns: minmax(0, 1.35fr) minmax(0, 1fr);
    gap: 0.15rem 1.5rem;
    min-height: 10rem;
    align-content: start;
  }
  .ks-answer p {
    margin: 0.2rem 0 0;
  }
  .ks-standing {
    font-size: var(--vw-text-head);
  }
  .ks-why {
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .ks-why strong {
    color: var(--vw-enough);
    font-weight: 600;
  }
  .ks-linked .ks-answer {
    min-height: 8rem;
  }
  .ks-links {
    grid-area: links;
    min-height: 2.5rem;
    padding: 0 0.25rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .ks-links p {
    margin: 0.1rem 0 0;
  }
  .ks-links .ks-pressing {
    color: var(--vw-wrong);
  }
  .ks-cautions {
    grid-column: 1 / -1;
    align-self: end;
  }
  .ks-try,
  .ks-side,
  .ks-curve,
  .ks-sure,
  .ks-inputs,
  .ks-table {
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
    min-width: 0;
  }
  .ks-foot {
    grid-area: foot;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
    padding: 0 0.25rem;
  }
  .ks-foot p {
    margin: 0.15rem 0;
  }
  .ks-page :focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
`;
