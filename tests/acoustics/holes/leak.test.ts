import { describe, expect, it } from 'vitest';
import {
  addGaps,
  airAtTemperature,
  airLogSlopes,
  arcGap,
  CLOSED,
  DEFAULT_PAD_MODEL,
  gapStretches,
  holeAdmittanceAt,
  holeEnd,
  holeVariationsAt,
  leakAdmittanceAt,
  makeHoleTube,
  makeLeakSlit,
  makeSeatGap,
  radialLeakResistance,
  ringGap,
  tiltedGap,
  WIDEST_LEAK,
  type HoleEnd,
  type SeatGap,
} from '../../../src/acoustics/index.ts';
import { DIFFERENCE, LONG_ROUNDING, relative, relativeComplex, ROUNDING } from '../tolerances.ts';

const air = airAtTemperature(26.85);
const shape = { boreRadius: 0.02, holeRadius: 0.013, chimney: 0.004 };
const hole = { ...shape, rimThickness: 0.001 };
const PAD = 0.01475;

/** Slow enough and narrow enough that inertia is this small a share of friction. */
const VISCOUS = 1e-4;
/** How far the leak and the pad model may part where both hold: the mouth's constant is a mean over pads. */
const LEAK_AND_PAD = 0.035;
/** What a midpoint sum of 1600 places is good to. */
const FINE_SUM = 1e-5;

function admittance(gap: SeatGap, f: number, holeRadius = hole.holeRadius): Float64Array {
  const y = new Float64Array(6);
  leakAdmittanceAt(makeLeakSlit({ ...hole, holeRadius }, PAD, gap), f, air, y);
  return y;
}

function endOf(gap: SeatGap): HoleEnd {
  return { ...CLOSED, leak: makeLeakSlit(hole, PAD, gap) };
}

function shunt(end: HoleEnd, f: number): Float64Array {
  const y = new Float64Array(4);
  holeAdmittanceAt(makeHoleTube(shape, end, air), f, y, true);
  return y;
}

describe('a leak', () => {
  it('is the viscous leak of a radial slit where it is narrow and slow', () => {
    const gap = 5e-6;
    const y = admittance(ringGap(gap), 1);
    const slow = radialLeakResistance({ gap, inner: 0.013, outer: 0.014 }, air.viscosity);
    expect(relative(1 / y[0], slow)).toBeLessThan(VISCOUS);
  });

  it('ends at the pad’s edge where the pad is smaller than the rim', () => {
    const y = new Float64Array(6);
    leakAdmittanceAt(makeLeakSlit(hole, 0.0133, ringGap(5e-6)), 1, air, y);
    const slow = radialLeakResistance({ gap: 5e-6, inner: 0.013, outer: 0.0133 }, air.viscosity);
    expect(relative(1 / y[0], slow)).toBeLessThan(10 * VISCOUS);
  });

  it('grows with its gap, and lets power out only', () => {
    for (const f of [120, 400, 1500]) {
      let last = 0;
      for (let gap = 1e-6; gap < 1.2e-3; gap *= 1.3) {
        const y = admittance(ringGap(gap), f);
        expect(y[0]).toBeGreaterThan(0);
        expect(Math.hypot(y[0], y[1])).toBeGreaterThan(last);
        last = Math.hypot(y[0], y[1]);
      }
    }
  });

  it('goes as the cube of its gap while friction rules', () => {
    const [thin, double] = [2e-6, 4e-6].map((gap) => admittance(ringGap(gap), 5)[0]);
    expect(relative(double / thin, 8)).toBeLessThan(VISCOUS);
  });

  it.each([
    [0.013, 0.001, 0.01475],
    [0.004, 0.001, 0.0055],
    [0.021, 0.001, 0.02325],
    [0.00725, 0.001, 0.009],
    [0.013, 0.001, 0.0135],
  ])('meets the pad model of an open pad: hole %f, rim %f, pad %f m', (b, w, d) => {
    for (const share of [0.005, 0.01, 0.02, 0.04, 0.07, WIDEST_LEAK]) {
      const gap = share * b;
      const it = { boreRadius: 0.03, holeRadius: b, chimney: 0.004 };
      const pad = DEFAULT_PAD_MODEL.endOf({
        ...{ holeRadius: b, rimThickness: w, padRadius: d, padThickness: 0.004 },
        ...{ hingeDistance: Infinity, hingeHeight: 0, centreHeight: gap },
      });
      const leak = makeLeakSlit({ holeRadius: b, rimThickness: w }, d, ringGap(gap));
      for (const f of [150, 600]) {
        const [open, leaking] = [holeEnd(it, pad, gap), { ...CLOSED, leak }].map((end) => {
          const y = new Float64Array(4);
          holeAdmittanceAt(makeHoleTube(it, end, air), f, y, false);
          return y;
        });
        expect(relativeComplex(leaking[0], leaking[1], open[0], open[1])).toBeLessThan(LEAK_AND_PAD);
      }
    }
  });

  it('is the sum of its arcs', () => {
    const parts = [arcGap(4e-5, (2 * Math.PI) / 3, 'front'), arcGap(4e-5, (4 * Math.PI) / 3, 'back')];
    const [front, back] = parts.map((gap) => admittance(gap, 300));
    const together = admittance(addGaps(parts[0], parts[1]), 300);
    const ring = admittance(ringGap(4e-5), 300);
    for (let i = 0; i < 6; i++) {
      expect(relative(front[i] + back[i], ring[i])).toBeLessThan(ROUNDING);
      expect(relative(together[i], ring[i])).toBeLessThan(ROUNDING);
    }
  });

  it('sounds the same at the front as at the back', () => {
    const [front, back] = (['front', 'back'] as const).map((at) => admittance(arcGap(5e-5, 1, at), 250));
    expect(relative(front[0], back[0])).toBeLessThan(ROUNDING);
    const [up, down] = [tiltedGap(8e-5, 1e-5), tiltedGap(1e-5, 8e-5)].map((g) => admittance(g, 250));
    expect(relative(up[0], down[0])).toBeLessThan(LONG_ROUNDING);
  });

  it('of a cup out of parallel leaks 5/16 of the ring with its widest gap, while friction rules', () => {
    // Mean of ((1 + cos φ)/2)³ is 5/16.
    const tilted = admittance(tiltedGap(4e-6, 0), 1)[0];
    expect(relative(tilted / admittance(ringGap(4e-6), 1)[0], 5 / 16)).toBeLessThan(VISCOUS);
  });

  it('adds an arc to a hanging pad place by place', () => {
    const gap = addGaps(tiltedGap(6e-5, 2e-5), arcGap(3e-5, Math.PI / 4, 'front'));
    // A fine sum over the ring, as independent as it is slow.
    let re = 0;
    const n = 1600;
    for (let i = 0; i < n; i++) {
      const phi = (Math.PI * (i + 0.5)) / n;
      const g = 2e-5 + (4e-5 * (1 + Math.cos(phi))) / 2 + (phi < Math.PI / 8 ? 3e-5 : 0);
      re += admittance(ringGap(g), 300)[0] / n;
    }
    expect(relative(admittance(gap, 300)[0], re)).toBeLessThan(FINE_SUM);
  });

  it('covers the whole ring whatever its shape', () => {
    for (const gap of [
      ringGap(1e-5),
      tiltedGap(1e-5, 2e-5),
      addGaps(tiltedGap(1e-5, 2e-5), arcGap(1e-5, 2, 'back')),
    ]) {
      const width = gapStretches(gap).reduce((sum, s) => sum + s.width, 0);
      expect(relative(width, 2 * Math.PI)).toBeLessThan(ROUNDING);
    }
  });

  it('has the slopes of its central differences', () => {
    const gap = addGaps(tiltedGap(8e-5, 3e-5), arcGap(3e-5, 1, 'front'));
    const h = 1e-7;
    const y = admittance(gap, 300);
    const [up, down] = [h, -h].map((by) => admittance(gap, 300, hole.holeRadius + by));
    for (const i of [0, 1]) expect(relative(y[4 + i], (up[i] - down[i]) / (2 * h))).toBeLessThan(DIFFERENCE);
  });

  it('refuses gaps and arcs that are none', () => {
    expect(() => ringGap(-1e-5)).toThrow('invalid gap at the front: -0.01 mm; expected 0 mm or more');
    expect(() => ringGap(NaN)).toThrow(RangeError);
    expect(() => arcGap(1e-5, 7, 'front')).toThrow('expected 0 to 360 degrees');
    expect(() => makeSeatGap({ front: 0, back: Infinity, arcs: [] })).toThrow('gap at the back');
    expect(() => makeLeakSlit(hole, 0.01, ringGap(1e-5))).toThrow('invalid pad radius');
  });
});

describe('a closed hole that leaks', () => {
  it('is the closed hole where the gap is nothing, to the last digit', () => {
    expect(shunt(endOf(ringGap(0)), 400)).toEqual(shunt(CLOSED, 400));
    expect(shunt(endOf(ringGap(1e-12)), 400)).toEqual(shunt(CLOSED, 400));
    const tight = shunt(endOf(ringGap(2e-9)), 400);
    const closed = shunt(CLOSED, 400);
    expect(relativeComplex(tight[0], tight[1], closed[0], closed[1])).toBeLessThan(ROUNDING);
  });

  it('is passive, and takes more power the wider the gap while it is a leak', () => {
    for (const f of [120, 400, 1000]) {
      let last = shunt(CLOSED, f)[0];
      expect(last).toBeGreaterThan(0);
      for (const gap of [1e-5, 2.5e-5, 5e-5, 1e-4]) {
        const taken = shunt(endOf(ringGap(gap)), f)[0];
        expect(taken).toBeGreaterThan(last);
        last = taken;
      }
    }
  });

  it('has the slope of its central difference in frequency', () => {
    for (const gap of [ringGap(5e-5), tiltedGap(3e-4, 1e-4)]) {
      const [here, up, down] = [400, 400.01, 399.99].map((f) => shunt(endOf(gap), f));
      for (const i of [0, 1]) {
        expect(relative(here[2 + i], (up[i] - down[i]) / 0.02)).toBeLessThan(DIFFERENCE);
      }
    }
  });

  it('answers to radius, chimney and temperature as its central differences do', () => {
    const gap = tiltedGap(9e-5, 4e-5);
    const f = 400;
    const at = (by: { radius?: number; chimney?: number; degrees?: number }): Float64Array => {
      const moved = {
        ...hole,
        holeRadius: hole.holeRadius + (by.radius ?? 0),
        chimney: hole.chimney + (by.chimney ?? 0),
      };
      const y = new Float64Array(4);
      const end = { ...CLOSED, leak: makeLeakSlit(moved, PAD, gap) };
      const warm = airAtTemperature(26.85 + (by.degrees ?? 0));
      holeAdmittanceAt(makeHoleTube(moved, end, warm), f, y, false);
      return y;
    };
    const slopes = new Float64Array(12);
    const tube = makeHoleTube(shape, endOf(gap), air);
    holeVariationsAt(shape, tube, f, airLogSlopes(26.85), slopes, new Float64Array(4));
    const difference = (plus: Float64Array, minus: Float64Array, h: number, i: number): number =>
      (plus[i] - minus[i]) / (2 * h);
    for (const i of [0, 1]) {
      const h = 1e-7;
      const radius = difference(at({ radius: h }), at({ radius: -h }), h, i);
      const chimney = difference(at({ chimney: h }), at({ chimney: -h }), h, i);
      const warming = difference(at({ degrees: 0.01 }), at({ degrees: -0.01 }), 0.01, i);
      expect(relative(slopes[2 + i], chimney)).toBeLessThan(DIFFERENCE);
      expect(relative(slopes[4 + i], radius)).toBeLessThan(DIFFERENCE);
      expect(relative(slopes[6 + i], warming)).toBeLessThan(DIFFERENCE);
    }
  });
});
