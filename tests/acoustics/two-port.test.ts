import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airAtTemperature,
  applyReactance,
  applyShunt,
  applyTwoPort,
  coneTwoPortAt,
  holeAdmittanceAt,
  makeConePiece,
  makeHoleTube,
  makeTwoPort,
  makeWaveState,
  openEndImpedanceAt,
  type TwoPort,
} from '../../src/acoustics/index.ts';
import { DIFFERENCE, LONG_ROUNDING, PASSIVE_ROUNDING, relativeComplex } from './tolerances.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const airs = between(10, 37).map((t) => airAtTemperature(t));
const cones = fc
  .tuple(between(0.001, 0.4), between(0.0005, 0.05), between(0.0005, 0.05), airs)
  .map(([length, r1, r2, air]) => makeConePiece(length, r1, r2, air));
const frequencies = between(20, 4000);
const holes = fc
  .record({
    boreRadius: between(0.003, 0.03),
    delta: between(0.05, 1),
    chimney: between(0.0005, 0.01),
    endRadii: fc.oneof(fc.constant(Infinity), between(0.5, 100)),
    air: airs,
  })
  .map(({ boreRadius, delta, chimney, endRadii, air }) => {
    const holeRadius = delta * boreRadius;
    const end = { endLength: endRadii * holeRadius, ventShare: endRadii === Infinity ? 0 : 0.5 };
    return makeHoleTube({ boreRadius, holeRadius, chimney }, end, air);
  });

/** AD − BC as re, im. */
function determinant(m: TwoPort): [number, number] {
  return [
    m[0] * m[6] - m[1] * m[7] - (m[2] * m[4] - m[3] * m[5]),
    m[0] * m[7] + m[1] * m[6] - (m[2] * m[5] + m[3] * m[4]),
  ];
}

/** AD and BC may be large and nearly cancel: rounding is a share of their size. */
function determinantSize(m: TwoPort): number {
  return 1 + Math.hypot(m[0], m[1]) * Math.hypot(m[6], m[7]);
}

describe('every two-port', () => {
  it('is reciprocal: a cone has determinant one', () => {
    fc.assert(
      fc.property(cones, frequencies, (piece, f) => {
        const m = makeTwoPort();
        coneTwoPortAt(piece, f, m, false);
        const [re, im] = determinant(m);
        expect(Math.hypot(re - 1, im) / determinantSize(m)).toBeLessThan(LONG_ROUNDING);
      }),
      { seed: 101, numRuns: 500 },
    );
  });

  it('is reciprocal: a hole with its series halves has determinant one', () => {
    fc.assert(
      fc.property(holes, frequencies, between(-1e3, 0), (tube, f, series) => {
        const y = new Float64Array(4);
        holeAdmittanceAt(tube, f, y, false);
        const m = makeTwoPort();
        for (const [column, state] of [
          [0, makeWaveState()],
          [1, makeWaveState()],
        ] as const) {
          state[2 * column] = 1;
          applyReactance(series, f, state, false);
          applyShunt(y, state, false);
          applyReactance(series, f, state, false);
          m[2 * column] = state[0];
          m[2 * column + 1] = state[1];
          m[4 + 2 * column] = state[2];
          m[5 + 2 * column] = state[3];
        }
        const [re, im] = determinant(m);
        expect(Math.hypot(re - 1, im) / determinantSize(m)).toBeLessThan(LONG_ROUNDING);
      }),
      { seed: 102, numRuns: 500 },
    );
  });

  it('is passive: a cone sends on no more power than it takes in', () => {
    fc.assert(
      fc.property(cones, frequencies, between(-3, 3), between(-3, 3), (piece, f, re, im) => {
        const m = makeTwoPort();
        coneTwoPortAt(piece, f, m, false);
        const state = makeWaveState();
        const z = (piece.air.density * piece.air.soundSpeed) / (Math.PI * piece.r2 ** 2);
        state[0] = z * re;
        state[1] = z * im;
        state[2] = 1;
        const out = state[0] * state[2] + state[1] * state[3];
        applyTwoPort(m, state, false);
        const into = state[0] * state[2] + state[1] * state[3];
        const size = Math.hypot(state[0], state[1]) * Math.hypot(state[2], state[3]);
        expect(into - out).toBeGreaterThan(-PASSIVE_ROUNDING * (size + Math.abs(out)));
      }),
      { seed: 103, numRuns: 500 },
    );
  });

  it('is passive: a hole, open or closed, takes power and gives none', () => {
    fc.assert(
      fc.property(holes, frequencies, (tube, f) => {
        const y = new Float64Array(4);
        holeAdmittanceAt(tube, f, y, false);
        expect(y[0]).toBeGreaterThan(-PASSIVE_ROUNDING * Math.hypot(y[0], y[1]));
      }),
      { seed: 104, numRuns: 500 },
    );
  });
});

describe('every slope in frequency', () => {
  /** Five-point central difference of a complex function. */
  const difference = (at: (f: number) => [number, number], f: number): [number, number] => {
    const h = 2e-4 * f;
    const [a, b, c, d] = [at(f - 2 * h), at(f - h), at(f + h), at(f + 2 * h)];
    const mix = (i: 0 | 1): number => (a[i] - 8 * b[i] + 8 * c[i] - d[i]) / (12 * h);
    return [mix(0), mix(1)];
  };

  it('of a cone is the central difference, in all of A, B, C, D', () => {
    fc.assert(
      fc.property(cones, frequencies, (piece, f) => {
        const m = makeTwoPort();
        coneTwoPortAt(piece, f, m, true);
        const other = makeTwoPort();
        for (const i of [0, 2, 4, 6]) {
          const [re, im] = difference((x) => {
            coneTwoPortAt(piece, x, other, false);
            return [other[i], other[i + 1]];
          }, f);
          const scale = Math.hypot(m[8 + i], m[9 + i]) + 1e-3 * (Math.hypot(m[i], m[i + 1]) / f);
          expect(Math.hypot(m[8 + i] - re, m[9 + i] - im) / scale).toBeLessThan(DIFFERENCE);
        }
      }),
      { seed: 105, numRuns: 300 },
    );
  });

  it('of a hole, open or closed, is the central difference', () => {
    fc.assert(
      fc.property(holes, frequencies, (tube, f) => {
        const y = new Float64Array(4);
        holeAdmittanceAt(tube, f, y, true);
        const other = new Float64Array(4);
        const [re, im] = difference((x) => {
          holeAdmittanceAt(tube, x, other, false);
          return [other[0], other[1]];
        }, f);
        expect(relativeComplex(re, im, y[2], y[3])).toBeLessThan(DIFFERENCE);
      }),
      { seed: 106, numRuns: 300 },
    );
  });

  it('of the open end is the central difference', () => {
    fc.assert(
      fc.property(between(0.002, 0.07), frequencies, airs, between(0, 0.02), (a, f, air, extra) => {
        fc.pre(((2 * Math.PI * f) / air.soundSpeed) * a < 3.5);
        const z = new Float64Array(4);
        openEndImpedanceAt(a, f, air, extra, z);
        const other = new Float64Array(4);
        const [re, im] = difference((x) => {
          openEndImpedanceAt(a, x, air, extra, other);
          return [other[0], other[1]];
        }, f);
        expect(relativeComplex(re, im, z[2], z[3])).toBeLessThan(DIFFERENCE);
      }),
      { seed: 107, numRuns: 300 },
    );
  });
});
