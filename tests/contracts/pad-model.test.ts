import { describe, expect, it } from 'vitest';
import { PAD_MODELS, type PadOverHole } from '../../src/acoustics/index.ts';
import { DIFFERENCE, relative } from '../acoustics/tolerances.ts';

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

  it('has the slope of its own curve', () => {
    const h = 1e-7;
    for (const centreHeight of [0.002, 0.005, 0.009]) {
      const at = (x: number): number => model.endOf({ ...pad, centreHeight: x }).length;
      const difference = (at(centreHeight + h) - at(centreHeight - h)) / (2 * h);
      expect(relative(model.endOf({ ...pad, centreHeight }).slope, difference)).toBeLessThan(DIFFERENCE);
    }
  });

  it('calls a parallel pad its own equivalent', () => {
    const end = model.endOf({ ...pad, hingeDistance: Infinity });
    expect(relative(end.equivalentParallel, pad.centreHeight)).toBeLessThan(1e-6);
  });

  it('states its source and an error between nothing and one', () => {
    expect(model.source.length).toBeGreaterThan(3);
    expect(model.relativeError).toBeGreaterThan(0);
    expect(model.relativeError).toBeLessThan(1);
  });
});
