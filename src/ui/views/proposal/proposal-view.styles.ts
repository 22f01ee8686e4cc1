import { css } from 'lit';

/** The proposal: the answer, what can be taken, the pitch, then every key. */
export const proposalStyles = css`
  vw-proposal-view {
    display: block;
  }
  .pp-page {
    display: grid;
    gap: var(--vw-space-2) var(--vw-space-3);
    max-width: 1500px;
    margin: 0 auto;
    padding: 0.5rem 0.75rem 1.5rem;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1.05fr);
    grid-template-areas:
      'answer pitch'
      'take pitch'
      'keys keys'
      'cautions cautions';
    grid-template-rows: auto 1fr auto auto;
  }
  .pp-page h2 {
    margin: 0;
    font-size: var(--vw-text-lead);
  }
  .pp-page .pp-answer {
    min-height: 6.5rem;
  }
  .pp-problem {
    margin: 0.5rem 0 0;
    padding: 0.4rem 0.6rem;
    color: var(--vw-wrong);
    background: var(--vw-wrong-ground);
    border-radius: var(--vw-round);
  }
  .pp-take {
    grid-area: take;
    align-self: end;
    padding: 0 0.25rem 0.25rem;
  }
  .pp-buttons {
    display: flex;
    flex-wrap: wrap;
    gap: var(--vw-space-2);
    margin: 0.6rem 0 0;
    min-height: var(--vw-touch);
  }
  .pp-button {
    min-height: var(--vw-touch);
    padding: 0 1rem;
    font: inherit;
    font-weight: 600;
    color: var(--vw-on-try);
    background: var(--vw-try);
    border: 2px solid var(--vw-try);
    border-radius: var(--vw-round);
    cursor: pointer;
  }
  .pp-button + .pp-button,
  .pp-buttons.settled .pp-button {
    color: var(--vw-try);
    background: var(--vw-sheet);
  }
  .pp-buttons .pp-button[aria-pressed='true'] {
    color: var(--vw-ink);
    background: var(--vw-try-weak);
  }
  .pp-button:disabled {
    opacity: 0.6;
    cursor: default;
  }
  .pp-answer .pp-gain {
    margin: 0.5rem 0 0;
    font-size: var(--vw-text-aside);
    line-height: 1.35;
    color: var(--vw-soft);
  }
  .pp-why small {
    font-size: inherit;
    color: var(--vw-soft);
  }
  .pp-taken {
    margin: 0.4rem 0 0;
    min-height: 2.8em;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .pp-taken a {
    display: inline-block;
    margin-left: 0.5rem;
    color: var(--vw-try);
  }
  .pp-pitch,
  .pp-keys {
    min-width: 0;
    padding: 0.5rem 0.75rem 0.75rem;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
  }
  .pp-pitch {
    grid-area: pitch;
  }
  .pp-keys {
    grid-area: keys;
  }
  /* Of an earlier question: said by the page, and still legible. */
  .pp-keys[aria-busy='true'],
  .pp-pitch[aria-busy='true'] {
    outline: 1px dotted var(--vw-soft);
    outline-offset: 4px;
  }
  .pp-cautions {
    grid-area: cautions;
  }
  .pp-spread {
    margin: 0.15rem 0 0.4rem;
    min-height: 2.8em;
    font-size: var(--vw-text-control);
  }
  .pp-how {
    margin: 0.15rem 0 0.4rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .pp-picture {
    display: block;
    width: 100%;
    height: auto;
  }
  .pp-picture .grid {
    stroke: var(--vw-edge);
    stroke-width: 1;
  }
  .pp-picture .nought {
    stroke: var(--vw-soft);
    stroke-width: 1.5;
  }
  .pp-picture .moved {
    stroke: var(--vw-try);
    stroke-width: 2;
  }
  .pp-picture .found {
    fill: var(--vw-sheet);
    stroke: var(--vw-found);
    stroke-width: 2;
  }
  .pp-picture .proposed {
    fill: var(--vw-try);
  }
  .pp-picture text {
    font-size: 13px;
    fill: var(--vw-soft);
  }
  .pp-picture .cents {
    text-anchor: end;
  }
  .pp-picture .note {
    text-anchor: middle;
  }
  .pp-legend i {
    display: inline-block;
    width: 11px;
    height: 11px;
    margin-left: 0.3rem;
    border: 2px solid var(--vw-found);
    border-radius: 50%;
  }
  .pp-legend i.proposed {
    background: var(--vw-try);
    border-color: var(--vw-try);
  }
  .pp-notes summary {
    min-height: var(--vw-touch);
    padding: 0.6rem 0;
    cursor: pointer;
  }
  .pp-notes table {
    width: 100%;
    border-collapse: collapse;
    font-size: var(--vw-text-control);
  }
  .pp-notes th,
  .pp-notes td {
    padding: 0.15rem clamp(0.15rem, 1vw, 0.5rem);
    font-weight: 400;
    text-align: right;
    border-bottom: 1px solid var(--vw-well);
  }
  .pp-notes th:first-child {
    text-align: left;
  }
  .pp-notes thead th {
    font-weight: 600;
  }
  @media print {
    .pp-page .rg-answer h1 {
      font-size: var(--vw-text-head);
    }
  }
  .pp-page :focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
`;
