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
  .vw-live,
  .vw-picker {
    position: absolute;
    inset: 0;
  }
  /* A layer of its own: what moves does not repaint what stands. */
  .vw-live {
    will-change: transform;
    contain: strict;
  }
  .vw-picker {
    cursor: pointer;
    border-radius: var(--vw-round);
  }
  .ks-page .vw-picker:focus-visible {
    outline-offset: -3px;
  }
  .vw-told {
    position: absolute;
    inset: 2px 8px auto 62px;
    margin: 0;
    font-size: var(--vw-text-aside);
    font-weight: 600;
    white-space: pre;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .vw-live .band.lit {
    fill: var(--vw-try);
  }
  .vw-live .band.picked {
    fill: none;
    stroke: var(--vw-ink);
    stroke-width: 1.5;
  }
  .vw-live .way {
    stroke: var(--vw-try);
    stroke-width: 2.5;
  }
  .vw-live .proposed,
  .vw-live .beyond {
    fill: var(--vw-try);
    stroke: var(--vw-sheet);
    stroke-width: 0.75;
  }
  .vw-live .bar {
    fill: var(--vw-try);
  }
  .vw-live .bar.other {
    fill-opacity: 0.6;
  }
  .vw-live .whisker {
    stroke: var(--vw-soft);
    stroke-width: 1;
    stroke-opacity: 0.75;
  }
  .vw-live .hint {
    font-size: 12.5px;
    text-anchor: middle;
    fill: var(--vw-soft);
    paint-order: stroke;
    stroke: var(--vw-sheet);
    stroke-width: 4px;
  }
  .vw-live .number {
    font-size: 10.5px;
    font-weight: 700;
    text-anchor: middle;
    fill: var(--vw-try);
    paint-order: stroke;
    stroke: var(--vw-sheet);
    stroke-width: 3px;
  }
  .sc-note,
  .sc-sure,
  .sc-loud,
  .sc-map,
  .sc-alternates {
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
    min-width: 0;
    padding: 0.5rem 0.75rem 0.6rem;
  }
  /* A thousand cells below the screen cost a moving hand nothing. */
  .sc-map {
    content-visibility: auto;
    contain-intrinsic-size: auto 590px;
  }
  .sc-reading {
    margin: 0;
    font-size: var(--vw-text-control);
    color: var(--vw-soft);
  }
  .sc-reading b {
    color: var(--vw-ink);
  }
  .sc-set {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--vw-space-2);
    margin-top: 0.25rem;
  }
  .sc-link {
    display: inline-grid;
    place-items: center;
    min-height: var(--vw-touch);
    color: var(--vw-try);
    font-size: var(--vw-text-control);
  }
  .sc-note {
    grid-area: note;
  }
  .sc-note-head {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    align-items: center;
    gap: var(--vw-space-1) var(--vw-space-3);
  }
  .sc-note p {
    margin: 0.1rem 0;
    font-size: var(--vw-text-aside);
  }
  .sc-note .sc-note-told {
    font-weight: 600;
    white-space: pre-line;
  }
  .sc-governing {
    margin: 0.25rem 0 0;
    padding: 0;
    list-style: none;
  }
  .sc-governing button {
    display: grid;
    grid-template-columns: 6.25rem minmax(0, 1fr) 5.1rem 3.6rem;
    align-items: center;
    gap: var(--vw-space-2);
    width: 100%;
    min-height: var(--vw-touch);
    padding: 0 0.35rem;
    font: inherit;
    font-size: var(--vw-text-aside);
    color: inherit;
    text-align: left;
    background: none;
    border: 0;
    border-bottom: 1px solid var(--vw-well);
    cursor: pointer;
  }
  .sc-governing button[aria-pressed='true'] {
    background: var(--vw-try-weak);
    font-weight: 700;
  }
  .sc-governing .bar {
    height: 12px;
    background: var(--vw-well);
  }
  .sc-governing .bar i {
    display: block;
    height: 100%;
    background: var(--vw-rise-8);
  }
  .sc-governing .bar i.flattens {
    background: var(--vw-fall-6);
  }
  .sc-governing .cents,
  .sc-governing .strength {
    text-align: right;
    white-space: nowrap;
  }
  .sc-sure {
    grid-area: sure;
    min-height: 21rem;
  }
  .sc-beside {
    margin: 0.35rem 0 0;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  /* Of an earlier proposal: said by the page, and still legible. */
  .sc-sure[aria-busy='true'] vw-sureness {
    outline: 1px dotted var(--vw-soft);
    outline-offset: 4px;
  }
  .sc-paper-table {
    display: none;
  }
`;
