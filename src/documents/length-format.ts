/** The units a bench reads openings in. */
export type LengthUnit = 'mm' | 'thou';

const MM_PER_INCH = 25.4;

/** A length in one unit, rounded as the bench reads it: a tenth of a millimetre or a thousandth of an inch. */
export function formatLength(mm: number, as: LengthUnit): string {
  return as === 'mm' ? `${digits(mm, 1)} mm` : `${digits(mm / MM_PER_INCH, 3)} in`;
}

/** A length in both units, the chosen one first: `0.310 in (7.9 mm)`. */
export function formatBoth(mm: number, first: LengthUnit): string {
  const second = first === 'mm' ? 'thou' : 'mm';
  return `${formatLength(mm, first)} (${formatLength(mm, second)})`;
}

/** A length as corks, pads and beds are told: hundredths of a millimetre or thousandths of an inch. */
export function formatFine(mm: number, as: LengthUnit): string {
  return as === 'mm' ? `${digits(mm, 2)} mm` : `${digits(mm / MM_PER_INCH, 3)} in`;
}

/** A length as a bare number on an axis: millimetres or thousandths of an inch. */
export function lengthOnAxis(mm: number, as: LengthUnit): number {
  return as === 'mm' ? mm : (mm / MM_PER_INCH) * 1000;
}

/** Far below anything shown, far above rounding: a half that was reached by two routes is written one way. */
const NUDGE = 1e-9;

/** So many digits after the point, halves away from zero, no minus in front of a zero. */
function digits(value: number, count: number): string {
  const text = (Math.abs(value) + NUDGE).toFixed(count);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}
