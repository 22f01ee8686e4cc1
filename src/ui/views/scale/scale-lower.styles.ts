import { css } from 'lit';

/** What stands under the chart: the map, loud playing and its table, other ways of fingering. */
export const scaleLowerStyles = css`
  .sc-map {
    grid-area: map;
    container-type: inline-size;
  }
  .sc-loud {
    grid-area: loud;
  }
  .sc-loud p {
    margin: 0.2rem 0;
    font-size: var(--vw-text-control);
  }
  .sc-estimate {
    margin-left: 0.35rem;
    padding: 0.05rem 0.45rem;
    font-size: var(--vw-text-fine);
    font-weight: 600;
    color: var(--vw-caution);
    background: var(--vw-caution-ground);
    border-radius: var(--vw-round);
  }
  .sc-loud vw-loud-chart {
    display: block;
    height: 230px;
  }
  .sc-alternates {
    grid-area: alternates;
  }
  .sc-alternates table {
    width: 100%;
    border-collapse: collapse;
    font-size: var(--vw-text-control);
  }
  .sc-alternates th,
  .sc-alternates td {
    padding: 0.1rem 0.4rem;
    font-weight: 400;
    text-align: right;
    white-space: nowrap;
    border-bottom: 1px solid var(--vw-well);
  }
  .sc-alternates th[scope='row'],
  .sc-alternates th:first-child {
    text-align: left;
  }
  .sc-alternates thead th {
    font-weight: 600;
    font-size: var(--vw-text-note);
  }
  .sc-alternates .picked {
    background: var(--vw-try-weak);
  }
  .sc-loud-table summary {
    min-height: var(--vw-touch);
    line-height: var(--vw-touch);
    font-size: var(--vw-text-aside);
    cursor: pointer;
  }
  .sc-loud-table summary:focus-visible {
    outline: 3px solid var(--vw-try);
  }
  .sc-loud-table table {
    width: 100%;
    border-collapse: collapse;
    font-size: var(--vw-text-aside);
  }
  .sc-loud-table th,
  .sc-loud-table td {
    padding: 0.1rem 0.4rem;
    text-align: right;
    font-weight: 400;
    border-bottom: 1px solid var(--vw-well);
  }
  .sc-loud-table thead th {
    font-weight: 600;
  }
`;
