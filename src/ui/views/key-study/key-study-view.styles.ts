import { css } from 'lit';
import { answerStyles } from '../../parts/answer.styles.ts';
import { planStyles } from './key-study-plan.styles.ts';
import { sureStyles } from './sure-panel.styles.ts';
import { tryStyles } from './try-panel.styles.ts';

/** The page of a key, which other pages take up: laptop first; the other sizes are in key-study-sizes.styles.ts. */
export const keyStudyStyles = css`
  ${answerStyles}
  ${planStyles}
  ${tryStyles}
  ${sureStyles}
`;
