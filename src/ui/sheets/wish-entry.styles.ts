import { css } from 'lit';

/** Which key the wish is about, wherever it is asked. */
export const wishEntryStyles = css`
  a.ks-quiet {
    display: inline-flex;
    align-items: center;
    text-decoration: none;
  }
  .ps-wish-entry {
    display: grid;
    align-content: start;
    gap: 0.35rem;
  }
  .ps-wish-entry label {
    font-size: 0.875rem;
    font-weight: 600;
  }
  .ps-wish-entry select {
    min-height: var(--vw-touch);
    padding: 0 0.5rem;
    font: inherit;
    color: inherit;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
  }
`;
