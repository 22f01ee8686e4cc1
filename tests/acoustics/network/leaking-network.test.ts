import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DEFAULT_PAD_MODEL,
  inputAdmittanceAt,
  leakEndsIn,
  makeNetwork,
  padStates,
  tiltedGap,
  type Leaks,
} from '../../../src/acoustics/index.ts';
import { randomHorns, type RandomHorn } from '../random-horns.ts';
import { LONG_ROUNDING, relativeComplex } from '../tolerances.ts';

/** A slope against a central difference of horns of no sense, some of them near a sharp peak. */
const ROUGH_DIFFERENCE = 2e-4;

/** A leak at every pad that is shut, each of its own size. */
function everyLeak({ horn }: RandomHorn, gap: number): Leaks {
  return {
    seats: new Map(horn.holes.map((h, i) => [h.id, tiltedGap(gap * (i + 1), 0.4 * gap * (i + 1))])),
    screws: [],
  };
}

function admittance(random: RandomHorn, gap: number, f: number): Float64Array {
  const { horn, setup, fingering, air } = random;
  const leaks = everyLeak(random, gap);
  const y = new Float64Array(4);
  inputAdmittanceAt(makeNetwork(horn, setup, fingering, air, { leaks }), f, 'with reed', y);
  return y;
}

const frequency = fc.double({ min: 60, max: 1500, noNaN: true });
const gap = fc.double({ min: 1e-6, max: 2e-4, noNaN: true });

describe('a horn whose shut pads all leak', () => {
  it('takes in power at every frequency', () => {
    fc.assert(
      fc.property(randomHorns, frequency, gap, (random, f, g) => {
        expect(admittance(random, g, f)[0]).toBeGreaterThan(0);
      }),
      { seed: 61, numRuns: 150 },
    );
  });

  it('has the slope of its central difference', () => {
    fc.assert(
      fc.property(randomHorns, frequency, gap, (random, f, g) => {
        const h = 1e-4 * f;
        const [here, up, down] = [f, f + h, f - h].map((x) => admittance(random, g, x));
        const [up2, down2] = [f + 2 * h, f - 2 * h].map((x) => admittance(random, g, x));
        const slope = (i: number): number => (8 * (up[i] - down[i]) - (up2[i] - down2[i])) / (12 * h);
        expect(relativeComplex(here[2], here[3], slope(0), slope(1))).toBeLessThan(ROUGH_DIFFERENCE);
      }),
      { seed: 62, numRuns: 100 },
    );
  });

  it('is the sealed horn as the gaps go to nothing', () => {
    fc.assert(
      fc.property(randomHorns, frequency, (random, f) => {
        const y = new Float64Array(4);
        const { horn, setup, fingering, air } = random;
        inputAdmittanceAt(makeNetwork(horn, setup, fingering, air), f, 'with reed', y);
        const tight = admittance(random, 1e-9, f);
        expect(relativeComplex(tight[0], tight[1], y[0], y[1])).toBeLessThan(LONG_ROUNDING);
      }),
      { seed: 63, numRuns: 60 },
    );
  });

  it('leaks at shut pads and no others', () => {
    fc.assert(
      fc.property(randomHorns, (random) => {
        const { horn, setup, fingering } = random;
        const ends = leakEndsIn(horn, setup, fingering.touches, everyLeak(random, 1e-5), DEFAULT_PAD_MODEL);
        const states = padStates(horn.keywork, new Set(fingering.touches));
        for (const { id } of horn.holes) expect(ends.has(id)).toBe(!states.get(id)!.open);
      }),
      { seed: 64, numRuns: 60 },
    );
  });
});
