import { formatBoth, formatLength, type LengthUnit } from './length-format.ts';
import { lengthBothWithPlusMinus } from './length-plus-minus.ts';

// How the player’s sheet says lengths and changes: in both units, whole, and never apart from their unit.

const MM_PER_INCH = 25.4;

/** Far below what any gauge reads: a length that is a whole tenth of a millimetre, or a whole thousandth of an inch. */
const WHOLE = 1e-6;

/**
 * A length as the sheet says it: as it was read where a gauge reads so, else to a tenth of a millimetre, so that
 * what reads alike in one unit reads alike in the other.
 */
export function asTold(mm: number): number {
  const isWhole = (count: number): boolean => Math.abs(count - Math.round(count)) < WHOLE;
  return isWhole(mm * 10) || isWhole((mm / MM_PER_INCH) * 1000) ? mm : Math.round(mm * 10) / 10;
}

/** `from 8.0 to 8.9 mm (0.315 to 0.350 in)`. */
export function fromTo(fromMm: number, toMm: number, first: LengthUnit): string {
  const second: LengthUnit = first === 'mm' ? 'thou' : 'mm';
  const range = (unit: LengthUnit): string => `${bare(fromMm, unit)} to ${formatLength(asTold(toMm), unit)}`;
  return `from ${range(first)} (${range(second)})`;
}

/** `8.0 → 8.9 mm (0.315 → 0.350 in)`. */
export function arrow(fromMm: number, toMm: number, first: LengthUnit): string {
  const second: LengthUnit = first === 'mm' ? 'thou' : 'mm';
  const range = (unit: LengthUnit): string => `${bare(fromMm, unit)} → ${formatLength(asTold(toMm), unit)}`;
  return `${range(first)} (${range(second)})`;
}

/** `8.9 mm (0.350 in)`. */
export function both(mm: number, first: LengthUnit): string {
  return formatBoth(asTold(mm), first);
}

/** `9.1 ± 0.3 mm (0.358 in)`; without its ± where there is none. */
export function bothWithPlusMinus(mm: number, plusMinusMm: number | null, first: LengthUnit): string {
  if (plusMinusMm === null || plusMinusMm === 0) return both(mm, first);
  return lengthBothWithPlusMinus(asTold(mm), plusMinusMm, first).replaceAll('\u00a0', ' ');
}

/** `1.0 mm (0.039 in) lower`. */
export function shiftWords(mm: number, unit: LengthUnit): string {
  return `${both(Math.abs(mm), unit)} ${mm < 0 ? 'lower' : 'higher'}`;
}

/** `8.9`, without its unit: for a column that names it. */
export function bare(mm: number, unit: LengthUnit): string {
  return formatLength(asTold(mm), unit).replace(/ (mm|in)$/, '');
}

/** `12.1 ± 0.8 cents`; a ± too small to show is left out. */
export function withPlusMinus(value: number, plusMinus: number, digits = 1): string {
  const spread = plusMinus.toFixed(digits);
  const size = Math.abs(value).toFixed(digits);
  return Number(spread) === 0 ? size : `${size} ± ${spread}`;
}

/** `+12.1`, `−0.4`; what rounds to nothing has no sign. */
export function signed(value: number, digits = 1): string {
  const size = Math.abs(value).toFixed(digits);
  if (Number(size) === 0) return size;
  return `${value < 0 ? '−' : '+'}${size}`;
}

/** `a`, `a and b`, `a, b and c`. */
export function inARow(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}

/** `one key`, `4 keys`. */
export function many(count: number, one: string, more = `${one}s`): string {
  return count === 1 ? `one ${one}` : `${count} ${more}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
);

/** `4 May 2026` of `2026-05-04`. */
export function dayWords(date: string): string {
  const [year, month, day] = date.split('-').map(Number);
  return `${day} ${MONTHS[month - 1]} ${year}`;
}
