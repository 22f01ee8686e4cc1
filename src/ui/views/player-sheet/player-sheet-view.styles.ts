import { css } from 'lit';

/** The desk the pages lie on, and what stands beside them. */
export const playerSheetStyles = css`
  vw-player-sheet {
    display: block;
  }
  @media screen {
    .ps-desk {
      display: grid;
      grid-template-columns: minmax(17rem, 22rem) auto;
      gap: 1.25rem;
      justify-content: center;
      padding: 1rem;
    }
    .ps-pages {
      position: relative;
      display: grid;
      gap: 1.25rem;
      justify-items: start;
      align-content: start;
      min-width: 0;
    }
    .ps-pages > p {
      width: min(210mm, 100%);
    }
    .ps-page {
      border: 1px solid var(--vw-edge);
    }
    /* Over the page and in sight wherever it is scrolled to; nothing moves when it comes and goes. */
    .ps-anew {
      position: sticky;
      top: 0.5rem;
      z-index: 1;
      height: 0;
      margin-bottom: -1.25rem;
    }
    .ps-anew p {
      width: max-content;
      max-width: 100%;
      color: var(--vw-caution);
      background: var(--vw-caution-ground);
    }
    .ps-tools {
      display: grid;
      gap: 0.9rem;
      align-content: start;
      position: sticky;
      top: 1rem;
      align-self: start;
    }
    .ps-tools p {
      margin: 0;
    }
    .ps-about {
      font-size: var(--vw-text-lead);
    }
    .ps-row {
      display: flex;
      gap: 0.75rem;
      align-items: center;
    }
    .ps-print,
    .ps-writing button {
      min-height: var(--vw-touch);
      padding: 0 1.5rem;
      font: inherit;
      font-weight: 600;
      color: var(--vw-on-try);
      background: var(--vw-try);
      border: 1px solid var(--vw-try);
      border-radius: var(--vw-round);
      cursor: pointer;
    }
    .ps-print {
      flex: 1;
      font-size: var(--vw-text-head);
    }
    .ps-print:disabled,
    .ps-writing button:disabled {
      color: var(--vw-soft);
      background: var(--vw-well);
      border-color: var(--vw-edge);
      cursor: default;
    }
    .ps-fits {
      min-height: 2.8em;
      color: var(--vw-soft);
    }
    .ps-full {
      color: var(--vw-caution);
      font-weight: 600;
    }
    .ps-list h2 {
      margin: 0;
      font-size: 1rem;
    }
    .ps-list ul {
      margin: 0.25rem 0 0;
      padding-left: 1.1rem;
    }
    .ps-list a {
      display: inline-flex;
      align-items: center;
      min-height: var(--vw-touch);
      color: var(--vw-try);
    }
    .ps-sentence {
      border-radius: 3px;
      text-decoration: underline dotted var(--vw-edge) 1px;
      text-underline-offset: 0.2em;
      cursor: text;
    }
    .ps-sentence:hover {
      background: var(--vw-try-weak);
    }
    .ps-outdated {
      background: var(--vw-caution-ground);
      color: var(--vw-caution);
    }
    .ps-desk :is(button, select, .ps-sentence, .ps-scroll, a):focus-visible {
      outline: 3px solid var(--vw-try);
      outline-offset: 2px;
    }
    .ps-writing {
      display: block;
      font-size: var(--vw-text);
      font-weight: 400;
      line-height: 1.4;
    }
    .ps-writing textarea {
      display: block;
      width: 100%;
      padding: 0.4rem 0.5rem;
      font: inherit;
      color: inherit;
      background: var(--vw-ground);
      border: 2px solid var(--vw-try);
      border-radius: var(--vw-round);
      resize: vertical;
    }
    .ps-writing-acts {
      display: flex;
      flex-wrap: wrap;
      gap: 0.5rem;
      align-items: center;
      padding: 0.4rem 0;
    }
    .ps-writing button {
      padding: 0 0.9rem;
      font-size: var(--vw-text-control);
    }
    .ps-writing button[data-act='sentence-restore']:not(:disabled) {
      color: var(--vw-try);
      background: none;
    }
    .ps-hint {
      font-size: var(--vw-text-note);
      color: var(--vw-soft);
    }
  }

  @media screen and (max-width: 1240px) {
    .ps-desk {
      grid-template-columns: minmax(0, auto);
    }
    .ps-tools {
      position: static;
      grid-template-columns: repeat(2, minmax(0, 1fr));
      width: 100%;
      max-width: 216mm;
    }
    .ps-about,
    .ps-fits {
      grid-column: 1 / -1;
      min-height: 0;
    }
  }

  /* On a narrow screen the pages are read, not looked at: the words as large as the screen has room for. */
  @media screen and (max-width: 819px) {
    .ps-desk {
      grid-template-columns: minmax(0, 1fr);
      padding: 0.75rem;
    }
    .ps-pages {
      grid-template-columns: minmax(0, 1fr);
    }
    .ps-tools {
      grid-template-columns: minmax(0, 1fr);
    }
    .ps-pages > .ps-page {
      width: 100%;
      min-height: 0;
      padding: 1rem 0.9rem;
      font-size: var(--vw-text);
      line-height: 1.4;
      gap: 0.8rem;
    }
    .ps-pages > .ps-page .ps-pair {
      display: block;
      font-size: 1em;
    }
    .ps-pages > .ps-page .ps-curve {
      width: 100%;
      height: auto;
      max-width: 30rem;
    }
    .ps-pages > .ps-page .ps-notes {
      margin-bottom: 0.8rem;
    }
    .ps-pages > .ps-page :is(th, td) {
      font-size: 0.9375rem;
    }
    .ps-pages > .ps-page td {
      white-space: normal;
    }
    /* Its rows stand side by side as columns, a note to a line. */
    .ps-wish-notes {
      display: grid;
      grid-auto-flow: column;
      grid-template-rows: repeat(var(--ps-cells), auto);
    }
    .ps-wish-notes :is(thead, tbody, tr) {
      display: contents;
    }
    /* A key's name has a line of its own, and its figures the whole width. */
    .ps-keys,
    .ps-keys :is(thead, tbody) {
      display: block;
    }
    .ps-keys tr {
      display: grid;
      grid-template-columns: minmax(0, 1.3fr) minmax(0, 1.3fr) minmax(0, 0.8fr);
      column-gap: 0.4rem;
      border-bottom: 1px solid var(--vw-edge);
    }
    .ps-pages > .ps-page .ps-keys :is(th, td) {
      padding-right: 0;
      font-size: 0.875rem;
      text-align: left;
      border-bottom: 0;
    }
    .ps-pages > .ps-page .ps-keys th:first-child {
      grid-column: 1 / -1;
      font-size: 0.9375rem;
    }
    .ps-pages > .ps-page .ps-foot {
      flex-wrap: wrap;
      font-size: var(--vw-text-note);
    }
    .ps-scroll {
      overflow-x: auto;
    }
    .ps-pages > .ps-page .ps-readings {
      width: 62rem;
      font-size: var(--vw-text-fine);
    }
    .ps-pages > .ps-page .ps-readings th:first-child {
      width: 7rem;
    }
    .ps-readings small {
      font-size: 1em;
    }
    .ps-pages > .ps-page h2 {
      font-size: var(--vw-text-head);
    }
    .ps-pages > .ps-page h1 {
      font-size: var(--vw-text-page);
    }
  }
`;
