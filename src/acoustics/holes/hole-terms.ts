import { lossyLineAt, makeLossyLine, writeLineMotion, type LossyLine } from '../bore/lossy-line.ts';
import { lineTermsAt, makeLineTerms, type LineTerms } from '../bore/wall-losses.ts';
import type { Complex } from '../numerics/complex.ts';
import type { HoleTube } from './hole-tube.ts';
import { leakTermsAt, makeLeakTerms, type LeakTerms } from './leak-terms.ts';
import { gapFrictionAt, type GapFriction } from './pad-gap/gap-viscosity.ts';

/**
 * What a hole's shunt admittance Y_s is made of at one frequency, and how it moves with any of it.
 *
 * The chimney is a lossy tube with z, y, σ, χ ({@link LossyLine}); x stands for what ends it, i = jωρt_i for what
 * lies between it and the bore.
 *
 *   open    x = e = Z_e·S_h        N = χ + yσe      M = χe + zσ
 *   closed  x = ℓ = Y_leak/S_h     N = yσ + χℓ      M = χ + zσℓ      ℓ = 0 where the pad seals
 *
 *   Y_s/S_h = q = N/B,  B = M + iN
 */
export interface HoleTerms {
  /** per metre of chimney, with slopes where asked for */
  readonly perMetre: LineTerms;
  readonly chimney: LossyLine;
  /** of the thin gap under the pad; 0 where there is none */
  readonly friction: GapFriction;
  readonly leak: LeakTerms;
  /**
   * Complex numbers as re, im pairs.
   *
   *   0, 1  yσ     2, 3  x     4, 5  N     6, 7  M     8, 9  B     10, 11  q     12  i, its imaginary part
   *   13, 14  zσ
   */
  readonly ends: Float64Array;
}

/** Room for one hole's terms. */
export function makeHoleTerms(): HoleTerms {
  return {
    perMetre: makeLineTerms(),
    chimney: makeLossyLine(),
    friction: new Float64Array(4),
    leak: makeLeakTerms(),
    ends: new Float64Array(15),
  };
}

/**
 * Computes Y_s/S_h and all it is made of.
 *
 * @param f     Hz
 * @param extra Pa·s/m, what stands outside the opening besides, times S_h
 */
export function holeTermsAt(
  tube: HoleTube,
  f: number,
  out: HoleTerms,
  withSlope: boolean,
  extra: Complex | undefined,
): void {
  const { chimney, ends } = out;
  lineTermsAt(tube.walls, f, out.perMetre, withSlope);
  lossyLineAt(out.perMetre, tube.length, chimney);
  ends[0] = chimney[6] * chimney[0] - chimney[7] * chimney[1];
  ends[1] = chimney[6] * chimney[1] + chimney[7] * chimney[0];
  ends[13] = chimney[4] * chimney[0] - chimney[5] * chimney[1];
  ends[14] = chimney[4] * chimney[1] + chimney[5] * chimney[0];
  if (tube.endPerHz === Infinity) endClosed(tube, f, out);
  else endOpen(tube, f, out, extra);
  const inner = tube.innerPerHz * f;
  const nRe = ends[4];
  const nIm = ends[5];
  const bRe = ends[6] - inner * nIm;
  const bIm = ends[7] + inner * nRe;
  const norm = bRe * bRe + bIm * bIm;
  ends[8] = bRe;
  ends[9] = bIm;
  ends[10] = (nRe * bRe + nIm * bIm) / norm;
  ends[11] = (nIm * bRe - nRe * bIm) / norm;
  ends[12] = inner;
}

/** x, N and M of an open hole: jωρ·endLength with the gap's friction, radiation, and what stands outside. */
function endOpen(tube: HoleTube, f: number, { chimney, friction, ends }: HoleTerms, extra?: Complex): void {
  if (tube.gapPerHz > 0) gapFrictionAt(f, tube.gap, tube.walls.air, friction);
  else for (let i = 0; i < 4; i++) friction[i] = 0;
  // jωρ·share·(K − 1) beside the frictionless end.
  const rub = tube.gapPerHz * f;
  const eRe = tube.radiationPerHz2 * f * f + tube.flowResistance - rub * friction[1] + (extra?.re ?? 0);
  const eIm = tube.endPerHz * f + rub * friction[0] + (extra?.im ?? 0);
  const chRe = chimney[8];
  const chIm = chimney[9];
  ends[2] = eRe;
  ends[3] = eIm;
  ends[4] = chRe + ends[0] * eRe - ends[1] * eIm;
  ends[5] = chIm + ends[0] * eIm + ends[1] * eRe;
  ends[6] = chRe * eRe - chIm * eIm + ends[13];
  ends[7] = chRe * eIm + chIm * eRe + ends[14];
}

/** x, N and M of a closed hole: the slit of a leak, or nothing. */
function endClosed(tube: HoleTube, f: number, { chimney, friction, leak, ends }: HoleTerms): void {
  for (let i = 0; i < 4; i++) friction[i] = 0;
  leakTermsAt(tube.leak, tube, f, tube.walls.air, leak);
  const lRe = leak[6];
  const lIm = leak[7];
  const chRe = chimney[8];
  const chIm = chimney[9];
  ends[2] = lRe;
  ends[3] = lIm;
  ends[4] = ends[0] + chRe * lRe - chIm * lIm;
  ends[5] = ends[1] + chRe * lIm + chIm * lRe;
  ends[6] = chRe + ends[13] * lRe - ends[14] * lIm;
  ends[7] = chIm + ends[13] * lIm + ends[14] * lRe;
}

/** Small changes of z (0, 1), y (2, 3) and x (4, 5), re and im, and of i (6, imaginary part). */
export type HoleMotion = Float64Array;

/** Room for one motion. */
export function makeHoleMotion(): HoleMotion {
  return new Float64Array(7);
}

const moved = new Float64Array(6);

/**
 * Writes S_h·dq along a motion into out[at] and out[at + 1], after {@link holeTermsAt}.
 *
 *   (N/B)' = (N' − qB')/B
 */
export function writeHoleSlope(
  tube: HoleTube,
  { chimney, ends }: HoleTerms,
  motion: HoleMotion,
  out: Float64Array,
  at: number,
): void {
  writeChimneyMotion(chimney, motion, moved);
  const closed = tube.endPerHz === Infinity;
  // A pad that seals has no end to move.
  const sealed = closed && tube.leak === null;
  const xRe = ends[2];
  const xIm = ends[3];
  const dxRe = sealed ? 0 : motion[4];
  const dxIm = sealed ? 0 : motion[5];
  // Open, N = χ + yσx and M = zσ + χx; closed, N = yσ + χx and M = χ + zσx: in each a first term and a factor of x.
  const dn0Re = closed ? moved[2] : moved[0];
  const dn0Im = closed ? moved[3] : moved[1];
  const nxRe = closed ? chimney[8] : ends[0];
  const nxIm = closed ? chimney[9] : ends[1];
  const dnxRe = closed ? moved[0] : moved[2];
  const dnxIm = closed ? moved[1] : moved[3];
  const dm0Re = closed ? moved[0] : moved[4];
  const dm0Im = closed ? moved[1] : moved[5];
  const mxRe = closed ? ends[13] : chimney[8];
  const mxIm = closed ? ends[14] : chimney[9];
  const dmxRe = closed ? moved[4] : moved[0];
  const dmxIm = closed ? moved[5] : moved[1];
  const dnRe = dn0Re + dnxRe * xRe - dnxIm * xIm + nxRe * dxRe - nxIm * dxIm;
  const dnIm = dn0Im + dnxRe * xIm + dnxIm * xRe + nxRe * dxIm + nxIm * dxRe;
  const dmRe = dm0Re + dmxRe * xRe - dmxIm * xIm + mxRe * dxRe - mxIm * dxIm;
  const dmIm = dm0Im + dmxRe * xIm + dmxIm * xRe + mxRe * dxIm + mxIm * dxRe;
  const inner = ends[12];
  const dInner = motion[6];
  const dbRe = dmRe - inner * dnIm - dInner * ends[5];
  const dbIm = dmIm + inner * dnRe + dInner * ends[4];
  const tRe = dnRe - (ends[10] * dbRe - ends[11] * dbIm);
  const tIm = dnIm - (ends[10] * dbIm + ends[11] * dbRe);
  const bRe = ends[8];
  const bIm = ends[9];
  const norm = bRe * bRe + bIm * bIm;
  out[at] = (tube.area * (tRe * bRe + tIm * bIm)) / norm;
  out[at + 1] = (tube.area * (tIm * bRe - tRe * bIm)) / norm;
}

const lineMotion = new Float64Array(4);

/** Writes how χ (0, 1), yσ (2, 3) and zσ (4, 5) of the chimney move: dw = y dz + z dy, and the products. */
function writeChimneyMotion(chimney: LossyLine, motion: HoleMotion, out: Float64Array): void {
  const sRe = chimney[0];
  const sIm = chimney[1];
  const zRe = chimney[4];
  const zIm = chimney[5];
  const yRe = chimney[6];
  const yIm = chimney[7];
  const dzRe = motion[0];
  const dzIm = motion[1];
  const dyRe = motion[2];
  const dyIm = motion[3];
  const dwRe = dzRe * yRe - dzIm * yIm + zRe * dyRe - zIm * dyIm;
  const dwIm = dzRe * yIm + dzIm * yRe + zRe * dyIm + zIm * dyRe;
  writeLineMotion(chimney, dwRe, dwIm, lineMotion);
  const dsRe = lineMotion[0];
  const dsIm = lineMotion[1];
  out[0] = lineMotion[2];
  out[1] = lineMotion[3];
  out[2] = dyRe * sRe - dyIm * sIm + yRe * dsRe - yIm * dsIm;
  out[3] = dyRe * sIm + dyIm * sRe + yRe * dsIm + yIm * dsRe;
  out[4] = dzRe * sRe - dzIm * sIm + zRe * dsRe - zIm * dsIm;
  out[5] = dzRe * sIm + dzIm * sRe + zRe * dsIm + zIm * dsRe;
}
