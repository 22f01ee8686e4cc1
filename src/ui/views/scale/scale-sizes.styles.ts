import { css } from 'lit';

/** The scale page on a tablet, a phone and paper. */
export const scaleSizeStyles = css`
  @media (max-width: 1100px) {
    .sc-page {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
      grid-template-areas: 'keys keys' 'answer answer' 'chart chart' 'try note' 'sure sure' 'played played' 'loud alternates' 'map map' 'table table' 'foot foot';
      grid-template-rows: none;
    }
    .sc-page .ks-answer {
      grid-template-columns: minmax(0, 1fr);
    }
    /* Beside the note in hand a panel is as high as what it says. */
    .sc-page .sc-try {
      align-self: start;
    }
    .sc-chart {
      height: 520px;
    }
    .sc-alternates table {
      font-size: var(--vw-text-note);
    }
    .sc-alternates :is(th, td) {
      white-space: normal;
      padding-inline: 0.2rem;
    }
  }

  @media (max-width: 700px) {
    .sc-page {
      grid-template-columns: minmax(0, 1fr);
      grid-template-areas: 'keys' 'answer' 'try' 'chart' 'note' 'sure' 'played' 'loud' 'alternates' 'table' 'foot';
    }
    .sc-map {
      display: none;
    }
    .sc-chart {
      height: 560px;
    }
    .sc-sure {
      min-height: 36rem;
    }
    .sc-legend {
      margin-left: 0;
    }
    .vw-told,
    .sc-alternates :is(th, td):nth-child(2) {
      display: none;
    }
    .sc-page .ks-answer {
      grid-template-columns: minmax(0, 1fr);
    }
    .sc-governing button {
      grid-template-columns: 5.6rem minmax(0, 1fr) 4.8rem 3.4rem;
    }
  }

  @media print {
    .sc-page .sc-tools vw-choice,
    .sc-page .sc-select,
    .sc-page .sc-try,
    .sc-page .sc-chips,
    .sc-page .sc-back,
    .sc-page .sc-limits,
    .sc-page .sc-map,
    .sc-page .vw-told {
      display: none;
    }
    .sc-page .sc-sure {
      min-height: 0;
    }
    .sc-page .sc-chart {
      height: auto;
    }
    .sc-page .sc-chart vw-scale-chart {
      height: var(--vw-paper-height);
      max-width: 690px;
    }
    .sc-page .sc-paper-table {
      display: block;
    }
    .sc-paper-table .ks-scroll {
      max-height: none;
      overflow: visible;
      border: 0;
    }
    .sc-paper-table table {
      width: 100%;
      border-collapse: collapse;
      font-size: var(--vw-text-fine);
    }
    .sc-paper-table th,
    .sc-paper-table td {
      padding: 0 0.3rem;
      text-align: right;
      font-weight: 400;
      border-bottom: 1px solid var(--vw-edge);
    }
  }
`;
