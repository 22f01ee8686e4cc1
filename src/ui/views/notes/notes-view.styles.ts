import { css } from 'lit';

/** A page to read: one column of even length, what is wide scrolls inside itself. */
export const notesStyles = css`
  vw-notes-view {
    display: block;
  }
  .nt-page {
    max-width: 66rem;
    margin: 0 auto;
    padding: 1.5rem 1rem 4rem;
  }
  .nt-page h1 {
    margin: 0 0 0.75rem;
    font-size: 1.875rem;
    line-height: 1.2;
    text-wrap: balance;
  }
  .nt-page a {
    color: var(--vw-try);
  }
  .nt-page :focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
  .nt-page h1:focus,
  .nt-page h2:focus,
  .nt-page h3:focus {
    outline: none;
  }
  .nt-standing {
    max-width: 44rem;
    margin: 0 0 1.5rem;
    font-size: var(--vw-text-head);
    color: var(--vw-soft);
  }
  .nt-list h2 {
    margin: 2rem 0 0.75rem;
    font-size: var(--vw-text-large);
  }
  .nt-entries {
    display: grid;
    max-width: 44rem;
    margin: 0;
    padding: 0;
    list-style: none;
    border-top: 1px solid var(--vw-edge);
  }
  .nt-entries a {
    display: grid;
    gap: 0.125rem;
    min-height: var(--vw-touch);
    padding: 0.75rem 0;
    text-decoration: none;
    border-bottom: 1px solid var(--vw-edge);
  }
  .nt-entries b {
    font-size: var(--vw-text-head);
  }
  .nt-entries a:hover b {
    text-decoration: underline;
  }
  .nt-entries span {
    color: var(--vw-soft);
  }
  .nt-note {
    display: grid;
    grid-template: 'aside text' auto 'aside on' auto / 15rem minmax(0, 44rem);
    column-gap: 3rem;
  }
  .nt-note article {
    grid-area: text;
    min-width: 0;
    line-height: 1.55;
    overflow-wrap: break-word;
  }
  .nt-aside {
    grid-area: aside;
    position: sticky;
    top: 1rem;
    align-self: start;
    max-height: calc(100vh - 2rem);
    overflow-y: auto;
    font-size: var(--vw-text-control);
  }
  .nt-aside ol {
    margin: 0.5rem 0 0;
    padding: 0;
    list-style: none;
    border-left: 2px solid var(--vw-edge);
  }
  .nt-aside a,
  .nt-on a {
    display: flex;
    align-items: center;
    min-height: var(--vw-touch);
    padding: 0.25rem 0.75rem;
    text-decoration: none;
  }
  .nt-aside .nt-all {
    padding: 0;
  }
  .nt-aside a[aria-current='true'] {
    margin-left: -2px;
    font-weight: 700;
    border-left: 4px solid var(--vw-try);
  }
  .nt-aside a:hover,
  .nt-on a:hover {
    text-decoration: underline;
  }
  .nt-on {
    grid-area: on;
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: var(--vw-space-2);
    margin-top: 2.5rem;
    border-top: 1px solid var(--vw-edge);
  }
  .nt-on a {
    padding: 0.25rem 0;
  }
  .nt-note h2 {
    margin: 2.25rem 0 0.5rem;
    padding-top: 0.5rem;
    font-size: 1.375rem;
    line-height: 1.25;
    scroll-margin-top: 0.5rem;
  }
  .nt-note h3 {
    margin: 1.5rem 0 0.5rem;
    font-size: var(--vw-text-lead);
    scroll-margin-top: 0.5rem;
  }
  .nt-note p,
  .nt-note ul,
  .nt-note ol,
  .nt-scrolls {
    margin: 0 0 1rem;
  }
  .nt-note article li {
    margin-bottom: 0.4rem;
  }
  .nt-note article ul,
  .nt-note article ol {
    padding-left: 1.4rem;
  }
  .nt-note blockquote {
    margin: 0 0 1rem;
    padding: 0.75rem 1rem 0;
    font-size: var(--vw-text-head);
    border: solid transparent;
    border-width: 0 0 0.01px;
    background: var(--vw-well);
    border-radius: var(--vw-round);
  }
  .nt-note code {
    font-size: 0.92em;
  }
  .nt-scrolls {
    display: block;
    overflow-x: auto;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
  }
  .nt-note pre {
    padding: 0.75rem 1rem;
    font-size: var(--vw-text-aside);
    line-height: 1.5;
  }
  .nt-note table {
    width: 100%;
    border-collapse: collapse;
    font-size: var(--vw-text-control);
    line-height: 1.4;
    overflow-wrap: normal;
  }
  .nt-note th,
  .nt-note td {
    min-width: 7.5rem;
    padding: 0.45rem 0.75rem;
    text-align: left;
    vertical-align: top;
    border-bottom: 1px solid var(--vw-edge);
  }
  .nt-note tbody tr:last-child td {
    border-bottom: 0;
  }
  .nt-note thead {
    background: var(--vw-well);
  }
  .nt-note td:first-child {
    min-width: 8rem;
  }
  /* A drawing keeps its paper: it is black on white in both themes. */
  .nt-picture {
    background: var(--vw-picture);
  }
  .nt-picture img {
    display: block;
    width: 100%;
    min-width: 48rem;
    height: auto;
  }

  @media (max-width: 900px) {
    .nt-page {
      padding-top: 1rem;
    }
    .nt-page h1 {
      font-size: var(--vw-text-page);
    }
    .nt-note {
      grid-template: 'aside' auto 'text' auto 'on' auto / minmax(0, 1fr);
    }
    .nt-aside {
      position: static;
      max-height: none;
    }
    .nt-aside ol {
      display: none;
    }
  }

  @media print {
    .nt-page {
      max-width: none;
      padding: 0;
    }
    .nt-note {
      display: block;
    }
    .nt-aside,
    .nt-on {
      display: none;
    }
    .nt-scrolls {
      overflow: visible;
    }
    .nt-picture img {
      min-width: 0;
    }
    .nt-note h2,
    .nt-note h3 {
      break-after: avoid;
    }
    .nt-note tr,
    .nt-note pre {
      break-inside: avoid;
    }
  }
`;
