import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  centsBetween,
  FINGERINGS,
  findResonances,
  firstStepCents,
  followResonance,
  inputAdmittanceAt,
  makeNetwork,
  noteFrequency,
  resonanceNear,
  withHoleEnds,
  type Network,
} from '../../../src/acoustics/index.ts';
import { DEMO_NAMES, demoHorn, fingeringOf } from '../demo-horns.ts';
import { randomHorns } from '../random-horns.ts';
import { makeAirColumn } from '../../../src/acoustics/index.ts';
import { DIFFERENCE, LONG_ROUNDING, POLISHED_CENTS, relative, ROUNDING } from '../tolerances.ts';

const air = makeAirColumn();

/** A peak below twice ρc/S sounds nothing; the search may step over such a ripple. */
const PLAYABLE = 0.5;
/** 0.001 cent as a share of the frequency. */
const POLISHED_SHARE = 5.8e-7;
/** Peak and zero of the reactive part differ in second order of 1/Q: a share of the half width. */
const WELL_INSIDE = 0.1;

/** Zeros of B from below in a dense even grid, each bisected: slow and plain. */
function denseScan(network: Network, from: number, to: number, step: number): number[] {
  const y = new Float64Array(4);
  const at = (f: number): [number, number] => {
    inputAdmittanceAt(network, f, 'with reed', y, false);
    return [y[0], y[1]];
  };
  const found: number[] = [];
  let [, last] = at(from);
  for (let f = from; f < to; f += step) {
    const upper = Math.min(to, f + step);
    const [, b] = at(upper);
    if (last < 0 && b >= 0) {
      let [p, q] = [f, upper];
      for (let i = 0; i < 60; i++) {
        const middle = 0.5 * (p + q);
        if (at(middle)[1] < 0) p = middle;
        else q = middle;
      }
      found.push(0.5 * (p + q));
    }
    last = b;
  }
  return found;
}

describe('resonances found by bracketing', () => {
  it.each(['alto', 'tenor'] as const)('of the demo %s are those of a dense scan, to 0.001 cent', (name) => {
    const { horn, setup } = demoHorn(name);
    for (const id of ['Bb3', 'D4', 'G4', 'C#5', 'D5', 'A5', 'C#6', 'F#6', 'F6 front']) {
      const network = makeNetwork(horn, setup, fingeringOf(id), air);
      const fast = findResonances(network, 60, 1800).map((r) => r.frequency);
      const slow = denseScan(network, 60, 1800, 0.5);
      expect(fast.length).toBe(slow.length);
      fast.forEach((f, i) => expect(Math.abs(centsBetween(slow[i], f))).toBeLessThan(POLISHED_CENTS));
    }
  });

  it('of random horns are those of a dense scan, to 0.001 cent, wherever the peak is above twice ρc/S', () => {
    fc.assert(
      fc.property(randomHorns, ({ horn, setup, fingering, air: day }) => {
        const network = makeNetwork(horn, setup, fingering, day);
        const fast = findResonances(network, 60, 1500);
        const y = new Float64Array(4);
        for (const f of denseScan(network, 60, 1500, 1)) {
          inputAdmittanceAt(network, f, 'with reed', y, false);
          if (1 / (y[0] * network.referenceImpedance) < PLAYABLE) continue;
          const nearest = Math.min(...fast.map((r) => Math.abs(centsBetween(f, r.frequency))));
          expect(nearest).toBeLessThan(POLISHED_CENTS);
        }
      }),
      { seed: 801, numRuns: 60, endOnFailure: true },
    );
  });

  it('are zeros of the reactive part and nothing else', () => {
    fc.assert(
      fc.property(randomHorns, ({ horn, setup, fingering, air: day }) => {
        const network = makeNetwork(horn, setup, fingering, day);
        const y = new Float64Array(4);
        for (const r of findResonances(network, 60, 1500)) {
          inputAdmittanceAt(network, r.frequency, 'with reed', y);
          expect(y[3]).toBeGreaterThan(0);
          // B over its slope is how far the true zero lies.
          expect(Math.abs(y[1] / y[3] / r.frequency)).toBeLessThan(POLISHED_SHARE);
        }
      }),
      { seed: 803, numRuns: 60, endOnFailure: true },
    );
  });

  it('have the height, Q and rise time that their own definition gives', () => {
    const { horn, setup } = demoHorn('alto');
    const network = makeNetwork(horn, setup, fingeringOf('G4'), air);
    for (const r of findResonances(network, 100, 1200)) {
      const y = new Float64Array(4);
      const at = (f: number): [number, number] => {
        inputAdmittanceAt(network, f, 'with reed', y, false);
        return [y[0], y[1]];
      };
      const [g] = at(r.frequency);
      expect(relative(r.height, 1 / (g * network.referenceImpedance))).toBeLessThan(LONG_ROUNDING);
      const h = 1e-3;
      const slope = (at(r.frequency + h)[1] - at(r.frequency - h)[1]) / (2 * h);
      expect(relative(r.q, (r.frequency * slope) / (2 * g))).toBeLessThan(DIFFERENCE);
      expect(relative(r.riseTime, r.q / (Math.PI * r.frequency))).toBeLessThan(ROUNDING);
    }
  });

  it('lie at the peaks of the impedance, within a tenth of the half width', () => {
    const { horn, setup } = demoHorn('alto');
    const network = makeNetwork(horn, setup, fingeringOf('D4'), air);
    for (const r of findResonances(network, 100, 700)) {
      const y = new Float64Array(4);
      const height = (f: number): number => {
        inputAdmittanceAt(network, f, 'with reed', y, false);
        return 1 / Math.hypot(y[0], y[1]);
      };
      let best = r.frequency;
      for (let c = -10; c <= 10; c += 0.01) {
        const f = r.frequency * 2 ** (c / 1200);
        if (height(f) > height(best)) best = f;
      }
      const halfWidth = centsBetween(1, 1 + 1 / (2 * r.q));
      expect(Math.abs(centsBetween(r.frequency, best))).toBeLessThan(WELL_INSIDE * halfWidth);
    }
  });
});

describe('the resonance a note sounds on', () => {
  /** The nearest to a frequency of all that a search of the whole window finds. */
  function nearestOfAll(network: Network, target: number): number | null {
    const span = 2 ** (350 / 1200);
    const all = findResonances(network, target / span, target * span).map((r) => r.frequency);
    if (all.length === 0) return null;
    return all.reduce((a, b) => (Math.abs(Math.log(b / target)) < Math.abs(Math.log(a / target)) ? b : a));
  }

  it.each(DEMO_NAMES)(
    'of the demo %s is the nearest of all in the window, wherever one looks from',
    (name) => {
      const { horn, setup } = demoHorn(name);
      let [found, none] = [0, 0];
      for (const fingering of FINGERINGS) {
        const network = makeNetwork(horn, setup, fingering, air);
        for (const off of [-900, -500, -330, -170, -60, 0, 25, 110, 240, 345, 700]) {
          const target = noteFrequency(fingering.note, horn.transposition) * 2 ** (off / 1200);
          const nearest = nearestOfAll(network, target);
          const outcome = resonanceNear(network, target);
          expect(outcome.found).toBe(nearest !== null);
          if (!outcome.found || nearest === null) {
            none++;
            continue;
          }
          found++;
          expect(Math.abs(centsBetween(nearest, outcome.resonance.frequency))).toBeLessThan(POLISHED_CENTS);
        }
      }
      expect(Math.min(found, none)).toBeGreaterThan(10);
    },
  );

  it('of random horns is the nearest of all in the window', () => {
    let same = 0;
    fc.assert(
      fc.property(randomHorns, fc.double({ min: 60, max: 1500, noNaN: true }), (r, target) => {
        const network = makeNetwork(r.horn, r.setup, r.fingering, r.air);
        const nearest = nearestOfAll(network, target);
        const outcome = resonanceNear(network, target);
        expect(outcome.found).toBe(nearest !== null);
        if (!outcome.found) return;
        const { frequency } = outcome.resonance;
        expect(Math.abs(centsBetween(nearest!, frequency))).toBeLessThan(POLISHED_CENTS);
        same++;
      }),
      { seed: 804, numRuns: 400, endOnFailure: true },
    );
    expect(same).toBeGreaterThan(100);
  });
});

describe("the first of Newton's steps", () => {
  const { horn, setup } = demoHorn('alto');
  const network = makeNetwork(horn, setup, fingeringOf('F4'), air);

  it('tells a small move of a resonance to second order', () => {
    const outcome = resonanceNear(network, noteFrequency('F4', horn.transposition));
    if (!outcome.found) throw new Error(outcome.reason);
    const { frequency } = outcome.resonance;
    const e = network.elements.find((it) => it.kind === 'hole' && it.hole.id === 'e');
    if (e?.kind !== 'hole') throw new Error('no hole e');
    const errors = [1e-3, 1e-4].map((longer) => {
      const moved = withHoleEnds(
        network,
        new Map([['e', { ...e.end, endLength: e.end.endLength + longer }]]),
      );
      const followed = followResonance(moved, frequency);
      if (!followed.found) throw new Error(followed.reason);
      const cents = centsBetween(frequency, followed.resonance.frequency);
      expect(cents).toBeLessThan(0);
      return Math.abs(firstStepCents(moved, frequency) - cents) / cents ** 2;
    });
    // What is missing goes with the square: its share of the square stays.
    expect(relative(errors[1], errors[0])).toBeLessThan(0.1);
    expect(errors[0]).toBeLessThan(0.05);
  });

  it('is not told where B falls', () => {
    const [first, second] = findResonances(network, 100, 900).map((r) => r.frequency);
    const y = new Float64Array(4);
    let falling = 0;
    for (let f = first; f < second; f += 0.1) {
      inputAdmittanceAt(network, f, 'with reed', y);
      if (y[3] > 0) continue;
      falling++;
      expect(firstStepCents(network, f)).toBeNaN();
    }
    expect(falling).toBeGreaterThan(10);
  });
});

describe('following one resonance', () => {
  const { horn, setup } = demoHorn('alto');
  const network = makeNetwork(horn, setup, fingeringOf('F4'), air);

  it('comes to the same place as a search', () => {
    for (const r of findResonances(network, 100, 900)) {
      for (const off of [0.995, 1.004]) {
        const followed = followResonance(network, r.frequency * off);
        expect(followed.found).toBe(true);
        if (followed.found) {
          expect(Math.abs(centsBetween(r.frequency, followed.resonance.frequency))).toBeLessThan(
            POLISHED_CENTS,
          );
        }
      }
    }
  });

  it('says why where there is none near', () => {
    const [first] = findResonances(network, 60, 400);
    const outcome = resonanceNear(network, first.frequency / 1.5);
    expect(outcome.found).toBe(false);
    if (!outcome.found) expect(outcome.reason).toMatch(/no resonance within 350 cents/);
  });

  it('gives an outcome on any random horn and never a NaN', () => {
    fc.assert(
      fc.property(randomHorns, fc.double({ min: 40, max: 2000, noNaN: true }), (r, near) => {
        const outcome = followResonance(makeNetwork(r.horn, r.setup, r.fingering, r.air), near);
        if (outcome.found) expect(Object.values(outcome.resonance).every(Number.isFinite)).toBe(true);
        else expect(outcome.reason.length).toBeGreaterThan(10);
      }),
      { seed: 802, numRuns: 200, endOnFailure: true },
    );
  });
});
