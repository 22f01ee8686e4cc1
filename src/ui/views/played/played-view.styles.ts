import { css } from 'lit';

export const playedStyles = css`
  .pl-page {
    max-width: 62rem;
    margin: 0 auto;
    padding: 0.75rem 1rem 2rem;
  }
  .pl-answer {
    min-height: 15rem;
  }
  .pl-answer h1 {
    margin: 0;
    font-size: clamp(1.6rem, 1.1rem + 1.6vw, 2.3rem);
    line-height: 1.15;
    letter-spacing: -0.01em;
    text-wrap: balance;
  }
  /* Read from where the horn is played. */
  .pl-answer[data-listening] h1 {
    font-size: clamp(2.2rem, 1.2rem + 4vw, 4rem);
    line-height: 1.1;
    font-variant-numeric: tabular-nums;
  }
  .pl-standing {
    margin: 0.25rem 0 0.5rem;
    min-height: 1.5em;
    font-size: var(--vw-text-lead);
  }
  .pl-needle {
    height: 6.5rem;
    max-width: 40rem;
    background: var(--vw-well);
    border-radius: var(--vw-round);
  }
  .pl-needle svg {
    display: block;
    width: 100%;
    height: 100%;
  }
  .pl-close {
    fill: var(--vw-try-weak);
  }
  .pl-lean {
    fill: var(--vw-leather);
  }
  .pl-steady {
    fill: var(--vw-played);
  }
  .pl-mark {
    stroke: var(--vw-soft);
    stroke-width: 1.5;
  }
  .pl-needle text {
    fill: var(--vw-soft);
    font-size: 11px;
    text-anchor: middle;
  }
  .pl-tip {
    fill: var(--vw-ink);
  }
  .pl-sure {
    margin: 0.25rem 0 0;
    min-height: 1.4em;
    color: var(--vw-soft);
  }
  .pl-ways {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: var(--vw-space-2);
    margin: 0.75rem 0;
  }
  .pl-button,
  .pl-as select,
  .pl-takes select,
  .pl-small {
    min-height: var(--vw-touch);
    padding: 0 0.9rem;
    font: inherit;
    color: var(--vw-ink);
    background: var(--vw-sheet);
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
    cursor: pointer;
  }
  .pl-button:disabled {
    color: var(--vw-soft);
    border-color: var(--vw-edge);
    cursor: default;
  }
  .pl-first {
    min-width: 10rem;
    font-weight: 700;
    border: 2px solid var(--vw-try);
  }
  .pl-file {
    position: relative;
    display: inline-flex;
    align-items: center;
  }
  .pl-file input {
    position: absolute;
    inset: 0;
    width: 100%;
    opacity: 0;
    cursor: pointer;
  }
  .pl-as {
    display: grid;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .pl-button:focus-visible,
  .pl-file:focus-within,
  .pl-as select:focus-visible,
  .pl-small:focus-visible,
  .pl-takes select:focus-visible,
  .pl-list input:focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }
  .pl-promise,
  .pl-hint {
    flex-basis: 100%;
    margin: 0;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .pl-told {
    margin: 0 0 0.75rem;
    padding: 0.5rem 0.75rem;
    color: var(--vw-wrong);
    background: var(--vw-wrong-ground);
    border-radius: var(--vw-round);
  }
  .pl-told[hidden] {
    display: none;
  }
  .pl-told p {
    margin: 0 0 0.5rem;
  }
  .pl-told ul {
    max-height: 12rem;
    margin: 0 0 0.5rem;
    overflow: auto;
  }
  .pl-list table {
    width: 100%;
    margin-top: 0.5rem;
    border-collapse: collapse;
    background: var(--vw-sheet);
  }
  .pl-list th,
  .pl-list td {
    padding: 0.15rem 0.6rem;
    text-align: left;
    vertical-align: top;
    border-bottom: 1px solid var(--vw-edge);
  }
  .pl-list tbody th {
    padding-top: 0.875rem;
    line-height: 1.3;
  }
  .pl-list td {
    line-height: var(--vw-touch);
  }
  .pl-list thead th {
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .pl-target,
  .pl-cents span {
    color: var(--vw-soft);
    font-size: var(--vw-text-control);
  }
  .pl-cents {
    font-weight: 700;
    white-space: nowrap;
  }
  .pl-cents span {
    font-weight: 400;
  }
  .pl-list input {
    width: 6.5rem;
    min-height: var(--vw-touch);
    padding: 0 0.5rem;
    font: inherit;
    color: var(--vw-ink);
    background: var(--vw-sheet);
    border: 1px solid var(--vw-field);
    border-radius: var(--vw-round);
  }
  .pl-list input[aria-invalid='true'] {
    border: 2px solid var(--vw-wrong);
  }
  .pl-problem {
    margin: 0.2rem 0;
    max-width: 18rem;
    line-height: 1.3;
    font-size: var(--vw-text-aside);
    color: var(--vw-wrong);
  }
  .pl-takes select {
    width: 9.5rem;
  }
  .pl-takes td {
    padding: 0 0.6rem 0.4rem 1.5rem;
    background: var(--vw-well);
  }
  .pl-takes ul {
    margin: 0;
    padding: 0;
    list-style: none;
    line-height: 1.3;
  }
  .pl-takes li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.4rem;
    margin: 0.4rem 0;
  }
  .pl-takes li span {
    flex: 1 1 14rem;
    max-width: 22rem;
  }
  .pl-aside span {
    color: var(--vw-soft);
    text-decoration: line-through;
  }
  .pl-small,
  .pl-takes select {
    padding: 0 0.6rem;
    font-size: var(--vw-text-aside);
  }
`;
