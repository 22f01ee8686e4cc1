import { css } from 'lit';

/** What guides a person: the path in the page’s flow, and under it the story, which stays in sight. */
export const guidanceStyles = css`
  /* The story has its own room under the path; scrolled, it stays at the top and what was read goes under it. */
  vw-guidance:has(vw-story) {
    display: contents;
  }
  vw-story {
    display: block;
    position: sticky;
    top: 0;
    z-index: 5;
  }
  :root:has(vw-story) {
    scroll-padding-top: var(--gd-room);
  }
  /* What a card speaks of: a bar beside it, clear of its text. */
  [data-story-mark] {
    box-shadow: -6px 0 0 var(--vw-leather);
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
      box-shadow: none;
    }
  }
`;
