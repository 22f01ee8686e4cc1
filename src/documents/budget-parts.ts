import type { BudgetReport, ReadingReport } from './uncertainty-report.ts';

/** A line of what a ± is made of. */
export interface BudgetPart {
  readonly label: string;
  /** > 0, in the answer's unit */
  readonly size: number;
  /** null where it is none, or several */
  readonly reading: ReadingReport | null;
  readonly kind: 'reading' | 'model';
}

/** So many parts have a line of their own on the screen; the others stand together. */
export const NAMED_PARTS = 5;

/**
 * What a ± is made of, the greatest first, the small ones last and together: the squares of the lines add up to the
 * square of the ±.
 *
 * @param named so many parts at most have a line of their own
 */
export function budgetParts(budget: BudgetReport, named = Infinity): BudgetPart[] {
  const models = [
    ['pad model', budget.padModel],
    ['model of the whole horn', budget.wholeHorn],
    ['what calibrating leaves open', budget.calibration],
  ] as const;
  const all = [
    ...budget.readings.map((reading): BudgetPart => {
      return { label: reading.label, size: Math.abs(reading.effect), reading, kind: 'reading' };
    }),
    ...models.map(([label, size]): BudgetPart => {
      return { label, size: Math.abs(size), reading: null, kind: 'model' };
    }),
  ]
    .filter(({ size }) => size > 0)
    .sort((a, b) => b.size - a.size);
  const others = all.slice(named);
  const size = Math.hypot(budget.others.effect, ...others.map((part) => part.size));
  if (size === 0) return all;
  const label = othersLabel(budget.others.count, others);
  return [...all.slice(0, named), { label, size, reading: null, kind: 'reading' }];
}

/** `others, 14 readings`, and the models that are among them by name. */
function othersLabel(unlisted: number, others: readonly BudgetPart[]): string {
  const models = others.filter(({ kind }) => kind === 'model').map(({ label }) => label);
  const count = unlisted + others.length - models.length;
  const readings = count === 0 ? [] : [count === 1 ? '1 reading' : `${count} readings`];
  return `others, ${[...readings, ...models].join(' and ')}`;
}
