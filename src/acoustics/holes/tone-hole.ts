import type { Air } from '../air/air.ts';
import { makeWallTerms, wallTermsAt } from '../bore/wall-losses.ts';
import { add, div, mul, sub, tanhOf, type Complex } from '../numerics/complex.ts';
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

const wall = makeWallTerms();

/**
 * Shunt admittance of a hole 1/Z_s, open or closed, in Pa⁻¹·s⁻¹·m³, with its slope.
 *
 * The chimney is a lossy tube of length t + t_m. Open, it ends in the lumped impedance
 * jωρ·endLength/S_h + ρck²/4π: an inertance, and the radiation resistance of a source small against the
 * wavelength in free space. Closed, it ends in nothing. Writing the end as a length inside tan(k·length)
 * instead would put a false resonance into a nearly closed hole; the two agree to third order in k·length.
 *
 *   Y_l = Y_c (Y_e + Y_c T)/(Y_c + Y_e T),  T = tanh Γ(t + t_m),  Y_s = Y_l/(1 + jωρ t_i Y_l/S_h)
 *
 * **Source:** Keefe 1990, JASA 88, 35; Dalmont et al. 2002, Acta Acustica 88, 567; radiation resistance of
 * a monopole, Pierce, Acoustics, ch. 4 (all from memory).
 * **Holds for:** holes small against the wavelength (kb < 0.5).
 *
 * @param f   Hz
 * @param out Y_s and dY_s/df
 */
export function holeAdmittanceAt(shape: HoleShape, end: HoleEnd, f: number, air: Air, out: OnePort): void {
  const { holeRadius: b } = shape;
  const area = Math.PI * b * b;
  const omega = 2 * Math.PI * f;
  wallTermsAt(b, f, air, wall);

  // T = tanh s and its slope (1 − T²)s'.
  const length = shape.chimney + matchingLength(shape);
  const t = tanhOf(wall[0] * length, wall[1] * length);
  const tSquare = mul(t, t);
  const dt = mul({ re: 1 - tSquare.re, im: -tSquare.im }, { re: wall[4] * length, im: wall[5] * length });

  // Everything as impedances over the tube's own z: ζ_e = Z_e S/z, its slope, and the line's input.
  const z = { re: wall[2], im: wall[3] };
  const dz = { re: wall[6], im: wall[7] };
  let line: Complex;
  let dLine: Complex;
  if (end.endLength === Infinity) {
    // Y_l S = T/z
    line = div(t, z);
    dLine = div(sub(dt, mul(line, dz)), z);
  } else {
    const resistance = (air.density * omega * omega * area) / (4 * Math.PI * air.soundSpeed);
    const e = { re: resistance, im: omega * air.density * end.endLength };
    const de = { re: (2 * resistance) / f, im: e.im / f };
    // Y_l S = (1/z)(z + eT)/(e + zT)
    const top = add(z, mul(e, t));
    const bottom = add(e, mul(z, t));
    const dTop = add(dz, add(mul(de, t), mul(e, dt)));
    const dBottom = add(de, add(mul(dz, t), mul(z, dt)));
    const under = mul(z, bottom);
    line = div(top, under);
    dLine = div(sub(dTop, mul(line, add(mul(dz, bottom), mul(z, dBottom)))), under);
  }

  // y = Y_l S/(1 + jωρ t_i·Y_l S)
  const inner = { re: 0, im: omega * air.density * innerLength(shape) };
  const below = add({ re: 1, im: 0 }, mul(inner, line));
  const y = div(line, below);
  const dBelow = add(mul(inner, dLine), mul({ re: 0, im: inner.im / f }, line));
  const dy = div(sub(dLine, mul(y, dBelow)), below);
  out[0] = y.re * area;
  out[1] = y.im * area;
  out[2] = dy.re * area;
  out[3] = dy.im * area;
}
