import { describe, expect, it } from 'vitest';
import type { Budget } from '../../src/acoustics/index.ts';
import { budgetParts } from '../../src/documents/budget-parts.ts';
import { plusMinusOf } from '../../src/documents/plus-minus.ts';
import { loadHorn } from '../../src/documents/to-acoustics.ts';
import { reportBudget } from '../../src/documents/uncertainty-report.ts';
import { ALTO, study } from '../ui/demo.ts';

/** Sums of squares of numbers as stored, taken in another order. */
const ROUNDING = 1e-12;

const read = loadHorn(ALTO);
if (!read.ok) throw new Error(read.issues[0].message);
const { budgets } = study('e', {}, { plusMinus: plusMinusOf(read.value), points: 2 });
const { horn } = read.value;

/** Every kind of answer a key's study has. */
const answers: readonly (readonly [string, Budget])[] = [
  ['the opening that is enough', budgets.diminishingReturn!],
  ['the opening', budgets.front],
  ['the vent share', budgets.ventShare],
  ...[...budgets.notes].map(([id, budget]) => [`the pitch of ${id}`, budget] as const),
  ...[...budgets.changes].map(([id, budget]) => [`the change of ${id}`, budget] as const),
];

describe.each(answers)('the parts of the ± of %s', (_, budget) => {
  const report = reportBudget(horn, budget, 1000);

  it.each([1, 3, 5, Infinity])('add up by their squares to the whole, %d of them named', (named) => {
    const parts = budgetParts(report, named);
    const sum = Math.hypot(...parts.map(({ size }) => size));
    expect(Math.abs(sum / report.plusMinus - 1)).toBeLessThan(ROUNDING);
    expect(parts.length).toBeLessThanOrEqual(named + 1);
  });

  it('leave no reading uncounted', () => {
    expect(report.readings.length + report.others.count).toBe(budget.readings.length);
  });

  it('come the greatest first, the others last', () => {
    const parts = budgetParts(report, 4);
    const named = parts.filter(({ label }) => !label.startsWith('others, ')).map(({ size }) => size);
    expect(named).toEqual([...named].sort((a, b) => b - a));
    const at = parts.findIndex(({ label }) => label.startsWith('others, '));
    expect([-1, parts.length - 1]).toContain(at);
  });
});

it('others are counted in words, models among them by name', () => {
  const nothing = { readings: [], padModel: 0, wholeHorn: 0, calibration: 0 };
  const label = (count: number, padModel: number): string | undefined =>
    budgetParts({ ...nothing, plusMinus: 1, others: { count, effect: count * 0.1 }, padModel }, 0)[0]?.label;
  expect(label(1, 0)).toBe('others, 1 reading');
  expect(label(12, 0.1)).toBe('others, 12 readings and pad model');
  expect(label(0, 0.1)).toBe('others, pad model');
  expect(label(0, 0)).toBeUndefined();
});
