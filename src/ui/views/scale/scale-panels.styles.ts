import { css } from 'lit';

/** The panels under the scale's chart: the note in hand, how sure, what is left out. */
export const scalePanelStyles = css`
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
