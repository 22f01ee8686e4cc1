import { css } from 'lit';

/** The sheet’s cells and what stands beside them: bars, answers, what rules. Adopted after the sheet’s plan. */
export const sheetCellStyles = css`
  .sh-cell {
    position: relative;
    min-width: 0;
  }
  .sh-cell input {
    display: block;
    width: 100%;
    height: 3.25rem;
    padding: 0 0.6rem 1.05rem;
    font: inherit;
    font-size: var(--vw-text-large);
    font-weight: 600;
    font-variant-numeric: tabular-nums;
    color: inherit;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-field);
    border-radius: var(--vw-round);
  }
  .sh-cell input:focus {
    border-color: var(--vw-try);
    outline: 3px solid var(--vw-try);
    outline-offset: 0;
  }
  .sh-cell input[aria-invalid='true'] {
    border: 2px solid var(--vw-wrong);
    background: var(--vw-wrong-ground);
  }
  .sh-cell[data-column='proposed'] input {
    color: var(--vw-try);
  }
  .sh-cell[data-column='asSet'] input {
    color: var(--vw-set);
  }
  .sh-known {
    position: absolute;
    inset: auto 0.6rem 0.2rem;
    display: flex;
    justify-content: space-between;
    gap: var(--vw-space-1);
    font-size: var(--vw-text-cell);
    line-height: 1.2;
    color: var(--vw-soft);
    white-space: nowrap;
    pointer-events: none;
  }
  .sh-known i,
  .sh-known em {
    font-style: normal;
  }
  .sh-known em {
    font-weight: 700;
    color: var(--vw-found);
  }
  .sh-known .sh-template {
    color: var(--vw-caution);
    font-weight: 700;
  }
  .sh-bar {
    position: relative;
    display: grid;
    grid-template-columns: minmax(0, 1fr) 5.25rem;
    align-items: center;
    gap: var(--vw-space-2);
    height: 2.75rem;
  }
  .sh-share {
    order: 1;
    font-size: var(--vw-text-aside);
    font-weight: 600;
    white-space: nowrap;
  }
  .sh-share small {
    display: block;
    font-size: var(--vw-text-note);
    font-weight: 400;
    color: var(--vw-soft);
  }
  .sh-track {
    position: relative;
    height: 0.5rem;
    margin: 0 0.5rem;
    background: var(--vw-well);
    border-radius: 4px;
  }
  .sh-band {
    position: absolute;
    top: 0;
    height: 100%;
    background: var(--vw-metal);
  }
  .sh-tick {
    position: absolute;
    top: -0.8rem;
    width: 3px;
    height: 2.1rem;
    margin-left: -1.5px;
    background: var(--vw-enough);
  }
  .sh-mark {
    position: absolute;
    top: 50%;
    width: 1.1rem;
    margin: -0.8rem 0 0 -0.55rem;
    font-size: 1.05rem;
    line-height: 1.6rem;
    text-align: center;
    text-shadow:
      0 0 2px var(--vw-sheet),
      0 0 3px var(--vw-sheet),
      0 0 4px var(--vw-sheet);
  }
  .sh-asFound {
    color: var(--vw-found);
  }
  .sh-proposed {
    color: var(--vw-try);
  }
  .sh-asSet {
    color: var(--vw-set);
  }
  .sh-mark.sh-asFound {
    width: 0.875rem;
    height: 0.875rem;
    margin: -0.4375rem 0 0 -0.4375rem;
    background: var(--vw-sheet);
    border: 3px solid var(--vw-found);
    border-radius: 50%;
  }
  .sh-mark.sh-asSet {
    font-size: 0.8rem;
  }
  .sh-tick-legend,
  .sh-is-below b {
    color: var(--vw-enough);
  }
  .sh-axis-ends {
    padding: 0 6.25rem 0 0.25rem;
  }
  .sh-enough b {
    display: block;
    font-size: var(--vw-text-lead);
  }
  .sh-told,
  .sh-row > .sh-rules {
    font-size: var(--vw-text-note);
    line-height: 1.2;
    color: var(--vw-soft);
  }
  .sh-row-head > .sh-rules {
    font-size: inherit;
    color: inherit;
  }
  .sh-is-below .sh-told {
    font-weight: 600;
    color: var(--vw-enough);
  }
  .sh-problems {
    grid-column: 1 / -1;
    padding: 0.15rem 0;
  }
  .sh-page :focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
`;
