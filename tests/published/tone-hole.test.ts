import { describe, expect, it } from 'vitest';
import {
  flangedEndLength,
  innerLength,
  matchingLength,
  publishedParallelFitOf,
  seriesLength,
} from './tone-hole-access.ts';
import { DIFFERENCE, LONG_ROUNDING, relative, ROUNDING } from '../acoustics/tolerances.ts';
import { published } from './published-values.ts';

const polynomial = (c: readonly number[], x: number): number => c.reduceRight((s, a) => s * x + a, 0);

/** A finite-element check of the newer set allows 0.01 b; the older one was fitted to no better than twice that. */
const TWO_FITS = 0.03;

const shape = (delta: number, chimney = 0.004) => ({ boreRadius: 0.01, holeRadius: 0.01 * delta, chimney });

describe('tone-hole corrections against published values', () => {
  const newer = published<{ coefficients: number[]; agreement: number }>(
    'lefebvre-scavone-2012/inner-length',
  );
  const older = published<{ coefficients: number[]; largestDelta: number }>('dubos-1999/inner-length');

  it('the inner length is the polynomial of Lefebvre & Scavone 2012', () => {
    for (let delta = 0.2; delta <= 0.98; delta += 0.02) {
      const wanted = 0.01 * delta * polynomial(newer.coefficients, delta);
      expect(relative(innerLength(shape(delta)), wanted)).toBeLessThan(ROUNDING);
    }
  });

  it('the newer and the older inner length agree within their errors for δ 0.2 to 0.85', () => {
    for (let delta = 0.2; delta <= older.largestDelta; delta += 0.01) {
      const mine = innerLength(shape(delta)) / (0.01 * delta);
      expect(Math.abs(mine - polynomial(older.coefficients, delta))).toBeLessThan(TWO_FITS);
    }
  });

  it('a small hole looks into the bore as into a flange', () => {
    const flanged = published<{ endCorrection: number }>('nomura-1960/flanged-end').endCorrection;
    const delta = 1e-4;
    expect(Math.abs(innerLength(shape(delta)) / (0.01 * delta) - flanged)).toBeLessThan(newer.agreement);
  });

  it('the matching length is that of Nederveen et al. 1998', () => {
    const { divisor, c } = published<{ divisor: number; c: number }>('nederveen-1998/matching-length');
    for (const delta of [0.1, 0.5, 0.9, 1]) {
      const wanted = ((0.01 * delta * delta) / divisor) * (1 + c * delta ** 3);
      expect(relative(matchingLength(shape(delta)), wanted)).toBeLessThan(ROUNDING);
    }
  });

  it('the series length is that of Lefebvre & Scavone 2012 for the open and the closed hole', () => {
    const ends = published<Record<'open' | 'closed', { level: number; rise: number; rate: number }>>(
      'lefebvre-scavone-2012/series-length',
    );
    for (const delta of [0.3, 0.7, 0.95]) {
      for (const chimney of [0.001, 0.004, 0.02]) {
        const at = shape(delta, chimney);
        const wanted = ({ level, rise, rate }: { level: number; rise: number; rate: number }): number =>
          -at.holeRadius * delta ** 2 * (level + rise * Math.tanh((rate * chimney) / at.holeRadius));
        expect(relative(seriesLength(at, 1), wanted(ends.open))).toBeLessThan(ROUNDING);
        expect(relative(seriesLength(at, 0), wanted(ends.closed))).toBeLessThan(ROUNDING);
      }
    }
  });
});

it('what ends a tall chimney does not matter to the series length', () => {
  const tall = shape(0.7, 0.1);
  expect(relative(seriesLength(tall, 1), seriesLength(tall, 0))).toBeLessThan(ROUNDING);
});

describe('the published fit for a parallel pad', () => {
  const fit = published<{ curtain: number; p: number; q: number; free: number; r: number }>(
    'dalmont-2001/parallel-pad',
  );
  const b = 0.01;

  it.each([
    [0.15, 0.1, 1.1],
    [0.3, 0.1, 1.1],
    [0.5, 0.05, 1.2],
    [1, 0.2, 1.5],
  ])('at h = %d b with rim %d b and pad %d b is the formula', (h, w, d) => {
    const end = publishedParallelFitOf({ b, w: w * b, d: d * b, h: h * b });
    const wanted = 1 / (fit.curtain * h ** fit.p * (h + 3 * w) ** fit.q + fit.free * (h / d) ** fit.r);
    expect(relative((end.length - flangedEndLength(b, w * b)) / b, wanted)).toBeLessThan(ROUNDING);
    expect(relative(end.noPadLength, flangedEndLength(b, w * b))).toBeLessThan(ROUNDING);
  });

  it('has the slope of its own curve', () => {
    for (const h of [0.05, 0.2, 0.6]) {
      const at = (x: number) => publishedParallelFitOf({ b, w: 0.001, d: 0.012, h: x * b });
      const step = 1e-5;
      const difference = (at(h + step).length - at(h - step).length) / (2 * step * b);
      expect(relative(at(h).slopes.centreHeight.length, difference)).toBeLessThan(DIFFERENCE);
    }
  });

  it('warns outside its range and for tilt, and not inside', () => {
    const inside = publishedParallelFitOf({ b, w: 0.001, d: 0.012, h: 0.004 });
    expect(inside.warnings).toEqual([]);
    expect(publishedParallelFitOf({ b, w: 0.001, d: 0.012, h: 0.001 }).warnings).toHaveLength(1);
    expect(publishedParallelFitOf({ b, w: 0.001, d: 0.0105, h: 0.004 }).warnings).toHaveLength(1);
    expect(publishedParallelFitOf({ b, w: 0.001, d: 0.012, h: 0.004, hinge: 0.02 }).warnings).toHaveLength(1);
  });

  it('is shut at no opening and no pad at a wide one', () => {
    expect(publishedParallelFitOf({ b, w: 0.001, d: 0.012, h: 0 }).length).toBe(Infinity);
    const wide = publishedParallelFitOf({ b, w: 0.001, d: 0.012, h: 100 });
    expect(relative(wide.length, wide.noPadLength)).toBeLessThan(LONG_ROUNDING);
  });
});
