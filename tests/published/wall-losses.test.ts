import { describe, expect, it } from 'vitest';
import { airAtTemperature, makeWallTerms, REFERENCE_C, wallTermsAt } from '../../src/acoustics/index.ts';
import { printedDecimals, relative } from '../acoustics/tolerances.ts';
import { published } from './published-values.ts';

/** The page states neither its air (ρc moves 1 % from 20 to 30 °C) nor whether losses are in Z_c (another 1 %). */
const UNSTATED_AIR = 0.02;

const air = airAtTemperature(REFERENCE_C);

/** Γ/k and Z_c/Z₀ of a tube whose radius gives the wanted r_v. */
function termsAtLayerNumber(rv: number): { zcRe: number; zcIm: number; gammaRe: number; gammaIm: number } {
  const f = 300;
  const omega = 2 * Math.PI * f;
  const radius = rv / Math.sqrt((air.density * omega) / air.viscosity);
  const out = makeWallTerms();
  wallTermsAt(radius, f, air, out);
  const k = omega / air.soundSpeed;
  const rhoC = air.density * air.soundSpeed;
  return { zcRe: out[2] / rhoC, zcIm: out[3] / rhoC, gammaRe: out[0] / k, gammaIm: out[1] / k };
}

describe('wall losses against published values', () => {
  const exact = published<{
    values: { rv: number; zcRe: number; zcIm: number; gammaRe: number; gammaIm: number }[];
  }>('keefe-1984/wall-losses');

  it.each(exact.values)('the exact form at r_v = $rv gives every printed digit', (row) => {
    const mine = termsAtLayerNumber(row.rv);
    for (const key of ['zcRe', 'zcIm', 'gammaRe', 'gammaIm'] as const) {
      // A unit in the last digit: the printed values were cut, some of them, not rounded.
      expect(Math.abs(mine[key] - row[key])).toBeLessThan(2 * printedDecimals(6));
    }
  });

  it('a 7.8 mm steel pipe at 200 Hz has the attenuation and impedance on the UNSW page', () => {
    const pipe = published<{
      boreMm: number;
      frequencyHz: number;
      attenuation: number;
      characteristicImpedance: number;
    }>('unsw/steel-pipe');
    const radius = pipe.boreMm / 2000;
    const out = makeWallTerms();
    wallTermsAt(radius, pipe.frequencyHz, air, out);
    expect(Math.abs(out[0] - pipe.attenuation)).toBeLessThan(printedDecimals(2));
    const zc = Math.hypot(out[2], out[3]) / (Math.PI * radius ** 2);
    expect(relative(zc, pipe.characteristicImpedance)).toBeLessThan(UNSTATED_AIR);
  });

  describe('the series of Keefe 1984', () => {
    const series = published<{ gammaIm: number[]; gammaRe: number[]; zcRe: number[]; zcIm: number[] }>(
      'keefe-1984/series',
    );
    const sum = (c: number[], rv: number): number => c.reduce((s, a, i) => s + a / rv ** (i + 1), 0);
    /** What a series leaves out is of the order of its first dropped power; Im Γ and Re Z_c stop after one. */
    const dropped = (c: number[], rv: number): number => 1.2 / rv ** (c.length + 1) + 1e-3 / rv;

    it.each([10, 20, 40, 80, 160])(
      'lies within its first dropped power of the exact form at r_v = %d',
      (rv) => {
        const mine = termsAtLayerNumber(rv);
        expect(Math.abs(mine.gammaIm - 1 - sum(series.gammaIm, rv))).toBeLessThan(
          dropped(series.gammaIm, rv),
        );
        expect(Math.abs(mine.gammaRe - sum(series.gammaRe, rv))).toBeLessThan(dropped(series.gammaRe, rv));
        expect(Math.abs(mine.zcRe - 1 - sum(series.zcRe, rv))).toBeLessThan(dropped(series.zcRe, rv));
        expect(Math.abs(mine.zcIm - sum(series.zcIm, rv))).toBeLessThan(dropped(series.zcIm, rv));
      },
    );

    it('is no use for a register vent: at r_v = 1 it misses the attenuation by a quarter', () => {
      const mine = termsAtLayerNumber(1);
      expect(Math.abs(sum(series.gammaRe, 1) / mine.gammaRe - 1)).toBeGreaterThan(0.25);
    });
  });
});
