import { formatBoth, formatLength, type LengthUnit } from './length-format.ts';

// How the player’s sheet says lengths and changes: in both units, whole, and never apart from their unit.

/** `from 8.0 to 8.9 mm (0.315 to 0.350 in)`. */
export function fromTo(fromMm: number, toMm: number, first: LengthUnit): string {
  const second: LengthUnit = first === 'mm' ? 'thou' : 'mm';
  const range = (unit: LengthUnit): string => `${bare(fromMm, unit)} to ${formatLength(toMm, unit)}`;
  return `from ${range(first)} (${range(second)})`;
}

/** `8.0 → 8.9 mm (0.315 → 0.350 in)`. */
export function arrow(fromMm: number, toMm: number, first: LengthUnit): string {
  const second: LengthUnit = first === 'mm' ? 'thou' : 'mm';
  const range = (unit: LengthUnit): string => `${bare(fromMm, unit)} → ${formatLength(toMm, unit)}`;
  return `${range(first)} (${range(second)})`;
}

/** `8.9 mm (0.350 in)`. */
export const both = formatBoth;

/** `1.0 mm (0.039 in) lower`. */
export function shiftWords(mm: number, unit: LengthUnit): string {
  return `${both(Math.abs(mm), unit)} ${mm < 0 ? 'lower' : 'higher'}`;
}

/** `8.9`, without its unit: for a column that names it. */
export function bare(mm: number, unit: LengthUnit): string {
  return formatLength(mm, unit).replace(/ (mm|in)$/, '');
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
