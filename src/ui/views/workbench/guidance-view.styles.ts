import { css } from 'lit';

/** What guides a person: the path in the page’s flow, the story along its foot. */
export const guidanceStyles = css`
  vw-story {
    position: fixed;
    inset: auto 0 0;
    z-index: 5;
  }
  :root:has(vw-story) {
    scroll-padding-bottom: var(--gd-room);
  }
  /* The page ends above the story, so that all of it can be scrolled into sight. */
  vw-workbench:has(vw-story) {
    padding-bottom: var(--gd-room);
  }
  /* What a card speaks of. */
  [data-story-mark] {
    outline: 3px dashed var(--vw-leather);
    outline-offset: 3px;
    border-radius: 2px;
    scroll-margin: 10px;
  }
  .gd-tell {
    min-height: var(--vw-touch);
    padding: 0 0.8rem;
    font: inherit;
    color: var(--vw-ink);
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
    cursor: pointer;
  }
  .gd-tell:focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
  @media print {
    vw-guidance {
      display: none;
    }
    [data-story-mark] {
      outline: none;
    }
  }
`;
