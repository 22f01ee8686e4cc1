import { css } from 'lit';

/** The sheet’s plan: the answer, the horn, the rows. Big cells, one line a key. */
export const sheetStyles = css`
  .sh-page {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 600px;
    grid-template-areas: 'answer picture' 'about about' 'tools tools' 'sheet sheet' 'foot foot';
    gap: var(--vw-space-2) var(--vw-space-3);
    max-width: 1500px;
    margin: 0 auto;
    padding: 0.5rem 0.75rem 1.5rem;
  }
  .sh-answer {
    grid-area: answer;
    display: grid;
    gap: var(--vw-space-1);
    align-content: start;
    padding: 0 0.25rem;
  }
  .sh-answer > * {
    margin: 0;
  }
  .sh-answer h1 {
    min-height: 3.45em;
    font-size: clamp(1.4375rem, 1rem + 1.1vw, 1.8125rem);
    line-height: 1.15;
    letter-spacing: -0.01em;
  }
  .sh-sure {
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .sh-caution {
    padding: 0.25rem 0.6rem;
    color: var(--vw-caution);
    background: var(--vw-caution-ground);
    border-radius: var(--vw-round);
  }
  .sh-acts,
  .sh-acts form {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--vw-space-2);
  }
  .sh-acts label {
    font-size: var(--vw-text-aside);
    font-weight: 600;
  }
  .sh-acts input {
    width: 8.5rem;
    min-height: var(--vw-touch);
    padding: 0 0.6rem;
    font: inherit;
    color: inherit;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
  }
  .sh-acts input[aria-invalid='true'] {
    border: 2px solid var(--vw-wrong);
  }
  .sh-about {
    grid-area: about;
    display: flex;
    flex-wrap: wrap;
    align-items: flex-start;
    gap: var(--vw-space-2) var(--vw-space-4);
    min-width: 0;
  }
  .sh-who {
    flex: 1 1 17rem;
    min-width: 0;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
  }
  .sh-who summary {
    min-height: var(--vw-touch);
    padding: 0.55rem 0.9rem;
    cursor: pointer;
  }
  .sh-who summary span {
    color: var(--vw-soft);
  }
  .sh-fields {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(225px, 1fr));
    gap: 0.5rem 1.25rem;
    padding: 0.25rem 0.9rem 0.9rem;
  }
  .sh-long {
    grid-column: span 2;
  }
  .sh-field label,
  .sh-visits label {
    display: block;
    font-size: var(--vw-text-aside);
    font-weight: 600;
  }
  .sh-field input,
  .sh-field textarea,
  .sh-visits select {
    width: 100%;
    min-height: var(--vw-touch);
    padding: 0.4rem 0.6rem;
    font: inherit;
    font-size: var(--vw-text-lead);
    color: inherit;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
  }
  .sh-field textarea {
    resize: vertical;
  }
  .sh-field [aria-invalid='true'] {
    border: 2px solid var(--vw-wrong);
    background: var(--vw-wrong-ground);
  }
  .sh-field-problem,
  .sh-problems p {
    margin: 0.1rem 0 0;
    font-size: var(--vw-text-aside);
    font-weight: 600;
    color: var(--vw-wrong);
  }
  .sh-show {
    display: none;
  }
  .sh-visits {
    display: flex;
    align-items: center;
    gap: var(--vw-space-2);
  }
  .sh-visits label {
    display: flex;
    align-items: center;
    gap: var(--vw-space-2);
  }
  .sh-visits select {
    min-width: 8.75rem;
  }
  .sh-picture {
    grid-area: picture;
    min-width: 0;
    align-self: start;
  }
  .sh-tools {
    grid-area: tools;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--vw-space-1) var(--vw-space-4);
    padding: 0 0.25rem;
  }
  .sh-legend,
  .sh-how {
    margin: 0;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .sh-legend span {
    margin-right: 0.6rem;
    white-space: nowrap;
  }
  .sh-how {
    flex-basis: 100%;
  }
  .sh-sheet {
    grid-area: sheet;
    min-width: 0;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
  }
  .sh-row {
    display: grid;
    gap: 0 var(--vw-space-2);
    align-items: center;
    padding: 0.2rem 0.6rem;
    border-bottom: 1px solid var(--vw-well);
    scroll-margin-block: 5rem;
  }
  .sh-openings .sh-row {
    grid-template-columns: 9.5rem repeat(3, 8.25rem) minmax(10rem, 1fr) 10.5rem 8.5rem;
  }
  .sh-measures .sh-row {
    grid-template-columns: 9.5rem repeat(9, minmax(0, 1fr));
  }
  .sh-row-head {
    position: sticky;
    top: 0;
    z-index: 1;
    min-height: 2.4rem;
    font-size: var(--vw-text-aside);
    font-weight: 600;
    line-height: 1.15;
    background: var(--vw-well);
    border-radius: var(--vw-round) var(--vw-round) 0 0;
  }
  .sh-head-group {
    position: sticky;
    top: 0;
    z-index: 1;
  }
  .sh-axis-ends {
    display: flex;
    justify-content: space-between;
    font-weight: 400;
  }
  .sh-axis-ends i {
    font-style: normal;
  }
  .sh-group {
    padding: 0.5rem 0.75rem 0.15rem;
    font-size: var(--vw-text-aside);
    font-weight: 700;
    color: var(--vw-soft);
    border-bottom: 1px solid var(--vw-well);
  }
  /* Pale enough that what a key lacks is read on it in both themes. */
  .sh-in-hand {
    background: color-mix(in srgb, var(--vw-try-weak) 45%, var(--vw-sheet));
    box-shadow: inset 4px 0 var(--vw-try);
  }
  .sh-key {
    min-width: 0;
  }
  .sh-name {
    display: flex;
    align-items: center;
    gap: 0.4rem;
    min-height: 1.75rem;
    font-size: var(--vw-text-lead);
    color: var(--vw-ink);
    text-decoration: none;
    white-space: nowrap;
  }
  .sh-name b {
    min-width: 1.4em;
  }
  .sh-name:hover span {
    text-decoration: underline;
  }
  .sh-sub {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--vw-space-2);
    font-size: var(--vw-text-fine);
    line-height: 1.2;
    color: var(--vw-soft);
  }
  .sh-example {
    color: var(--vw-caution);
    font-weight: 600;
  }
  .sh-rules-small,
  .sh-label {
    display: none;
  }
`;
