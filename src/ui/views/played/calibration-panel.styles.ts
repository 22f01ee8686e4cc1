import { css } from 'lit';

export const calibrationStyles = css`
  .cb-panel {
    margin: 0.75rem 0 1.25rem;
  }
  .cb-panel h2 {
    margin: 0 0 0.25rem;
    font-size: var(--vw-text-lead);
    color: var(--vw-soft);
  }
  .cb-answer {
    margin: 0 0 0.5rem;
    max-width: 48rem;
    min-height: 2.7em;
    font-size: clamp(1.125rem, 1rem + 0.5vw, 1.375rem);
    font-weight: 650;
    line-height: 1.3;
    text-wrap: pretty;
  }
  .cb-use,
  .cb-table label {
    display: inline-flex;
    align-items: center;
    gap: 0.6rem;
    min-height: var(--vw-touch);
    cursor: pointer;
  }
  .cb-use {
    padding: 0 0.9rem 0 0.7rem;
    font-weight: 700;
    background: var(--vw-sheet);
    border: 2px solid var(--vw-try);
    border-radius: var(--vw-round);
  }
  .cb-panel input[type='checkbox'] {
    width: 1.375rem;
    height: 1.375rem;
    flex: none;
    margin: 0;
    accent-color: var(--vw-try);
  }
  .cb-panel input[type='checkbox']:focus-visible,
  .cb-panel a:focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
  .cb-table {
    width: 100%;
    max-width: 48rem;
    margin-top: 0.5rem;
    border-collapse: collapse;
    background: var(--vw-sheet);
  }
  .cb-table th,
  .cb-table td {
    padding: 0.1rem 0.6rem;
    text-align: left;
    font-weight: 400;
    border-bottom: 1px solid var(--vw-edge);
  }
  .cb-table thead th {
    font-size: var(--vw-text-aside);
    font-weight: 700;
    color: var(--vw-soft);
  }
  .cb-table .cb-value {
    font-weight: 700;
  }
  .cb-table .cb-told {
    width: 38%;
  }
  .cb-bar {
    display: inline-block;
    width: 5rem;
    height: 0.5rem;
    margin-right: 0.5rem;
    vertical-align: middle;
    background: var(--vw-well);
    border-radius: 0.25rem;
  }
  .cb-bar i {
    display: block;
    height: 100%;
    background: var(--vw-try);
    border-radius: 0.25rem;
  }
  .cb-standing,
  .cb-limits {
    font-size: var(--vw-text-control);
    color: var(--vw-soft);
  }
  .cb-sentences {
    max-width: 48rem;
    margin: 0.6rem 0;
    padding-left: 1.1rem;
  }
  .cb-limits {
    max-width: 48rem;
    margin: 0;
  }
  .cb-limits a {
    color: var(--vw-try);
  }
  @media (max-width: 560px) {
    .cb-table th,
    .cb-table td {
      padding: 0.1rem 0.3rem;
    }
    .cb-bar {
      display: none;
    }
    .cb-table .cb-told {
      width: 28%;
    }
  }
  @media print {
    .cb-use,
    .cb-limits {
      display: none;
    }
  }
`;
