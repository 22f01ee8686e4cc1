/**
 * The gap that a shut pad leaves round its rim: where the light shines through.
 *
 *        back ○ rod side                       gap at the angle φ from the front
 *        ╭───────╮
 *        │  hole │                             g(φ) = back + (front − back)(1 + cos φ)/2
 *        ╰───────╯                                    + every arc's gap where the arc reaches
 *        front, φ = 0
 *
 * A whole ring has front = back; a cup out of parallel, or a pad that a link leaves hanging, has them unequal;
 * a nick, a burr or a sunken place is an arc. Both sides of the line from front to back are alike.
 */

/** A part of the ring that stands off by a gap of its own. */
export interface GapArc {
  /** m, ≥ 0, added to what the ring leaves there */
  readonly gap: number;
  /** rad, 0…2π, the arc's whole width */
  readonly width: number;
  /** where its middle lies */
  readonly at: 'front' | 'back';
}

/** A shut pad's gap round the rim, m. */
export interface SeatGap {
  /** m, ≥ 0, at the rim's front */
  readonly front: number;
  /** m, ≥ 0, at the rim's back */
  readonly back: number;
  readonly arcs: readonly GapArc[];
}

/** A stretch of the ring that leaks by one gap: both sides of the line from front to back together. */
export interface GapStretch {
  /** m, > 0 */
  readonly gap: number;
  /** rad, of both sides together */
  readonly width: number;
}

/** No gap: the pad shuts. */
export const SEALED: SeatGap = Object.freeze({ front: 0, back: 0, arcs: [] });

/** A pad that stands off its rim by one gap all round. @throws RangeError for a negative gap */
export function ringGap(gap: number): SeatGap {
  return makeSeatGap({ front: gap, back: gap, arcs: [] });
}

/** A pad that stands off along an arc only. @param width rad, 0…2π @throws RangeError naming the value */
export function arcGap(gap: number, width: number, at: 'front' | 'back'): SeatGap {
  return makeSeatGap({ front: 0, back: 0, arcs: [{ gap, width, at }] });
}

/** A pad out of parallel: one gap at the rim's front, another at its back, in a straight line between. */
export function tiltedGap(front: number, back: number): SeatGap {
  return makeSeatGap({ front, back, arcs: [] });
}

/** Two faults of one pad: their gaps add at every place. */
export function addGaps(a: SeatGap, b: SeatGap): SeatGap {
  return { front: a.front + b.front, back: a.back + b.back, arcs: [...a.arcs, ...b.arcs] };
}

/** Whether nothing is left open. */
export function isSealed(gap: SeatGap): boolean {
  return !(widestGap(gap) > 0);
}

/** The widest gap anywhere on the ring, m. */
export function widestGap(gap: SeatGap): number {
  const at = (phi: number): number => gapAt(gap, phi);
  const edges = gap.arcs.flatMap(({ width, at: place }) =>
    place === 'front' ? [width / 2] : [Math.PI - width / 2],
  );
  return Math.max(at(0), at(Math.PI), ...edges.map(at));
}

/** Checks a gap. @throws RangeError naming the value */
export function makeSeatGap(gap: SeatGap): SeatGap {
  const check = (name: string, value: number): void => {
    if (!(value >= 0 && value < Infinity))
      throw new RangeError(`invalid ${name}: ${value * 1000} mm; expected 0 mm or more`);
  };
  check('gap at the front', gap.front);
  check('gap at the back', gap.back);
  for (const arc of gap.arcs) {
    check(`gap of the arc at the ${arc.at}`, arc.gap);
    if (!(arc.width >= 0 && arc.width <= 2 * Math.PI * (1 + 1e-12)))
      throw new RangeError(
        `invalid arc at the ${arc.at}: ${(arc.width * 180) / Math.PI} degrees; expected 0 to 360 degrees`,
      );
  }
  return Object.freeze({ ...gap });
}

/** Gap at the angle φ from the front, m. @param phi rad, 0…π */
function gapAt({ front, back, arcs }: SeatGap, phi: number): number {
  let gap = back + ((front - back) * (1 + Math.cos(phi))) / 2;
  for (const { gap: extra, width, at } of arcs) {
    const away = at === 'front' ? phi : Math.PI - phi;
    if (away <= width / 2) gap += extra;
  }
  return gap;
}

/** Abscissae and weights of Gauss–Legendre quadrature with eight points, the positive half. */
const GAUSS: readonly (readonly [x: number, weight: number])[] = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
];

/**
 * Cuts the ring into stretches of one gap each, so that any sum over the ring is a sum over them. Exact where
 * the gap is constant between the arcs' ends; where it changes steadily each piece takes eight points, good to
 * nine digits of what leaks.
 *
 * **Source:** Abramowitz & Stegun 1964, 25.4.30 for the points.
 */
export function gapStretches(gap: SeatGap): GapStretch[] {
  const edges = gap.arcs.map(({ width, at }) => (at === 'front' ? width / 2 : Math.PI - width / 2));
  const even = gap.front === gap.back;
  const cuts = [...new Set([0, ...(even ? [] : [Math.PI / 2]), ...edges, Math.PI])].sort((a, b) => a - b);
  const stretches: GapStretch[] = [];
  for (let i = 1; i < cuts.length; i++) {
    const half = (cuts[i] - cuts[i - 1]) / 2;
    const middle = (cuts[i] + cuts[i - 1]) / 2;
    // Two sides of the line from front to back.
    if (even) stretches.push({ gap: gapAt(gap, middle), width: 4 * half });
    else {
      for (const [x, weight] of GAUSS) {
        for (const side of [-1, 1]) {
          stretches.push({ gap: gapAt(gap, middle + side * x * half), width: 2 * weight * half });
        }
      }
    }
  }
  return stretches.filter((s) => s.gap > 0 && s.width > 0);
}
