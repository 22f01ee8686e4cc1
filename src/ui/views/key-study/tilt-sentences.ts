import { ruleOfThumbParallel } from '../../../acoustics/index.ts';
import { formatBoth, formatLength } from '../../../documents/length-format.ts';
import type { StudyReport } from '../../state/study-report.ts';
import { percent, type Manner } from './opening-words.ts';

/** The front reading of a swung pad flatters it: what it is worth, and what the tilt takes. */
export function tiltSentence(
  { present, presentParallel }: StudyReport,
  { unit }: Pick<Manner, 'unit'>,
): string {
  if (present.frontMm === 0) return '';
  const lost = Math.round(100 * (presentParallel.ventShare - present.ventShare));
  return (
    `It swings: ${formatBoth(present.frontMm, unit)} at the front is worth ` +
    `${formatBoth(present.equivalentParallelMm, unit)} parallel; tilt costs ${lost} points there ` +
    `(${percent(present.ventShare)} vent share, not ${percent(presentParallel.ventShare)}).`
  );
}

/** Its stated error for usual keys. */
const RULE_PERCENT = 9;

/** The rule to carry in the head, worked through for this key as it stands. */
export function ruleSentence({ present, geometry }: StudyReport, { unit }: Manner): string {
  const byRule = ruleOfThumbParallel({
    centreHeight: present.centreMm,
    padRadius: geometry.padRadiusMm,
    hingeDistance: geometry.hingeMm,
    hingeHeight: geometry.hingeHeightMm,
  });
  return (
    'In the head: a swung pad vents like a parallel one open by its centre, less a sixth of ' +
    `(pad radius ÷ rod distance)² of it. Here ${formatLength(present.centreMm, unit)} becomes ` +
    `${formatLength(byRule, unit)} (solved: ${formatLength(present.equivalentParallelMm, unit)}); ` +
    `for usual keys good to ${RULE_PERCENT} %.`
  );
}
