import { css } from 'lit';

/** The horn in hand set like another. */
export const likePanelStyles = css`
  .sd-like {
    padding: var(--vw-space-2) 0.6rem;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
  }
  .sd-like-acts {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--vw-space-2) var(--vw-space-3);
    margin: 0.35rem 0;
    --vw-choice-pad: 0.45rem;
  }
  .sd-like-words {
    margin: 0;
    font-size: var(--vw-text-control);
  }
  .sd-like-words a {
    display: inline-block;
    padding: 0.6rem 0.3rem 0.6rem 0;
    color: var(--vw-try);
  }
`;
