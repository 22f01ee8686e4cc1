import { budgetParts, NAMED_PARTS } from '../../documents/budget-parts.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import type { BudgetReport, ReadingReport } from '../../documents/uncertainty-report.ts';
import type { ReasonUnit } from '../state/reasons.ts';
import { unbroken } from './note-names.ts';
import { other, plusMinusBoth, sign } from './plus-minus-words.ts';

/** One part of a ±. */
export interface PartView {
  readonly label: string;
  /** how well that reading is known: `known to ± 0.2 mm (0.008 in)`; empty where it is no reading */
  readonly known: string;
  /** what it does to the figure, with its unit */
  readonly size: string;
  /** length of its bar, 0…1 */
  readonly share: number;
  readonly kind: 'reading' | 'model';
}

/** Cents, or decibels, below which a ± has two digits after the point. */
export const SMALL = 1;

/** What a ± is made of, the greatest first. @param as what the figure is @param unit which lengths are told first */
export function makePartViews(budget: BudgetReport, as: ReasonUnit, unit: LengthUnit): PartView[] {
  const parts = budgetParts(budget, NAMED_PARTS);
  const most = Math.max(...parts.map(({ size }) => size));
  return parts.map(({ label, reading, size, kind }) => ({
    label,
    known: reading === null ? '' : unbroken(`known to ± ${readingWords(reading, unit)}`),
    size: unbroken(`± ${sizeWords(size, as, unit)}`),
    share: size / most,
    kind,
  }));
}

/** A ±, as many digits as it takes to be something. */
export function sizeWords(size: number, as: ReasonUnit, unit: LengthUnit): string {
  switch (as) {
    case 'mm': {
      const inUnit = (which: LengthUnit): string =>
        `${which === 'mm' ? digits(size, 2) : digits(size / 25.4, size < 0.1 ? 4 : 3)} ${sign(which)}`;
      return `${inUnit(unit)} (${inUnit(other(unit))})`;
    }
    case 'share':
      return `${digits(100 * size, size < 0.01 ? 2 : 1)} points`;
    case 'cents':
    case 'dB':
      return `${digits(size, size < SMALL ? 2 : 1)} ${as}`;
  }
}

function digits(size: number, count: number): string {
  const text = size.toFixed(count);
  return Number(text) === 0 && size > 0 ? String(Number(size.toPrecision(1))) : text;
}

/** How well a reading is known, in its own unit. */
export function readingWords({ plusMinus, unit: own }: ReadingReport, unit: LengthUnit): string {
  if (own === 'mm') return plusMinusBoth(plusMinus, unit);
  return `${Number(plusMinus.toPrecision(2))}${own === '' ? '' : ` ${own}`}`;
}
