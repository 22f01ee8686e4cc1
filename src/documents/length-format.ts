/** The units a bench reads openings in. */
export type LengthUnit = 'mm' | 'thou';

const MM_PER_INCH = 25.4;

/** A length in one unit, rounded as the bench reads it: a tenth of a millimetre or a thousandth of an inch. */
export function formatLength(mm: number, as: LengthUnit): string {
  return as === 'mm' ? `${plain(mm.toFixed(1))} mm` : `${plain((mm / MM_PER_INCH).toFixed(3))} in`;
}

/** A length in both units, the chosen one first: `0.310 in (7.9 mm)`. */
export function formatBoth(mm: number, first: LengthUnit): string {
  const second = first === 'mm' ? 'thou' : 'mm';
  return `${formatLength(mm, first)} (${formatLength(mm, second)})`;
}

/** A length as a bare number on an axis: millimetres or thousandths of an inch. */
export function lengthOnAxis(mm: number, as: LengthUnit): number {
  return as === 'mm' ? mm : (mm / MM_PER_INCH) * 1000;
}

/** No minus in front of a zero. */
function plain(digits: string): string {
  return Number(digits) === 0 ? digits.replace('-', '') : digits.replace('-', '−');
}
