import { css } from 'lit';

/** The map of leaks: names stay while numbers scroll. */
export const leakMapStyles = css`
  .scroll {
    overflow-x: auto;
  }
  table {
    border-collapse: separate;
    border-spacing: 0;
    font-size: var(--vw-text-fine);
    line-height: 1;
  }
  th {
    font-weight: 400;
    cursor: pointer;
  }
  thead th {
    height: 7rem;
    padding: 0 0 4px;
    vertical-align: bottom;
  }
  thead th span {
    display: inline-block;
    writing-mode: vertical-rl;
    text-orientation: sideways;
    rotate: 180deg;
    white-space: nowrap;
  }
  tbody th,
  .corner {
    position: sticky;
    left: 0;
    z-index: 1;
    min-width: 10.5rem;
    padding: 0 0.5rem 0 0;
    text-align: right;
    white-space: nowrap;
    font-size: var(--vw-text-note);
    background: var(--vw-sheet);
  }
  td {
    min-width: 24px;
    height: 26px;
    padding: 0;
    border: 0.5px solid var(--vw-well);
    text-align: center;
    letter-spacing: -0.03em;
    cursor: pointer;
  }
  thead .corner {
    white-space: normal;
    font-weight: 600;
    line-height: 1.2;
    cursor: default;
  }
  .most {
    display: inline-block;
    min-width: 2rem;
  }
  th.picked {
    background: var(--vw-try);
    color: var(--vw-on-try);
    font-weight: 700;
  }
  td.row {
    border-block: 2px solid var(--vw-try);
  }
  td.column {
    border-inline: 2px solid var(--vw-try);
  }
  :focus-visible {
    outline: 3px solid var(--vw-ink);
    outline-offset: -2px;
  }
  .under {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: var(--vw-space-1) var(--vw-space-4);
    margin: 0.35rem 0 0;
    font-size: var(--vw-text-aside);
    min-height: 2.8em;
  }
  .under p {
    margin: 0;
  }
  .legend {
    color: var(--vw-soft);
    font-size: var(--vw-text-note);
  }
  .legend b {
    display: inline-block;
    padding: 0.15rem 0.4rem;
    font-weight: 400;
  }
  @media (max-width: 700px) {
    tbody th,
    .corner {
      min-width: 8rem;
      max-width: 8rem;
      white-space: normal;
      line-height: 1.15;
    }
    td {
      min-width: 30px;
      height: 44px;
    }
  }
  @media print {
    .scroll {
      overflow: visible;
    }
    table {
      font-size: 0.4375rem;
    }
    td {
      min-width: 0;
      width: 13px;
      height: 15px;
    }
    tbody th,
    .corner {
      min-width: 0;
      font-size: 0.5rem;
    }
  }
`;
