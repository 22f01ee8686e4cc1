import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { endLengthOf, gapShareOf, shiftAt, type PadOverHole } from '../../datasets/pad-gap/plain.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

/** Any pad of the solved range on a hole of 1…20 mm radius, with or without a hinge and a body. */
const pads: fc.Arbitrary<PadOverHole> = fc
  .record({
    b: between(0.001, 0.02),
    w: between(0.03, 0.35),
    d: between(1.03, 1.5),
    t: between(0.1, 0.5),
    clear: fc.oneof(between(0.03, 0.3), between(0.3, 4), fc.constant(Infinity)),
    rod: between(-0.5, 1),
    h: between(Math.log(0.03), Math.log(2)),
    body: fc.option(between(0.2, 6), { nil: undefined }),
  })
  .map(({ b, w, d, t, clear, rod, h, body }) => ({
    holeRadius: b,
    rimThickness: b * w,
    padRadius: b * d,
    padThickness: b * t,
    hingeDistance: b * (d + clear),
    hingeHeight: b * rod,
    centreHeight: b * Math.exp(h),
    ...(body === undefined ? {} : { bodyBelow: b * body }),
  }));

/** Any finite positive numbers at all, sense or nonsense. */
const positive = fc.double({ min: 1e-9, max: 1e3, noNaN: true });
const anything: fc.Arbitrary<PadOverHole> = fc.record({
  holeRadius: positive,
  rimThickness: positive,
  padRadius: positive,
  padThickness: positive,
  hingeDistance: positive,
  hingeHeight: positive,
  centreHeight: positive,
  bodyBelow: positive,
});

const usual: PadOverHole = {
  holeRadius: 0.01,
  rimThickness: 0.001,
  padRadius: 0.012,
  padThickness: 0.0025,
  hingeDistance: 0.018,
  hingeHeight: 0.002,
  centreHeight: 0.004,
};

/** Central differences of doubles. */
const differenceTolerance = 1e-5;
/** A handful of operations on doubles. */
const rounding = 1e-9;

describe('the end length under a pad', () => {
  it('falls steadily as the pad rises, inside the range and out of it', () => {
    fc.assert(
      fc.property(pads, between(0.01, 0.5), (pad, more) => {
        for (const centreHeight of [pad.centreHeight, pad.centreHeight / 30, pad.centreHeight * 5]) {
          const here = endLengthOf({ ...pad, centreHeight });
          const higher = endLengthOf({ ...pad, centreHeight: centreHeight * (1 + more) });
          expect(higher.length).toBeLessThan(here.length);
          expect(here.slope).toBeLessThan(0);
          expect(here.length).toBeGreaterThan(here.noPadLength);
        }
      }),
      { seed: 1, numRuns: 1500 },
    );
  });

  it('has the slope of its own differences', () => {
    fc.assert(
      fc.property(pads, (pad) => {
        const step = 1e-5 * pad.centreHeight;
        const [low, high] = [-1, 1].map(
          (s) => endLengthOf({ ...pad, centreHeight: pad.centreHeight + s * step }).length,
        );
        const { slope, warnings } = endLengthOf(pad);
        fc.pre(!warnings.some((text) => text.includes('swing higher')));
        expect(Math.abs((high - low) / (2 * step) - slope)).toBeLessThan(
          differenceTolerance * (1 + Math.abs(slope)),
        );
      }),
      { seed: 2, numRuns: 500 },
    );
  });

  it('scales with the horn', () => {
    fc.assert(
      fc.property(pads, between(0.1, 10), (pad, s) => {
        const big = Object.fromEntries(
          Object.entries(pad).map(([k, v]) => [k, v * s]),
        ) as unknown as PadOverHole;
        const [small, large] = [endLengthOf(pad), endLengthOf(big)];
        expect(large.length / small.length / s).toBeCloseTo(1, 8);
        expect(large.slope / small.slope).toBeCloseTo(1, 6);
        expect(large.equivalentParallel / small.equivalentParallel / s).toBeCloseTo(1, 6);
      }),
      { seed: 3 },
    );
  });

  it('is that of a parallel pad at the equivalent opening', () => {
    fc.assert(
      fc.property(pads, (pad) => {
        const { length, equivalentParallel } = endLengthOf(pad);
        const parallel = endLengthOf({ ...pad, hingeDistance: Infinity, centreHeight: equivalentParallel });
        expect(Math.abs(parallel.length / length - 1)).toBeLessThan(rounding);
        expect(parallel.equivalentParallel).toBe(equivalentParallel);
      }),
      { seed: 4, numRuns: 500 },
    );
  });

  it('comes to the parallel pad as the rod moves away', () => {
    const parallel = endLengthOf({ ...usual, hingeDistance: Infinity }).length;
    const misses = [0.1, 1, 10].map((hingeDistance) =>
      Math.abs(endLengthOf({ ...usual, hingeDistance }).length / parallel - 1),
    );
    expect(misses[1]).toBeLessThan(misses[0] / 5);
    expect(misses[2]).toBeLessThan(1e-4);
    expect(endLengthOf({ ...usual, hingeDistance: 1e6 }).length).toBeCloseTo(parallel, 9);
  });

  it('comes to the open hole as the pad moves away', () => {
    const { length, noPadLength, slope, equivalentParallel } = endLengthOf({
      ...usual,
      centreHeight: Infinity,
    });
    expect(length).toBe(noPadLength);
    expect(slope).toBe(0);
    expect(equivalentParallel).toBe(Infinity);
    expect(endLengthOf({ ...usual, centreHeight: 1 }).length / noPadLength - 1).toBeLessThan(1e-4);
  });

  it('comes to the free chimney as the body moves away', () => {
    const free = endLengthOf(usual).length;
    const added = [0.05, 0.5, 5].map((bodyBelow) => endLengthOf({ ...usual, bodyBelow }).length - free);
    expect(added[1]).toBeLessThan(added[0] / 5);
    // A source's image below the body: b²/(8 D).
    expect(added[2] / (usual.holeRadius ** 2 / (8 * 5))).toBeGreaterThan(0.9);
    expect(added[2] / (usual.holeRadius ** 2 / (8 * 5))).toBeLessThan(1.2);
  });

  it('comes to the thin slit as the pad closes', () => {
    const parallel = { ...usual, hingeDistance: Infinity };
    const b = usual.holeRadius;
    const slit = (h: number): number => (b * b * Math.log(1.1)) / (2 * h);
    const ratios = [1e-5, 1e-6, 1e-7, 1e-9].map(
      (h) => endLengthOf({ ...parallel, centreHeight: h }).length / slit(h),
    );
    for (let i = 1; i < ratios.length; i++) expect(ratios[i]).toBeLessThan(ratios[i - 1]);
    expect(ratios[3]).toBeGreaterThan(1);
    expect(ratios[3]).toBeLessThan(1.002);
    expect(gapShareOf({ ...parallel, centreHeight: 1e-9 })).toBeCloseTo(slit(1e-9), 6);
  });

  it('never vents better tilted than parallel when the pad stays over the hole', () => {
    fc.assert(
      fc.property(
        between(1.06, 1.5),
        between(0.03, 0.35),
        between(0.06, 0.6),
        between(0.05, 0.8),
        (d, w, tilt, h) => {
          fc.pre(h > 1.1 * d * Math.sin(tilt));
          // The rod that keeps the face's centre above the hole's: no sideways shift at this opening.
          const b = 0.01;
          const rod = h / 2;
          const distance = (h * Math.sin(tilt)) / (2 * (1 - Math.cos(tilt)));
          fc.pre(distance > d + 0.03);
          const pad: PadOverHole = {
            ...usual,
            holeRadius: b,
            rimThickness: w * b,
            padRadius: d * b,
            hingeDistance: distance * b,
            hingeHeight: rod * b,
            centreHeight: h * b,
          };
          expect(Math.abs(shiftAt(distance, rod, d, h))).toBeLessThan(1e-9);
          const tilted = endLengthOf(pad).length;
          const parallel = endLengthOf({ ...pad, hingeDistance: Infinity }).length;
          // The fit's own noise where the tilt does next to nothing.
          expect(tilted).toBeGreaterThan(parallel * (1 - 3e-4));
        },
      ),
      { seed: 5, numRuns: 400 },
    );
  });

  it('needs a much wider front opening on a short hinge', () => {
    const frontFor = (hinge: number): number => {
      // Front opening at which the hole vents like a parallel pad 3 mm open.
      let [low, high] = [1e-4, 0.012];
      for (let k = 0; k < 60; k++) {
        const middle = (low + high) / 2;
        const answer = endLengthOf({ ...usual, hingeDistance: hinge, hingeHeight: 0, centreHeight: middle });
        if (answer.equivalentParallel < 0.003) low = middle;
        else high = middle;
      }
      return low * (1 + usual.padRadius / hinge);
    };
    const fronts = [0.1, 0.03, 0.018, 0.0135].map(frontFor);
    for (let i = 1; i < fronts.length; i++) expect(fronts[i]).toBeGreaterThan(fronts[i - 1]);
    expect(fronts[3]).toBeGreaterThan(0.0055);
  });
});

describe('outside the solved range', () => {
  it('never gives NaN and never throws', () => {
    fc.assert(
      fc.property(anything, (pad) => {
        for (const p of [
          pad,
          { ...pad, hingeHeight: -pad.hingeHeight },
          { ...pad, hingeDistance: Infinity },
        ]) {
          const { length, noPadLength, slope, equivalentParallel, warnings } = endLengthOf(p);
          for (const x of [length, noPadLength, slope, equivalentParallel, gapShareOf(p)])
            expect(x).not.toBeNaN();
          expect(length).toBeGreaterThan(0);
          expect(warnings.every((text) => text.endsWith('.'))).toBe(true);
        }
      }),
      { seed: 6, numRuns: 1500 },
    );
  });

  it.each([
    ['centreHeight', 0.0001],
    ['centreHeight', 0.025],
    ['padRadius', 0.0101],
    ['padRadius', 0.016],
    ['rimThickness', 0.0001],
    ['rimThickness', 0.005],
    ['padThickness', 0.0001],
    ['hingeHeight', -0.006],
    ['hingeHeight', 0.02],
    ['hingeDistance', 0.0121],
    ['bodyBelow', 0.001],
  ] as const)('says so: %s = %s', (key, value) => {
    expect(endLengthOf(usual).warnings).toEqual([]);
    const { warnings } = endLengthOf({ ...usual, hingeDistance: 0.03, [key]: value });
    expect(warnings.length).toBeGreaterThan(0);
    expect(warnings[0]).toContain(`${(value * 1e3).toFixed(Math.abs(value) < 0.01 ? 2 : 1)} mm`);
  });

  it('says so where the hinge cannot bring the pad', () => {
    const { warnings } = endLengthOf({ ...usual, hingeHeight: -0.004, centreHeight: 0.015 });
    expect(warnings.join()).toContain('swing');
  });

  it('joins on without a step at every border', () => {
    const borders: [keyof PadOverHole, number][] = [
      ['centreHeight', 0.0003],
      ['centreHeight', 0.00004],
      ['centreHeight', 0.02],
      ['padRadius', 0.0103],
      ['padRadius', 0.015],
      ['rimThickness', 0.0003],
      ['rimThickness', 0.0035],
      ['padThickness', 0.001],
      ['hingeHeight', -0.005],
      ['hingeHeight', 0.01],
      ['bodyBelow', 0.002],
    ];
    for (const [key, at] of borders) {
      const base = { ...usual, hingeDistance: 0.03, [key]: at };
      const below = endLengthOf({ ...base, [key]: at - 1e-9 }).length;
      const above = endLengthOf({ ...base, [key]: at + 1e-9 }).length;
      expect(Math.abs(above / below - 1)).toBeLessThan(1e-4);
    }
  });
});
