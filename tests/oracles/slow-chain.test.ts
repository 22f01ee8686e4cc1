import { describe, expect, it } from 'vitest';
import { impedanceSweep, makeAirColumn, makeNetwork, playWholeHorn } from '../../src/acoustics/index.ts';
import { demoHorn, fingeringOf } from '../acoustics/demo-horns.ts';
import { LONG_ROUNDING, POLISHED_CENTS, relative, relativeComplex } from '../acoustics/tolerances.ts';
import { slowImpedance } from './slow-chain.ts';

describe('the chain against a slow one of other formulas', () => {
  const { horn, setup } = demoHorn('alto');
  const network = makeNetwork(horn, setup, fingeringOf('F5'), makeAirColumn({ mouthpieceC: 31, bellC: 24 }));

  it.each([61, 103.7, 155.5, 208, 277, 350, 419, 560, 733, 905, 1204, 1777])(
    'has the same input impedance at %d Hz, losses, holes, vent and all',
    (f) => {
      const { re, im } = impedanceSweep(network, [f]);
      const slow = slowImpedance(network, f);
      expect(relativeComplex(re[0], im[0], slow.re, slow.im)).toBeLessThan(LONG_ROUNDING);
    },
  );
});

describe.each(['alto', 'tenor'] as const)('the whole scale of the demo %s against the slow chain', (name) => {
  const { horn, setup } = demoHorn(name);
  const air = makeAirColumn();

  it('every note resonates where the slow chain says, and as high', () => {
    const notes = playWholeHorn(horn, setup, air, { answers: false });
    let checked = 0;
    for (const { fingering, outcome } of notes) {
      if (!outcome.found) continue;
      const network = makeNetwork(horn, setup, fingering, air);
      const { frequency, height, q } = outcome.resonance;
      const { re, im } = slowImpedance(network, frequency);
      const size = re * re + im * im;
      // Y with the reed: its imaginary part, over the slope that Q stands for, is the miss in frequency.
      const g = re / size;
      const b = -im / size + 2 * Math.PI * frequency * network.reedCompliance;
      const missCents = (1200 / Math.LN2) * (b / (2 * q * g));
      expect(Math.abs(missCents), fingering.id).toBeLessThan(POLISHED_CENTS);
      expect(relative(1 / (g * network.referenceImpedance), height), fingering.id).toBeLessThan(
        LONG_ROUNDING,
      );
      checked++;
    }
    expect(checked).toBe(44);
  });
});
