import { css } from 'lit';

/** The same sheet on a tablet, a phone and paper. */
export const sheetSizeStyles = css`
  @media screen and (max-width: 1100px) {
    .sh-openings .sh-row {
      grid-template-columns: 7.75rem repeat(3, 6.5rem) minmax(6rem, 1fr) 9.5rem;
    }
    .sh-row > .sh-rules {
      display: none;
    }
    .sh-rules-small {
      display: inline;
    }
    .sh-measures .sh-row {
      grid-template-columns: 7.75rem repeat(5, minmax(0, 1fr));
    }
    .sh-measures .sh-key {
      grid-row: span 2;
    }
    .sh-measures .sh-head-group {
      display: none;
    }
    .sh-measures .sh-label {
      display: block;
    }
    .sh-name {
      font-size: var(--vw-text);
    }
    .sh-known {
      inset-inline: 0.3rem;
      gap: 0.1rem;
      word-spacing: -0.1em;
    }
    .sh-cell input {
      padding-inline: 0.35rem;
    }
    .sh-name span {
      white-space: normal;
      line-height: 1.1;
    }
    .sh-bar {
      grid-template-columns: minmax(0, 1fr);
      gap: 0;
      padding-top: 0.2rem;
    }
    .sh-tick {
      top: -0.35rem;
      height: 1.6rem;
    }
    .sh-share {
      order: 0;
      font-size: var(--vw-text-note);
      text-align: right;
    }
    .sh-axis-ends {
      padding: 0 0.25rem;
    }
    .sh-page {
      grid-template-columns: minmax(0, 1fr);
      grid-template-areas: 'answer' 'about' 'tools' 'picture' 'sheet' 'foot';
    }
    .sh-answer h1 {
      min-height: 2.3em;
    }
    .sh-show {
      display: block;
    }
    .sh-page.sh-folded .sh-picture {
      display: none;
    }
  }
  .sh-label {
    font-size: var(--vw-text-fine);
    color: var(--vw-soft);
  }

  @media screen and (max-width: 700px) {
    .sh-page {
      padding-inline: 0.5rem;
    }
    .sh-answer h1 {
      min-height: 4.6em;
    }
    .sh-openings .sh-row,
    .sh-measures .sh-row {
      grid-template-columns: repeat(3, minmax(0, 1fr));
      gap: 0.25rem 0.4rem;
      padding: 0.4rem 0.5rem;
    }
    .sh-head-group {
      display: none;
    }
    .sh-label {
      display: block;
    }
    .sh-row > .sh-key,
    .sh-measures .sh-key {
      grid-column: 1 / -1;
      grid-row: auto;
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      gap: 0 var(--vw-space-3);
    }
    .sh-openings .sh-row > .sh-key {
      grid-column: 1 / 3;
    }
    .sh-openings .sh-enough {
      grid-column: 3;
      grid-row: 1;
      text-align: right;
    }
    .sh-bar-cell {
      grid-column: 1 / -1;
    }
    .sh-bar {
      grid-template-columns: minmax(0, 1fr) 5.25rem;
      gap: 0.4rem;
      height: 2.25rem;
      padding: 0;
    }
    .sh-share {
      order: 1;
    }
    .sh-long {
      grid-column: auto;
    }
    .sh-who {
      flex-basis: 100%;
    }
    /* A day is read whole: it has a line of its own. */
    .sh-visits {
      flex: 1;
      flex-wrap: wrap;
    }
    .sh-visits label {
      flex: 1 1 100%;
    }
    .sh-visits select {
      flex: 1;
    }
  }

  @media print {
    @page sheet {
      size: A4 landscape;
      margin: 10mm;
    }
    /* The whole page, or the head alone would fill a sheet of its own. */
    body:has(.sh-page) {
      page: sheet;
    }
    .sh-openings .sh-row {
      grid-template-columns: 8.5rem repeat(3, 7.5rem) minmax(0, 1fr) 8.75rem 8rem;
    }
    .sh-page {
      display: block;
      padding: 0;
    }
    .sh-page vw-choice,
    .sh-visits,
    .sh-show,
    .sh-how,
    .sh-answer .sh-acts {
      display: none;
    }
    .sh-answer h1 {
      min-height: 0;
      font-size: var(--vw-text-large);
    }
    .sh-answer p {
      font-size: var(--vw-text-note);
    }
    .sh-who,
    .sh-sheet {
      border: 0;
    }
    .sh-who summary {
      list-style: none;
      padding: 0.2rem 0;
      min-height: 0;
    }
    .sh-picture {
      break-inside: avoid;
    }
    .sh-row {
      break-inside: avoid;
      padding-block: 0;
    }
    .sh-group {
      break-after: avoid;
      padding-block: 0.1rem 0;
    }
    .sh-head-group,
    .sh-row-head {
      position: static;
    }
    .sh-page :focus-visible {
      outline: none;
    }
    .sh-picture {
      max-width: 170mm;
    }
    .sh-cell input {
      height: 2.1rem;
      padding-bottom: 0.75rem;
      font-size: var(--vw-text-control);
      border-color: transparent;
      background: none;
    }
    .sh-known {
      bottom: 0;
    }
    .sh-bar {
      height: 1.75rem;
    }
    .sh-in-hand {
      background: none;
      box-shadow: none;
    }
  }
`;
