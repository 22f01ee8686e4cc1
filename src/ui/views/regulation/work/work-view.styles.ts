import { css } from 'lit';

/** The order of work: the next move biggest, then the list. */
export const workStyles = css`
  vw-work-view {
    display: block;
  }
  .wk-page {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 390px;
    grid-template-areas:
      'tabs tabs'
      'answer answer'
      'list side'
      'list done'
      'caution caution';
    grid-template-rows: auto auto auto 1fr auto;
    gap: var(--vw-space-2) var(--vw-space-3);
    max-width: 1500px;
    margin: 0 auto;
    padding: 0 0.75rem 1.5rem;
  }
  .wk-none {
    grid-template-areas: 'tabs tabs' 'answer answer' 'side done' 'caution caution';
    grid-template-rows: none;
  }
  .wk-head {
    display: none;
  }
  .wk-page .rg-answer {
    min-height: 8rem;
  }
  .wk-page h2 {
    margin: 0;
    font-size: var(--vw-text-head);
  }
  .wk-list,
  .wk-done,
  .wk-seats {
    min-width: 0;
    padding: 0.5rem 0.75rem;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
  }
  .wk-list {
    grid-area: list;
    display: grid;
    grid-template-columns: 1fr auto;
    align-items: center;
    align-content: start;
  }
  .wk-list ol {
    grid-column: 1 / -1;
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .wk-move h3 {
    margin: 0.6rem 0 0;
    font-size: var(--vw-text-aside);
    text-transform: none;
    color: var(--vw-soft);
  }
  .wk-line {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 0 var(--vw-space-3);
    padding: 0.4rem 0.25rem;
    border-bottom: 1px solid var(--vw-well);
  }
  .wk-next .wk-line {
    background: var(--vw-try-weak);
    border-radius: var(--vw-round);
  }
  .wk-box {
    display: none;
  }
  .wk-what,
  .wk-test {
    grid-column: 1;
    margin: 0;
    padding-left: 1.75rem;
  }
  .wk-what span {
    color: var(--vw-soft);
  }
  .wk-what .wk-number {
    display: inline-block;
    width: 1.75rem;
    margin-left: -1.75rem;
    font-weight: 700;
    color: var(--vw-ink);
  }
  .wk-test {
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .wk-test span {
    font-weight: 600;
  }
  .wk-acts {
    grid-column: 2;
    grid-row: 1 / span 2;
    display: grid;
    grid-template-columns: auto auto;
    gap: 0 var(--vw-space-2);
    align-items: end;
  }
  .wk-acts label {
    font-size: var(--vw-text-fine);
    color: var(--vw-soft);
  }
  .wk-acts label span {
    display: block;
  }
  .wk-acts input,
  .wk-widths input {
    width: 7rem;
    min-height: var(--vw-touch);
    padding: 0 0.5rem;
    font: inherit;
    font-size: var(--vw-text);
    font-variant-numeric: tabular-nums;
    color: var(--vw-ink);
    background: var(--vw-sheet);
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
  }
  .wk-acts input[aria-invalid='true'],
  .wk-widths input[aria-invalid='true'] {
    border: 2px solid var(--vw-wrong);
    background: var(--vw-wrong-ground);
  }
  .wk-acts small {
    grid-column: 1 / -1;
    max-width: 13rem;
    min-height: 1.2em;
    font-size: var(--vw-text-fine);
    color: var(--vw-soft);
  }
  .wk-acts .wk-problem,
  .wk-widths .wk-problem {
    color: var(--vw-wrong);
    font-weight: 600;
  }
  .wk-check {
    min-height: var(--vw-touch);
    padding: 0 1.1rem;
    font: inherit;
    font-weight: 600;
    color: var(--vw-on-try);
    background: var(--vw-try);
    border: 0;
    border-radius: var(--vw-round);
    cursor: pointer;
  }
  .wk-done {
    grid-area: done;
    align-self: start;
  }
  .wk-done ol,
  .wk-widths {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .wk-done li {
    display: grid;
    grid-template-columns: 1.25rem minmax(0, 1fr) auto;
    gap: 0.35rem;
    align-items: center;
    padding: 0.15rem 0;
    font-size: var(--vw-text-control);
    border-bottom: 1px solid var(--vw-well);
  }
  .wk-tick {
    color: var(--vw-try);
    font-weight: 700;
  }
  .wk-out,
  .wk-out .wk-tick {
    color: var(--vw-caution);
  }
  .wk-seats {
    grid-area: side;
    align-self: start;
  }
  .wk-seats > p {
    margin: 0.1rem 0 0.4rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .wk-pads {
    display: flex;
    flex-wrap: wrap;
    gap: 0.3rem;
  }
  .wk-pads .rg-quiet {
    padding: 0 0.5rem;
    font-size: var(--vw-text-aside);
  }
  .wk-pads .rg-quiet[aria-pressed='true'] {
    color: var(--vw-wrong);
    background: var(--vw-wrong-ground);
    border-color: var(--vw-wrong);
  }
  .wk-widths li {
    margin-top: 0.4rem;
  }
  .wk-widths label {
    display: flex;
    justify-content: space-between;
    align-items: center;
    gap: var(--vw-space-2);
    font-size: var(--vw-text-control);
  }
  .wk-widths small {
    display: block;
    min-height: 1.2em;
    font-size: var(--vw-text-fine);
    color: var(--vw-soft);
  }
  .wk-page :focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
`;
