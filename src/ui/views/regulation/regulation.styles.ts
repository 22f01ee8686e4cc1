import { css } from 'lit';

/** What the views of regulation share beside the key study's plan. */
export const regulationStyles = css`
  /* The strip of tabs stands where it stands in every view of regulation. */
  .ks-page.rg-page {
    padding-top: 0;
  }
  .rg-page h2 {
    margin: 0;
    font-size: var(--vw-text);
    font-weight: 700;
  }
  .rg-page .ks-answer {
    grid-template-columns: minmax(0, 1.6fr) minmax(0, 1fr);
    min-height: 7.5rem;
  }
  .rg-page .ks-answer h1 {
    font-size: clamp(1.375rem, 1rem + 1.1vw, 1.875rem);
  }
  .rg-page .ks-standing {
    font-size: var(--vw-text);
  }
  .ks-why .rg-notes {
    color: var(--vw-ink);
    font-size: var(--vw-text);
    font-weight: 600;
  }
  /* Of an earlier question: said by the page, and still legible. */
  .rg-notes[aria-busy='true'] {
    outline: 1px dotted var(--vw-soft);
    outline-offset: 4px;
  }
  .rg-panel {
    min-width: 0;
    padding: 0.5rem 0.75rem 0.75rem;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
  }
  .rg-panel > p {
    margin: 0.25rem 0;
    font-size: var(--vw-text-control);
  }
  .rg-page .rg-said {
    font-size: var(--vw-text-lead);
    font-weight: 600;
  }
  .rg-scroll {
    max-width: 100%;
    overflow-x: auto;
  }
  .rg-page table {
    width: 100%;
    border-collapse: collapse;
    font-size: var(--vw-text-control);
  }
  .rg-panel th,
  .rg-panel td {
    padding: 0.2rem 0.5rem;
    text-align: right;
    font-weight: 400;
    white-space: nowrap;
    border-bottom: 1px solid var(--vw-well);
  }
  .rg-panel th:first-child {
    text-align: left;
  }
  .rg-panel thead th {
    position: sticky;
    top: 0;
    z-index: 1;
    font-weight: 600;
    background: var(--vw-well);
  }
  .rg-panel td b {
    font-weight: 700;
  }
  .rg-wrong td,
  .rg-wrong th,
  .rg-flag {
    color: var(--vw-wrong);
  }
  .rg-picked td,
  .rg-picked th {
    background: var(--vw-try-weak);
  }
  .rg-row {
    min-height: var(--vw-touch);
    margin: 0 -0.5rem;
    padding: 0 0.5rem;
    font: inherit;
    color: var(--vw-try);
    text-align: left;
    text-decoration: underline;
    text-underline-offset: 3px;
    background: none;
    border: 0;
    cursor: pointer;
  }
  .rg-row[aria-pressed='true'] {
    color: var(--vw-ink);
    font-weight: 700;
  }
  .rg-select {
    display: inline-flex;
    align-items: center;
    gap: var(--vw-space-2);
    min-width: 0;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .rg-select select {
    min-width: 0;
    min-height: var(--vw-touch);
    padding: 0 0.5rem;
    font: inherit;
    font-size: var(--vw-text);
    color: var(--vw-ink);
    background: var(--vw-sheet);
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
  }

  @media (max-width: 1100px) {
    .rg-page .ks-answer {
      grid-template-columns: minmax(0, 1fr);
    }
  }

  .rg-swipe {
    display: none;
    color: var(--vw-soft);
  }

  /* Many columns do not fit a phone: they move under a name that stays, and an edge shows that there is more. */
  @media screen and (max-width: 600px) {
    .rg-wide {
      box-shadow: inset -12px 0 10px -10px var(--vw-soft);
      animation: rg-edge linear;
      animation-timeline: scroll(self inline);
    }
    .rg-wide tr > :first-child {
      position: sticky;
      left: 0;
      z-index: 1;
      min-width: 5.5rem;
      background: var(--vw-sheet);
      white-space: normal;
    }
    .rg-wide thead th:first-child {
      background: var(--vw-well);
    }
    .rg-wide .rg-picked > :first-child {
      background: var(--vw-try-weak);
    }
    .rg-swipe {
      display: block;
    }
  }
  /* Nothing is hidden beyond the end. */
  @keyframes rg-edge {
    from,
    95% {
      box-shadow: inset -12px 0 10px -10px var(--vw-soft);
    }
    to {
      box-shadow: none;
    }
  }

  @media print {
    .rg-scroll {
      max-height: none;
      overflow: visible;
    }
    .rg-select,
    .rg-page input[type='range'] {
      display: none;
    }
    .rg-panel table {
      font-size: var(--vw-text-cell);
    }
    .rg-panel th,
    .rg-panel td {
      padding-inline: 0.25rem;
    }
    .rg-row {
      min-height: 0;
      color: var(--vw-ink);
      text-decoration: none;
    }
  }
`;
