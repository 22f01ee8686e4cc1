import { describe, expect, it } from 'vitest';
import { airAtTemperature, besselRatioAt } from '../../../src/acoustics/index.ts';
import { lineTermsAt, makeLineTerms, makeWalls } from '../../../src/acoustics/bore/wall-losses.ts';
import { DIFFERENCE, relativeComplex } from '../tolerances.ts';

const air = airAtTemperature(24);
/** What the terms kept of the series for thin layers promise. */
const SERIES = 2e-14;

/** Z'S and Y'/S straight from the definition, by the Bessel ratio alone. */
function fromDefinition(radius: number, f: number): [number, number, number, number] {
  const omega = 2 * Math.PI * f;
  const s = radius * Math.sqrt((air.density * omega) / air.viscosity);
  const g = new Float64Array(2);
  const loss = (at: number): [number, number] => {
    besselRatioAt(at, g);
    return [(Math.SQRT2 / at) * (g[0] - g[1]), (Math.SQRT2 / at) * (g[0] + g[1])];
  };
  const [vRe, vIm] = loss(s);
  const norm = (1 - vRe) ** 2 + vIm ** 2;
  const [tRe, tIm] = loss(air.prandtlRoot * s);
  const compliance = omega / (air.density * air.soundSpeed ** 2);
  const heat = air.heatRatio - 1;
  return [
    (-omega * air.density * vIm) / norm,
    (omega * air.density * (1 - vRe)) / norm,
    -compliance * heat * tIm,
    compliance * (1 + heat * tRe),
  ];
}

describe('the line terms', () => {
  it('are the definition, from a hair-thin vent to a bell, through every number of terms', () => {
    const out = makeLineTerms();
    for (let radius = 0.00005; radius < 0.07; radius *= 1.07) {
      for (const f of [50, 213, 700, 2000]) {
        lineTermsAt(makeWalls(radius, air), f, out, false);
        const [zRe, zIm, yRe, yIm] = fromDefinition(radius, f);
        expect(relativeComplex(out[0], out[1], zRe, zIm)).toBeLessThan(SERIES);
        expect(relativeComplex(out[2], out[3], yRe, yIm)).toBeLessThan(SERIES);
      }
    }
  });

  it('have the slope of a central difference on both routes', () => {
    const out = makeLineTerms();
    const a = makeLineTerms();
    const b = makeLineTerms();
    for (const radius of [0.0003, 0.001, 0.003, 0.01, 0.05]) {
      const walls = makeWalls(radius, air);
      const f = 400;
      const h = 1e-3;
      lineTermsAt(walls, f, out, true);
      lineTermsAt(walls, f - h, a, false);
      lineTermsAt(walls, f + h, b, false);
      for (const i of [0, 2]) {
        const re = (b[i] - a[i]) / (2 * h);
        const im = (b[i + 1] - a[i + 1]) / (2 * h);
        expect(relativeComplex(re, im, out[4 + i], out[5 + i])).toBeLessThan(DIFFERENCE);
      }
    }
  });
});
