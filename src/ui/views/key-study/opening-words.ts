import type { MeasuringPoint } from '../../../acoustics/index.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import { lengthBothWithPlusMinus, lengthWithPlusMinus } from '../../parts/plus-minus-words.ts';
import { formatBoth, formatLength } from '../../../documents/length-format.ts';
import type { PointReport } from '../../state/study-report.ts';

// How the key study says openings and shares.

/** How words give lengths: in which unit first, read where. */
export interface Manner {
  readonly unit: LengthUnit;
  readonly readAt: MeasuringPoint;
}

/** What is said of a difference inside its ±. */
export const NOT_SHOWN = 'no difference that can be shown';

export function openingMm(point: PointReport, at: MeasuringPoint): number {
  return { front: point.frontMm, centre: point.centreMm, back: point.backMm }[at];
}

/**
 * The opening of a point where the person reads it: `9.8 ± 0.3 mm (0.385 in) at the front`.
 *
 * @param frontPlusMinusMm null where it is not known
 */
export function openingWords(point: PointReport, manner: Manner, frontPlusMinusMm: number | null): string {
  const { unit, readAt } = manner;
  const mm = openingMm(point, readAt);
  const told =
    frontPlusMinusMm === null
      ? formatBoth(mm, unit)
      : lengthBothWithPlusMinus(mm, plusMinusThere(point, frontPlusMinusMm, readAt), unit);
  return `${told} at the ${readAt}`;
}

/** The same in one unit, as a figure that opens its reason. */
export function openingFigure(point: PointReport, manner: Manner, frontPlusMinusMm: number | null): string {
  const { unit, readAt } = manner;
  const mm = openingMm(point, readAt);
  return frontPlusMinusMm === null
    ? formatLength(mm, unit)
    : lengthWithPlusMinus(mm, plusMinusThere(point, frontPlusMinusMm, readAt), unit);
}

/** Heights rise in proportion to their distance from the rod, and so does what they may be off by. */
function plusMinusThere(point: PointReport, frontPlusMinusMm: number, at: MeasuringPoint): number {
  return point.frontMm === 0 ? frontPlusMinusMm : (frontPlusMinusMm * openingMm(point, at)) / point.frontMm;
}

/** `75 ± 1 %`: never less than a whole per cent, as it is written. */
export function shareWithPlusMinus(share: number, plusMinus: number): string {
  return `${Math.round(100 * share)} ± ${Math.max(1, Math.round(100 * plusMinus))} %`;
}

export function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}
