import type { Air } from './air.ts';

/**
 * Dry air at one atmosphere, linear in temperature about 26.85 °C.
 *
 * **Source:** Keefe 1984, JASA 75, 58, table of thermodynamic constants (from memory, confirmed against
 * ISO 9613-1 and ISO 2533 values in the tests).
 * **Holds for:** 15…37 °C.
 */
export function keefeAir(temperatureC: number): Air {
  const d = temperatureC - 26.85;
  return {
    density: 1.1769 * (1 - 0.00335 * d),
    viscosity: 1.846e-5 * (1 + 0.0025 * d),
    heatRatio: 1.4017 * (1 - 0.00002 * d),
    prandtlRoot: 0.841 * (1 - 0.0002 * d),
    soundSpeed: 347.23 * (1 + 0.00166 * d),
  };
}

/** Slopes of {@link keefeAir}'s numbers per °C (they are linear in temperature). */
export const KEEFE_SLOPES: Air = Object.freeze({
  density: -1.1769 * 0.00335,
  viscosity: 1.846e-5 * 0.0025,
  heatRatio: -1.4017 * 0.00002,
  prandtlRoot: -0.841 * 0.0002,
  soundSpeed: 347.23 * 0.00166,
});
