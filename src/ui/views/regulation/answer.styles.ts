import { css } from 'lit';

/** What the pages of regulation share: the answer, cautions, quiet buttons. */
export const answerStyles = css`
  .rg-answer {
    grid-area: answer;
    padding: 0 0.25rem;
    min-height: 9.5rem;
  }
  .rg-answer[aria-busy='true'] {
    opacity: 0.55;
  }
  .rg-answer h1 {
    margin: 0;
    font-size: var(--vw-text-answer);
    line-height: 1.15;
    letter-spacing: -0.01em;
    text-wrap: balance;
  }
  .rg-standing {
    margin: 0.25rem 0 0;
    font-size: var(--vw-text-lead);
  }
  .rg-reason {
    margin: 0.2rem 0 0;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .rg-caution,
  .rg-cautions {
    margin: 0.25rem 0 0;
    padding: 0.3rem 0.6rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-caution);
    background: var(--vw-caution-ground);
    border-radius: var(--vw-round);
  }
  .rg-cautions {
    padding-left: 1.6rem;
  }
  .rg-caution {
    grid-area: caution;
  }
  .rg-quiet {
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
  .rg-quiet:disabled {
    color: var(--vw-soft);
    border-color: var(--vw-edge);
    cursor: default;
  }
  .rg-quiet[aria-pressed='true'] {
    background: var(--vw-try);
    border-color: var(--vw-try);
    color: var(--vw-on-try);
    font-weight: 600;
  }
  @media print {
    .rg-answer {
      min-height: 0;
      padding: 0;
    }
    .rg-quiet {
      display: none;
    }
    .rg-caution {
      background: none;
      padding: 0;
    }
  }
`;
