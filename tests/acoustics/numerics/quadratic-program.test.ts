import { describe, expect, it } from 'vitest';
import { leastWithin, type LinearLimit } from '../../../src/acoustics/numerics/quadratic-program.ts';
import { seededNormal } from '../seeded.ts';
import { LONG_ROUNDING } from '../tolerances.ts';

const dot = ({ terms }: LinearLimit, x: Float64Array): number =>
  terms.reduce((sum, [v, factor]) => sum + factor * x[v], 0);

describe('the least of a quadratic within limits', () => {
  it('keeps the conditions for a least value on random questions', () => {
    const draw = seededNormal(20);
    for (let question = 0; question < 40; question++) {
      const n = 1 + (question % 7);
      const root = Array.from({ length: n }, () => Float64Array.from({ length: n }, draw));
      const hessian = root.map((_, i) =>
        Float64Array.from(
          { length: n },
          (_, j) => root.reduce((sum, row) => sum + row[i] * row[j], 0) + (i === j ? 0.1 : 0),
        ),
      );
      const gradient = Float64Array.from({ length: n }, () => 3 * draw());
      const limits = Array.from({ length: 2 * n }, () => ({
        terms: gradient.reduce<[number, number][]>((terms, _, v) => [...terms, [v, draw()]], []),
        least: -Math.abs(draw()),
      }));
      const outcome = leastWithin(hessian, gradient, limits);
      if (!outcome.found) throw new Error('nought keeps every limit, so there is a least');
      const { x, multipliers } = outcome;
      limits.forEach((limit, j) => {
        const room = dot(limit, x) - limit.least;
        expect(room).toBeGreaterThan(-LONG_ROUNDING);
        expect(multipliers[j]).toBeGreaterThanOrEqual(0);
        expect(Math.abs(multipliers[j] * room)).toBeLessThan(LONG_ROUNDING);
      });
      for (let i = 0; i < n; i++) {
        const slope = hessian[i].reduce((sum, h, j) => sum + h * x[j], gradient[i]);
        const held = limits.reduce((sum, { terms }, j) => sum + multipliers[j] * terms[i][1], 0);
        expect(Math.abs(slope - held)).toBeLessThan(LONG_ROUNDING);
      }
    }
  });

  it('is not found where limits exclude each other, or there is no least', () => {
    const limits = [
      { terms: [[0, 1] as const], least: 2 },
      { terms: [[0, -1] as const], least: -1 },
    ];
    expect(leastWithin([Float64Array.of(1)], Float64Array.of(0), limits).found).toBe(false);
    expect(leastWithin([Float64Array.of(-1)], Float64Array.of(0), []).found).toBe(false);
  });

  it('of nothing is nothing', () => {
    expect(leastWithin([], new Float64Array(0), [])).toMatchObject({ found: true });
  });
});
