import type { Air } from '../air/air.ts';
import type { TwoPort } from '../two-port.ts';
import { makeWallTerms, wallTermsAt } from './wall-losses.ts';

/** One short cone (or cylinder) of bore, from its mouthpiece end to its bell end. Metres. */
export interface ConePiece {
  readonly length: number;
  /** radius at the mouthpiece end */
  readonly r1: number;
  /** radius at the bell end */
  readonly r2: number;
  readonly air: Air;
  /** radius that stands for the piece in the wall losses, (r2 − r1)/ln(r2/r1) */
  readonly rEq: number;
}

/** The longest piece that may stand for a cone with losses: an error of about 0.01 cent and 0.1 % in height. */
export const LONGEST_PIECE = 0.05;

const wall = makeWallTerms();

/**
 * Checks and freezes a cone piece.
 *
 * @param length m, > 0 (at most {@link LONGEST_PIECE} for accurate losses; cut with `cutBore`)
 * @param r1     m, > 0, mouthpiece end
 * @param r2     m, > 0, bell end
 * @throws RangeError naming the value
 */
export function makeConePiece(length: number, r1: number, r2: number, air: Air): ConePiece {
  if (!(length > 0 && length < 20)) throw new RangeError(`invalid length: ${length} m; expected 0 to 20 m`);
  for (const r of [r1, r2]) {
    if (!(r > 0 && r < 1)) throw new RangeError(`invalid bore radius: ${r} m; expected 0 to 1 m`);
  }
  const ratio = r2 / r1 - 1;
  // (r2−r1)/ln(r2/r1) loses its digits as r2 → r1; below 1e-4 its series is exact to rounding.
  const rEq =
    Math.abs(ratio) < 1e-4 ? r1 * (1 + ratio / 2 - (ratio * ratio) / 12) : (r2 - r1) / Math.log(r2 / r1);
  return { length, r1, r2, air, rEq };
}

/**
 * Two-port of a cone with wall losses (spherical waves).
 *
 *   s = ΓL,  m = sinh s/s,  m' = (cosh s − m)/s,  t₁ = (r₂−r₁)/r₁,  t₂ = (r₂−r₁)/r₂
 *   A = (r₂/r₁)cosh s − t₁m         B = z sinh s/(πr₁r₂)
 *   C = (πr₁r₂/z)(sinh s + t₁t₂m')   D = (r₁/r₂)cosh s + t₂m
 *
 * Γ and the specific impedance z are taken at the radius rEq. A cylinder is the case t₁ = t₂ = 0 and needs
 * no branch.
 *
 * @param f   Hz, > 0
 * @param out A…D and their slopes per Hz
 *
 * **Source:** derived from the spherical wave equation in the cone (Benade 1988, JASA 83, 1764, lossless
 * form); losses by pieces after Keefe 1984. Slopes by the chain rule.
 * **Holds for:** pieces ≤ 5 cm: 0.01 cent, 0.1 % in height against finer cutting (tested).
 */
export function coneTwoPortAt(piece: ConePiece, f: number, out: TwoPort, withSlope: boolean): void {
  wallTermsAt(piece.rEq, f, piece.air, wall);
  const { length, r1, r2 } = piece;
  const sr = wall[0] * length;
  const si = wall[1] * length;
  const grow = Math.exp(sr);
  const coshR = 0.5 * (grow + 1 / grow);
  const sinhR = 0.5 * (grow - 1 / grow);
  const cos = Math.cos(si);
  const sin = Math.sin(si);
  const chRe = coshR * cos;
  const chIm = sinhR * sin;
  const shRe = sinhR * cos;
  const shIm = coshR * sin;

  const sNorm = sr * sr + si * si;
  const iRe = sr / sNorm;
  const iIm = -si / sNorm;
  const mRe = shRe * iRe - shIm * iIm;
  const mIm = shRe * iIm + shIm * iRe;
  const m1Re = (chRe - mRe) * iRe - (chIm - mIm) * iIm;
  const m1Im = (chRe - mRe) * iIm + (chIm - mIm) * iRe;

  const up = r2 / r1;
  const t1 = (r2 - r1) / r1;
  const t2 = (r2 - r1) / r2;
  const area = Math.PI * r1 * r2;
  const zRe = wall[2];
  const zIm = wall[3];
  const zNorm = zRe * zRe + zIm * zIm;
  const yRe = (area * zRe) / zNorm;
  const yIm = (-area * zIm) / zNorm;
  const kRe = shRe + t1 * t2 * m1Re;
  const kIm = shIm + t1 * t2 * m1Im;

  out[0] = up * chRe - t1 * mRe;
  out[1] = up * chIm - t1 * mIm;
  out[2] = (zRe * shRe - zIm * shIm) / area;
  out[3] = (zRe * shIm + zIm * shRe) / area;
  out[4] = yRe * kRe - yIm * kIm;
  out[5] = yRe * kIm + yIm * kRe;
  out[6] = chRe / up + t2 * mRe;
  out[7] = chIm / up + t2 * mIm;
  if (!withSlope) return;

  // ds/df, the logarithmic slope of z, and m'' = (sinh s − 2m')/s.
  const dsRe = wall[4] * length;
  const dsIm = wall[5] * length;
  const lzRe = (wall[6] * zRe + wall[7] * zIm) / zNorm;
  const lzIm = (wall[7] * zRe - wall[6] * zIm) / zNorm;
  const m2Re = (shRe - 2 * m1Re) * iRe - (shIm - 2 * m1Im) * iIm;
  const m2Im = (shRe - 2 * m1Re) * iIm + (shIm - 2 * m1Im) * iRe;

  const aRe = up * shRe - t1 * m1Re;
  const aIm = up * shIm - t1 * m1Im;
  out[8] = aRe * dsRe - aIm * dsIm;
  out[9] = aRe * dsIm + aIm * dsRe;
  const bRe = chRe * dsRe - chIm * dsIm;
  const bIm = chRe * dsIm + chIm * dsRe;
  out[10] = out[2] * lzRe - out[3] * lzIm + (zRe * bRe - zIm * bIm) / area;
  out[11] = out[2] * lzIm + out[3] * lzRe + (zRe * bIm + zIm * bRe) / area;
  const cRe = chRe + t1 * t2 * m2Re;
  const cIm = chIm + t1 * t2 * m2Im;
  const eRe = cRe * dsRe - cIm * dsIm;
  const eIm = cRe * dsIm + cIm * dsRe;
  out[12] = yRe * eRe - yIm * eIm - (out[4] * lzRe - out[5] * lzIm);
  out[13] = yRe * eIm + yIm * eRe - (out[4] * lzIm + out[5] * lzRe);
  const dRe = shRe / up + t2 * m1Re;
  const dIm = shIm / up + t2 * m1Im;
  out[14] = dRe * dsRe - dIm * dsIm;
  out[15] = dRe * dsIm + dIm * dsRe;
}
