import { describe, expect, it } from 'vitest';
import { impedanceSweep, makeAirColumn, makeNetwork } from '../../src/acoustics/index.ts';
import { demoHorn, fingeringOf } from '../acoustics/demo-horns.ts';
import { LONG_ROUNDING, relativeComplex } from '../acoustics/tolerances.ts';
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
