import type { Air } from '../air/air.ts';
import { leakAdmittanceAt, type LeakSlit } from './leak-slit.ts';

/**
 * How a leak ends the chimney: ℓ, its admittance over the hole's area, radiation resistance in series.
 *
 *   1/ℓ = S_h/Y_slit + R,   R = πρS_h f²/c
 *
 * An admittance, because a leak of no width is then simply ℓ = 0, a closed hole.
 */

/**
 * Where {@link leakTermsAt} writes: Y_slit and its slopes as leakAdmittanceAt leaves them (0…5), ℓ (6, 7, re
 * and im, m/(Pa·s)), R (8) and S_h (9).
 */
export type LeakTerms = Float64Array;

/** Room for one leak's terms. */
export function makeLeakTerms(): LeakTerms {
  return new Float64Array(10);
}

/** The hole that leaks, as its tube has it. */
export interface LeakingHole {
  /** S_h, m² */
  readonly area: number;
  /** πρS_h/c, per Hz² */
  readonly radiationPerHz2: number;
}

/** Computes ℓ; zero where the pad seals. @param f Hz */
export function leakTermsAt(
  leak: LeakSlit | null,
  { area, radiationPerHz2 }: LeakingHole,
  f: number,
  air: Air,
  out: LeakTerms,
): void {
  if (leak === null) {
    out[6] = 0;
    out[7] = 0;
    return;
  }
  leakAdmittanceAt(leak, f, air, out);
  const sRe = out[0] / area;
  const sIm = out[1] / area;
  const r = radiationPerHz2 * f * f;
  const dRe = 1 + r * sRe;
  const dIm = r * sIm;
  const norm = dRe * dRe + dIm * dIm;
  out[6] = (sRe * dRe + sIm * dIm) / norm;
  out[7] = (sIm * dRe - sRe * dIm) / norm;
  out[8] = r;
  out[9] = area;
}

/** How a leak moves. */
export interface LeakMotion {
  /** of the logarithm of Y_slit/S_h, friction and geometry held */
  readonly log: number;
  /** of the logarithm of the friction's u */
  readonly friction: number;
  /** of the hole's radius, m */
  readonly radius: number;
  /** of the logarithm of R */
  readonly radiation: number;
}

/** Writes dℓ along a motion into `into[at]` and `into[at + 1]`: dℓ = (1 − Rℓ)² ds − ℓ² dR, s = Y_slit/S_h. */
export function writeLeakMotion(terms: LeakTerms, motion: LeakMotion, into: Float64Array, at: number): void {
  const { log, friction, radius, radiation } = motion;
  const area = terms[9];
  const dsRe = (log * terms[0] + friction * terms[2] + radius * terms[4]) / area;
  const dsIm = (log * terms[1] + friction * terms[3] + radius * terms[5]) / area;
  const lRe = terms[6];
  const lIm = terms[7];
  const gRe = 1 - terms[8] * lRe;
  const gIm = -terms[8] * lIm;
  const g2Re = gRe * gRe - gIm * gIm;
  const g2Im = 2 * gRe * gIm;
  const dr = radiation * terms[8];
  into[at] = g2Re * dsRe - g2Im * dsIm - dr * (lRe * lRe - lIm * lIm);
  into[at + 1] = g2Re * dsIm + g2Im * dsRe - dr * 2 * lRe * lIm;
}
