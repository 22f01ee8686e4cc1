import { formatLength, type LengthUnit } from './length-format.ts';

// How a length is told with its ±.

const MM_PER_INCH = 25.4;

/** A length's ± as a bare number of the unit, never rounded to nothing where it is something. */
export function barePlusMinus(mm: number, unit: LengthUnit): string {
  const text = bare(formatLength(mm, unit));
  if (Number(text) !== 0 || mm === 0) return text;
  const finer = unit === 'mm' ? mm.toFixed(2) : (mm / MM_PER_INCH).toFixed(4);
  if (Number(finer) !== 0) return finer;
  return unit === 'mm' ? '<0.01' : '<0.0001';
}

/** `9.1 ± 0.3 mm`. */
export function lengthWithPlusMinus(mm: number, plusMinusMm: number, unit: LengthUnit): string {
  return `${bare(formatLength(mm, unit))}\u00a0±\u00a0${barePlusMinus(plusMinusMm, unit)}\u00a0${sign(unit)}`;
}

/** `9.1 ± 0.3 mm (0.357 in)`: the ± in the unit read first. */
export function lengthBothWithPlusMinus(mm: number, plusMinusMm: number, unit: LengthUnit): string {
  return `${lengthWithPlusMinus(mm, plusMinusMm, unit)} (${formatLength(mm, other(unit))})`;
}

/** `0.3 mm (0.011 in)`: a ± in both units. */
export function plusMinusBoth(mm: number, unit: LengthUnit): string {
  const second = other(unit);
  return `${barePlusMinus(mm, unit)}\u00a0${sign(unit)} (${barePlusMinus(mm, second)}\u00a0${sign(second)})`;
}

/** How a length's unit is written. */
export function sign(unit: LengthUnit): 'mm' | 'in' {
  return unit === 'mm' ? 'mm' : 'in';
}

/** The unit a length is told in second. */
export function other(unit: LengthUnit): LengthUnit {
  return unit === 'mm' ? 'thou' : 'mm';
}

function bare(text: string): string {
  return text.replace(/ (?:mm|in)$/, '');
}
