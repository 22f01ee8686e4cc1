import { css } from 'lit';

/**
 * What an answer and the buttons beside it look like: on the page of a key, whose classes begin with ks-, and on
 * those of regulation, whose classes begin with rg-. They give way to what a page says of its own, whichever of
 * the two is adopted first.
 */
export const answerStyles = css`
  :where(.ks-answer, .rg-answer) {
    grid-area: answer;
    padding: 0 0.25rem;
  }
  :where(.ks-answer, .rg-answer) h1 {
    margin: 0;
    font-size: var(--vw-text-answer);
    line-height: 1.15;
    letter-spacing: -0.01em;
    text-wrap: balance;
  }
  :where(.ks-answer, .rg-answer)[aria-busy='true'] h1 {
    color: var(--vw-soft);
  }
  :where(.ks-cautions, .rg-caution, .rg-cautions) {
    margin: 0.25rem 0 0;
    padding: 0.3rem 0.6rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-caution);
    background: var(--vw-caution-ground);
    border-radius: var(--vw-round);
  }
  :where(.ks-cautions, .rg-cautions) {
    padding-left: 1.6rem;
  }
  :where(.ks-quiet, .rg-quiet) {
    min-height: var(--vw-touch);
    padding: 0 0.8rem;
    font: inherit;
    font-size: var(--vw-text-control);
    color: var(--vw-ink);
    background: var(--vw-sheet);
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
    cursor: pointer;
  }
  :where(.ks-quiet, .rg-quiet):disabled {
    color: var(--vw-soft);
    border-color: var(--vw-edge);
    cursor: default;
  }
  :where(.ks-quiet, .rg-quiet)[aria-pressed='true'] {
    background: var(--vw-try);
    border-color: var(--vw-try);
    color: var(--vw-on-try);
    font-weight: 600;
  }

  @media print {
    .ks-quiet,
    .rg-quiet {
      display: none;
    }
  }
`;
