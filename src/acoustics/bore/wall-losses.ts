import type { Air } from '../air/air.ts';
import { besselRatioAt } from '../numerics/bessel-ratio.ts';

/**
 * Where {@link wallTermsAt} writes: complex numbers as re, im pairs.
 *
 *   0, 1  Γ        propagation constant, 1/m
 *   2, 3  z        specific characteristic impedance Z_c·S, Pa·s/m
 *   4, 5  dΓ/df    per Hz
 *   6, 7  dz/df    per Hz
 */
export type WallTerms = Float64Array;

/** Room for one piece's wall terms. */
export function makeWallTerms(): WallTerms {
  return new Float64Array(8);
}

const g = new Float64Array(2);

/**
 * Propagation constant and characteristic impedance of a round tube with viscous and thermal layers,
 * in the exact form, with their slopes in frequency.
 *
 *   v = 1 − F(x_v),  y = 1 + (γ−1)F(x_t),  F(x) = 2J₁(x)/(x J₀(x)),  x = s·e^{−jπ/4}
 *   Γ = jk√(y/v),  Z_c·S = ρc/√(vy)   (both with positive real part)
 *   s_v = r√(ρω/η),  s_t = ν s_v,  ω·dF/dω = 1 + g² − F,  g = J₁/J₀
 *
 * @param radius    r, m, > 0
 * @param frequency f, Hz, > 0
 * @param out       see {@link WallTerms}
 *
 * **Source:** Zwikker & Kosten 1949; Keefe 1984, JASA 75, 58 (from memory, confirmed by the exact values in
 * the tests). The slope is ours, from Bessel's equation.
 * **Holds for:** any radius below the first cross mode.
 */
export function wallTermsAt(radius: number, frequency: number, air: Air, out: WallTerms): void {
  const omega = 2 * Math.PI * frequency;
  const k = omega / air.soundSpeed;
  const sv = radius * Math.sqrt((air.density * omega) / air.viscosity);

  besselRatioAt(sv, g);
  // F = 2g/x with 1/x = (1 + j)/(√2 s)
  const scaleV = Math.SQRT2 / sv;
  const fvRe = scaleV * (g[0] - g[1]);
  const fvIm = scaleV * (g[0] + g[1]);
  const vRe = 1 - fvRe;
  const vIm = -fvIm;
  // ω dv/dω = −(1 + g² − F)
  const vdRe = -(1 + g[0] * g[0] - g[1] * g[1] - fvRe);
  const vdIm = -(2 * g[0] * g[1] - fvIm);

  besselRatioAt(air.prandtlRoot * sv, g);
  const scaleT = Math.SQRT2 / (air.prandtlRoot * sv);
  const ftRe = scaleT * (g[0] - g[1]);
  const ftIm = scaleT * (g[0] + g[1]);
  const heat = air.heatRatio - 1;
  const yRe = 1 + heat * ftRe;
  const yIm = heat * ftIm;
  const ydRe = heat * (1 + g[0] * g[0] - g[1] * g[1] - ftRe);
  const ydIm = heat * (2 * g[0] * g[1] - ftIm);

  // q = √(y/v); its argument stays within ±π/4, so the principal root is the wanted one.
  const vNorm = vRe * vRe + vIm * vIm;
  const wRe = (yRe * vRe + yIm * vIm) / vNorm;
  const wIm = (yIm * vRe - yRe * vIm) / vNorm;
  const wAbs = Math.sqrt(wRe * wRe + wIm * wIm);
  const qRe = Math.sqrt(0.5 * (wAbs + wRe));
  const qIm = wIm / (2 * qRe);

  const gammaRe = -k * qIm;
  const gammaIm = k * qRe;
  // z = ρc/(v q)
  const vqRe = vRe * qRe - vIm * qIm;
  const vqIm = vRe * qIm + vIm * qRe;
  const vqNorm = vqRe * vqRe + vqIm * vqIm;
  const rhoC = air.density * air.soundSpeed;
  const zRe = (rhoC * vqRe) / vqNorm;
  const zIm = (-rhoC * vqIm) / vqNorm;

  // Logarithmic slopes: ω v'/v and ω y'/y.
  const lvRe = (vdRe * vRe + vdIm * vIm) / vNorm;
  const lvIm = (vdIm * vRe - vdRe * vIm) / vNorm;
  const yNorm = yRe * yRe + yIm * yIm;
  const lyRe = (ydRe * yRe + ydIm * yIm) / yNorm;
  const lyIm = (ydIm * yRe - ydRe * yIm) / yNorm;
  const lgRe = (1 + 0.5 * (lyRe - lvRe)) / frequency;
  const lgIm = (0.5 * (lyIm - lvIm)) / frequency;
  const lzRe = (-0.5 * (lyRe + lvRe)) / frequency;
  const lzIm = (-0.5 * (lyIm + lvIm)) / frequency;

  out[0] = gammaRe;
  out[1] = gammaIm;
  out[2] = zRe;
  out[3] = zIm;
  out[4] = gammaRe * lgRe - gammaIm * lgIm;
  out[5] = gammaRe * lgIm + gammaIm * lgRe;
  out[6] = zRe * lzRe - zIm * lzIm;
  out[7] = zRe * lzIm + zIm * lzRe;
}
