import { css } from 'lit';

/** What every control shares: the box model, the focus ring, words only a screen reader hears. */
export const controlStyles = css`
  :host {
    display: block;
    font-variant-numeric: tabular-nums;
  }
  :host([hidden]) {
    display: none;
  }
  * {
    box-sizing: border-box;
  }
  button,
  input {
    font: inherit;
    color: inherit;
  }
  :focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
  @media (prefers-reduced-motion: reduce) {
    * {
      transition: none !important;
      animation: none !important;
    }
  }
  .heard {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
`;
