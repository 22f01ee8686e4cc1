import { css } from 'lit';

/** The page's plan: answer first, picture second, numbers third. Laptop, tablet, phone, paper. */
export const keyStudyStyles = css`
  .ks-page {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 452px;
    grid-template-rows: auto auto auto minmax(0, 1fr);
    grid-template-areas: 'keys keys' 'answer answer' 'curve try' 'curve side' 'sure sure' 'inputs inputs' 'table table' 'foot foot';
    gap: var(--vw-space-2) var(--vw-space-3);
    max-width: 1500px;
    margin: 0 auto;
    padding: 0.5rem 0.75rem 1.5rem;
  }
  .ks-keys {
    grid-area: keys;
    min-width: 0;
  }
  .ks-key {
    margin: 0.25rem 0.25rem 0;
    font-size: var(--vw-text-control);
    color: var(--vw-soft);
    min-height: 1.4em;
  }
  .ks-key b {
    color: var(--vw-ink);
  }
  .ks-answer {
    grid-area: answer;
    padding: 0 0.25rem;
    display: grid;
    grid-template-columns: minmax(0, 1.35fr) minmax(0, 1fr);
    gap: 0.15rem 1.5rem;
    min-height: 10rem;
    align-content: start;
  }
  .ks-answer[aria-busy='true'] {
    opacity: 0.55;
  }
  .ks-answer h1 {
    margin: 0;
    font-size: clamp(1.5rem, 1rem + 1.55vw, 2.125rem);
    line-height: 1.15;
    letter-spacing: -0.01em;
    text-wrap: balance;
  }
  .ks-answer p {
    margin: 0.2rem 0 0;
  }
  .ks-standing {
    font-size: var(--vw-text-head);
  }
  .ks-why {
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .ks-why strong {
    color: var(--vw-enough);
    font-weight: 600;
  }
  .ks-why .ks-pressing {
    color: var(--vw-wrong);
  }
  .ks-cautions {
    grid-column: 1 / -1;
    align-self: end;
    margin: 0.25rem 0 0;
    padding: 0.15rem 0.6rem 0.15rem 1.6rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-caution);
    background: var(--vw-caution-ground);
    border-radius: var(--vw-round);
  }
  .ks-try,
  .ks-side,
  .ks-curve,
  .ks-sure,
  .ks-inputs,
  .ks-table {
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
    min-width: 0;
  }
  .ks-try {
    grid-area: try;
    padding: 0.4rem 0.75rem 0.5rem;
  }
  .ks-effect h2 {
    margin: 0.1rem 0 0.15rem;
    font-size: var(--vw-text-aside);
    font-weight: 600;
  }
  .ks-effect dl {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(186px, 1fr));
    gap: 0.1rem 0.9rem;
    margin: 0;
    font-size: var(--vw-text-control);
  }
  .ks-effect .ks-many {
    gap: 0 0.9rem;
    font-size: var(--vw-text-note);
  }
  .ks-effect dl > div {
    display: flex;
    justify-content: space-between;
    gap: var(--vw-space-2);
    border-bottom: 1px solid var(--vw-well);
    white-space: nowrap;
  }
  .ks-effect dd {
    margin: 0;
    font-weight: 700;
  }
  .ks-effect dd small {
    font-weight: 400;
    color: var(--vw-soft);
  }
  .ks-quiet {
    min-height: var(--vw-touch);
    padding: 0 0.9rem;
    font: inherit;
    font-size: var(--vw-text-control);
    color: var(--vw-ink);
    background: var(--vw-sheet);
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
    cursor: pointer;
  }
  .ks-quiet:disabled {
    color: var(--vw-soft);
    border-color: var(--vw-edge);
    cursor: default;
  }
  .ks-back {
    padding: 0 0.6rem;
    white-space: nowrap;
  }
  .ks-side {
    grid-area: side;
    padding: 0.25rem;
    min-height: 140px;
    display: grid;
  }
  .ks-side vw-pad-drawing {
    min-height: 0;
  }
  .ks-curve {
    grid-area: curve;
    position: relative;
    display: grid;
    grid-template-columns: auto 1fr;
    grid-template-rows: auto minmax(0, 1fr);
    align-items: center;
    padding: 0.35rem 0.35rem 0 0.6rem;
    height: clamp(396px, calc(100vh - 358px - var(--wb-path)), 640px);
  }
  .ks-legend {
    margin: 0;
    justify-self: end;
    padding-right: 0.5rem;
    font-size: var(--vw-text-note);
    color: var(--vw-soft);
  }
  .ks-legend i {
    display: inline-block;
    width: 26px;
    margin: 0 0.2rem 0 0.7rem;
    vertical-align: middle;
    border-top: 2.5px solid var(--vw-ink);
  }
  .ks-legend i.dashed {
    border-top-style: dashed;
  }
  .ks-curve vw-chart {
    --vw-paper-height: 380px;
    grid-column: 1 / -1;
    display: block;
    align-self: stretch;
    min-width: 0;
    min-height: 0;
    overflow: hidden;
  }
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
  .ks-foot {
    grid-area: foot;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
    padding: 0 0.25rem;
  }
  .ks-foot p {
    margin: 0.15rem 0;
  }
  .ks-page :focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
`;
