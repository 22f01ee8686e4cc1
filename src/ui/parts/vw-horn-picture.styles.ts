import { css } from 'lit';

/** The horn's wall in brass, pads in leather, holes with the air that gets through them. */
export const hornPictureStyles = css`
  .room {
    overflow: auto;
    scrollbar-width: thin;
  }
  svg {
    display: block;
    margin-inline: auto;
    font-variant-numeric: tabular-nums;
    user-select: none;
  }
  .wall {
    fill: var(--vw-felt);
    stroke: var(--vw-ink);
    stroke-width: 1;
    stroke-linejoin: round;
  }
  .middle {
    stroke: var(--vw-soft);
    stroke-dasharray: 1 5;
    opacity: 0.7;
  }
  .joints {
    fill: none;
    stroke: var(--vw-soft);
    opacity: 0.45;
  }
  .leader {
    fill: none;
    stroke: var(--vw-soft);
    stroke-width: 1;
    opacity: 0.75;
  }
  .leader.chosen {
    stroke: var(--vw-try);
    stroke-width: 2;
    opacity: 1;
  }
  .vent {
    fill: var(--vw-ink);
  }
  .key {
    cursor: pointer;
    outline: none;
  }
  .pad {
    stroke: var(--vw-ink);
    stroke-width: 1;
    fill: var(--vw-sheet);
  }
  .pad.closed {
    fill: var(--vw-leather);
  }
  .hole {
    stroke: var(--vw-ink);
    stroke-width: 0.75;
    fill: var(--vw-well);
  }
  .level {
    fill: var(--vw-through);
  }
  .slot {
    fill: transparent;
  }
  .key:hover .slot {
    fill: var(--vw-try-weak);
  }
  .key[aria-checked='true'] .slot {
    fill: var(--vw-try);
  }
  .key[aria-checked='true'] .pad {
    stroke: var(--vw-try);
    stroke-width: 4;
  }
  .key:focus-visible .slot {
    stroke: var(--vw-ink);
    stroke-width: 3;
  }
  text {
    fill: var(--vw-ink);
    text-anchor: middle;
    pointer-events: none;
  }
  .number {
    font-size: 14px;
    font-weight: 700;
  }
  .name {
    font-size: 12px;
    letter-spacing: -0.02em;
  }
  .key[aria-checked='true'] text {
    fill: var(--vw-on-try);
  }
  .foot {
    display: flex;
    flex-wrap: wrap;
    justify-content: center;
    align-items: center;
    gap: 0.125rem 1.25rem;
    margin: 0.25rem 0 0;
    padding: 0 0.5rem;
    text-align: center;
    font-size: var(--vw-text-note);
    color: var(--vw-soft);
  }
  .bar {
    display: inline-block;
    height: 7px;
    margin-right: 0.4rem;
    border: solid var(--vw-ink);
    border-width: 0 2px 2px;
  }
  .sample {
    display: inline-block;
    width: 13px;
    height: 13px;
    margin-right: 0.3rem;
    border: 1px solid var(--vw-ink);
    border-radius: 50%;
    vertical-align: -2px;
    background: var(--vw-sheet);
  }
  .sample.closed {
    background: var(--vw-leather);
  }
  .sample.level {
    background: linear-gradient(to top, var(--vw-through) 60%, var(--vw-well) 60%);
  }
  @media print {
    .key[aria-checked='true'] .slot {
      fill: none;
    }
    .key[aria-checked='true'] text {
      fill: var(--vw-ink);
    }
    .wall {
      fill: none;
    }
  }
`;
