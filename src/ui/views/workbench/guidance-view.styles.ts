import { css } from 'lit';

/** Where what guides a person stands; its place is kept before its code has come. */
export const guidanceStyles = css`
  @media print {
    vw-guidance {
      display: none;
    }
  }
`;
