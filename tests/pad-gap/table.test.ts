import { describe, expect, it } from 'vitest';
import { counts, kinds, planOf } from '../../datasets/pad-gap/plan.ts';
import { solveRow } from '../../datasets/pad-gap/solver/row.ts';
import { readTable } from '../../datasets/pad-gap/table.ts';

const table = readTable();
/** Last printed digit of the table, and what another processor's tanh and atan may change. */
const printedDigit = 2e-5;

describe('the pad-gap table', () => {
  it('holds rows of every kind, each one of the plan', () => {
    for (const kind of kinds) {
      const planned = new Set(
        planOf(kind).map((r) => [r.rim, r.pad, r.thick, r.height, r.hinge, r.rod, r.body].join()),
      );
      const rows = table.filter((row) => row.kind === kind);
      expect(rows.length).toBeGreaterThan(counts[kind] / 4);
      for (const r of rows) {
        expect(planned.has([r.rim, r.pad, r.thick, r.height, r.hinge, r.rod, r.body].join())).toBe(true);
      }
    }
  });

  it('states an error of at most half a per cent for parallel rows and one per cent for hinged', () => {
    for (const { length, error, hinge } of table) {
      expect(error).toBeGreaterThan(0);
      expect(error / length).toBeLessThan(hinge === Infinity ? 0.005 : 0.01);
    }
  });

  it.each(kinds)('is reproduced by computing a %s row again', (kind) => {
    const rows = table.filter((row) => row.kind === kind);
    const row = rows[Math.floor(rows.length / 2)];
    const again = solveRow(row);
    expect(Math.abs((again?.length ?? NaN) / row.length - 1)).toBeLessThan(printedDigit);
    expect(Math.abs((again?.error ?? NaN) - row.error)).toBeLessThan(printedDigit * row.length);
  });

  it('never has a pad that makes the hole shorter than no pad', () => {
    const least = Math.min(...table.filter((row) => row.kind === 'open').map((row) => row.length));
    for (const row of table) expect(row.length).toBeGreaterThanOrEqual(least - row.error);
  });
});
