import type { Air } from '../../air/air.ts';

/**
 * Friction in the thin gap of a nearly closed pad.
 *
 * A slit of opening g carries an oscillating flow whose inertia is that of the frictionless slit times
 *
 *   K = 1/(1 − tanh(u)/u),  u = (g/2)√(jωρ/η)
 *
 * Wide or fast, K → 1; narrow or slow, K → 12η/(jωρg²), which turns the slit's inertance into its resistance.
 *
 * **Source:** slit form of Zwikker & Kosten 1949; radial leak from Reynolds' lubrication theory (both from
 * memory, confirmed against each other in the tests).
 */

/** Below this |u| the series takes over: the closed form loses |u|⁻² of its digits, the series errs by |u|⁶. */
const SERIES_BELOW = 0.08;

/**
 * Where {@link gapFrictionAt} writes: K − 1 (0, 1) and its slope dK/d ln u (2, 3), re and im. ln u grows with
 * the logarithm of the gap, and by half that of frequency and of ρ/η.
 */
export type GapFriction = Float64Array;

/**
 * What friction adds to the inertia of a thin gap, as a share of it.
 *
 *   u·dK/du = K²(1 − u²T² − T),  T = tanh(u)/u
 *
 * @param f   Hz, > 0
 * @param gap g, m, > 0
 */
export function gapFrictionAt(
  f: number,
  gap: number,
  air: Pick<Air, 'density' | 'viscosity'>,
  out: GapFriction,
): void {
  // u = x(1 + j), so that u² = 2jx².
  const x = (gap / 2) * Math.sqrt((Math.PI * f * air.density) / air.viscosity);
  const square = 2 * x * x;
  if (x * Math.SQRT2 < SERIES_BELOW) {
    // K = 3/u² + 6/5 − u²/175 + 2u⁴/7875 − …, u² = j·square.
    out[0] = 1 / 5 - (2 * square * square) / 7875;
    out[1] = -3 / square - square / 175;
    out[2] = -(8 * square * square) / 7875;
    out[3] = 6 / square - (2 * square) / 175;
    return;
  }
  // tanh u = (1 − E)/(1 + E), E = e^{−2u}; beyond x = 20 it is 1 to the last digit.
  const size = x > 20 ? 0 : Math.exp(-2 * x);
  const eRe = size === 0 ? 0 : size * Math.cos(2 * x);
  const eIm = size === 0 ? 0 : -size * Math.sin(2 * x);
  const norm = (1 + eRe) * (1 + eRe) + eIm * eIm;
  const hRe = (1 - eRe * eRe - eIm * eIm) / norm;
  const hIm = (-2 * eIm) / norm;
  // T = tanh(u)/u, 1/u = (1 − j)/(2x)
  const half = 1 / (2 * x);
  const tRe = half * (hRe + hIm);
  const tIm = half * (hIm - hRe);
  const below = (1 - tRe) * (1 - tRe) + tIm * tIm;
  const kRe = (1 - tRe) / below;
  const kIm = tIm / below;
  out[0] = kRe - 1;
  out[1] = kIm;
  // 1 − u²T² − T, u²T² = tanh²u
  const bRe = 1 - (hRe * hRe - hIm * hIm) - tRe;
  const bIm = -2 * hRe * hIm - tIm;
  const k2Re = kRe * kRe - kIm * kIm;
  const k2Im = 2 * kRe * kIm;
  out[2] = k2Re * bRe - k2Im * bIm;
  out[3] = k2Re * bIm + k2Im * bRe;
}

/**
 * Resistance of a slow leak out of a ring-shaped slit, Pa·s/m³: 6η ln(r₂/r₁)/(πg³).
 *
 * @param slit gap g, inner and outer radius, m
 */
export function radialLeakResistance(
  slit: { readonly gap: number; readonly inner: number; readonly outer: number },
  viscosity: number,
): number {
  return (6 * viscosity * Math.log(slit.outer / slit.inner)) / (Math.PI * slit.gap ** 3);
}
