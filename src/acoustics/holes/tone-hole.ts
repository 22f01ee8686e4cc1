import type { Air } from '../air/air.ts';
import {
  lineTermsAt,
  makeLineTerms,
  makeWalls,
  turnSlopesToRadius,
  turnSlopesToTemperature,
  type Walls,
} from '../bore/wall-losses.ts';
import { mul, type Complex } from '../numerics/complex.ts';
import { evenHyperbolicsAt } from '../numerics/even-hyperbolics.ts';
import type { LeakSlit } from './leak-slit.ts';
import { leakTermsAt, makeLeakTerms, writeLeakMotion } from './leak-terms.ts';
import { gapFrictionAt, type GapFriction } from './pad-gap/gap-viscosity.ts';
import type { OnePort } from '../two-port.ts';
import {
  innerLength,
  innerLengthSlope,
  matchingLength,
  matchingLengthSlope,
  type HoleShape,
} from './hole-lengths.ts';

/** A hole under its pad, as the network needs it: how its chimney ends. */
export interface HoleEnd {
  /** m, everything beyond the rim plane as a length of the hole's own area; Infinity when closed */
  readonly endLength: number;
  /** 0 closed … 1 no pad: the hole's acoustic conductance as a share of what it is without a pad */
  readonly ventShare: number;
  /** m, the part of endLength that lies in the thin gap under the pad, and the gap itself; left out without a pad */
  readonly gap?: { readonly share: number; readonly opening: number };
  /** Pa·s/m, resistance times S_h that strong flow adds at the opening; left out when playing softly */
  readonly flowResistance?: number;
  /** the slit a shut pad leaks through; only with endLength Infinity, left out where the pad seals */
  readonly leak?: LeakSlit;
}

export const CLOSED: HoleEnd = Object.freeze({ endLength: Infinity, ventShare: 0 });

/** A hole and its end made ready to compute: its chimney as a lossy tube, its lumped ends. */
export interface HoleTube {
  readonly walls: Walls;
  /** t + t_m, m */
  readonly length: number;
  /** S_h, m² */
  readonly area: number;
  /** 2πρ t_i, per Hz: the inner length's inertance times S_h */
  readonly innerPerHz: number;
  /** 2πρ·endLength, per Hz; Infinity when closed */
  readonly endPerHz: number;
  /** πρS_h/c, per Hz²: the radiation resistance times S_h */
  readonly radiationPerHz2: number;
  /** Pa·s/m, the flow's extra resistance times S_h */
  readonly flowResistance: number;
  /** 2πρ·gap share, per Hz, and the gap, m; 0 without a pad */
  readonly gapPerHz: number;
  readonly gap: number;
  /** what a closed hole leaks through; null where it seals */
  readonly leak: LeakSlit | null;
}

/**
 * m, an end this long lets through less than 1e-20 of what the chimney's own air takes up at any audible
 * frequency: the hole is closed. Beyond it squares would overflow.
 */
const CLOSED_FROM = 1e30;

/** Makes a hole ready to compute. */
export function makeHoleTube(shape: HoleShape, end: HoleEnd, air: Air): HoleTube {
  const area = Math.PI * shape.holeRadius * shape.holeRadius;
  const walls = makeWalls(shape.holeRadius, air);
  return {
    walls,
    length: shape.chimney + matchingLength(shape),
    area,
    innerPerHz: walls.inertancePerHz * innerLength(shape),
    endPerHz: end.endLength < CLOSED_FROM ? walls.inertancePerHz * end.endLength : Infinity,
    radiationPerHz2: (Math.PI * air.density * area) / air.soundSpeed,
    flowResistance: end.flowResistance ?? 0,
    gapPerHz: walls.inertancePerHz * (end.gap?.share ?? 0),
    gap: end.gap?.opening ?? 0,
    leak: end.leak !== undefined && end.leak.stretches.length > 0 ? end.leak : null,
  };
}

const line = makeLineTerms();
const even = new Float64Array(4);

/**
 * Shunt admittance of a hole 1/Z_s, open or closed, in Pa⁻¹·s⁻¹·m³, with its slope.
 *
 * The chimney is a lossy tube of length l = t + t_m. Open, it ends in the lumped impedance
 * jωρ·endLength/S_h + ρck²/4π: an inertance, and the radiation resistance of a source small against the
 * wavelength in free space; the thin gap adds its friction, loud playing a resistance of its own. Closed, it ends in
 * nothing, or in the slit of a leak and that radiation resistance, written as an admittance so that a leak of no
 * width is a closed hole. Writing the end as a length inside tan(k·length)
 * instead would put a false resonance into a nearly closed hole; the two agree to third order in k·length.
 *
 *   with z = Z'S·l, y = Y'/S·l, w = zy, σ = sinh s/s, χ = cosh s = σ + wε, e = Z_e S_h, i = jωρ t_i
 *   open    Y_s/S_h = N/(M + iN),  N = χ + yσe,  M = χe + zσ
 *   closed  the same with          N = yσ + χℓ,  M = χ + zσℓ,  ℓ = Y_leak/S_h, 0 where the pad seals
 *
 * **Source:** Keefe 1990, JASA 88, 35; Dalmont et al. 2002, Acta Acustica 88, 567; radiation resistance of
 * a monopole, Pierce, Acoustics, ch. 4 (all from memory).
 * **Holds for:** holes small against the wavelength (kb < 0.5).
 *
 * @param f     Hz
 * @param out   Y_s and dY_s/df
 * @param extra Pa·s/m, what stands outside the opening besides, times S_h; taken as constant in the slope
 */
export function holeAdmittanceAt(
  tube: HoleTube,
  f: number,
  out: OnePort,
  withSlope: boolean,
  extra?: Complex,
): void {
  lineTermsAt(tube.walls, f, line, withSlope);
  setHole(tube, f, extra);
  out[0] = tube.area * at.qRe;
  out[1] = tube.area * at.qIm;
  if (!withSlope) return;
  const { length } = tube;
  for (let i = 0; i < 4; i++) direction[i] = line[4 + i] * length;
  // Friction's K goes as √f in ln u: half its slope.
  direction[4] = 2 * tube.radiationPerHz2 * f - tube.gapPerHz * (friction[1] + 0.5 * friction[3]);
  direction[5] = tube.endPerHz + tube.gapPerHz * (friction[0] + 0.5 * friction[2]);
  direction[6] = tube.innerPerHz;
  // u goes as √f.
  if (tube.leak !== null) {
    writeLeakMotion(leaking, { log: -1 / f, friction: 0.5 / f, radius: 0, radiation: 2 / f }, direction, 4);
  }
  slopeAlong(tube, out, 2);
}

/** What {@link setHole} leaves behind: the letters of {@link holeAdmittanceAt}. */
const at = {
  ...{ zRe: 0, zIm: 0, yRe: 0, yIm: 0, ysRe: 0, ysIm: 0, chRe: 0, chIm: 0, eRe: 0, eIm: 0 },
  ...{ nRe: 0, nIm: 0, mRe: 0, mIm: 0, inner: 0, qRe: 0, qIm: 0 },
};

const leaking = makeLeakTerms();

/** Computes Y_s/S_h = q and all it is made of, from the line terms. */
function setHole(tube: HoleTube, f: number, extra?: Complex): void {
  const { length } = tube;
  const zRe = line[0] * length;
  const zIm = line[1] * length;
  const yRe = line[2] * length;
  const yIm = line[3] * length;
  const wRe = zRe * yRe - zIm * yIm;
  const wIm = zRe * yIm + zIm * yRe;
  evenHyperbolicsAt(wRe, wIm, even);
  const sRe = even[0];
  const sIm = even[1];
  const chRe = sRe + wRe * even[2] - wIm * even[3];
  const chIm = sIm + wRe * even[3] + wIm * even[2];
  const ysRe = yRe * sRe - yIm * sIm;
  const ysIm = yRe * sIm + yIm * sRe;
  const closed = tube.endPerHz === Infinity;
  if (tube.gapPerHz > 0 && !closed) gapFrictionAt(f, tube.gap, tube.walls.air, friction);
  else for (let i = 0; i < 4; i++) friction[i] = 0;
  // jωρ·share·(K − 1) beside the frictionless end.
  const rub = tube.gapPerHz * f;
  const eRe = closed
    ? 0
    : tube.radiationPerHz2 * f * f + tube.flowResistance - rub * friction[1] + (extra?.re ?? 0);
  const eIm = closed ? 0 : tube.endPerHz * f + rub * friction[0] + (extra?.im ?? 0);
  const zsRe = zRe * sRe - zIm * sIm;
  const zsIm = zRe * sIm + zIm * sRe;
  if (closed) leakTermsAt(tube.leak, tube, f, tube.walls.air, leaking);
  const lRe = leaking[6];
  const lIm = leaking[7];
  const nRe = closed ? ysRe + chRe * lRe - chIm * lIm : chRe + ysRe * eRe - ysIm * eIm;
  const nIm = closed ? ysIm + chRe * lIm + chIm * lRe : chIm + ysRe * eIm + ysIm * eRe;
  const mRe = closed ? chRe + zsRe * lRe - zsIm * lIm : chRe * eRe - chIm * eIm + zsRe;
  const mIm = closed ? chIm + zsRe * lIm + zsIm * lRe : chRe * eIm + chIm * eRe + zsIm;
  const inner = tube.innerPerHz * f;
  const bRe = mRe - inner * nIm;
  const bIm = mIm + inner * nRe;
  const norm = bRe * bRe + bIm * bIm;
  at.zRe = zRe;
  at.zIm = zIm;
  at.yRe = yRe;
  at.yIm = yIm;
  at.ysRe = ysRe;
  at.ysIm = ysIm;
  at.chRe = chRe;
  at.chIm = chIm;
  at.eRe = eRe;
  at.eIm = eIm;
  at.nRe = nRe;
  at.nIm = nIm;
  at.mRe = mRe;
  at.mIm = mIm;
  at.inner = inner;
  at.qRe = (nRe * bRe + nIm * bIm) / norm;
  at.qIm = (nIm * bRe - nRe * bIm) / norm;
}

/** Small changes of z, y, e or for a closed hole ℓ (re, im pairs) and i (imaginary part) that a slope is taken along. */
const direction = new Float64Array(7);

/**
 * Writes S_h·dq along {@link direction} into out[at0] and out[at0 + 1], after {@link setHole}.
 *
 *   dw = y dz + z dy,  dσ = ½ε dw,  dχ = ½σ dw
 *   (N/B)' = (N' − qB')/B,  B = M + iN
 */
function slopeAlong(tube: HoleTube, out: Float64Array, at0: number): void {
  const { zRe, zIm, yRe, yIm, ysRe, ysIm, chRe, chIm, inner } = at;
  const dzRe = direction[0];
  const dzIm = direction[1];
  const dyRe = direction[2];
  const dyIm = direction[3];
  // A pad that seals has no end to move.
  const sealed = tube.endPerHz === Infinity && tube.leak === null;
  const deRe = sealed ? 0 : direction[4];
  const deIm = sealed ? 0 : direction[5];
  const dInner = direction[6];
  const sRe = even[0];
  const sIm = even[1];
  const dwRe = dzRe * yRe - dzIm * yIm + zRe * dyRe - zIm * dyIm;
  const dwIm = dzRe * yIm + dzIm * yRe + zRe * dyIm + zIm * dyRe;
  const dsRe = 0.5 * (even[2] * dwRe - even[3] * dwIm);
  const dsIm = 0.5 * (even[2] * dwIm + even[3] * dwRe);
  const dchRe = 0.5 * (sRe * dwRe - sIm * dwIm);
  const dchIm = 0.5 * (sRe * dwIm + sIm * dwRe);
  const dysRe = dyRe * sRe - dyIm * sIm + yRe * dsRe - yIm * dsIm;
  const dysIm = dyRe * sIm + dyIm * sRe + yRe * dsIm + yIm * dsRe;
  const zsRe = zRe * sRe - zIm * sIm;
  const zsIm = zRe * sIm + zIm * sRe;
  const dzsRe = dzRe * sRe - dzIm * sIm + zRe * dsRe - zIm * dsIm;
  const dzsIm = dzRe * sIm + dzIm * sRe + zRe * dsIm + zIm * dsRe;
  // Closed, yσ and χ trade places with χ and zσ: N = yσ + χℓ, M = χ + zσℓ; open, N = χ + yσe, M = zσ + χe.
  const closed = tube.endPerHz === Infinity;
  const eRe = closed ? leaking[6] : at.eRe;
  const eIm = closed ? leaking[7] : at.eIm;
  const aRe = closed ? chRe : ysRe;
  const aIm = closed ? chIm : ysIm;
  const daRe = closed ? dchRe : dysRe;
  const daIm = closed ? dchIm : dysIm;
  const cRe = closed ? zsRe : chRe;
  const cIm = closed ? zsIm : chIm;
  const dcRe = closed ? dzsRe : dchRe;
  const dcIm = closed ? dzsIm : dchIm;
  const dnRe = (closed ? dysRe : dchRe) + daRe * eRe - daIm * eIm + aRe * deRe - aIm * deIm;
  const dnIm = (closed ? dysIm : dchIm) + daRe * eIm + daIm * eRe + aRe * deIm + aIm * deRe;
  const dmRe = (closed ? dchRe : dzsRe) + dcRe * eRe - dcIm * eIm + cRe * deRe - cIm * deIm;
  const dmIm = (closed ? dchIm : dzsIm) + dcRe * eIm + dcIm * eRe + cRe * deIm + cIm * deRe;
  const bRe = at.mRe - inner * at.nIm;
  const bIm = at.mIm + inner * at.nRe;
  const norm = bRe * bRe + bIm * bIm;
  const dbRe = dmRe - inner * dnIm - dInner * at.nIm;
  const dbIm = dmIm + inner * dnRe + dInner * at.nRe;
  const tRe = dnRe - (at.qRe * dbRe - at.qIm * dbIm);
  const tIm = dnIm - (at.qRe * dbIm + at.qIm * dbRe);
  out[at0] = (tube.area * (tRe * bRe + tIm * bIm)) / norm;
  out[at0 + 1] = (tube.area * (tIm * bRe - tRe * bIm)) / norm;
}

/**
 * Where {@link holeVariationsAt} writes: slopes of Y_s as re, im pairs.
 *
 *   0, 1 per m of end length   2, 3 per m of chimney   4, 5 per m of hole radius, the end length's own
 *   change left out   6, 7 per °C   8…11 the gap's friction as {@link gapFrictionAt} writes it
 */
export type HoleVariations = Float64Array;

/**
 * How a hole's shunt admittance answers to what the bench can change.
 *
 * @param f         Hz
 * @param logSlopes of the air, per °C
 * @param admittance takes Y_s itself, re and im
 */
export function holeVariationsAt(
  shape: HoleShape,
  tube: HoleTube,
  f: number,
  logSlopes: Air,
  out: HoleVariations,
  admittance: OnePort,
  extra?: Complex,
): void {
  const { walls, length } = tube;
  lineTermsAt(walls, f, line, true);
  setHole(tube, f, extra);
  admittance[0] = tube.area * at.qRe;
  admittance[1] = tube.area * at.qIm;
  perHz.set(line);

  direction.fill(0);
  direction[5] = walls.inertancePerHz * f;
  slopeAlong(tube, out, 0);

  direction.fill(0);
  for (let i = 0; i < 4; i++) direction[i] = line[i];
  slopeAlong(tube, out, 2);

  turnSlopesToRadius(walls, f, line);
  const longer = matchingLengthSlope(shape);
  for (let i = 0; i < 4; i++) direction[i] = line[4 + i] * length + line[i] * longer;
  // What stands outside is the same impedance whatever the hole's area; e carries the area.
  const perRadius = 2 / shape.holeRadius;
  const { leak } = tube;
  direction[4] = perRadius * (tube.radiationPerHz2 * f * f + (extra?.re ?? 0));
  direction[5] = perRadius * (extra?.im ?? 0);
  direction[6] = walls.inertancePerHz * f * innerLengthSlope(shape);
  if (leak !== null) {
    const motion = { log: -perRadius, friction: 0, radius: 1, radiation: perRadius };
    writeLeakMotion(leaking, motion, direction, 4);
  }
  slopeAlong(tube, out, 4);
  out[4] += perRadius * tube.area * at.qRe;
  out[5] += perRadius * tube.area * at.qIm;

  line.set(perHz);
  turnSlopesToTemperature(walls, f, logSlopes, line);
  for (let i = 0; i < 4; i++) direction[i] = line[4 + i] * length;
  const { density } = logSlopes;
  const rub = tube.gapPerHz * f;
  const thinner = 0.5 * (density - logSlopes.viscosity);
  direction[4] =
    tube.radiationPerHz2 * f * f * (density - logSlopes.soundSpeed) -
    rub * (friction[1] * density + friction[3] * thinner);
  direction[5] = tube.endPerHz * f * density + rub * (friction[0] * density + friction[2] * thinner);
  direction[6] = at.inner * density;
  if (leak !== null) {
    const radiation = density - logSlopes.soundSpeed;
    writeLeakMotion(leaking, { log: -density, friction: thinner, radius: 0, radiation }, direction, 4);
  }
  slopeAlong(tube, out, 6);
  for (let i = 0; i < 4; i++) out[8 + i] = friction[i];
}

const perHz = makeLineTerms();
const friction: GapFriction = new Float64Array(4);

/**
 * Chimney two-port of an open hole, as velocities: (p, v) at the bore from (p, v) at the rim plane.
 *
 *   p = χ p_o + zσ v_o + jωρt_i·v,  v = yσ p_o + χ v_o
 */
export interface ChimneyLine {
  /** χ */
  readonly ch: Complex;
  /** zσ */
  readonly zs: Complex;
  /** yσ */
  readonly ys: Complex;
  /** ωρt_i, imaginary part of the inner impedance times S_h */
  readonly inner: number;
  /** Z_e·S_h: what ends the chimney */
  readonly end: Complex;
}

/** The chimney of an open hole taken apart, for what happens outside it. */
export function chimneyLineAt(tube: HoleTube, f: number): ChimneyLine {
  lineTermsAt(tube.walls, f, line, false);
  setHole(tube, f);
  const sigma = { re: even[0], im: even[1] };
  return {
    ch: { re: at.chRe, im: at.chIm },
    zs: mul({ re: at.zRe, im: at.zIm }, sigma),
    ys: { re: at.ysRe, im: at.ysIm },
    inner: at.inner,
    end: { re: at.eRe, im: at.eIm },
  };
}
