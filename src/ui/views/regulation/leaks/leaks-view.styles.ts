import { css } from 'lit';

/** The page of leaks: the leak beside its picture, then the map. */
export const leaksStyles = css`
  .lk-page {
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: none;
    grid-template-areas: 'tabs' 'asked' 'answer' 'beside' 'played' 'fault' 'picture' 'map' 'table' 'foot';
  }
  .lk-page .ks-answer {
    min-height: 8.5rem;
  }
  .lk-played {
    grid-area: played;
    padding: 0.5rem 0.25rem 0;
    min-height: 5.5rem;
  }
  .lk-played h2 {
    font-size: var(--vw-text-lead);
  }
  .lk-played p {
    margin: 0.2rem 0 0;
  }
  .lk-fault {
    grid-area: fault;
    display: grid;
    grid-template-columns: minmax(0, 1.7fr) minmax(0, 1.1fr) minmax(0, 1fr);
    gap: var(--vw-space-2) var(--vw-space-5);
    align-content: start;
    min-height: 9.25rem;
    --vw-choice-size: 0.875rem;
    --vw-choice-pad: 0.45rem;
  }
  .lk-group h2 {
    margin-bottom: 0.25rem;
  }
  .lk-choices,
  .lk-head {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.4rem 1rem;
  }
  .lk-head {
    justify-content: space-between;
    margin-bottom: 0.35rem;
  }
  .lk-gap {
    display: grid;
    grid-template-columns: minmax(0, 11rem) minmax(0, 1fr);
    align-items: center;
    gap: var(--vw-space-3);
  }
  .lk-gap input[type='range'] {
    width: 100%;
    height: var(--vw-touch);
    accent-color: var(--vw-try);
  }
  .ks-page .lk-picture {
    grid-area: picture;
    display: flex;
    flex-direction: column;
    padding: 0.5rem 0.75rem;
    min-height: 360px;
  }
  .lk-scroll {
    flex: 1;
    display: flex;
    overflow-x: auto;
  }
  .lk-columns {
    --foot: 7.25rem;
    position: relative;
    flex: 1;
    display: flex;
    align-items: stretch;
    min-height: 300px;
  }
  .lk-columns button {
    flex: 1 0 0;
    min-width: 0;
    display: flex;
    flex-direction: column;
    padding: 1.25rem 0 0;
    font: inherit;
    color: var(--vw-ink);
    background: none;
    border: 0;
    cursor: pointer;
  }
  .lk-columns button:hover {
    background: var(--vw-try-weak);
  }
  .lk-columns button[aria-pressed='true'] .lk-note {
    background: var(--vw-try);
    color: var(--vw-on-try);
    font-weight: 700;
  }
  .ks-page .lk-columns button:focus-visible {
    outline-offset: -3px;
  }
  .lk-bar {
    position: relative;
    flex: 1;
    display: flex;
    flex-direction: column;
    justify-content: flex-end;
    align-items: center;
    border-bottom: 1px solid var(--vw-ink);
  }
  .lk-bar i {
    width: 78%;
    height: calc(100% * var(--share));
    background: var(--vw-found);
  }
  .lk-heard {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .lk-bar b {
    font-size: var(--vw-text-cell);
    font-weight: 600;
    letter-spacing: -0.04em;
    line-height: 1;
    padding-bottom: 2px;
  }
  .lk-note {
    order: 1;
    height: var(--foot);
    padding: 4px 0;
    align-self: stretch;
    writing-mode: vertical-rl;
    text-orientation: sideways;
    rotate: 180deg;
    display: flex;
    justify-content: flex-end;
    align-items: center;
    font-size: var(--vw-text-fine);
    line-height: 1;
    white-space: nowrap;
  }
  .lk-limit {
    position: absolute;
    inset-inline: 0;
    bottom: calc(var(--foot) + (100% - var(--foot) - 1.25rem) * var(--share));
    border-top: 2px dashed var(--vw-enough);
    pointer-events: none;
  }
  .lk-map {
    grid-area: map;
    min-width: 0;
  }
  .lk-map-room {
    min-height: 60rem;
  }
  .lk-map-room[aria-busy='true'] {
    opacity: 0.55;
  }

  @media (max-width: 1100px) {
    .lk-fault {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    }
    .lk-group:first-child {
      grid-column: 1 / -1;
    }
    .lk-columns button {
      flex: none;
      width: 26px;
    }
  }

  @media (max-width: 700px) {
    .lk-fault {
      grid-template-columns: minmax(0, 1fr);
    }
    .lk-columns button {
      width: 30px;
    }
  }

  @media print {
    .lk-columns button {
      flex: 1 0 0;
      width: auto;
    }
    .lk-heard {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
      white-space: nowrap;
    }
    .lk-bar b {
      font-size: 0.5rem;
    }
    .lk-fault,
    .lk-head vw-choice {
      display: none;
    }
    .lk-map-room {
      min-height: 0;
    }
  }
`;
