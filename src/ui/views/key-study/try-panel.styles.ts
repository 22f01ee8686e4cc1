import { css } from 'lit';

/** The proposed opening, the pad from the side, the curve. */
export const tryStyles = css`
  .ks-try {
    grid-area: try;
    padding: 0.4rem 0.75rem 0.5rem;
  }
  .ks-effect h2 {
    margin: 0.1rem 0 0.15rem;
    font-size: var(--vw-text-aside);
    font-weight: 600;
  }
  .ks-effect dl {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(186px, 1fr));
    gap: 0.1rem 0.9rem;
    margin: 0;
    font-size: var(--vw-text-control);
  }
  .ks-effect .ks-many {
    gap: 0 0.9rem;
    font-size: var(--vw-text-note);
  }
  .ks-effect dl > div {
    display: flex;
    justify-content: space-between;
    gap: var(--vw-space-2);
    border-bottom: 1px solid var(--vw-well);
    white-space: nowrap;
  }
  .ks-effect dd {
    margin: 0;
    font-weight: 700;
  }
  .ks-effect dd small {
    font-weight: 400;
    color: var(--vw-soft);
  }
  .ks-back {
    padding: 0 0.6rem;
    white-space: nowrap;
  }
  .ks-side {
    grid-area: side;
    padding: 0.25rem;
    min-height: 128px;
    display: grid;
  }
  .ks-side vw-pad-drawing {
    min-height: 0;
  }
  .ks-curve {
    grid-area: curve;
    position: relative;
    display: grid;
    grid-template-columns: auto 1fr;
    grid-template-rows: auto minmax(0, 1fr);
    align-items: center;
    padding: 0.35rem 0.35rem 0 0.6rem;
    height: clamp(388px, calc(100vh - 358px - var(--wb-path)), 640px);
  }
  .ks-linked .ks-curve {
    height: clamp(388px, calc(100vh - 406px - var(--wb-path)), 640px);
  }
  .ks-legend {
    margin: 0;
    justify-self: end;
    padding-right: 0.5rem;
    font-size: var(--vw-text-note);
    color: var(--vw-soft);
  }
  .ks-legend i {
    display: inline-block;
    width: 26px;
    margin: 0 0.2rem 0 0.7rem;
    vertical-align: middle;
    border-top: 2.5px solid var(--vw-ink);
  }
  .ks-legend i.dashed {
    border-top-style: dashed;
  }
  .ks-curve vw-chart {
    --vw-paper-height: 380px;
    grid-column: 1 / -1;
    display: block;
    align-self: stretch;
    min-width: 0;
    min-height: 0;
    overflow: hidden;
  }
`;
