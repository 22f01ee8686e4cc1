import { css } from 'lit';

/** What the scale page has beside the key study's plan. */
export const scaleStyles = css`
  .sc-page {
    grid-template-columns: minmax(0, 1fr) 380px;
    grid-template-rows: auto auto auto minmax(0, 1fr);
    grid-template-areas: 'keys keys' 'answer answer' 'chart try' 'chart note' 'sure sure' 'played played' 'map map' 'alternates loud' 'table table' 'foot foot';
  }
  .sc-page h2 {
    margin: 0;
    font-size: var(--vw-text);
    font-weight: 700;
  }
  .sc-page .ks-answer {
    grid-template-columns: minmax(0, 1.6fr) minmax(0, 1fr);
    min-height: 7.75rem;
  }
  .sc-page .ks-answer h1 {
    font-size: clamp(1.5rem, 1rem + 1.2vw, 1.9375rem);
  }
  .sc-page .ks-standing {
    font-size: var(--vw-text);
  }
  .sc-heard {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .sc-chips {
    display: flex;
    flex-wrap: wrap;
    gap: 0.35rem;
    margin: 0.25rem 0 0;
    padding: 0;
    list-style: none;
  }
  .sc-chips .ks-quiet {
    font-size: var(--vw-text-aside);
    padding: 0 0.6rem;
    border-color: var(--vw-try);
    font-weight: 600;
  }
  .ks-why .sc-proposed {
    display: flex;
    align-items: center;
    justify-content: space-between;
    gap: var(--vw-space-2);
    margin: 0;
  }
  .sc-back {
    min-height: var(--vw-touch);
    padding: 0 0.35rem;
    font: inherit;
    color: var(--vw-try);
    text-decoration: underline;
    background: none;
    border: 0;
    cursor: pointer;
    white-space: nowrap;
  }
  .sc-limits {
    grid-column: 1 / -1;
    align-self: end;
    padding: 0 0.6rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-caution);
    background: var(--vw-caution-ground);
    border-radius: var(--vw-round);
  }
  .sc-limits summary {
    min-height: var(--vw-touch);
    line-height: 1.3;
    padding: 0.75rem 0;
    cursor: pointer;
  }
  .sc-limits ul {
    margin: 0;
    padding: 0 0 0.5rem 1.1rem;
  }
  .sc-chart {
    grid-area: chart;
    display: flex;
    flex-direction: column;
    align-items: stretch;
    padding: 0.35rem 0.35rem 0 0.5rem;
    height: clamp(430px, calc(100vh - 320px - var(--wb-path)), 700px);
  }
  .sc-tools {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.35rem 0.75rem;
    --vw-choice-size: 0.875rem;
    --vw-choice-pad: 0.45rem;
  }
  .sc-select {
    display: flex;
    align-items: center;
    gap: 0.4rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .sc-select select {
    min-height: var(--vw-touch);
    padding: 0 0.4rem;
    font: inherit;
    font-size: var(--vw-text-control);
    color: var(--vw-ink);
    background: var(--vw-sheet);
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
  }
  .sc-legend {
    margin-left: auto;
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--vw-space-3);
  }
  .sc-legend .found {
    color: var(--vw-found);
  }
  .sc-legend .proposed {
    color: var(--vw-try);
    font-weight: 600;
  }
  .sc-chart vw-scale-chart {
    --vw-paper-height: 400px;
    position: relative;
    display: block;
    flex: 1;
    min-height: 0;
    overflow: hidden;
  }
`;
