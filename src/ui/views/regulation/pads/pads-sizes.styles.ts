import { css } from 'lit';

/** The same pages on a tablet, a phone and paper. */
export const padsSizeStyles = css`
  @media (max-width: 1100px) {
    .pd-page {
      grid-template-columns: minmax(0, 1fr);
    }
    .pd-fit {
      grid-template-areas: 'tabs' 'question' 'answer' 'drawing' 'stock' 'cups' 'order' 'caution';
    }
    .pd-change {
      grid-template-areas: 'tabs' 'question' 'answer' 'plan' 'keys' 'openings' 'notes' 'numbers';
    }
    .pd-head,
    .pd-row {
      grid-template-columns: 7rem repeat(3, 5.75rem) minmax(0, 1fr) 10.5rem;
      gap: 0 0.4rem;
      font-size: var(--vw-text-aside);
    }
    .pd-head {
      font-size: var(--vw-text-fine);
    }
    .pd-head :nth-last-child(-n + 2),
    .pd-none {
      display: none;
    }
    .pd-row > :not(.pd-bed, .pd-problem) {
      grid-row: 1 / span 3;
    }
    .pd-row > .pd-bed {
      grid-column: 6;
      min-height: 0;
      padding-top: 0.1rem;
    }
    .pd-cell input {
      padding-inline: 0.35rem;
    }
    .pd-bed::before {
      content: attr(data-label) ' ';
      font-size: var(--vw-text-fine);
      font-weight: 600;
    }
    .pd-bed:empty {
      display: none;
    }
  }

  @media (max-width: 700px) {
    .pd-page {
      padding-inline: 0.5rem;
      --vw-choice-size: 0.8125rem;
      --vw-choice-pad: 0.4rem;
    }
    .pd-head {
      display: none;
    }
    .pd-row {
      grid-template-columns: repeat(3, minmax(0, 1fr));
    }
    .pd-row > .pd-bed,
    .pd-row > :not(.pd-bed) {
      grid-row: auto;
      grid-column: auto;
    }
    .pd-row > [role='rowheader'],
    .pd-row > .pd-problem,
    .pd-row > .pd-take,
    .pd-row > .pd-why {
      grid-column: 1 / -1;
    }
    .pd-take {
      min-height: 0;
    }
    .pd-row > .pd-bed {
      white-space: normal;
    }
    .pd-bed::before {
      display: block;
    }
    .pd-cell::before {
      content: attr(data-label) ' ';
      font-size: var(--vw-text-fine);
      font-weight: 600;
    }
    .pd-openings li {
      grid-template-columns: 6.5rem minmax(0, 1fr) 7.5rem;
      font-size: var(--vw-text-note);
    }
    .pd-notes li {
      grid-template-columns: 6.5rem minmax(0, 1fr) 3rem 3rem;
      font-size: var(--vw-text-note);
    }
  }

  @media print {
    .pd-question,
    .pd-plan,
    .pd-keys,
    .pd-how,
    .pd-drawing {
      display: none;
    }
    .pd-page {
      display: block;
      padding: 0;
    }
    .pd-page > section,
    .pd-page > details {
      background: none;
      border: 0;
      padding-inline: 0;
      margin-top: 0.5rem;
    }
    .pd-stock > :not(summary) {
      display: none;
    }
    .pd-head,
    .pd-row {
      grid-template-columns: 7rem repeat(3, 4.25rem) minmax(0, 1fr) 3.5rem 4.75rem 4.75rem;
      font-size: var(--vw-text-fine);
      break-inside: avoid;
      padding-block: 0.1rem;
    }
    .pd-cell input {
      min-height: 0;
      padding: 0;
      border: 0;
      border-bottom: 1px solid var(--vw-edge);
      border-radius: 0;
    }
    .pd-key,
    .pd-take,
    .pd-bed {
      min-height: 0;
    }
    .pd-order {
      break-inside: avoid;
    }
    .pd-many {
      max-height: none;
      columns: 2;
    }
  }
`;
