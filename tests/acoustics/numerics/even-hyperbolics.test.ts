import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { epsilonSlope, evenHyperbolicsAt } from '../../../src/acoustics/numerics/even-hyperbolics.ts';
import { DIFFERENCE, relativeComplex, ROUNDING } from '../tolerances.ts';

/** σ and ε as their power series, taken far beyond need; good to |w| of about 30. */
function longSeries(re: number, im: number): [number, number, number, number] {
  let termRe = 1;
  let termIm = 0;
  const sum: [number, number, number, number] = [0, 0, 0, 0];
  for (let n = 0; n < 60; n++) {
    sum[0] += termRe;
    sum[1] += termIm;
    const next = (2 * n + 2) / ((2 * n + 2) * (2 * n + 3));
    sum[2] += termRe * next;
    sum[3] += termIm * next;
    const scale = 1 / ((2 * n + 2) * (2 * n + 3));
    [termRe, termIm] = [scale * (termRe * re - termIm * im), scale * (termRe * im + termIm * re)];
  }
  return sum;
}

describe('the even hyperbolics', () => {
  const out = new Float64Array(4);
  const size = fc.double({ min: -8, max: 1, noNaN: true }).map((p) => 10 ** p);
  const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });

  it('equal their long series on both sides of every change of route', () => {
    fc.assert(
      fc.property(size, angle, (r, phi) => {
        const re = r * Math.cos(phi);
        const im = r * Math.sin(phi);
        evenHyperbolicsAt(re, im, out);
        const [sRe, sIm, eRe, eIm] = longSeries(re, im);
        // ε near its zeros loses digits in any route: measured against its size at the origin too.
        expect(Math.hypot(out[0] - sRe, out[1] - sIm)).toBeLessThan(ROUNDING * (1 + Math.hypot(sRe, sIm)));
        expect(Math.hypot(out[2] - eRe, out[3] - eIm)).toBeLessThan(ROUNDING * (1 + Math.hypot(eRe, eIm)));
      }),
      { seed: 201, numRuns: 1000 },
    );
  });

  it('are sinh s/s and (cosh s − sinh s/s)/s² on the real axis, and one and a third at zero', () => {
    evenHyperbolicsAt(9, 0, out);
    expect(relativeComplex(out[0], out[1], Math.sinh(3) / 3, 0)).toBeLessThan(ROUNDING);
    expect(relativeComplex(out[2], out[3], (Math.cosh(3) - Math.sinh(3) / 3) / 9, 0)).toBeLessThan(ROUNDING);
    evenHyperbolicsAt(0, 0, out);
    expect([...out]).toEqual([1, 0, 1 / 3, 0]);
  });

  it('have the stated slope', () => {
    const slope = new Float64Array(2);
    const a = new Float64Array(4);
    const b = new Float64Array(4);
    for (const [re, im] of [
      [-0.01, 0.001],
      [-0.8, 0.02],
      [-2.4, 0.05],
      [-2.6, 0.05],
      [-9, 0.3],
    ]) {
      evenHyperbolicsAt(re, im, out);
      epsilonSlope(re, im, out, slope);
      const h = 1e-4;
      evenHyperbolicsAt(re + h, im, a);
      evenHyperbolicsAt(re - h, im, b);
      expect(
        relativeComplex((a[2] - b[2]) / (2 * h), (a[3] - b[3]) / (2 * h), slope[0], slope[1]),
      ).toBeLessThan(DIFFERENCE);
    }
  });
});
