import { css } from 'lit';

/** The head of the page, which every view shares. */
export const workbenchStyles = css`
  .wb-top {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.35rem 0.5rem;
    padding: 0.125rem 1rem;
    background: var(--vw-head);
    color: var(--vw-head-ink);
  }
  .wb-top vw-choice {
    color: var(--vw-ink);
    --vw-soft: var(--vw-head-soft);
  }
  .wb-mark {
    margin: 0;
    font-weight: 700;
    font-size: var(--vw-text-head);
  }
  .wb-views {
    display: flex;
    align-self: stretch;
    margin: 0 auto 0 0;
  }
  .wb-views a {
    display: grid;
    place-items: center;
    min-height: var(--vw-touch);
    padding: 0 0.5rem;
    white-space: nowrap;
    color: var(--vw-head-soft);
    text-decoration: none;
    border-bottom: 3px solid transparent;
    border-top: 3px solid transparent;
  }
  .wb-views a:hover {
    color: var(--vw-head-ink);
  }
  /* Not bold: names beside it would move. */
  .wb-views a[aria-current='page'] {
    color: var(--vw-head-ink);
    border-bottom-color: var(--vw-head-mark);
  }
  .wb-views a:focus-visible {
    outline: 3px solid var(--vw-head-ink);
    outline-offset: -4px;
  }
  .wb-kept {
    min-width: 4.5rem;
    font-size: var(--vw-text-aside);
    text-align: right;
    color: var(--vw-head-soft);
  }
  .wb-refused,
  .wb-conflict {
    color: var(--vw-head-wrong);
    font-weight: 700;
  }
  .wb-horn {
    min-width: 0;
    max-width: 13rem;
    min-height: var(--vw-touch);
    padding: 0 0.5rem;
    font: inherit;
    color: var(--vw-ink);
    text-overflow: ellipsis;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-head-soft);
    border-radius: var(--vw-round);
  }
  .wb-horn:focus-visible {
    outline: 3px solid var(--vw-head-ink);
    outline-offset: 1px;
  }
  .wb-newer {
    position: fixed;
    left: 1rem;
    bottom: 1rem;
    z-index: 5;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--vw-space-2);
    max-width: calc(100vw - 2rem);
    padding: 0.5rem 0.5rem 0.5rem 1rem;
    background: var(--vw-sheet);
    border: 2px solid var(--vw-try);
    border-radius: var(--vw-round);
  }
  .wb-newer p {
    margin: 0;
  }
  /* Never in the middle of an entry: while a text is being typed it steps aside. */
  body:has(input:not([type='radio'], [type='range'], [type='checkbox']):focus, textarea:focus) .wb-newer {
    visibility: hidden;
  }
  .wb-newer button,
  .wb-alert button {
    min-height: var(--vw-touch);
    padding: 0 0.9rem;
    font: inherit;
    color: var(--vw-ink);
    background: var(--vw-sheet);
    border: 1px solid var(--vw-wrong);
    border-radius: var(--vw-round);
    cursor: pointer;
  }
  .wb-newer button:focus-visible,
  .wb-alert button:focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
  .wb-steps {
    display: flex;
    gap: var(--vw-space-1);
  }
  .wb-steps button {
    width: var(--vw-touch);
    height: var(--vw-touch);
    font: inherit;
    font-size: 1.375rem;
    line-height: 1;
    color: var(--vw-head-ink);
    background: none;
    border: 1px solid var(--vw-head-edge);
    border-radius: var(--vw-round);
    cursor: pointer;
  }
  .wb-steps button:disabled {
    opacity: 0.4;
    cursor: default;
  }
  .wb-steps button:focus-visible {
    outline: 3px solid var(--vw-head-ink);
    outline-offset: 1px;
  }
  /* The path of the day has its place before its code has come. */
  vw-workbench {
    --wb-path: calc(var(--vw-touch) + 1px);
  }
  vw-workbench:has(vw-guidance[data-away]) {
    --wb-path: 0px;
  }
  vw-guidance {
    display: block;
    min-height: var(--wb-path);
    background: var(--vw-well);
  }
  .wb-foot {
    display: flex;
    justify-content: center;
    padding-bottom: 1rem;
  }
  .wb-foot[hidden] {
    display: none;
  }
  .wb-foot a {
    display: grid;
    place-items: center;
    min-height: var(--vw-touch);
    padding: 0 1rem;
    color: var(--vw-soft);
  }
  .wb-foot a:focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
  /* In sight wherever the page is scrolled to; the page ends above it. */
  :root {
    --wb-alert-room: 7rem;
  }
  .wb-alerts {
    position: fixed;
    inset: auto 0 0;
    z-index: 10;
  }
  :root:has(.wb-alert:not([hidden])) {
    scroll-padding-bottom: var(--wb-alert-room);
  }
  vw-workbench:has(.wb-alert:not([hidden])) {
    padding-bottom: var(--wb-alert-room);
  }
  .wb-alert {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.35rem 1rem;
    padding: 0.5rem 1rem;
    background: var(--vw-wrong-ground);
    color: var(--vw-wrong);
    border-top: 2px solid var(--vw-wrong);
  }
  .wb-alert p {
    flex: 1 1 20rem;
    margin: 0;
    font-weight: 600;
  }
  .wb-alert[hidden] {
    display: none;
  }

  @media (max-width: 1240px) {
    .wb-top {
      gap: 0 var(--vw-space-2);
    }
    .wb-views {
      order: 1;
      flex-basis: 100%;
      margin: 0;
    }
    .wb-views a {
      flex: 1;
    }
    .wb-mark {
      margin-right: auto;
    }
  }

  @media (max-width: 700px) {
    :root {
      --wb-alert-room: 13rem;
    }
    .wb-top {
      --vw-choice-size: 0.8125rem;
      --vw-choice-pad: 0.3rem;
      flex-wrap: wrap;
      padding: 0.125rem 0.5rem 0;
      gap: 0 0.3rem;
    }
    .wb-mark {
      display: none;
    }
    /* A sign where there is no room for the word; what went wrong is always said. */
    .wb-kept {
      width: 1.1rem;
      min-width: 0;
      overflow: hidden;
      font-size: var(--vw-text-fine);
      text-align: left;
      white-space: nowrap;
    }
    .wb-saving,
    .wb-saved {
      font-size: 0;
    }
    .wb-saving::before,
    .wb-saved::before {
      content: '…';
      font-size: var(--vw-text-fine);
    }
    .wb-saved::before {
      content: '✓';
    }
    .wb-refused,
    .wb-conflict {
      width: auto;
    }
    .wb-horn {
      flex: 1;
      font-size: var(--vw-text-aside);
    }
    .wb-views a {
      flex: 1 1 auto;
      /* What room is left goes between all; three words stand in two lines. */
      width: min-content;
      padding: 0;
      font-size: var(--vw-text-fine);
      text-align: center;
      white-space: normal;
    }
    .wb-views a[href='#side-by-side'] {
      width: 2.75rem;
    }
  }

  @media print {
    .wb-top vw-choice,
    .wb-top vw-theme-choice,
    .wb-horn,
    .wb-kept,
    .wb-views,
    .wb-steps,
    .wb-foot,
    .wb-newer,
    .wb-alert {
      display: none;
    }
    .wb-top {
      background: none;
      color: var(--vw-ink);
      border-bottom: 2px solid var(--vw-ink);
    }
  }
`;
