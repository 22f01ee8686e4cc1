import { describe, expect, it } from 'vitest';
import { PAD_DIRECTIONS, PAD_MODELS, type PadOverHole } from '../../src/acoustics/index.ts';
import { DIFFERENCE, relative } from '../acoustics/tolerances.ts';

/** A model may find the equivalent opening by search. */
const SOLVED = 1e-6;

const pad: PadOverHole = {
  holeRadius: 0.015,
  rimThickness: 0.001,
  padRadius: 0.018,
  padThickness: 0.004,
  hingeDistance: 0.03,
  hingeHeight: 0,
  centreHeight: 0.005,
};

describe.each(PAD_MODELS.map((m) => [m.id, m] as const))('the pad model %s', (_, model) => {
  it('shuts the hole at no opening', () => {
    expect(model.endOf({ ...pad, centreHeight: 0 }).length).toBe(Infinity);
  });

  it('never makes the end shorter than no pad at all, and shortens it as the pad rises', () => {
    let last = Infinity;
    for (let h = 0.0005; h < 0.011; h += 0.0005) {
      const end = model.endOf({ ...pad, centreHeight: h });
      expect(end.length).toBeLessThan(last);
      expect(end.length).toBeGreaterThan(end.noPadLength);
      last = end.length;
    }
  });

  it.each(PAD_DIRECTIONS)('has the slopes of its own lengths along %s', (key) => {
    const h = 1e-7;
    for (const centreHeight of [0.0008, 0.002, 0.005, 0.009]) {
      for (const hingeDistance of [0.021, 0.03, Infinity]) {
        // A pad that stays parallel has no rod to move.
        if (hingeDistance === Infinity && key.startsWith('hinge')) continue;
        const here = { ...pad, centreHeight, hingeDistance };
        const { slopes } = model.endOf(here);
        const [up, down] = [h, -h].map((by) => model.endOf({ ...here, [key]: here[key] + by }));
        for (const length of ['length', 'noPadLength', 'gapShare'] as const) {
          const difference = (up[length] - down[length]) / (2 * h);
          expect(Math.abs(slopes[key][length] - difference)).toBeLessThan(
            DIFFERENCE * Math.max(1, Math.abs(difference)),
          );
        }
      }
    }
  });

  it('calls a parallel pad its own equivalent', () => {
    const end = model.endOf({ ...pad, hingeDistance: Infinity });
    expect(relative(end.equivalentParallel, pad.centreHeight)).toBeLessThan(SOLVED);
  });

  it('states its source and an error between nothing and one', () => {
    expect(model.source.length).toBeGreaterThan(3);
    expect(model.relativeError).toBeGreaterThan(0);
    expect(model.relativeError).toBeLessThan(1);
  });
});
