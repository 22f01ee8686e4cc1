import type { Air } from '../air/air.ts';
import { lineTermsAt, makeLineTerms, makeWalls, type Walls } from '../bore/wall-losses.ts';
import { evenHyperbolicsAt } from '../numerics/even-hyperbolics.ts';
import type { OnePort } from '../two-port.ts';

/**
 * A tone hole as a T-circuit on the bore.
 *
 *      ──Z_a/2──┬──Z_a/2──        Z_a = jωρ t_a/S,  S = πa²,  t_a < 0
 *               Z_s              Z_s = jωρ t_i/S_h + chimney(t + t_m) ended by the opening, S_h = πb²
 *
 * a bore radius at the hole, b hole radius, δ = b/a, t chimney height from the crown of the bore to the rim.
 */
export interface HoleShape {
  /** a, m */
  readonly boreRadius: number;
  /** b, m */
  readonly holeRadius: number;
  /** t, m */
  readonly chimney: number;
}

/** A hole under its pad, as the network needs it: how its chimney ends. */
export interface HoleEnd {
  /** m, everything beyond the rim plane as a length of the hole's own area; Infinity when closed */
  readonly endLength: number;
  /** 0 closed … 1 no pad: the hole's acoustic conductance as a share of what it is without a pad */
  readonly ventShare: number;
}

export const CLOSED: HoleEnd = Object.freeze({ endLength: Infinity, ventShare: 0 });

/**
 * Matching length between a round chimney and the round bore, m: t_m = (bδ/8)(1 + 0.207δ³).
 *
 * **Source:** Nederveen et al. 1998, JASA 104, 957 (from memory, confirmed).
 */
export function matchingLength({ boreRadius: a, holeRadius: b }: HoleShape): number {
  const d = b / a;
  return ((b * d) / 8) * (1 + 0.207 * d ** 3);
}

/**
 * Inner length correction, m: t_i/b = 0.822 − 0.095δ − 1.566δ² + 2.138δ³ − 1.640δ⁴ + 0.502δ⁵.
 *
 * **Source:** Lefebvre & Scavone 2012, JASA 131, 3153 (from memory; finite elements agree to 0.01 b).
 * **Holds for:** δ 0.2…0.98.
 */
export function innerLength({ boreRadius: a, holeRadius: b }: HoleShape): number {
  const d = b / a;
  return b * (0.822 + d * (-0.095 + d * (-1.566 + d * (2.138 + d * (-1.64 + d * 0.502)))));
}

/**
 * Series length correction, m, negative.
 *
 *   open   t_a = −bδ²[0.35 − 0.06 tanh(2.7t/b)]
 *   closed t_a = −bδ²[0.12 + 0.17 tanh(2.4t/b)]
 *
 * The literature has these two ends only. Between them we go in proportion to the vent share, so that a
 * closing pad meets the closed hole without a jump; that blend is ours.
 *
 * **Source:** Lefebvre & Scavone 2012 (from memory) for both ends.
 */
export function seriesLength(
  { boreRadius: a, holeRadius: b, chimney: t }: HoleShape,
  ventShare: number,
): number {
  const d = b / a;
  const open = 0.35 - 0.06 * Math.tanh((2.7 * t) / b);
  const closed = 0.12 + 0.17 * Math.tanh((2.4 * t) / b);
  return -b * d * d * (closed + ventShare * (open - closed));
}

/** Acoustic length of an open hole at low frequency, m: t_e = t_i + t + t_m + endLength. */
export function holeLength(shape: HoleShape, endLength: number): number {
  return innerLength(shape) + shape.chimney + matchingLength(shape) + endLength;
}

/**
 * Share of its unobstructed acoustic conductance S_h/(ρt_e) that a hole keeps under its pad, 0…1.
 * Our definition; exact at both ends.
 *
 * @param endLength      m, beyond the rim plane with the pad
 * @param noPadEndLength m, beyond the rim plane without it
 */
export function ventShareOf(shape: HoleShape, endLength: number, noPadEndLength: number): number {
  if (endLength === Infinity) return 0;
  return holeLength(shape, noPadEndLength) / holeLength(shape, endLength);
}

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
}

/** Makes a hole ready to compute. */
export function makeHoleTube(shape: HoleShape, end: HoleEnd, air: Air): HoleTube {
  const area = Math.PI * shape.holeRadius * shape.holeRadius;
  const walls = makeWalls(shape.holeRadius, air);
  return {
    walls,
    length: shape.chimney + matchingLength(shape),
    area,
    innerPerHz: walls.inertancePerHz * innerLength(shape),
    endPerHz: walls.inertancePerHz * end.endLength,
    radiationPerHz2: (Math.PI * air.density * area) / air.soundSpeed,
  };
}

const line = makeLineTerms();
const even = new Float64Array(4);

/**
 * Shunt admittance of a hole 1/Z_s, open or closed, in Pa⁻¹·s⁻¹·m³, with its slope.
 *
 * The chimney is a lossy tube of length l = t + t_m. Open, it ends in the lumped impedance
 * jωρ·endLength/S_h + ρck²/4π: an inertance, and the radiation resistance of a source small against the
 * wavelength in free space. Closed, it ends in nothing. Writing the end as a length inside tan(k·length)
 * instead would put a false resonance into a nearly closed hole; the two agree to third order in k·length.
 *
 *   with z = Z'S·l, y = Y'/S·l, w = zy, σ = sinh s/s, χ = cosh s = σ + wε, e = Z_e S_h, i = jωρ t_i
 *   open    Y_s/S_h = N/(M + iN),  N = χ + yσe,  M = χe + zσ
 *   closed  the same with          N = yσ,       M = χ
 *
 * **Source:** Keefe 1990, JASA 88, 35; Dalmont et al. 2002, Acta Acustica 88, 567; radiation resistance of
 * a monopole, Pierce, Acoustics, ch. 4 (all from memory).
 * **Holds for:** holes small against the wavelength (kb < 0.5).
 *
 * @param f   Hz
 * @param out Y_s and dY_s/df
 */
export function holeAdmittanceAt(tube: HoleTube, f: number, out: OnePort, withSlope: boolean): void {
  const { length, area } = tube;
  lineTermsAt(tube.walls, f, line, withSlope);
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
  const eRe = closed ? 0 : tube.radiationPerHz2 * f * f;
  const eIm = closed ? 0 : tube.endPerHz * f;
  const nRe = closed ? ysRe : chRe + ysRe * eRe - ysIm * eIm;
  const nIm = closed ? ysIm : chIm + ysRe * eIm + ysIm * eRe;
  const mRe = closed ? chRe : chRe * eRe - chIm * eIm + zRe * sRe - zIm * sIm;
  const mIm = closed ? chIm : chRe * eIm + chIm * eRe + zRe * sIm + zIm * sRe;
  const inner = tube.innerPerHz * f;
  const bRe = mRe - inner * nIm;
  const bIm = mIm + inner * nRe;
  const norm = bRe * bRe + bIm * bIm;
  const qRe = (nRe * bRe + nIm * bIm) / norm;
  const qIm = (nIm * bRe - nRe * bIm) / norm;
  out[0] = area * qRe;
  out[1] = area * qIm;
  if (!withSlope) return;

  const dzRe = line[4] * length;
  const dzIm = line[5] * length;
  const dyRe = line[6] * length;
  const dyIm = line[7] * length;
  const dwRe = dzRe * yRe - dzIm * yIm + zRe * dyRe - zIm * dyIm;
  const dwIm = dzRe * yIm + dzIm * yRe + zRe * dyIm + zIm * dyRe;
  // σ' = ε/2 and χ' = σ/2 in w.
  const dsRe = 0.5 * (even[2] * dwRe - even[3] * dwIm);
  const dsIm = 0.5 * (even[2] * dwIm + even[3] * dwRe);
  const dchRe = 0.5 * (sRe * dwRe - sIm * dwIm);
  const dchIm = 0.5 * (sRe * dwIm + sIm * dwRe);
  const dysRe = dyRe * sRe - dyIm * sIm + yRe * dsRe - yIm * dsIm;
  const dysIm = dyRe * sIm + dyIm * sRe + yRe * dsIm + yIm * dsRe;
  const deRe = (2 * eRe) / f;
  const deIm = eIm / f;
  const dnRe = closed ? dysRe : dchRe + dysRe * eRe - dysIm * eIm + ysRe * deRe - ysIm * deIm;
  const dnIm = closed ? dysIm : dchIm + dysRe * eIm + dysIm * eRe + ysRe * deIm + ysIm * deRe;
  const dmRe = closed
    ? dchRe
    : dchRe * eRe - dchIm * eIm + chRe * deRe - chIm * deIm +
      dzRe * sRe - dzIm * sIm + zRe * dsRe - zIm * dsIm; // prettier-ignore
  const dmIm = closed
    ? dchIm
    : dchRe * eIm + dchIm * eRe + chRe * deIm + chIm * deRe +
      dzRe * sIm + dzIm * sRe + zRe * dsIm + zIm * dsRe; // prettier-ignore
  // (N/B)' = (N' − q B')/B,  B = M + iN
  const dbRe = dmRe - inner * dnIm - tube.innerPerHz * nIm;
  const dbIm = dmIm + inner * dnRe + tube.innerPerHz * nRe;
  const tRe = dnRe - (qRe * dbRe - qIm * dbIm);
  const tIm = dnIm - (qRe * dbIm + qIm * dbRe);
  out[2] = (area * (tRe * bRe + tIm * bIm)) / norm;
  out[3] = (area * (tIm * bRe - tRe * bIm)) / norm;
}
