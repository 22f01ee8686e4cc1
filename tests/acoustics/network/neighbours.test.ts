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

  it('cost what was published: 2–4 cents nearly evenly, 4–19 % of height (Lefebvre, Scavone & Kergomard 2013)', () => {
    const { horn, setup } = demoHorn('alto');
    const [on, off] = [true, false].map((neighbours) => playWholeHorn(horn, setup, AIR, { neighbours }));
    const stack = ['F4', 'F#4 side', 'G4', 'G#4', 'Bb4 bis', 'B4', 'C#5', 'F5', 'G5', 'G#5', 'B5', 'C#6'];
    for (const id of stack) {
      const a = on.find((n) => n.fingering.id === id)!.outcome;
      const b = off.find((n) => n.fingering.id === id)!.outcome;
      if (!a.found || !b.found) throw new Error(`${id} has a resonance`);
      const cents = a.cents - b.cents;
      const height = 1 - a.resonance.height / b.resonance.height;
      // The printed ranges, half a unit of the last printed digit either way.
      expect(cents, id).toBeLessThan(-1.5);
      expect(cents, id).toBeGreaterThan(-4.5);
      expect(height, id).toBeGreaterThan(0.035);
      expect(height, id).toBeLessThan(0.195);
    }
  });
});
