import * as mathjs from 'mathjs';
import { describe, expect, it } from 'vitest';
import { findLeast, HUBER, SQUARES } from '../../../src/acoustics/numerics/damped-least-squares.ts';
import {
  inverseOfSquares,
  singularDirections,
  solveLeastSquares,
} from '../../../src/acoustics/numerics/linear-system.ts';
import { medianOf, robustScatter, unexplainedScatter } from '../../../src/acoustics/numerics/scatter.ts';
import { seededNormal } from '../seeded.ts';
import { LONG_ROUNDING, relative } from '../tolerances.ts';

const normal = seededNormal(11);
const rows = Array.from({ length: 9 }, () => [normal(), normal(), normal()]);
const wanted = rows.map(() => normal());

/** AᵀA by mathjs, another route and another package. */
const squares = (): number[][] =>
  mathjs.multiply(
    mathjs.transpose(rows.map((r) => [...r])),
    rows.map((r) => [...r]),
  ) as number[][];

describe('the linear systems', () => {
  it('solve least squares as the normal equations of another package do', () => {
    const right = mathjs.multiply(mathjs.transpose(rows.map((r) => [...r])), [...wanted]) as number[];
    const other = (mathjs.lusolve(squares(), right) as number[][]).map(([x]) => x);
    const ours = solveLeastSquares(rows, wanted);
    ours.forEach((x, j) => expect(relative(x, other[j])).toBeLessThan(LONG_ROUNDING));
  });

  it('invert AᵀA as another package does', () => {
    const other = mathjs.inv(squares());
    const ours = inverseOfSquares(rows);
    ours.flat().forEach((x, n) => expect(Math.abs(x - other.flat()[n])).toBeLessThan(LONG_ROUNDING));
  });

  it('have singular values whose squares are the eigenvalues of AᵀA', () => {
    const { values } = mathjs.eigs(squares());
    const eigenvalues = (values as number[]).sort((a, b) => b - a);
    singularDirections(rows).forEach(({ value, direction }, i) => {
      expect(relative(value ** 2, eigenvalues[i])).toBeLessThan(LONG_ROUNDING);
      expect(Math.abs(Math.hypot(...direction) - 1)).toBeLessThan(LONG_ROUNDING);
    });
  });
});

/** u = (y − e^{ax}) at five x: bent enough that plain steps from afar overshoot. */
function exponential(truth: number, wrongAt: number | null) {
  return ([a]: readonly number[]) => {
    const at = [0.5, 1, 1.5, 2, 2.5];
    const values = at.map((x, i) => Math.exp(truth * x) - Math.exp(a * x) + (i === wrongAt ? 40 : 0));
    return { values: values.map((v) => 100 * v), slopes: at.map((x) => [-100 * x * Math.exp(a * x)]) };
  };
}

const FINE = 1e-10;

describe('damped least squares', () => {
  it('finds what a bent law was made with, from afar', () => {
    const misfitsAt = exponential(1.3, null);
    const found = findLeast(
      misfitsAt,
      { x: [-3], misfits: misfitsAt([-3]) },
      { loss: SQUARES, lastStep: FINE },
    );
    expect(found.problem).toBeNull();
    // What is known beforehand, 0 ± 1, draws by less than a millionth of these misfits.
    expect(Math.abs(found.x[0] - 1.3)).toBeLessThan(1e-5);
  });

  it('is hardly moved by one wrong number under Huber’s loss, and is moved under squares', () => {
    const misfitsAt = exponential(1.3, 1);
    const start = { x: [1], misfits: misfitsAt([1]) };
    const robust = findLeast(misfitsAt, start, { loss: HUBER, lastStep: FINE });
    const plain = findLeast(misfitsAt, start, { loss: SQUARES, lastStep: FINE });
    expect(Math.abs(robust.x[0] - 1.3)).toBeLessThan(1e-3);
    expect(Math.abs(plain.x[0] - 1.3)).toBeGreaterThan(20 * Math.abs(robust.x[0] - 1.3));
  });

  it('says so where nowhere can be tried', () => {
    const misfitsAt = exponential(1.3, null);
    const found = findLeast(
      () => null,
      { x: [1], misfits: misfitsAt([1]) },
      { loss: SQUARES, lastStep: FINE },
    );
    expect(found.problem).toBe('no step from the best so far helps');
    expect(found.x).toEqual([1]);
  });

  it('stays with what is known where nothing was measured', () => {
    const none = { values: [], slopes: [] };
    const found = findLeast(() => none, { x: [0, 0], misfits: none }, { loss: SQUARES, lastStep: FINE });
    expect(found).toMatchObject({ x: [0, 0], problem: null });
  });
});

describe('scatter', () => {
  const draws = Array.from({ length: 4000 }, () => ({ value: 5 * normal(), plusMinus: 3 }));
  /** Of 4000 normal deviates: three standard errors of a standard deviation, and of one from the median. */
  const BY_SQUARES = 3 / Math.sqrt(2 * 4000);
  const BY_MEDIAN = (3 * 1.17) / Math.sqrt(4000);

  it('beyond what is stated is what numbers were made with', () => {
    const s = unexplainedScatter(draws, draws.length);
    expect(relative(Math.hypot(3, s), 5)).toBeLessThan(BY_SQUARES);
    expect(relative(Math.hypot(3, robustScatter(draws, draws.length)), 5)).toBeLessThan(BY_MEDIAN);
  });

  it('from the median stays with a third of the numbers spoilt', () => {
    const spoilt = draws.map((d, i) => (i % 3 === 0 ? { ...d, value: 500 } : d));
    // The middle of all is then where three quarters of the good ones are smaller: 1.1503 instead of 0.6745.
    const widened = (5 * 1.1503) / 0.6745;
    expect(relative(Math.hypot(3, robustScatter(spoilt, spoilt.length)), widened)).toBeLessThan(BY_MEDIAN);
    expect(unexplainedScatter(spoilt, spoilt.length)).toBeGreaterThan(200);
  });

  it('is none where numbers scatter less than stated', () => {
    const calm = draws.map(({ value }) => ({ value: value / 5, plusMinus: 3 }));
    expect([unexplainedScatter(calm, calm.length), robustScatter(calm, calm.length)]).toEqual([0, 0]);
  });

  it('takes the middle of numbers, or of the two in the middle', () => {
    expect([medianOf([3, 1, 2]), medianOf([4, 1, 3, 2])]).toEqual([2, 2.5]);
  });
});
