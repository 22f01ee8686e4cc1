import { css } from 'lit';

/** Pads: the answer, then the picture, then the table. */
export const padsStyles = css`
  vw-pads-view {
    display: block;
  }
  .pd-page {
    display: grid;
    gap: var(--vw-space-2) var(--vw-space-3);
    max-width: 1500px;
    margin: 0 auto;
    padding: 0 0.75rem 1.5rem;
    grid-template-columns: minmax(0, 1fr) 420px;
  }
  .pd-fit {
    grid-template-areas:
      'tabs tabs'
      'question question'
      'answer drawing'
      'stock stock'
      'cups cups'
      'order order'
      'caution caution';
  }
  .pd-change {
    grid-template-areas:
      'tabs tabs'
      'question question'
      'answer answer'
      'plan plan'
      'keys keys'
      'openings notes'
      'numbers numbers';
  }
  .pd-question {
    grid-area: question;
  }
  .pd-keys {
    grid-area: keys;
    min-width: 0;
  }
  .pd-page h2 {
    margin: 0;
    font-size: var(--vw-text-head);
  }
  .pd-drawing,
  .pd-stock,
  .pd-cups,
  .pd-order,
  .pd-plan,
  .pd-openings,
  .pd-notes,
  .pd-numbers {
    min-width: 0;
    padding: 0.5rem 0.75rem;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
  }
  .pd-drawing {
    grid-area: drawing;
    display: grid;
    align-items: center;
    min-height: 215px;
  }
  .pd-drawing figure {
    margin: 0;
  }
  .pd-drawing svg {
    display: block;
    width: 100%;
    height: 150px;
    overflow: visible;
  }
  .pd-drawing figcaption,
  .pd-no-drawing {
    margin: 0.25rem 0 0;
    font-size: var(--vw-text-note);
    color: var(--vw-soft);
  }
  .pd-drawing .rim {
    fill: var(--vw-metal);
    stroke: var(--vw-ink);
  }
  .pd-drawing .cup,
  .pd-drawing .rod {
    fill: var(--vw-metal);
    stroke: var(--vw-ink);
  }
  .pd-drawing .arm {
    fill: none;
    stroke: var(--vw-metal);
  }
  .pd-drawing .pad {
    fill: var(--vw-felt);
    stroke: var(--vw-leather);
  }
  .pd-drawing .bed {
    fill: var(--vw-try);
  }
  .pd-drawing .gape {
    stroke: var(--vw-wrong);
  }
  .pd-drawing text {
    fill: var(--vw-wrong);
    font-weight: 700;
  }
  .pd-how {
    margin: 0.1rem 0 0.4rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .pd-how i {
    display: inline-block;
    width: 14px;
    height: 10px;
    margin: 0 0.15rem 0 0.35rem;
  }
  i.pad {
    background: var(--vw-leather);
  }
  i.bed {
    background: var(--vw-try);
  }
  i.floor {
    width: 3px !important;
    height: 14px !important;
    background: var(--vw-ink);
  }
  .pd-stock {
    grid-area: stock;
    padding-block: 0;
  }
  .pd-stock summary,
  .pd-numbers summary {
    min-height: var(--vw-touch);
    padding: 0.6rem 0;
    cursor: pointer;
  }
  .pd-stock summary span {
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .pd-classes p {
    margin: 0;
    font-size: var(--vw-text-aside);
    font-weight: 600;
  }
  .pd-classes ul {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem;
    margin: 0.25rem 0 0.5rem;
    padding: 0;
    list-style: none;
  }
  .pd-classes li {
    display: flex;
    align-items: center;
    padding-left: 0.7rem;
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
    background: var(--vw-well);
  }
  .pd-classes button {
    width: var(--vw-touch);
    height: var(--vw-touch);
    font: inherit;
    color: var(--vw-ink);
    background: none;
    border: 0;
    cursor: pointer;
  }
  .pd-classes button:disabled {
    opacity: 0.35;
  }
  .pd-classes vw-bench-field {
    max-width: 260px;
  }
  .pd-fields {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(190px, 1fr));
    gap: 0.4rem 1rem;
    margin-top: 0.4rem;
  }
  .pd-kept {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--vw-space-3);
    margin: 0.4rem 0 0.6rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .pd-page :focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
`;
