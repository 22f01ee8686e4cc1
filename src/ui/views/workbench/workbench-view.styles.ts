import { css } from 'lit';

/** The head of the page, which every view shares. */
export const workbenchStyles = css`
  .wb-top {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.35rem 1rem;
    padding: 0.125rem 1rem;
    background: var(--vw-ink);
    color: #fff;
  }
  .wb-top vw-choice {
    color: var(--vw-ink);
    --vw-soft: #c9d6d6;
  }
  .wb-mark {
    margin: 0;
    font-weight: 700;
    font-size: 1.125rem;
  }
  .wb-views {
    display: flex;
    align-self: stretch;
    margin: 0 auto 0 0.5rem;
  }
  .wb-views a {
    display: grid;
    place-items: center;
    min-height: var(--vw-touch);
    min-width: 5.5rem;
    padding: 0 1rem;
    color: #c9d6d6;
    text-decoration: none;
    border-bottom: 3px solid transparent;
    border-top: 3px solid transparent;
  }
  .wb-views a:hover {
    color: #fff;
  }
  .wb-views a[aria-current='page'] {
    color: #fff;
    font-weight: 700;
    border-bottom-color: #6fd0d6;
  }
  .wb-views a:focus-visible {
    outline: 3px solid #fff;
    outline-offset: -4px;
  }
  .wb-steps {
    display: flex;
    gap: 0.25rem;
  }
  .wb-steps button {
    width: var(--vw-touch);
    height: var(--vw-touch);
    font: inherit;
    font-size: 1.375rem;
    line-height: 1;
    color: #fff;
    background: none;
    border: 1px solid #7d9298;
    border-radius: var(--vw-round);
    cursor: pointer;
  }
  .wb-steps button:disabled {
    opacity: 0.4;
    cursor: default;
  }
  .wb-steps button:focus-visible {
    outline: 3px solid #fff;
    outline-offset: 1px;
  }
  .wb-alert {
    display: flex;
    align-items: center;
    gap: 1rem;
    padding: 0.25rem 1rem;
    background: var(--vw-wrong-ground);
    color: var(--vw-wrong);
  }
  .wb-alert[hidden] {
    display: none;
  }

  @media (max-width: 700px) {
    .wb-top {
      --vw-choice-size: 0.8125rem;
      --vw-choice-pad: 0.3rem;
      display: grid;
      grid-template-columns: minmax(0, 1fr) auto auto auto;
      padding: 0.125rem 0.5rem 0;
      gap: 0 0.35rem;
    }
    .wb-mark {
      font-size: 0.9375rem;
    }
    .wb-views {
      order: 1;
      grid-column: 1 / -1;
      margin: 0;
    }
    .wb-views a {
      flex: 1;
    }
  }

  @media print {
    .wb-top vw-choice,
    .wb-views,
    .wb-steps,
    .wb-alert {
      display: none;
    }
    .wb-top {
      background: none;
      color: var(--vw-ink);
      border-bottom: 2px solid var(--vw-ink);
    }
  }
`;
