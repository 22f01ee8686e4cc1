import { css } from 'lit';

/** The library on a phone and on paper. */
export const librarySizes = css`
  @media (max-width: 700px) {
    .lb-page {
      padding-inline: 0.5rem;
    }
    .lb-ways .lb-search {
      flex-basis: 100%;
    }
    .lb-ways .lb-button {
      flex: 1 1 auto;
      padding-inline: 0.5rem;
    }
    .lb-horn {
      grid-template-columns: minmax(0, 1fr) auto;
    }
    .lb-open {
      grid-row: span 2;
      padding-left: 0.6rem;
    }
    .lb-when {
      padding-top: 0.3rem;
      font-size: var(--vw-text-aside);
    }
    .lb-more {
      margin-bottom: 0.3rem;
    }
    .lb-detail {
      padding-left: 0.6rem;
    }
    .lb-parts .lb-open,
    .lb-parts .lb-name {
      flex-basis: 100%;
    }
    .lb-reports,
    .lb-bench {
      padding-inline: 0.6rem;
    }
  }

  @media print {
    .lb-ways,
    .lb-status,
    .lb-bench,
    .lb-more,
    .lb-acts,
    .lb-parts .lb-button {
      display: none;
    }
    .lb-page {
      padding: 0.25rem 0 0;
    }
    .lb-list {
      border: 0;
    }
    .lb-horn {
      content-visibility: visible;
      grid-template-columns: minmax(0, 1fr) 9rem;
      break-inside: avoid;
    }
    .lb-open b {
      color: inherit;
    }
  }
`;
