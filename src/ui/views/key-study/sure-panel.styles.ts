import { css } from 'lit';

/** How sure it is, what was measured, and the numbers behind the curve. */
export const sureStyles = css`
  .ks-sure {
    grid-area: sure;
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-content: start;
    gap: var(--vw-space-1) var(--vw-space-5);
    min-height: 22rem;
    padding: 0.75rem 1rem 1rem;
  }
  .ks-sure h2 {
    grid-column: 1 / -1;
  }
  .ks-notes {
    align-self: start;
    border-collapse: collapse;
    font-size: var(--vw-text-aside);
  }
  .ks-notes th,
  .ks-notes td {
    padding: 0.15rem 0.6rem;
    text-align: right;
    font-weight: 400;
    border-bottom: 1px solid var(--vw-well);
  }
  .ks-notes td {
    white-space: nowrap;
    font-weight: 600;
  }
  .ks-notes th:first-child {
    text-align: left;
  }
  .ks-notes thead th {
    font-weight: 600;
    color: var(--vw-soft);
  }
  .ks-notes .ks-pale {
    font-weight: 400;
    color: var(--vw-soft);
  }
  .ks-notes small {
    display: block;
  }
  .ks-inputs {
    grid-area: inputs;
    padding: 0.75rem 1rem 1rem;
  }
  .ks-sure h2,
  .ks-inputs h2,
  .ks-table summary {
    margin: 0;
    font-size: var(--vw-text-head);
    font-weight: 700;
  }
  .ks-how {
    margin: 0.1rem 0 0.6rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .ks-fields {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(225px, 1fr));
    gap: 0.5rem 1.25rem;
    margin-bottom: 0.75rem;
  }
  .ks-wide {
    grid-column: span 2;
  }
  .ks-paper {
    display: none;
  }
  .ks-table {
    grid-area: table;
    padding: 0 1rem;
  }
  .ks-table summary {
    min-height: var(--vw-touch);
    line-height: var(--vw-touch);
    cursor: pointer;
  }
  .ks-scroll {
    max-height: 26rem;
    overflow: auto;
    margin-bottom: 1rem;
    border: 1px solid var(--vw-edge);
  }
  .ks-table table {
    border-collapse: collapse;
    font-size: var(--vw-text-control);
    width: 100%;
  }
  .ks-table th,
  .ks-table td {
    padding: 0.2rem 0.6rem;
    text-align: right;
    font-weight: 400;
    white-space: nowrap;
    border-bottom: 1px solid var(--vw-well);
  }
  .ks-table thead th {
    position: sticky;
    top: 0;
    font-weight: 600;
    background: var(--vw-well);
  }
`;
