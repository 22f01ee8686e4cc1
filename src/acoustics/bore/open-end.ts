import type { Air } from '../air/air.ts';
import { mul, type Complex } from '../numerics/complex.ts';
import type { OnePort } from '../two-port.ts';

/** Low-frequency end corrections of a round open end, as multiples of its radius. */
export const END_UNFLANGED = 0.6133;
export const END_FLANGED = 0.8216;

/**
 * End correction of a pipe with a round flange, m.
 *
 *   L/a = 0.8216 + (a/R)(0.6133 − 0.8216) + 0.057(a/R)[1 − (a/R)⁵],  R = a + w
 *
 * @param radius a, m, inner radius
 * @param flange w, m, ≥ 0, width of the flange beyond the inner radius
 *
 * **Source:** Dalmont, Nederveen & Joly 2001, J. Sound Vib. 244, 505 (from memory, confirmed by an
 * independent calculation). Ends: Levine & Schwinger 1948 (0.6133), Nomura et al. 1960 (0.8216).
 */
export function flangedEndLength(radius: number, flange: number): number {
  const ratio = radius / (radius + flange);
  return radius * (END_FLANGED + ratio * (END_UNFLANGED - END_FLANGED) + 0.057 * ratio * (1 - ratio ** 5));
}

/** Slope of {@link flangedEndLength} in the radius, the flange's width held. */
export function flangedEndSlope(radius: number, flange: number): number {
  const ratio = radius / (radius + flange);
  const perRatio = END_UNFLANGED - END_FLANGED + 0.057 * (1 - 6 * ratio ** 5);
  return flangedEndLength(radius, flange) / radius + perRatio * ratio * (1 - ratio);
}

/**
 * Radiation impedance of an open pipe end without flange, Pa·s/m³, with its slope.
 *
 *   x = (ka)²,  |R| = (1 + 0.8x)/(1 + 1.3x + 0.266x² + 0.0263x³)
 *   ℓ/a = 0.6133(1 + 0.0599x)/(1 + 0.238x − 0.0153x² + 0.0015x³)
 *   R = −|R|e^{−2jkℓ},  Z = (ρc/πa²)(1 + R)/(1 − R)
 *
 * @param radius a, m
 * @param f      Hz
 * @param extra  m, added to ℓ: a bell's own correction, default 0
 * @param out    Z and dZ/df
 *
 * **Source:** Silva et al. 2009, J. Sound Vib. 322, 255 (from memory, confirmed to 1–3 % against the
 * Levine–Schwinger integral). **Holds for:** ka < 3.5.
 */
export function openEndImpedanceAt(radius: number, f: number, air: Air, extra: number, out: OnePort): void {
  const k = (2 * Math.PI * f) / air.soundSpeed;
  const x = (k * radius) ** 2;
  const top = 1 + 0.8 * x;
  const bottom = 1 + x * (1.3 + x * (0.266 + x * 0.0263));
  const modulus = top / bottom;
  const lTop = 0.6133 * radius * (1 + 0.0599 * x);
  const lBottom = 1 + x * (0.238 + x * (-0.0153 + x * 0.0015));
  const length = lTop / lBottom + extra;
  // x ∝ f², so f·d/df = 2x·d/dx.
  const dLogModulus = (2 * x * (0.8 / top - (1.3 + x * (0.532 + x * 0.0789)) / bottom)) / f;
  const dLength =
    (2 *
      x *
      (lTop / lBottom) *
      (0.0599 / (1 + 0.0599 * x) - (0.238 + x * (-0.0306 + x * 0.0045)) / lBottom)) /
    f;

  const phase = -2 * k * length;
  const rRe = -modulus * Math.cos(phase);
  const rIm = -modulus * Math.sin(phase);
  const dPhase = phase / f - 2 * k * dLength;
  const drRe = rRe * dLogModulus - rIm * dPhase;
  const drIm = rIm * dLogModulus + rRe * dPhase;

  // (1 + R)/(1 − R) and its derivative 2R'/(1 − R)².
  const z0 = (air.density * air.soundSpeed) / (Math.PI * radius * radius);
  const qRe = 1 - rRe;
  const norm = qRe * qRe + rIm * rIm;
  out[0] = (z0 * (1 - rRe * rRe - rIm * rIm)) / norm;
  out[1] = (z0 * 2 * rIm) / norm;
  const sRe = qRe * qRe - rIm * rIm;
  const sIm = -2 * qRe * rIm;
  const sNorm = sRe * sRe + sIm * sIm;
  out[2] = (2 * z0 * (drRe * sRe + drIm * sIm)) / sNorm;
  out[3] = (2 * z0 * (drIm * sRe - drRe * sIm)) / sNorm;
}

/**
 * How that impedance answers to the correction, Pa·s/m³ per m of `extra`:
 *
 *   dR/dℓ = −2jkR,  dZ/dℓ = (2ρc/πa²)·(dR/dℓ)/(1 − R)²
 *
 * @param z Z at the same radius, frequency and correction, as {@link openEndImpedanceAt} writes it
 */
export function openEndPerLength(radius: number, f: number, air: Air, z: Complex): Complex {
  const k = (2 * Math.PI * f) / air.soundSpeed;
  const z0 = (air.density * air.soundSpeed) / (Math.PI * radius * radius);
  // With R = (z − 1)/(z + 1), z = Z/z0: R/(1 − R)² = (z² − 1)/4.
  const re = z.re / z0;
  const im = z.im / z0;
  const square = { re: re * re - im * im - 1, im: 2 * re * im };
  return mul({ re: 0, im: -k * z0 }, square);
}
