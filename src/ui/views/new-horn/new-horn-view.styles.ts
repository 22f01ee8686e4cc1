import { css } from 'lit';

/** What is told first, then the example with its picture. Laptop, tablet, phone, paper. */
export const newHornStyles = css`
  vw-new-horn {
    display: block;
  }
  .nh-page {
    display: grid;
    gap: var(--vw-space-3);
    max-width: 1500px;
    margin: 0 auto;
    padding: 0.75rem 0.75rem 1.5rem;
  }
  .nh-head {
    padding: 0 0.25rem;
  }
  .nh-head h1 {
    margin: 0;
    font-size: clamp(1.375rem, 1rem + 1.4vw, 2rem);
    line-height: 1.15;
    letter-spacing: -0.01em;
    text-wrap: balance;
  }
  .nh-head p {
    margin: 0.3rem 0 0;
    font-size: var(--vw-text-lead);
  }
  .nh-form,
  .nh-first {
    min-width: 0;
    padding: 0.75rem 1rem;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-edge);
    border-radius: var(--vw-round);
  }
  .nh-fields {
    display: grid;
    grid-template-columns: repeat(6, minmax(0, 1fr));
    gap: 0.35rem 1rem;
    margin: 0.6rem 0 0;
  }
  .nh-field label {
    display: block;
    font-size: var(--vw-text-aside);
    font-weight: 600;
  }
  .nh-field input {
    width: 100%;
    min-width: 0;
    min-height: var(--vw-touch);
    padding: 0 0.6rem;
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
    background: var(--vw-sheet);
    color: inherit;
    font: inherit;
    font-size: var(--vw-text-lead);
  }
  .nh-field input[aria-invalid='true'] {
    border: 2px solid var(--vw-wrong);
    background: var(--vw-wrong-ground);
  }
  .nh-hint,
  .nh-problem {
    margin: 0.1rem 0 0;
    min-height: 1.3em;
    font-size: var(--vw-text-note);
    line-height: 1.3;
    color: var(--vw-soft);
    overflow-wrap: anywhere;
  }
  .nh-problem {
    color: var(--vw-wrong);
    font-weight: 600;
  }
  .nh-go {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.25rem 0.9rem;
    margin: 0.5rem 0 0;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .nh-go button {
    min-height: 52px;
    padding: 0 1.5rem;
    border: 0;
    border-radius: var(--vw-round);
    background: var(--vw-try);
    color: var(--vw-on-try);
    font: inherit;
    font-size: var(--vw-text-lead);
    font-weight: 700;
    cursor: pointer;
  }
  .nh-go button:disabled {
    background: var(--vw-soft);
    cursor: default;
  }
  .nh-first h2 {
    margin: 0;
    font-size: var(--vw-text-head);
  }
  .nh-first p {
    margin: 0.3rem 0;
  }
  .nh-how {
    color: var(--vw-soft);
  }
  .nh-first .nh-note {
    margin-bottom: 0.6rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .nh-groups {
    columns: 3 300px;
    column-gap: var(--vw-space-5);
    margin-top: 0.75rem;
  }
  .nh-groups table {
    width: 100%;
    margin: 0 0 1rem;
    table-layout: fixed;
    border-collapse: collapse;
    break-inside: avoid;
    font-size: var(--vw-text-control);
  }
  .nh-groups caption {
    padding: 0.1rem 0;
    text-align: left;
    font-weight: 700;
  }
  .nh-groups caption span {
    font-size: var(--vw-text-note);
    font-weight: 400;
    color: var(--vw-found);
  }
  .nh-groups th,
  .nh-groups td {
    padding: 0.2rem 0.35rem;
    text-align: right;
    font-weight: 400;
    white-space: nowrap;
    border-bottom: 1px solid var(--vw-well);
  }
  .nh-groups thead th {
    font-size: var(--vw-text-note);
    line-height: 1.2;
    color: var(--vw-soft);
    vertical-align: top;
  }
  .nh-groups thead span {
    color: var(--vw-found);
  }
  .nh-groups th:first-child {
    width: 40%;
    text-align: left;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .nh-groups td {
    color: var(--vw-found);
  }
  .nh-groups .nh-chosen th,
  .nh-groups .nh-chosen td {
    background: var(--vw-try-weak);
  }
  .nh-page :focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: 2px;
  }

  @media (max-width: 1100px) {
    .nh-fields {
      grid-template-columns: repeat(3, minmax(0, 1fr));
    }
  }

  @media (max-width: 700px) {
    .nh-fields {
      grid-template-columns: repeat(2, minmax(0, 1fr));
      gap: 0.35rem 0.6rem;
    }
    .nh-page {
      padding-inline: 0.5rem;
    }
    .nh-form,
    .nh-first {
      padding-inline: 0.6rem;
    }
    .nh-form vw-choice {
      --vw-choice-size: 0.875rem;
      --vw-choice-pad: 0.45rem;
    }
    .nh-groups {
      columns: 1;
    }
  }

  @media print {
    .nh-form,
    .nh-head p,
    .nh-first .nh-note {
      display: none;
    }
    .nh-page {
      padding: 0.25rem 0 0;
      gap: var(--vw-space-1);
    }
    .nh-head h1 {
      font-size: var(--vw-text-large);
    }
    .nh-first {
      border: 0;
      padding: 0;
    }
    .nh-groups {
      columns: 2;
    }
    .nh-groups table {
      margin-bottom: 0.6rem;
      font-size: var(--vw-text-aside);
    }
    .nh-groups th:first-child {
      width: 38%;
    }
    .nh-groups .nh-chosen th,
    .nh-groups .nh-chosen td {
      background: none;
    }
    /* Room to write a reading above each example. */
    .nh-groups td {
      padding: 0.7rem 0.1rem 0;
      font-size: 0.625rem;
      border: 1px solid var(--vw-soft);
    }
  }
`;
