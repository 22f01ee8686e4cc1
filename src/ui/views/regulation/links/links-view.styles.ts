import { css } from 'lit';

/** The page of links: the picture beside the sliders, then the tables. */
export const linksStyles = css`
  .ln-page {
    grid-template-columns: minmax(0, 1fr) 400px;
    grid-template-rows: none;
    grid-template-areas: 'tabs tabs' 'answer answer' 'stack try' 'notes notes' 'pads pads' 'links links' 'asked asked' 'link link' 'foot foot';
  }
  .ln-head {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: var(--vw-space-1) var(--vw-space-3);
  }
  .ks-page .ln-stack {
    grid-area: stack;
    display: flex;
    flex-direction: column;
    padding: 0.35rem 0.75rem 0.5rem;
  }
  .ln-stack vw-stack-drawing {
    flex: 1 0 270px;
  }
  .ln-press {
    display: flex;
    align-items: center;
    gap: var(--vw-space-3);
    font-size: var(--vw-text-control);
    font-weight: 600;
  }
  .ln-press input {
    flex: 1;
    min-width: 0;
    height: var(--vw-touch);
    accent-color: var(--vw-try);
  }
  .ln-press .ks-quiet {
    min-width: 5.5rem;
  }
  .ln-moving {
    display: grid;
    gap: 0.1rem;
    margin: 0.25rem 0 0;
    padding: 0;
    list-style: none;
    font-size: var(--vw-text-control);
  }
  .ln-moving li {
    display: grid;
    grid-template-columns: 9rem minmax(0, 1fr) 11.5rem;
    align-items: center;
    gap: var(--vw-space-3);
  }
  .ln-bar {
    position: relative;
    height: 12px;
    border: 1px solid var(--vw-edge);
    background: repeating-linear-gradient(
      90deg,
      var(--vw-well) 0 calc(10% - 1px),
      var(--vw-edge) calc(10% - 1px) 10%
    );
  }
  .ln-bar i {
    position: absolute;
    inset: 0 auto 0 0;
    background: var(--vw-try);
  }
  .ln-bar b {
    position: absolute;
    right: -0.8em;
    top: -6px;
    font-size: var(--vw-text-aside);
    color: var(--vw-try);
  }
  .ln-value {
    font-weight: 600;
    white-space: nowrap;
  }
  .ln-caption {
    margin: 0.35rem 0 0;
    font-size: var(--vw-text-note);
    color: var(--vw-soft);
  }
  .ln-page .ks-answer {
    min-height: 10.5rem;
  }
  .ln-page .ks-answer h1 {
    font-size: clamp(1.25rem, 1rem + 0.8vw, 1.625rem);
  }
  .ln-sliders {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(20rem, 100%), 1fr));
    gap: 0 var(--vw-space-5);
  }
  .ln-note-list {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(16.5rem, 1fr));
    gap: 0 var(--vw-space-5);
    margin: 0.25rem 0 0;
    padding: 0;
    list-style: none;
    font-size: var(--vw-text-control);
  }
  .ln-note-list li {
    display: flex;
    justify-content: space-between;
    gap: var(--vw-space-2);
    border-bottom: 1px solid var(--vw-well);
  }
  .ln-asked td,
  .ln-asked th {
    white-space: normal;
  }
  .ln-try {
    align-self: start;
  }
  .ln-reading {
    margin: 0.25rem 0 -0.35rem;
    font-size: var(--vw-text-control);
  }
  .ln-pads {
    grid-area: pads;
  }
  .ln-notes {
    grid-area: notes;
  }
  .ln-links {
    grid-area: links;
  }
  .ln-links th,
  .ln-links td {
    padding-inline: 0.3rem;
  }
  .ln-links thead th {
    white-space: normal;
    vertical-align: bottom;
  }
  .ln-link {
    grid-area: link;
  }
  .ln-asked {
    grid-area: asked;
  }
  .ln-asked table {
    max-width: 44rem;
  }
  .ln-more summary {
    min-height: var(--vw-touch);
    line-height: 1.3;
    padding: 0.75rem 0;
    cursor: pointer;
    font-weight: 600;
  }
  .ln-offer {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--vw-space-2) var(--vw-space-4);
    margin: 0;
  }
  .ln-ask {
    display: grid;
    grid-template-columns: max-content minmax(0, 20rem);
    gap: var(--vw-space-2) var(--vw-space-4);
    align-items: start;
  }
  .ln-ask .rg-select {
    padding-top: 1.25rem;
  }

  @media (max-width: 1100px) {
    .ln-page {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
      grid-template-areas: 'tabs tabs' 'answer answer' 'stack stack' 'try try' 'notes notes' 'pads pads' 'links links' 'asked asked' 'link link' 'foot foot';
    }
    .ln-page .ks-answer {
      min-height: 14rem;
    }
    .ln-stack vw-stack-drawing {
      flex-basis: 320px;
    }
  }

  @media (max-width: 700px) {
    .ln-page {
      grid-template-columns: minmax(0, 1fr);
      grid-template-areas: 'tabs' 'answer' 'stack' 'try' 'notes' 'pads' 'links' 'asked' 'link' 'foot';
    }
    .ln-stack vw-stack-drawing {
      flex-basis: 220px;
    }
    .ln-links tr > :first-child {
      min-width: 8.5rem;
    }
    .ln-moving li {
      grid-template-columns: 6.5rem minmax(0, 1fr) 9.5rem;
      gap: var(--vw-space-2);
    }
    .ln-ask {
      grid-template-columns: minmax(0, 1fr);
    }
    .ln-ask .rg-select {
      padding-top: 0;
    }
  }

  @media print {
    .ln-try vw-opening-slider,
    .ln-press,
    .ln-link,
    .ln-ask,
    .ln-asked:not(:has(table)),
    .rg-page button.ks-quiet {
      display: none;
    }
    .ln-stack vw-stack-drawing {
      flex: none;
      height: 260px;
      width: 520px;
    }
  }
`;
