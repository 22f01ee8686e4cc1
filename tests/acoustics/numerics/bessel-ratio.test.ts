import { describe, expect, it } from 'vitest';
import { besselRatioAt } from '../../../src/acoustics/index.ts';
import { relativeComplex, ROUNDING } from '../tolerances.ts';

/** What the next order leaves: s²/8 at 1e-5, 1/2s at 1e9. */
const NEXT_ORDER = 1e-9;

/** J₁/J₀ at s·e^{−jπ/4} as the continued fraction taken far beyond need. */
function longContinuedFraction(s: number): [number, number] {
  const inverse = Math.SQRT1_2 / s;
  let re = 0;
  let im = 0;
  for (let n = Math.ceil(s) + 120; n >= 1; n--) {
    const dRe = 2 * n * inverse - re;
    const dIm = 2 * n * inverse - im;
    const norm = dRe * dRe + dIm * dIm;
    re = dRe / norm;
    im = -dIm / norm;
  }
  return [re, im];
}

describe('the Bessel ratio', () => {
  const out = new Float64Array(2);

  it('equals the long continued fraction from 1e-6 to 1000', () => {
    for (let s = 1e-6; s < 1000; s *= 1.05) {
      besselRatioAt(s, out);
      const [re, im] = longContinuedFraction(s);
      expect(relativeComplex(out[0], out[1], re, im)).toBeLessThan(ROUNDING);
    }
  });

  it('has no step where its two routes meet', () => {
    const below = new Float64Array(2);
    besselRatioAt(26 - 1e-12, below);
    besselRatioAt(26, out);
    expect(relativeComplex(below[0], below[1], out[0], out[1])).toBeLessThan(ROUNDING);
  });

  it('is half its argument where that is small, and −j where it is large', () => {
    besselRatioAt(1e-5, out);
    const half = 0.5e-5 * Math.SQRT1_2;
    expect(relativeComplex(out[0], out[1], half, -half)).toBeLessThan(NEXT_ORDER);
    besselRatioAt(1e9, out);
    expect(relativeComplex(out[0], out[1], 0, -1)).toBeLessThan(NEXT_ORDER);
  });
});
