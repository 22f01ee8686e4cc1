import { css } from 'lit';

/** The same plan on a tablet, a phone and paper. */
export const keyStudySizeStyles = css`
  @media (max-width: 1100px) {
    .ks-page {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
      grid-template-areas: 'keys keys' 'answer answer' 'try side' 'curve curve' 'sure sure' 'inputs inputs' 'table table' 'foot foot';
      grid-template-rows: none;
    }
    .ks-linked {
      grid-template-areas: 'keys keys' 'answer answer' 'try side' 'links links' 'curve curve' 'sure sure' 'inputs inputs' 'table table' 'foot foot';
    }
    .ks-answer {
      grid-template-columns: minmax(0, 1fr);
    }
    .ks-try {
      --vw-choice-pad: 0.4rem;
    }
    .ks-side {
      min-height: 250px;
    }
    .ks-curve {
      height: 460px;
    }
  }

  @media (max-width: 700px) {
    .ks-page {
      grid-template-columns: minmax(0, 1fr);
      grid-template-areas: 'keys' 'answer' 'try' 'side' 'curve' 'sure' 'inputs' 'table' 'foot';
      padding-inline: 0.5rem;
    }
    .ks-linked {
      grid-template-areas: 'keys' 'answer' 'try' 'links' 'side' 'curve' 'sure' 'inputs' 'table' 'foot';
    }
    .ks-try {
      --vw-choice-size: 0.875rem;
      --vw-choice-pad: 0.3rem;
    }
    .ks-back {
      padding: 0 0.35rem;
    }
    .ks-side {
      height: 280px;
    }
    .ks-curve {
      grid-template-columns: 1fr;
      grid-template-rows: auto auto minmax(0, 1fr);
      height: 470px;
    }
    .ks-legend {
      justify-self: start;
    }
    .ks-sure {
      grid-template-columns: minmax(0, 1fr);
      min-height: 44rem;
    }
    .ks-wide {
      grid-column: auto;
    }
  }

  @media print {
    .ks-try vw-bench-field,
    .ks-try vw-opening-slider,
    .ks-curve vw-choice,
    .ks-how,
    .ks-fields,
    .ks-table,
    .ks-inputs > h2 {
      display: none;
    }
    .ks-page {
      display: block;
      padding: 0;
    }
    .ks-page > section {
      break-inside: avoid;
      border: 0;
      min-height: 0;
      padding-inline: 0;
      margin-top: 0.5rem;
    }
    .ks-curve {
      display: block;
      height: auto;
    }
    .ks-curve vw-chart {
      height: var(--vw-paper-height);
      max-width: 690px;
    }
    .ks-answer {
      display: block;
    }
    .ks-effect dl {
      grid-template-columns: repeat(auto-fill, minmax(230px, 1fr));
    }
    .ks-sure {
      min-height: 0;
    }
    .ks-side {
      width: 420px;
      height: 250px;
    }
    .ks-paper {
      display: block;
      columns: 2;
      margin: 0.25rem 0;
      padding-left: 1.1rem;
      font-size: var(--vw-text-control);
    }
  }
`;
