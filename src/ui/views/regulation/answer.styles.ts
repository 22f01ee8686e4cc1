import { css } from 'lit';
import { answerStyles as sharedStyles } from '../../parts/answer.styles.ts';

/** The answer of a page of regulation, and what it says below. */
export const answerStyles = css`
  ${sharedStyles}
  .rg-answer {
    min-height: 9.5rem;
  }
  .rg-standing {
    margin: 0.25rem 0 0;
    font-size: var(--vw-text-lead);
  }
  .rg-reason {
    margin: 0.2rem 0 0;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .rg-caution {
    grid-area: caution;
  }
  @media print {
    .rg-answer {
      min-height: 0;
      padding: 0;
    }
    .rg-caution {
      background: none;
      padding: 0;
    }
  }
`;
