import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  largestOpening,
  makePadPose,
  poseAtAngle,
  WIDEST_SWING,
  type Hinge,
  type MeasuringPoint,
} from '../../../src/acoustics/index.ts';
import { LONG_ROUNDING } from '../tolerances.ts';

/** A tenth of a nanometre on a pad of centimetres. */
const ROUNDING_M = 1e-10;
/** Through an arc sine near its end, where half the digits go. */
const ROUND_TRIP_M = 1e-9;
const ROUND_TRIP_RAD = 1e-6;
/** A hinge a kilometre away tilts a pad by less than a micrometre across. */
const FAR = 1e3;
const FAR_TILT = 1e-6;

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const keys = fc
  .tuple(between(0.004, 0.03), between(1.02, 4), between(-0.3, 0.5))
  .map(([padRadius, reach, rod]) => ({
    padRadius,
    hinge: { distance: reach * padRadius, height: rod * padRadius } satisfies Hinge,
  }));
const angles = between(0, 0.99 * WIDEST_SWING);
const points: MeasuringPoint[] = ['front', 'centre', 'back'];

describe('a pad on its hinge', () => {
  it('turns truly: front, centre and back keep their distance from the rod', () => {
    fc.assert(
      fc.property(keys, angles, ({ hinge, padRadius }, angle) => {
        const pose = poseAtAngle(hinge, padRadius, angle);
        // The centre's place from heights and shift, the rod at (−L, z_r).
        const fromRod = Math.hypot(hinge.distance + pose.shift, pose.centre - hinge.height);
        expect(Math.abs(fromRod - Math.hypot(hinge.distance, hinge.height))).toBeLessThan(ROUNDING_M);
        // The face stays a straight line of its own length, turned by the angle.
        expect(Math.abs(pose.front - pose.back - 2 * padRadius * Math.sin(angle))).toBeLessThan(ROUNDING_M);
        expect(Math.abs(pose.front + pose.back - 2 * pose.centre)).toBeLessThan(ROUNDING_M);
      }),
      { seed: 901, numRuns: 500 },
    );
  });

  it('measured at any point and set by that measure stands where it stood', () => {
    fc.assert(
      fc.property(keys, angles, fc.constantFrom(...points), ({ hinge, padRadius }, angle, at) => {
        const pose = poseAtAngle(hinge, padRadius, angle);
        fc.pre(pose.back >= 0 && pose[at] <= largestOpening(hinge, padRadius, at) * (1 - LONG_ROUNDING));
        const again = makePadPose(hinge, padRadius, { at, height: pose[at] });
        for (const point of points) expect(Math.abs(again[point] - pose[point])).toBeLessThan(ROUND_TRIP_M);
        expect(Math.abs(again.angle - angle)).toBeLessThan(ROUND_TRIP_RAD);
      }),
      { seed: 902, numRuns: 500 },
    );
  });

  it('is shut all round when one point is shut, for a rod at any height', () => {
    fc.assert(
      fc.property(keys, fc.constantFrom(...points), ({ hinge, padRadius }, at) => {
        const pose = makePadPose(hinge, padRadius, { at, height: 0 });
        expect([pose.front, pose.centre, pose.back].every((h) => Math.abs(h) < ROUNDING_M)).toBe(true);
      }),
      { seed: 903, numRuns: 200 },
    );
  });

  it('gapes more at the front than at the back', () => {
    fc.assert(
      fc.property(keys, between(0.01, WIDEST_SWING), ({ hinge, padRadius }, angle) => {
        const { front, centre, back } = poseAtAngle(hinge, padRadius, angle);
        expect(front).toBeGreaterThan(centre);
        expect(centre).toBeGreaterThan(back);
      }),
      { seed: 904, numRuns: 200 },
    );
  });

  it('with its rod far away stands as a parallel pad', () => {
    for (const height of [0, 0.002, 0.01]) {
      const far = makePadPose({ distance: FAR, height: 0 }, 0.02, { at: 'front', height });
      const parallel = makePadPose({ distance: Infinity, height: 0 }, 0.02, { at: 'front', height });
      for (const point of points) expect(Math.abs(far[point] - parallel[point])).toBeLessThan(FAR_TILT);
      expect(parallel.angle).toBe(0);
    }
  });

  it('opens as far as its hinge can swing it and no further', () => {
    fc.assert(
      fc.property(keys, ({ hinge, padRadius }) => {
        const most = largestOpening(hinge, padRadius, 'front');
        expect(Number.isFinite(makePadPose(hinge, padRadius, { at: 'front', height: most }).centre)).toBe(
          true,
        );
        const pose = makePadPose(hinge, padRadius, { at: 'front', height: most * (1 - LONG_ROUNDING) });
        expect(pose.angle).toBeLessThanOrEqual(WIDEST_SWING);
        expect(() => makePadPose(hinge, padRadius, { at: 'front', height: most * 1.001 })).toThrow(
          /expected at most/,
        );
      }),
      { seed: 905, numRuns: 100 },
    );
  });

  it.each([
    [{ distance: 0.03, height: 0 }, 0.02, -0.001],
    [{ distance: 0.03, height: 0 }, 0.02, NaN],
    [{ distance: 0.03, height: 0 }, 0, 0.001],
    [{ distance: 0.015, height: 0 }, 0.02, 0.001],
    [{ distance: NaN, height: 0 }, 0.02, 0.001],
  ])('with hinge %o, pad %d and opening %d is refused', (hinge, padRadius, height) => {
    expect(() => makePadPose(hinge, padRadius, { at: 'front', height })).toThrow(RangeError);
  });
});

it('a key takes its own largest opening back from bench units, a rounding above or below', () => {
  // The lower-stack E of the demo alto at its limit: 38.74 mm in front.
  const hinge = { distance: 0.0215, height: 0.001 };
  const largest = largestOpening(hinge, 0.017, 'front');
  for (const height of [(largest * 1000) / 1000, largest * (1 + 2e-16), largest * (1 + 1e-13)]) {
    expect(Number.isFinite(makePadPose(hinge, 0.017, { at: 'front', height }).angle)).toBe(true);
  }
  expect(() => makePadPose(hinge, 0.017, { at: 'front', height: largest * 1.001 })).toThrow(
    /expected at most/,
  );
});
