import { describe, expect, it } from 'vitest';
import {
  airAtTemperature,
  END_FLANGED,
  END_UNFLANGED,
  flangedEndLength,
  openEndImpedanceAt,
  REFERENCE_C,
} from '../../src/acoustics/index.ts';
import { levineSchwingerLength, levineSchwingerModulus } from '../oracles/levine-schwinger.ts';
import { printedDecimals, relative, ROUNDING } from '../acoustics/tolerances.ts';
import { published } from './published-values.ts';

const air = airAtTemperature(REFERENCE_C);
const unflanged = published<{ endCorrection: number }>('levine-schwinger-1948/open-end').endCorrection;
const flanged = published<{ endCorrection: number }>('nomura-1960/flanged-end').endCorrection;
const silva = published<{ relativeError: number; largestKa: number }>('silva-2009/stated-error');

/** |R| and ℓ/a of the core's open end. */
function endAt(ka: number, a = 0.01): { modulus: number; length: number } {
  const k = ka / a;
  const out = new Float64Array(4);
  openEndImpedanceAt(a, (k * air.soundSpeed) / (2 * Math.PI), air, 0, out);
  const z0 = (air.density * air.soundSpeed) / (Math.PI * a * a);
  const re = out[0] / z0;
  const im = out[1] / z0;
  // R = (z − 1)/(z + 1) = −|R|e^{−2jkℓ}
  const norm = (re + 1) ** 2 + im ** 2;
  const rRe = (re * re + im * im - 1) / norm;
  const rIm = (2 * im) / norm;
  return { modulus: Math.hypot(rRe, rIm), length: Math.atan2(rIm, -rRe) / (2 * ka) };
}

describe('the open end against published values', () => {
  it('has the low-frequency corrections 0.6133 and 0.8216', () => {
    expect(END_UNFLANGED).toBe(unflanged);
    expect(END_FLANGED).toBe(flanged);
    expect(Math.abs(endAt(1e-4).length - unflanged)).toBeLessThan(printedDecimals(4));
  });

  it.each([0.1, 0.3, 0.6, 1, 1.5, 2, 2.5, 3, 3.5])(
    'at ka = %d has the length of the Levine–Schwinger integral within the stated error',
    (ka) => {
      expect(ka).toBeLessThanOrEqual(silva.largestKa);
      expect(relative(endAt(ka).length, levineSchwingerLength(ka))).toBeLessThan(silva.relativeError);
    },
  );

  it.each([0.1, 0.3, 0.6, 1, 1.5, 2, 2.5, 3, 3.5])(
    'at ka = %d has the reflection of the Levine–Schwinger integral within the stated error',
    (ka) => {
      expect(relative(endAt(ka).modulus, levineSchwingerModulus(ka))).toBeLessThan(silva.relativeError);
    },
  );

  it('radiates no more than it is given, up to ka = 3.5', () => {
    for (let ka = 0.01; ka <= silva.largestKa; ka += 0.01) {
      expect(endAt(ka).modulus).toBeLessThan(1);
    }
  });

  it('radiates (ka)²/4 of the characteristic impedance at low frequency', () => {
    const a = 0.01;
    const ka = 1e-3;
    const out = new Float64Array(4);
    openEndImpedanceAt(a, (ka / a) * (air.soundSpeed / (2 * Math.PI)), air, 0, out);
    const z0 = (air.density * air.soundSpeed) / (Math.PI * a * a);
    // Resistance (1 − |R|)/(1 + |R|) to first order: 1.3 − 0.8 = 0.5, halved.
    expect(relative(out[0] / z0, ka ** 2 / 4)).toBeLessThan(10 * ka ** 2);
  });
});

describe('the flange of a rim', () => {
  it('is the unflanged end without a rim and the flanged end with an endless one', () => {
    expect(relative(flangedEndLength(0.01, 0), 0.01 * unflanged)).toBeLessThan(ROUNDING);
    expect(relative(flangedEndLength(0.01, 1e12), 0.01 * flanged)).toBeLessThan(ROUNDING);
  });

  it('follows Dalmont, Nederveen & Joly 2001 between', () => {
    const { c } = published<{ c: number }>('dalmont-2001/flange');
    for (const share of [0.2, 0.5, 0.8, 0.95]) {
      const wanted = flanged + share * (unflanged - flanged) + c * share * (1 - share ** 5);
      expect(relative(flangedEndLength(0.01, 0.01 / share - 0.01) / 0.01, wanted)).toBeLessThan(ROUNDING);
    }
  });
});
