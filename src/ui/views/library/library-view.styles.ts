import { css } from 'lit';

/** The ways in and out, then the list. */
export const libraryStyles = css`
  vw-library-view {
    display: block;
  }
  .lb-page {
    display: grid;
    gap: var(--vw-space-3);
    max-width: 1100px;
    margin: 0 auto;
    padding: 0.75rem 0.75rem 1.5rem;
    grid-template-columns: minmax(0, 1fr);
  }
  .lb-page :focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
  .lb-page h1,
  .lb-page h2,
  .lb-page h3,
  .lb-page p {
    margin: 0;
    overflow-wrap: anywhere;
  }
  .lb-head {
    padding: 0 0.25rem;
  }
  .lb-page h1 {
    font-size: clamp(1.375rem, 1rem + 1.4vw, 2rem);
    line-height: 1.15;
    letter-spacing: -0.01em;
  }
  .lb-head p {
    margin-top: 0.3rem;
    font-size: var(--vw-text-lead);
  }
  .lb-head .lb-caution {
    padding: 0.5rem 0.75rem;
    font-size: var(--vw-text);
    color: var(--vw-caution);
    background: var(--vw-caution-ground);
    border-radius: var(--vw-round);
  }
  .lb-ways {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: var(--vw-space-2);
  }
  .lb-search {
    flex: 1 1 18rem;
    min-width: 0;
  }
  .lb-search span,
  .lb-rename span {
    display: block;
    font-size: var(--vw-text-aside);
    font-weight: 600;
  }
  .lb-search input,
  .lb-rename input {
    width: 100%;
    min-width: 0;
    min-height: 48px;
    padding: 0 0.75rem;
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
    background: var(--vw-sheet);
    color: inherit;
    font: inherit;
    font-size: var(--vw-text-head);
  }
  .lb-search input::placeholder {
    color: var(--vw-soft);
    opacity: 1;
  }
  .lb-button {
    position: relative;
    display: inline-grid;
    place-items: center;
    min-height: var(--vw-touch);
    padding: 0.25rem 0.9rem;
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
    background: var(--vw-sheet);
    color: var(--vw-ink);
    font: inherit;
    text-align: center;
    text-decoration: none;
    overflow-wrap: anywhere;
    cursor: pointer;
  }
  .lb-button:hover {
    background: var(--vw-try-weak);
  }
  .lb-button:disabled {
    color: var(--vw-soft);
    background: var(--vw-well);
    border-color: var(--vw-edge);
    cursor: default;
  }
  .lb-ways .lb-button {
    min-height: 48px;
  }
  .lb-first {
    border-color: var(--vw-try);
    background: var(--vw-try);
    color: var(--vw-on-try);
    font-weight: 700;
  }
  .lb-first:hover {
    background: var(--vw-ink);
  }
  .lb-chooser input {
    position: absolute;
    inset: 0;
    opacity: 0;
    cursor: pointer;
    font-size: 0;
  }
  .lb-chooser:focus-within {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
  .lb-status {
    position: sticky;
    top: 0;
    z-index: 1;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--vw-space-1) var(--vw-space-4);
    min-height: var(--vw-touch);
    margin: -0.25rem 0;
    padding: 0 0.25rem;
    background: var(--vw-ground);
  }
  .lb-page .lb-problem {
    color: var(--vw-wrong);
    font-weight: 600;
  }
  .lb-reports,
  .lb-list,
  .lb-bench {
    min-width: 0;
    padding: 0.75rem 1rem;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
  }
  .lb-reports article {
    margin-bottom: 0.75rem;
  }
  .lb-page h2 {
    font-size: var(--vw-text-head);
  }
  .lb-page h3 {
    margin-top: 0.5rem;
    font-size: var(--vw-text);
  }
  .lb-told {
    margin: 0.25rem 0;
    padding-left: 1.25rem;
    overflow-wrap: anywhere;
  }
  .lb-issues {
    width: 100%;
    border-collapse: collapse;
    font-size: var(--vw-text-control);
  }
  .lb-issues th,
  .lb-issues td {
    padding: 0.2rem 0.5rem 0.2rem 0;
    text-align: left;
    vertical-align: top;
    border-bottom: 1px solid var(--vw-well);
    overflow-wrap: anywhere;
  }
  .lb-issues td:first-child {
    width: 38%;
    color: var(--vw-soft);
  }
  .lb-issues td:last-child {
    color: var(--vw-wrong);
  }
  .lb-list {
    padding: 0;
  }
  .lb-list:has(> .vw-empty) {
    padding: 0;
    border: 0;
  }
  .lb-horns,
  .lb-parts {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .lb-horn {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 9rem auto;
    align-items: center;
    gap: 0 var(--vw-space-3);
    padding: 0 0.5rem 0 0;
    border-bottom: 1px solid var(--vw-well);
    /* Of hundreds only those in sight are laid out. */
    content-visibility: auto;
    contain-intrinsic-size: auto 4rem;
  }
  .lb-horn:last-child {
    border-bottom: 0;
  }
  .lb-shown {
    background: var(--vw-try-weak);
  }
  .lb-open {
    min-width: 0;
    min-height: 60px;
    padding: 0.4rem 0.5rem 0.4rem 1rem;
    border: 0;
    background: none;
    color: inherit;
    font: inherit;
    text-align: left;
    overflow-wrap: anywhere;
    cursor: pointer;
  }
  .lb-page .lb-open:focus-visible {
    outline-offset: -3px;
  }
  .lb-open:hover b {
    text-decoration: underline;
  }
  .lb-open b {
    display: block;
    font-size: var(--vw-text-head);
    color: var(--vw-try);
  }
  .lb-open span {
    color: var(--vw-soft);
  }
  .lb-open .lb-trouble {
    display: block;
    color: var(--vw-wrong);
  }
  .lb-when {
    text-align: right;
  }
  .lb-when span {
    display: block;
    min-height: 1.4em;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .lb-more {
    min-width: 4.5rem;
    min-height: var(--vw-touch);
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
    background: var(--vw-sheet);
    color: inherit;
    font: inherit;
    cursor: pointer;
  }
  .lb-detail {
    grid-column: 1 / -1;
    min-height: 60px;
    padding: 0.25rem 0.5rem 0.75rem 1rem;
  }
  .lb-acts {
    display: flex;
    flex-wrap: wrap;
    gap: var(--vw-space-2);
  }
  .lb-bench .lb-acts {
    margin-top: 0.5rem;
  }
  .lb-parts li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--vw-space-1) var(--vw-space-2);
    padding: 0.25rem 0;
    border-top: 1px solid var(--vw-edge);
  }
  .lb-parts .lb-open,
  .lb-parts .lb-name {
    flex: 1 1 12rem;
    min-height: var(--vw-touch);
    padding: 0.25rem 0;
  }
  .lb-parts .lb-name {
    display: grid;
    align-items: center;
  }
  .lb-parts .lb-open b {
    display: inline;
    margin-right: 0.5rem;
    font-size: var(--vw-text);
  }
  .lb-unread {
    margin-bottom: 0.5rem;
    padding: 0.5rem 0.75rem;
    color: var(--vw-caution);
    background: var(--vw-caution-ground);
    border-radius: var(--vw-round);
    overflow-wrap: anywhere;
  }
  .lb-unread ul {
    margin: 0.25rem 0 0;
    padding-left: 1.25rem;
    font-size: var(--vw-text-control);
  }
  .lb-rename {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: var(--vw-space-2);
    width: 100%;
  }
  .lb-rename label {
    flex: 1 1 14rem;
  }
  .lb-rename .lb-button {
    min-height: 48px;
  }
  .lb-rename .lb-problem {
    flex-basis: 100%;
    min-height: 1.4em;
  }
  .lb-drop {
    display: none;
  }
  .lb-over .lb-drop {
    position: fixed;
    inset: 0.5rem;
    z-index: 2;
    display: grid;
    place-items: center;
    font-size: var(--vw-text-page);
    font-weight: 700;
    color: var(--vw-try);
    background: color-mix(in srgb, var(--vw-try-weak) 92%, transparent);
    border: 3px dashed var(--vw-try);
    border-radius: var(--vw-round);
    pointer-events: none;
  }
`;
