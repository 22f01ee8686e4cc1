import { css } from 'lit';

export const playedNotesStyles = css`
  .sc-played {
    grid-area: played;
    min-width: 0;
    padding: 0.5rem 0.75rem 0.6rem;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
  }
  .sc-played p {
    margin: 0.2rem 0 0.4rem;
  }
  .sc-played a {
    color: var(--vw-try);
  }
  .sc-played-scroll {
    max-height: 26rem;
    overflow: auto;
  }
  .sc-played table {
    width: 100%;
    border-collapse: collapse;
  }
  .sc-played th,
  .sc-played td {
    padding: 0 0.5rem;
    text-align: left;
    font-weight: 400;
    font-size: var(--vw-text-control);
    border-bottom: 1px solid var(--vw-edge);
  }
  .sc-played td:nth-of-type(-n + 2) {
    white-space: nowrap;
  }
  .sc-played thead th {
    position: sticky;
    top: 0;
    z-index: 1;
    font-size: var(--vw-text-note);
    font-weight: 700;
    color: var(--vw-soft);
    background: var(--vw-sheet);
  }
  .sc-played .sc-left-head,
  .sc-played .sc-left {
    width: 9rem;
    text-align: center;
  }
  .sc-played tr.picked {
    background: var(--vw-try-weak);
  }
  .sc-played button {
    min-height: var(--vw-touch);
    padding: 0 0.3rem;
    font: inherit;
    font-weight: 700;
    color: var(--vw-ink);
    white-space: nowrap;
    background: none;
    border: 0;
    cursor: pointer;
  }
  .sc-played button:focus-visible,
  .sc-played a:focus-visible,
  .sc-played-scroll:focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: -3px;
  }
  .sc-played td.outside {
    font-weight: 700;
  }
  .sc-left span {
    position: relative;
    display: block;
    height: 0.75rem;
    background: linear-gradient(var(--vw-soft), var(--vw-soft)) center / 1.5px 100% no-repeat;
  }
  .sc-left i {
    position: absolute;
    top: 0.125rem;
    height: 0.5rem;
    background: var(--vw-leather);
  }
  .sc-left i.outside {
    top: 0;
    height: 0.75rem;
    background: var(--vw-played);
  }
  @media (max-width: 700px) {
    .sc-played th,
    .sc-played td {
      padding: 0 0.25rem;
    }
    .sc-played .sc-left-head,
    .sc-played .sc-left {
      display: none;
    }
  }
  @media print {
    .sc-played-scroll {
      max-height: none;
      overflow: visible;
    }
    .sc-played button {
      min-height: 0;
    }
    .sc-played:has(.vw-empty) {
      display: none;
    }
  }
`;
