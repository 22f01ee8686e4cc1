import { css } from 'lit';

/** What lies on the scale's chart: the picker of notes, what moves, the words of the note under the hand. */
export const scaleChartStyles = css`
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
`;
