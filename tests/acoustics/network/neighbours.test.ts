import { describe, expect, it } from 'vitest';
import {
  centsBetween,
  inputAdmittanceAt,
  makeAirColumn,
  makeNetwork,
  noteFrequency,
  playWholeHorn,
  resonanceNear,
  type Network,
} from '../../../src/acoustics/index.ts';
import { demoHorn, fingeringOf } from '../demo-horns.ts';
import { DIFFERENCE, PASSIVE_ROUNDING, relativeComplex } from '../tolerances.ts';

const AIR = makeAirColumn({ mouthpieceC: 28, bellC: 24 });

function network(id: string, neighbours: boolean): Network {
  const { horn, setup } = demoHorn('alto');
  return makeNetwork(horn, setup, fingeringOf(id), AIR, { neighbours });
}

function admittance(n: Network, f: number): Float64Array {
  const y = new Float64Array(4);
  inputAdmittanceAt(n, f, 'bare', y);
  return y;
}

describe('open holes that hear each other', () => {
  it('are nothing to a fingering with one open hole or none', () => {
    for (const id of ['Bb3', 'B3']) {
      const [on, off] = [true, false].map((n) => admittance(network(id, n), 233));
      expect(on).toEqual(off);
    }
  });

  it('leave a passive horn passive', () => {
    for (const id of ['C4', 'G4', 'C#5', 'F#6']) {
      const n = network(id, true);
      for (let f = 60; f < 2000; f += 37) {
        const y = admittance(n, f);
        expect(y[0]).toBeGreaterThan(-PASSIVE_ROUNDING * Math.hypot(y[0], y[1]));
      }
    }
  });

  it('are reciprocal: the slope that rests on Z_ij = Z_ji is the central difference', () => {
    const n = network('G4', true);
    for (const f of [150, 233, 520, 910]) {
      const h = 1e-3;
      const y = admittance(n, f);
      const [up, down] = [admittance(n, f + h), admittance(n, f - h)];
      expect(
        relativeComplex(y[2], y[3], (up[0] - down[0]) / (2 * h), (up[1] - down[1]) / (2 * h)),
      ).toBeLessThan(DIFFERENCE);
    }
  });

  it('hear less of each other the further apart they are', () => {
    const shift = (spread: number): number => {
      const { horn, setup } = demoHorn('alto');
      // Only the notion of distance outside is stretched: the bore keeps its places.
      const cents = [true, false].map((neighbours) => {
        const n = makeNetwork(horn, setup, fingeringOf('G4'), AIR, { neighbours });
        const stretched: Network = {
          ...n,
          elements: n.elements.map((e) =>
            e.kind === 'hole' ? { ...e, hole: { ...e.hole, x: e.hole.x * spread } } : e,
          ),
        };
        const played = resonanceNear(stretched, noteFrequency('G4', horn.transposition));
        if (!played.found) throw new Error('G4 has a resonance');
        return played.resonance.frequency;
      });
      return Math.abs(centsBetween(cents[0], cents[1]));
    };
    const shifts = [1, 10, 100, 1000].map(shift);
    for (let i = 1; i < shifts.length; i++) expect(shifts[i]).toBeLessThan(shifts[i - 1]);
    expect(shifts[3]).toBeLessThan(0.02);
  });

  describe.each(['alto', 'tenor'] as const)('on the demo %s', (name) => {
    const { horn, setup } = demoHorn(name);
    const plain = makeAirColumn();
    const [on, off] = [true, false].map((neighbours) =>
      playWholeHorn(horn, setup, plain, { neighbours, answers: false }),
    );
    /** Cost of every note of a register that has two open holes or more: cents down, share of height lost. */
    const costs = (register: 1 | 2): { id: string; cents: number; height: number }[] =>
      on.flatMap(({ fingering, outcome }, i) => {
        const without = off[i].outcome;
        if (fingering.register !== register || ['Bb3', 'B3'].includes(fingering.id)) return [];
        if (!outcome.found || !without.found) throw new Error(`${fingering.id} has a resonance`);
        const height = 1 - outcome.resonance.height / without.resonance.height;
        return [{ id: fingering.id, cents: without.cents - outcome.cents, height }];
      });
    const median = (values: readonly number[]): number =>
      [...values].sort((a, b) => a - b)[values.length >> 1];

    it('every note goes down in pitch and in height', () => {
      for (const { id, cents, height } of [...costs(1), ...costs(2)]) {
        expect(cents, id).toBeGreaterThan(0);
        expect(height, id).toBeGreaterThan(0);
      }
      expect(costs(1).length + costs(2).length).toBeGreaterThan(35);
    });

    // Published: 2–4 cents nearly uniformly, 4–19 % of height. Ours are not so even (notes/physics/whole-horn.md).
    it('the usual note of either register costs the published 2–4 cents', () => {
      for (const register of [1, 2] as const) {
        const usual = median(costs(register).map((c) => c.cents));
        expect(usual).toBeGreaterThan(2);
        expect(usual).toBeLessThan(4);
      }
    });

    it('the usual note costs the published 4–19 % of height, palm notes a little more', () => {
      for (const register of [1, 2] as const) {
        const heights = costs(register).map((c) => c.height);
        expect(median(heights)).toBeGreaterThan(0.035);
        expect(median(heights)).toBeLessThan(0.19);
        expect(Math.max(...heights)).toBeLessThan(0.25);
      }
    });
  });
});
