import { css } from 'lit';

/** The same list on a tablet, a phone and paper. */
export const workSizeStyles = css`
  @media (max-width: 1100px) {
    .wk-page {
      grid-template-columns: minmax(0, 1fr);
      grid-template-areas: 'tabs' 'answer' 'list' 'done' 'side' 'caution';
      grid-template-rows: none;
    }
    .wk-none {
      grid-template-areas: 'tabs' 'answer' 'side' 'done' 'caution';
    }
  }

  @media (max-width: 700px) {
    .wk-page {
      padding-inline: 0.5rem;
    }
    .wk-line {
      grid-template-columns: minmax(0, 1fr);
    }
    .wk-acts {
      grid-column: 1;
      grid-row: auto;
      padding-left: 1.75rem;
      grid-template-columns: minmax(0, 1fr) auto;
    }
    .wk-acts input {
      width: 100%;
    }
  }

  @media print {
    .wk-head {
      display: block;
      margin: 0;
      font-weight: 700;
    }
    .wk-page {
      display: block;
      padding: 0;
    }
    .wk-page > section {
      background: none;
      border: 0;
      padding: 0;
      margin-top: 0.5rem;
    }
    .wk-seats,
    .wk-acts,
    .wk-done button {
      display: none;
    }
    .wk-move {
      break-inside: avoid;
    }
    .wk-line {
      grid-template-columns: 8mm minmax(0, 1fr) 32mm;
      padding: 1.5mm 0;
      border-bottom: 1px solid var(--vw-edge);
    }
    .wk-next .wk-line {
      background: none;
    }
    .wk-line::after {
      content: 'came back';
      grid-column: 3;
      grid-row: 1 / span 2;
      align-self: end;
      font-size: var(--vw-text-fine);
      color: var(--vw-soft);
      border-bottom: 1px solid var(--vw-ink);
    }
    .wk-box {
      display: block;
      grid-row: 1 / span 2;
      width: 5mm;
      height: 5mm;
      border: 1.5px solid var(--vw-ink);
    }
    .wk-what,
    .wk-test {
      grid-column: 2;
    }
  }
`;
