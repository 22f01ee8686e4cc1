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
      grid-template-areas: 'tabs' 'question' 'plan' 'keys' 'answer' 'openings' 'notes' 'numbers';
    }
    .pd-head,
    .pd-row {
      grid-template-columns: 9rem repeat(3, 6.25rem) minmax(0, 1fr) 4rem;
      gap: 0 0.5rem;
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
    .pd-row > [role='rowheader'],
    .pd-take,
    .pd-why {
      grid-column: 1 / -1;
    }
    .pd-bed {
      grid-column: 1 / -1;
      min-height: 0;
    }
    .pd-cell::before,
    .pd-bed::before {
      content: attr(data-label) ' ';
      font-size: 0.75rem;
      font-weight: 600;
    }
    .pd-openings li {
      grid-template-columns: 6.5rem minmax(0, 1fr) 7.5rem;
      font-size: 0.8125rem;
    }
    .pd-notes li {
      grid-template-columns: 6.5rem minmax(0, 1fr) 3rem 3rem;
      font-size: 0.8125rem;
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
      border: 0;
      padding-inline: 0;
      margin-top: 0.5rem;
    }
    .pd-stock > :not(summary) {
      display: none;
    }
    .pd-head,
    .pd-row {
      grid-template-columns: 8.5rem repeat(3, 4.5rem) minmax(0, 1fr) 4rem;
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
    .pd-notes ul {
      max-height: none;
      columns: 2;
    }
  }
`;
