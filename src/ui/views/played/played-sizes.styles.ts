import { css } from 'lit';

/** The played notes on a phone and on paper. */
export const playedSizes = css`
  @media (max-width: 560px) {
    .pl-page {
      padding: 0.5rem 0.5rem 2rem;
    }
    .pl-list .pl-target {
      display: none;
    }
    .pl-list th,
    .pl-list td {
      padding: 0.15rem 0.3rem;
    }
    .pl-list input {
      width: 4.5rem;
    }
    .pl-list .pl-takes td {
      padding-left: 0.5rem;
    }
    .pl-takes li span {
      flex-basis: 100%;
    }
    .pl-takes select {
      width: 8rem;
    }
    .pl-answer {
      min-height: 13rem;
    }
    .pl-needle {
      height: 4.5rem;
    }
    .pl-first {
      flex: 1 1 100%;
    }
  }
  @media print {
    .pl-answer {
      min-height: 0;
    }
    .pl-ways,
    .pl-needle,
    .pl-sure,
    .pl-hint,
    .pl-told,
    .pl-typed,
    .pl-list thead .pl-typed,
    .pl-count,
    .pl-takes select,
    .pl-list tr:not(.pl-logged, thead tr),
    .pl-small {
      display: none;
    }
    .pl-list tbody th,
    .pl-list td {
      padding-top: 0.15rem;
      line-height: 1.3;
    }
  }
`;
