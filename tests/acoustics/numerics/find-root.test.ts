import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findRoot, findThreshold } from '../../../src/acoustics/index.ts';

const TIGHT = 1e-12;
const BISECTED = 1e-9;

describe('the root search', () => {
  it('finds a planted root of a steep or flat curve', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0.01, max: 50, noNaN: true }),
        (root, steep) => {
          const outcome = findRoot(
            (x, out) => {
              out[0] = Math.tanh(steep * (x - root));
              out[1] = steep * (1 - out[0] ** 2);
            },
            0.5 * root,
            1.7 * root,
            TIGHT,
          );
          expect(outcome.found).toBe(true);
          expect(Math.abs(outcome.x / root - 1)).toBeLessThan(10 * TIGHT);
        },
      ),
      { seed: 301, numRuns: 300 },
    );
  });

  it('says so where the bracket holds no change of sign, and never throws', () => {
    const outcome = findRoot(
      (x, out) => {
        out[0] = 1 + x * x;
        out[1] = 2 * x;
      },
      -1,
      2,
      TIGHT,
    );
    expect(outcome).toMatchObject({ found: false, reason: expect.stringContaining('same sign') as string });
    const nan = findRoot((_, out) => out.fill(NaN), 0, 1, TIGHT);
    expect(nan.found).toBe(false);
  });

  it('finds the least value from which a condition holds, or null', () => {
    const at = findThreshold((x) => x >= 0.3, 0, 1, BISECTED)!;
    expect(at).toBeGreaterThanOrEqual(0.3);
    expect(at - 0.3).toBeLessThan(BISECTED);
    expect(findThreshold(() => true, 0.25, 1, BISECTED)).toBe(0.25);
    expect(findThreshold(() => false, 0, 1, BISECTED)).toBeNull();
  });
});
