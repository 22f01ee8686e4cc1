import { css } from 'lit';

/** Side by side on a tablet, a phone and paper. */
export const sideBySideSizeStyles = css`
  @media (max-width: 1100px) {
    .sd-columns {
      grid-template-columns: repeat(2, minmax(0, 1fr));
    }
    .sd-more {
      grid-column: 1 / -1;
      flex-direction: row;
    }
  }

  @media (max-width: 700px) {
    .sd-columns {
      grid-template-columns: minmax(0, 1fr);
    }
    .sd-chart vw-side-by-side-chart {
      height: 400px;
    }
    .sd-table {
      padding-inline: 0.4rem;
    }
    .sd-table-head vw-choice {
      --vw-choice-size: 0.875rem;
      --vw-choice-pad: 0.4rem;
    }
    .sd-scroll :is(th, td) {
      padding-inline: 0.35rem;
    }
  }

  @media print {
    .sd-page .sd-more,
    .sd-page .sd-like,
    .sd-page .sd-column-acts,
    .sd-page .sd-table-head vw-choice,
    .sd-page .sd-limits {
      display: none;
    }
    .sd-page .sd-columns {
      display: grid;
      grid-template-columns: repeat(4, minmax(0, 1fr));
    }
    .sd-page .sd-select {
      display: none;
    }
    .sd-page .sd-on-paper {
      display: block;
      clear: both;
      margin: 0.1rem 0 0.25rem;
      font-size: var(--vw-text-aside);
      line-height: 1.3;
    }
    .sd-page .sd-table {
      break-inside: auto;
    }
    .sd-page .sd-chart vw-side-by-side-chart {
      height: var(--vw-paper-height);
      max-width: 690px;
    }
    .sd-page .sd-scroll {
      max-height: none;
      overflow: visible;
      border: 0;
    }
    .sd-page .sd-scroll table {
      font-size: var(--vw-text-cell);
    }
    .sd-page .sd-scroll :is(th, td) {
      position: static;
      padding: 0.05rem 0.1rem;
    }
    .sd-page .sd-scroll thead th {
      height: auto;
      font-size: 0.625rem;
    }
    .sd-page .sd-scroll tr {
      break-inside: avoid;
    }
    .sd-page .sd-scroll .words {
      min-width: 0;
    }
    /* With many columns paper has no room for them: what can be shown is bold, what cannot is pale. */
    .sd-page.many .sd-scroll :is(.words, .aside) {
      display: none;
    }
    .sd-page.many .sd-scroll table {
      font-size: 0.59375rem;
    }
    .sd-page.many .sd-scroll :is(th, td) {
      padding-inline: 0.1rem;
    }
    .sd-page.many .sd-scroll td small {
      font-size: 0.5625rem;
      white-space: normal;
    }
  }
`;
