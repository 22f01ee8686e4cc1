import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  gapFrictionAt,
  radialLeakResistance as leakOf,
} from '../../src/acoustics/holes/pad-gap/gap-viscosity.ts';
import { endLengthOf, gapShareOf, type PadOverHole } from '../../datasets/pad-gap/plain.ts';

const air = { density: 1.1769, viscosity: 1.846e-5 };
/** K itself, and what follows from it: the impedance of a ring-shaped slit, the extra length of a gap. */
const friction = new Float64Array(4);
const gapViscosityFactor = (frequency: number, gap: number, gas: typeof air) => {
  gapFrictionAt(frequency, gap, gas, friction);
  return { re: 1 + friction[0], im: friction[1] };
};
interface Slit {
  gap: number;
  inner: number;
  outer: number;
}
const radialGapImpedance = (frequency: number, slit: Slit, gas: typeof air) => {
  const { re, im } = gapViscosityFactor(frequency, slit.gap, gas);
  const scale = (frequency * gas.density * Math.log(slit.outer / slit.inner)) / slit.gap;
  return { re: -scale * im, im: scale * re };
};
const radialLeakResistance = (slit: Slit, gas: typeof air) => leakOf(slit, gas.viscosity);
const extraGapLength = (share: number, at: { frequency: number; gap: number; air: typeof air }) => {
  const { re, im } = gapViscosityFactor(at.frequency, at.gap, at.air);
  return { re: share * (re - 1), im: share * im };
};
const frequencies = fc.double({ min: 1, max: 5000, noNaN: true });
const gaps = fc.double({ min: 1e-6, max: 0.02, noNaN: true });

/** Rounding of a few operations on doubles, with the digits the closed form loses where the series takes over. */
const rounding = 1e-9;

describe('friction in a thin gap', () => {
  it('vanishes in a wide gap', () => {
    const { re, im } = gapViscosityFactor(1000, 1, air);
    expect(re).toBeCloseTo(1, 3);
    expect(im).toBeCloseTo(0, 3);
  });

  it('turns a slow gap into the radial leak', () => {
    const slit = { gap: 5e-5, inner: 0.01, outer: 0.012 };
    const { re, im } = radialGapImpedance(1e-3, slit, air);
    expect(re / radialLeakResistance(slit, air)).toBeCloseTo(1, 9);
    expect(im).toBeGreaterThan(0);
    // Six fifths of the frictionless inertia remain at slow flow: the parabola's momentum.
    const inertia = (air.density * Math.log(1.2)) / (2 * Math.PI * slit.gap);
    expect(im / (2 * Math.PI * 1e-3 * inertia)).toBeCloseTo(6 / 5, 6);
  });

  it('has no seam where the series takes over', () => {
    const seam = (0.08 * 2) / Math.SQRT2 / Math.sqrt((Math.PI * 500 * air.density) / air.viscosity);
    const below = gapViscosityFactor(500, seam * (1 - 1e-12), air);
    const above = gapViscosityFactor(500, seam * (1 + 1e-12), air);
    expect(Math.abs(below.re / above.re - 1)).toBeLessThan(rounding);
    expect(Math.abs(below.im / above.im - 1)).toBeLessThan(rounding);
  });

  it('always resists, and never makes the gap lighter', () => {
    fc.assert(
      fc.property(frequencies, gaps, (frequency, gap) => {
        const { re, im } = gapViscosityFactor(frequency, gap, air);
        expect(re).toBeGreaterThanOrEqual(1);
        expect(im).toBeLessThan(0);
        expect(radialGapImpedance(frequency, { gap, inner: 0.01, outer: 0.012 }, air).re).toBeGreaterThan(0);
      }),
      { seed: 11 },
    );
  });

  it('has the slope of its own differences', () => {
    for (const gap of [1e-6, 1e-5, 1e-4, 1e-3, 1e-2]) {
      const at = (by: number) => gapViscosityFactor(300, gap * Math.exp(by), air);
      const [up, down] = [at(1e-5), at(-1e-5)];
      gapFrictionAt(300, gap, air, friction);
      const size = Math.hypot(friction[2], friction[3]);
      expect(
        Math.hypot((up.re - down.re) / 2e-5 - friction[2], (up.im - down.im) / 2e-5 - friction[3]) / size,
      ).toBeLessThan(1e-5);
    }
  });

  it('grows as the gap closes', () => {
    fc.assert(
      fc.property(frequencies, gaps, (frequency, gap) => {
        const here = gapViscosityFactor(frequency, gap, air);
        const closer = gapViscosityFactor(frequency, gap * 0.9, air);
        expect(Math.hypot(closer.re, closer.im)).toBeGreaterThan(Math.hypot(here.re, here.im));
      }),
      { seed: 12 },
    );
  });

  it('leads a nearly closed pad into the radial leak', () => {
    const frequency = 50;
    const leakRatio = (centreHeight: number): number => {
      const pad: PadOverHole = {
        holeRadius: 0.01,
        rimThickness: 0.001,
        padRadius: 0.012,
        padThickness: 0.003,
        hingeDistance: Infinity,
        hingeHeight: 0,
        centreHeight,
      };
      // The whole resistance of the hole: what friction adds to the gap's share of the end length.
      const extra = extraGapLength(gapShareOf(pad), { frequency, gap: centreHeight, air });
      const resistance =
        (-2 * Math.PI * frequency * air.density * extra.im) / (Math.PI * pad.holeRadius ** 2);
      return resistance / radialLeakResistance({ gap: centreHeight, inner: 0.01, outer: 0.011 }, air);
    };
    expect(leakRatio(2e-6)).toBeCloseTo(1, 6);
  });

  it('takes over the whole end length as the pad closes', () => {
    const share = (centreHeight: number): number => {
      const pad: PadOverHole = {
        holeRadius: 0.01,
        rimThickness: 0.002,
        padRadius: 0.012,
        padThickness: 0.003,
        hingeDistance: Infinity,
        hingeHeight: 0,
        centreHeight,
      };
      return gapShareOf(pad) / endLengthOf(pad).length;
    };
    const shares = [2e-3, 2e-4, 2e-5, 2e-6, 2e-8].map(share);
    for (let i = 1; i < shares.length; i++) expect(shares[i]).toBeGreaterThan(shares[i - 1]);
    expect(shares[4]).toBeGreaterThan(0.999);
    expect(shares[4]).toBeLessThan(1);
  });
});
