import { css } from 'lit';

/** Side by side: the sentence, what stands, the picture, the tables. */
export const sideBySideStyles = css`
  vw-side-by-side {
    display: block;
    --sd-a: var(--vw-found);
    --sd-b: var(--vw-try);
    --sd-c: var(--vw-enough);
    --sd-d: var(--vw-other);
  }
  .sd-page {
    grid-template-columns: minmax(0, 1fr);
    grid-template-areas: none;
    grid-template-rows: none;
  }
  .sd-page > * {
    grid-area: auto;
  }
  .sd-page h2 {
    margin: 0;
    font-size: var(--vw-text);
    font-weight: 700;
  }
  .sd-page .sd-answer {
    display: block;
    min-height: 5.5rem;
  }
  .sd-answer h1 span {
    display: block;
  }
  .sd-page .sd-answer h1 {
    font-size: clamp(1.375rem, 1rem + 1.2vw, 1.875rem);
    text-wrap: pretty;
  }
  .sd-page .sd-answer h1.several {
    font-size: clamp(1.125rem, 0.95rem + 0.6vw, 1.375rem);
    line-height: 1.25;
  }
  .sd-answer h1.several span + span {
    margin-top: 0.25rem;
  }
  .sd-page .sd-day {
    font-size: var(--vw-text-control);
    color: var(--vw-soft);
  }
  .sd-limits {
    margin-top: 0.25rem;
    padding: 0 0.6rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-caution);
    background: var(--vw-caution-ground);
    border-radius: var(--vw-round);
  }
  .sd-limits summary {
    min-height: var(--vw-touch);
    padding: 0.75rem 0;
    line-height: 1.3;
    cursor: pointer;
  }
  .sd-limits ul {
    margin: 0;
    padding: 0 0 0.5rem 1.1rem;
  }
  .sd-columns {
    display: grid;
    grid-template-columns: repeat(4, minmax(0, 1fr));
    gap: var(--vw-space-2) var(--vw-space-3);
    align-items: stretch;
  }
  .sd-column {
    min-width: 0;
    margin: 0;
    padding: 0.1rem 0.6rem 0.15rem;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-top: 4px solid var(--sd-tint);
    border-radius: var(--vw-round);
  }
  [data-letter='A'] {
    --sd-tint: var(--sd-a);
  }
  [data-letter='B'] {
    --sd-tint: var(--sd-b);
  }
  [data-letter='C'] {
    --sd-tint: var(--sd-c);
  }
  [data-letter='D'] {
    --sd-tint: var(--sd-d);
  }
  .sd-column legend {
    float: left;
    width: 100%;
    padding: 0.15rem 0;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .sd-column legend b {
    margin-right: 0.3rem;
    font-size: var(--vw-text-head);
    color: var(--sd-tint);
  }
  .sd-select {
    clear: both;
    display: grid;
    grid-template-columns: 3rem minmax(0, 1fr);
    align-items: center;
    gap: 0.35rem;
    margin-bottom: 0.25rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .sd-select select {
    width: 100%;
    min-height: var(--vw-touch);
    padding: 0 0.4rem;
    font: inherit;
    font-size: var(--vw-text-control);
    color: var(--vw-ink);
    text-overflow: ellipsis;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
  }
  .sd-on-paper {
    display: none;
  }
  .sd-column-acts {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0 var(--vw-space-2);
  }
  .sd-act {
    min-height: var(--vw-touch);
    padding: 0;
    font: inherit;
    font-size: var(--vw-text-aside);
    color: var(--vw-try);
    text-decoration: underline;
    background: none;
    border: 0;
    cursor: pointer;
  }
  .sd-problem,
  .sd-waiting {
    margin: 0.1rem 0 0.35rem;
    font-size: var(--vw-text-aside);
  }
  .sd-problem {
    color: var(--vw-wrong);
  }
  .sd-more {
    display: flex;
    flex-direction: column;
    align-items: flex-start;
    gap: var(--vw-space-2);
  }
  .sd-columns:has(.sd-column:nth-of-type(4)) .sd-more {
    grid-column: 1 / -1;
    flex-direction: row;
  }
  .sd-chart,
  .sd-sure,
  .sd-table {
    min-width: 0;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
    padding: 0.4rem 0.75rem 0.6rem;
  }
  .sd-chart {
    padding-inline: 0.5rem;
  }
  .sd-chart h2 {
    padding-left: 0.25rem;
  }
  .sd-chart vw-side-by-side-chart {
    --vw-paper-height: 360px;
    display: block;
    height: 420px;
    min-width: 0;
    overflow: hidden;
  }
  .sd-summary {
    margin: 0.25rem 0.25rem 0;
    font-size: var(--vw-text-note);
    color: var(--vw-soft);
  }
  .sd-sure {
    min-height: 18rem;
  }
  .sd-note {
    grid-template-columns: auto minmax(9rem, auto);
  }
  .sd-told {
    margin: 0;
  }
  .sd-table-head {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    align-items: center;
    gap: var(--vw-space-1) var(--vw-space-4);
    margin-bottom: 0.35rem;
  }
  .sd-scroll {
    max-height: 32rem;
    overflow: auto;
    border: 1px solid var(--vw-edge);
  }
  .sd-scroll table {
    width: 100%;
    border-collapse: separate;
    border-spacing: 0;
    font-size: var(--vw-text-control);
  }
  .sd-scroll :is(th, td) {
    padding: 0.3rem 0.5rem;
    font-weight: 400;
    text-align: right;
    white-space: nowrap;
    border-bottom: 1px solid var(--vw-well);
  }
  .sd-scroll .sd-opens {
    border-left: 1px solid var(--vw-edge);
  }
  .sd-scroll thead th {
    position: sticky;
    top: 0;
    z-index: 1;
    height: 3.1rem;
    font-size: var(--vw-text-note);
    font-weight: 600;
    white-space: normal;
    vertical-align: bottom;
    background: var(--vw-well);
  }
  .sd-scroll thead tr + tr th {
    top: 3.1rem;
    height: auto;
    padding-block: 0.1rem;
    font-size: var(--vw-text-control);
    color: var(--sd-tint);
  }
  .sd-scroll .sd-first {
    position: sticky;
    left: 0;
    z-index: 1;
    text-align: left;
    background: var(--vw-sheet);
    border-right: 1px solid var(--vw-edge);
  }
  .sd-scroll thead .sd-first {
    z-index: 2;
    background: var(--vw-well);
  }
  .sd-scroll tbody .difference {
    font-weight: 700;
  }
  .sd-scroll tbody .unsure {
    font-weight: 400;
    color: var(--vw-soft);
  }
  .sd-scroll .words {
    text-align: left;
    white-space: normal;
    min-width: 8.5rem;
    line-height: 1.2;
  }
  .sd-scroll td small {
    display: block;
    font-size: var(--vw-text-fine);
    color: var(--vw-soft);
  }
`;
