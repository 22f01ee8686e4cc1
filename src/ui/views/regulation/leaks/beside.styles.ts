import { css } from 'lit';

/** The note asked about, and its two lists side by side. */
export const besideStyles = css`
  .lk-asked {
    grid-area: asked;
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem 1rem;
    padding: 0.25rem 0.25rem 0;
  }
  .lk-beside {
    grid-area: beside;
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    align-items: start;
    gap: var(--vw-space-3);
    min-height: 24rem;
  }
  .lk-beside .rg-row {
    display: inline-flex;
    align-items: center;
  }
  .lk-beside thead th {
    white-space: normal;
    vertical-align: bottom;
  }
  /* Both lists on one scale: a bar under the number, as long as its decibels. */
  .lk-beside td.lk-db {
    min-width: 8rem;
    background: linear-gradient(var(--vw-found), var(--vw-found)) no-repeat right 0.5rem bottom 0.25rem /
      calc(7rem * var(--share)) 5px;
  }
  .lk-beside td.lk-brings {
    background-image: linear-gradient(var(--vw-enough), var(--vw-enough));
  }
  .lk-beside .rg-picked td.lk-db {
    background-color: var(--vw-try-weak);
  }
  .lk-scale {
    color: var(--vw-soft);
  }
  .lk-lesser summary {
    min-height: var(--vw-touch);
    display: flex;
    align-items: center;
    cursor: pointer;
    font-size: var(--vw-text-control);
  }
  .lk-lesser summary::before {
    content: '▸';
    width: 1.25rem;
  }
  .lk-lesser[open] summary::before {
    content: '▾';
  }

  @media (max-width: 1100px) {
    .lk-beside {
      grid-template-columns: minmax(0, 1fr);
    }
  }

  @media screen and (max-width: 600px) {
    .lk-beside td.lk-db {
      min-width: 7rem;
      background-size: calc(6rem * var(--share)) 5px;
    }
  }

  @media print {
    .lk-beside {
      min-height: 0;
    }
    .lk-asked {
      display: none;
    }
  }
`;
