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
 * **Source:** Lefebvre & Scavone 2012, JASA 131, 3153 (from memory; finite elements agree to 0.01 b), without its
 * factor of frequency: see notes/physics/venting-study.md.
 * **Holds for:** δ 0.2…0.98, low frequency.
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
 * **Source:** Lefebvre & Scavone 2012 (from memory, unconfirmed but that both ends meet for a tall chimney).
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

/** d t_m/db. */
export function matchingLengthSlope({ boreRadius: a, holeRadius: b }: HoleShape): number {
  const d = b / a;
  return (d / 8) * (2 + 5 * 0.207 * d ** 3);
}

/** d t_i/db. */
export function innerLengthSlope({ boreRadius: a, holeRadius: b }: HoleShape): number {
  const d = b / a;
  return 0.822 + d * (-0.19 + d * (-4.698 + d * (8.552 + d * (-8.2 + d * 3.012))));
}

/** Slopes of {@link seriesLength}: per vent share, per m of chimney, per m of hole radius. */
export function seriesLengthSlopes(
  { boreRadius: a, holeRadius: b, chimney: t }: HoleShape,
  ventShare: number,
): { readonly ventShare: number; readonly chimney: number; readonly holeRadius: number } {
  const scale = -(b * b * b) / (a * a);
  const open = Math.tanh((2.7 * t) / b);
  const closed = Math.tanh((2.4 * t) / b);
  const span = 0.35 - 0.06 * open - (0.12 + 0.17 * closed);
  const value = 0.12 + 0.17 * closed + ventShare * span;
  // d/dt of the bracket; d/db of it is −t/b times that.
  const perT =
    ((1 - ventShare) * 0.17 * 2.4 * (1 - closed * closed) - ventShare * 0.06 * 2.7 * (1 - open * open)) / b;
  return {
    ventShare: scale * span,
    chimney: scale * perT,
    holeRadius: (3 * scale * value) / b - (scale * perT * t) / b,
  };
}

/** Slopes of {@link ventShareOf} of an open hole: per m of end length, of no-pad end length, of chimney, of hole radius. */
export function ventShareSlopes(
  shape: HoleShape,
  endLength: number,
  noPadEndLength: number,
): {
  readonly end: number;
  readonly noPadEnd: number;
  readonly chimney: number;
  readonly holeRadius: number;
} {
  const now = holeLength(shape, endLength);
  const free = holeLength(shape, noPadEndLength);
  const both = (now - free) / (now * now);
  return {
    end: -free / (now * now),
    noPadEnd: 1 / now,
    chimney: both,
    holeRadius: both * (innerLengthSlope(shape) + matchingLengthSlope(shape)),
  };
}
