import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airAtTemperature,
  CLOSED,
  DEFAULT_PAD_MODEL,
  holeAdmittanceAt,
  holeLength,
  makeHoleTube,
  matchingLength,
  seriesLength,
  ventShareOf,
  type PadOverHole,
} from '../../../src/acoustics/index.ts';
import { inviscid } from '../lossless.ts';
import { relative, relativeComplex, ROUNDING } from '../tolerances.ts';

/** (kt)² at 1 Hz and a chimney of millimetres is far below this. */
const LOW_FREQUENCY = 1e-6;
/** A pad fifty hole radii off: what it still adds. */
const HARDLY_A_PAD = 1e-3;
/** A hinge a thousand kilometres off: the tilt it leaves, with a table's own rounding. */
const FAR_HINGE = 1e-5;
const air = airAtTemperature(24);
const still = inviscid(air);
const shape = { boreRadius: 0.012, holeRadius: 0.008, chimney: 0.004 };
const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

function admittance(endLength: number, f: number, of = air): [number, number] {
  const out = new Float64Array(4);
  holeAdmittanceAt(makeHoleTube(shape, { endLength, ventShare: 0 }, of), f, out, false);
  return [out[0], out[1]];
}

describe('a tone hole', () => {
  it('open is at low frequency the inertance of its acoustic length', () => {
    const f = 1;
    const end = 0.006;
    const [, im] = admittance(end, f, still);
    const wanted =
      (-Math.PI * shape.holeRadius ** 2) / (2 * Math.PI * f * air.density * holeLength(shape, end));
    expect(relative(im, wanted)).toBeLessThan(LOW_FREQUENCY);
  });

  it('closed is at low frequency the compliance of its chimney’s air', () => {
    const f = 1;
    const [, im] = admittance(Infinity, f, still);
    const volume = Math.PI * shape.holeRadius ** 2 * (shape.chimney + matchingLength(shape));
    expect(relative(im, (2 * Math.PI * f * volume) / (air.density * air.soundSpeed ** 2))).toBeLessThan(
      LOW_FREQUENCY,
    );
  });

  it('closing its pad goes over into the closed hole without a jump', () => {
    for (const f of [100, 500, 1500]) {
      const [cRe, cIm] = admittance(Infinity, f);
      let last = Infinity;
      for (const end of [1e3, 1e5, 1e7, 1e9]) {
        const [re, im] = admittance(end, f);
        const apart = relativeComplex(re, im, cRe, cIm);
        // The lossless end's share falls as one over its length.
        expect(apart).toBeLessThan(Math.max(last / 50, 10 * ROUNDING));
        last = apart;
      }
    }
    expect(relative(seriesLength(shape, 1e-15), seriesLength(shape, 0))).toBeLessThan(ROUNDING);
  });

  it('has a vent share of one without a pad, none when shut, and falling as the end grows longer', () => {
    expect(ventShareOf(shape, 0.005, 0.005)).toBe(1);
    expect(ventShareOf(shape, Infinity, 0.005)).toBe(0);
    expect(CLOSED).toEqual({ endLength: Infinity, ventShare: 0 });
    fc.assert(
      fc.property(between(0.005, 10), between(1.0001, 10), (end, factor) => {
        const share = ventShareOf(shape, end, 0.005);
        expect(share).toBeGreaterThan(ventShareOf(shape, factor * end, 0.005));
        expect(share).toBeLessThanOrEqual(1);
        expect(share).toBeGreaterThan(0);
      }),
      { seed: 601, numRuns: 200 },
    );
  });
});

describe('the pad model in use', () => {
  const pads = fc
    .record({
      holeRadius: between(0.003, 0.03),
      rim: between(0.02, 0.2),
      overhang: between(1, 1.5),
      reach: between(1.05, 3),
      rod: between(0, 0.4),
    })
    .map((p): PadOverHole => ({
      holeRadius: p.holeRadius,
      rimThickness: p.rim * p.holeRadius,
      padRadius: p.overhang * (1 + p.rim) * p.holeRadius,
      padThickness: 0.004,
      hingeDistance: p.reach * p.overhang * (1 + p.rim) * p.holeRadius,
      hingeHeight: p.rod * p.holeRadius,
      centreHeight: 0,
    }));

  it('shortens the end as the pad rises, always', () => {
    fc.assert(
      fc.property(pads, between(0.01, 1), between(1.01, 2), (pad, h, factor) => {
        const at = (x: number) => DEFAULT_PAD_MODEL.endOf({ ...pad, centreHeight: x * pad.holeRadius });
        expect(at(h).length).toBeGreaterThan(at(factor * h).length);
        expect(at(h).slopes.centreHeight.length).toBeLessThan(0);
        expect(at(h).length).toBeGreaterThan(at(h).noPadLength);
      }),
      { seed: 602, numRuns: 200 },
    );
  });

  it('is a closed hole at no opening, and hardly a pad at all at a very wide one', () => {
    fc.assert(
      fc.property(pads, (pad) => {
        expect(DEFAULT_PAD_MODEL.endOf(pad).length).toBe(Infinity);
        const wide = DEFAULT_PAD_MODEL.endOf({
          ...pad,
          hingeDistance: Infinity,
          hingeHeight: 0,
          centreHeight: 50 * pad.holeRadius,
        });
        expect(relative(wide.length, wide.noPadLength)).toBeLessThan(HARDLY_A_PAD);
      }),
      { seed: 603, numRuns: 100 },
    );
  });

  it('takes a hinge far away for a parallel pad', () => {
    fc.assert(
      fc.property(pads, between(0.1, 0.8), (pad, h) => {
        const at = (hingeDistance: number) =>
          DEFAULT_PAD_MODEL.endOf({
            ...pad,
            hingeDistance,
            hingeHeight: 0,
            centreHeight: h * pad.holeRadius,
          });
        expect(relative(at(1e6).length, at(Infinity).length)).toBeLessThan(FAR_HINGE);
      }),
      { seed: 604, numRuns: 100 },
    );
  });
});
