import { css } from 'lit';

/**
 * The pages as they lie on paper, all in points: --ps-size is the type of the player’s page. What a hand needs on
 * screen is .ps-screen, its ink on paper .ps-ink.
 */
export const printedPageStyles = css`
  @page ps-a4 {
    size: A4 portrait;
    margin: 0;
  }
  @page ps-letter {
    size: Letter portrait;
    margin: 0;
  }
  .ps-A4 {
    --ps-width: 209.5mm;
    --ps-height: 296mm;
  }
  .ps-Letter {
    --ps-width: 215.4mm;
    --ps-height: 278.4mm;
  }
  .ps-page {
    display: flex;
    flex-direction: column;
    gap: var(--ps-gap, 0.42em);
    width: var(--ps-width);
    min-height: var(--ps-height);
    padding: 8mm 12mm 7mm;
    font-size: var(--ps-size, 11pt);
    line-height: var(--ps-line, 1.24);
    text-rendering: geometricPrecision;
    color: var(--vw-ink);
    background: var(--vw-sheet);
  }
  .ps-page :is(h1, h2, p, dl, dd) {
    margin: 0;
  }
  .ps-page h1 {
    font-size: 1.42em;
    line-height: 1.18;
    text-wrap: balance;
  }
  .ps-page h2 {
    font-size: 1em;
    font-weight: 700;
  }
  .ps-head {
    padding-bottom: 0.35em;
    border-bottom: 1.5pt solid var(--vw-ink);
  }
  .ps-horn {
    font-size: 1.15em;
    font-weight: 700;
  }
  .ps-head dl {
    display: flex;
    flex-wrap: wrap;
    gap: 0 1.1em;
  }
  .ps-page dt {
    display: inline;
    color: var(--vw-soft);
  }
  .ps-page dd {
    display: inline;
  }
  .ps-wish b {
    margin-right: 0.3em;
  }
  .ps-part:not([data-part='decided']) :is(h2, p) {
    display: inline;
  }
  .ps-part:not([data-part='decided']) h2::after {
    content: '. ';
  }
  .ps-page[data-tight] [data-part='decided'] :is(h2, p) {
    display: inline;
  }
  .ps-page[data-tight] [data-part='decided'] h2::after {
    content: '. ';
  }
  .ps-page[data-tight] {
    padding-block: 6mm 5mm;
  }
  .ps-page[data-tight] h1 {
    font-size: 1.2em;
    text-wrap: wrap;
  }
  .ps-page[data-tight] .ps-rules {
    padding-top: 0.6em;
  }
  .ps-page table {
    width: 100%;
    border-collapse: collapse;
    font-size: 1em;
  }
  .ps-page :is(th, td) {
    padding: 0.06em 0.4em 0.06em 0;
    font-weight: 400;
    text-align: right;
    vertical-align: baseline;
    border-bottom: 0.5pt solid var(--vw-edge);
  }
  .ps-page :is(th, td):last-child {
    padding-right: 0;
  }
  .ps-page :is(th[scope='row'], th:first-child) {
    text-align: left;
  }
  .ps-page thead th {
    color: var(--vw-soft);
  }
  .ps-page td,
  .ps-curve-part tbody th {
    white-space: nowrap;
  }
  .ps-page small {
    font-size: 1em;
    color: var(--vw-soft);
  }
  .ps-pair {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 27em;
    font-size: min(1em, 11.5pt);
    gap: 0.4em 14pt;
    align-items: start;
  }
  .ps-notes:only-child {
    grid-column: 1 / -1;
  }
  .ps-curve {
    display: block;
    width: 292pt;
    height: 104pt;
  }
  .ps-curve text {
    font-size: 11px;
    fill: var(--vw-ink);
  }
  .ps-line,
  .ps-rule,
  .ps-tick,
  .ps-enough,
  .ps-hollow {
    fill: none;
    stroke: var(--vw-ink);
    stroke-width: 1.4;
  }
  .ps-rule {
    stroke: var(--vw-edge);
    stroke-width: 0.6;
  }
  .ps-tick {
    stroke-width: 0.8;
  }
  .ps-band {
    fill: var(--vw-enough-weak);
  }
  .ps-enough {
    stroke: var(--vw-enough);
    stroke-width: 2.4;
  }
  .ps-hollow {
    fill: var(--vw-sheet);
  }
  .ps-solid {
    fill: var(--vw-ink);
  }
  .ps-mark {
    display: inline-block;
    width: 10pt;
    height: 10pt;
    vertical-align: -1pt;
  }
  .ps-mark .ps-enough {
    transform: scaleY(0.45);
  }
  .ps-consent {
    margin-top: auto;
    padding-top: 0.2em;
    border-top: 0.5pt solid var(--vw-ink);
  }
  .ps-rules {
    display: flex;
    align-items: baseline;
    gap: 0.5em;
    padding-top: 0.9em;
  }
  .ps-rules i {
    flex: 3;
    border-bottom: 0.75pt solid var(--vw-ink);
  }
  .ps-rules .ps-short {
    flex: 1;
  }
  .ps-foot {
    display: flex;
    justify-content: space-between;
    gap: 1em;
    font-size: 11pt;
    color: var(--vw-soft);
  }
  /* The head has the whole name. */
  .ps-foot span:first-child {
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .ps-foot span:last-child {
    flex: none;
  }
  .ps-hidden {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
  }

  .ps-file {
    gap: 5pt;
    padding-inline: 9mm;
    font-size: 8pt;
    line-height: 1.2;
  }
  .ps-file h2 {
    font-size: 13pt;
  }
  .ps-readings {
    table-layout: fixed;
    font-size: 7pt;
    line-height: 1.1;
  }
  .ps-readings :is(th, td) {
    padding: 0.75pt 1.5pt;
  }
  .ps-readings th:first-child {
    width: 54pt;
  }
  .ps-readings small {
    display: block;
    min-height: 1.1em;
    font-size: 6pt;
  }
  .ps-entries > div + div {
    margin-top: 2pt;
  }
  .ps-entries dt {
    font-weight: 700;
    color: var(--vw-ink);
  }
  .ps-file .ps-foot {
    margin-top: auto;
    font-size: 9pt;
  }

  .ps-ink {
    display: none;
  }
  .ps-measure {
    position: absolute;
    inset: 0 auto auto 0;
    height: 0;
    overflow: hidden;
    visibility: hidden;
  }
  .ps-measure .ps-screen {
    display: none;
  }
  .ps-measure .ps-ink {
    display: inline;
  }

  @media print {
    .ps-screen,
    .ps-tools,
    .ps-measure,
    vw-workbench:has(.ps-page) > :not(div:has(.ps-page)) {
      display: none;
    }
    .ps-ink {
      display: inline;
    }
    .ps-anew {
      position: fixed;
      inset: 1mm 12mm auto;
      font-size: 11pt;
      font-weight: 700;
      text-align: center;
    }
    .ps-anew p {
      margin: 0;
      padding: 0;
      border: 0;
    }
    .ps-page {
      box-decoration-break: clone;
      break-after: page;
    }
    .ps-page:last-child {
      break-after: auto;
    }
    .ps-A4 {
      page: ps-a4;
    }
    .ps-Letter {
      page: ps-letter;
    }
  }
`;
