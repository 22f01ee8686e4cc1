import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airAtTemperature,
  boreVolume,
  cutBore,
  makeAirColumn,
  makeBore,
  radiusAt,
} from '../../../src/acoustics/index.ts';
import { randomHorns } from '../random-horns.ts';
import { LONG_ROUNDING, relative, ROUNDING } from '../tolerances.ts';

const air = makeAirColumn();

describe('a bore', () => {
  it('cut in pieces keeps its length, its ends and its volume', () => {
    fc.assert(
      fc.property(randomHorns, ({ horn: { bore } }) => {
        const pieces = cutBore(bore, 0, bore.length, air);
        const length = pieces.reduce((s, p) => s + p.length, 0);
        const volume = pieces.reduce(
          (s, p) => s + (Math.PI / 3) * p.length * (p.r1 * p.r1 + p.r1 * p.r2 + p.r2 * p.r2),
          0,
        );
        expect(relative(length, bore.length)).toBeLessThan(ROUNDING);
        expect(relative(volume, boreVolume(bore, 0, bore.length))).toBeLessThan(LONG_ROUNDING);
        expect(Math.max(...pieces.map((p) => p.length))).toBeLessThanOrEqual(0.05 * (1 + ROUNDING));
      }),
      { seed: 501, numRuns: 200 },
    );
  });

  it('has a volume that adds up, wherever parted', () => {
    fc.assert(
      fc.property(
        randomHorns,
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        ({ horn: { bore } }, cut) => {
          const at = cut * bore.length;
          const parts = boreVolume(bore, 0, at) + boreVolume(bore, at, bore.length);
          expect(relative(parts, boreVolume(bore, 0, bore.length))).toBeLessThan(ROUNDING);
        },
      ),
      { seed: 502, numRuns: 200 },
    );
  });

  it('gives every piece the air of its own middle', () => {
    const bore = makeBore(
      [
        { x: 0, radius: 0.008 },
        { x: 0.8, radius: 0.008 },
      ],
      0.008,
    );
    const column = makeAirColumn({ mouthpieceC: 32, bellC: 18 });
    let x = 0;
    for (const piece of cutBore(bore, 0, 0.8, column)) {
      const middle = (x + piece.length / 2) / 0.8;
      const wanted = airAtTemperature(32 - 14 * middle);
      expect(relative(piece.air.soundSpeed, wanted.soundSpeed)).toBeLessThan(ROUNDING);
      expect(relative(piece.air.density, wanted.density)).toBeLessThan(ROUNDING);
      x += piece.length;
    }
  });

  it('at a step has the radius of the bell side', () => {
    const bore = makeBore(
      [
        { x: 0, radius: 0.005 },
        { x: 0.1, radius: 0.006 },
        { x: 0.1, radius: 0.008 },
        { x: 0.3, radius: 0.01 },
      ],
      0.005,
    );
    expect(radiusAt(bore, 0.1)).toBe(0.008);
    expect(relative(radiusAt(bore, 0.05), 0.0055)).toBeLessThan(ROUNDING);
    expect(relative(radiusAt(bore, 0.2), 0.009)).toBeLessThan(ROUNDING);
  });

  it.each([
    ['one station', [{ x: 0, radius: 0.01 }]],
    ['a start beyond zero', [{ x: 0.1, radius: 0.01 }, { x: 0.2, radius: 0.01 }]], // prettier-ignore
    ['a way back', [{ x: 0, radius: 0.01 }, { x: 0.2, radius: 0.01 }, { x: 0.1, radius: 0.01 }]], // prettier-ignore
    ['a radius of nothing', [{ x: 0, radius: 0 }, { x: 0.2, radius: 0.01 }]], // prettier-ignore
    ['a radius that is no number', [{ x: 0, radius: NaN }, { x: 0.2, radius: 0.01 }]], // prettier-ignore
    ['no length', [{ x: 0, radius: 0.01 }, { x: 0, radius: 0.01 }]], // prettier-ignore
  ])('with %s is refused', (_, stations) => {
    expect(() => makeBore(stations, 0.01)).toThrow(RangeError);
  });
});
