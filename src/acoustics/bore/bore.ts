import type { AirColumn } from '../air/air.ts';
import { airAt } from '../air/air.ts';
import { LONGEST_PIECE, makeConePiece, STEEPEST_PIECE, type ConePiece } from './cone.ts';

/** A place along the bore axis where the radius is known. Metres from the mouthpiece tip. */
export interface BoreStation {
  readonly x: number;
  readonly radius: number;
}

/**
 * The bore from the mouthpiece tip to the bell rim: straight-sided cones between stations; two stations at
 * the same x are a step. `referenceRadius` is the radius of the neck's small end, whose ρc/πr² is the
 * characteristic impedance that heights are stated in.
 *
 *     tip ▷mouthpiece▷|neck ▷▷ body ▷▷▷ bow ▷▷▷▷ bell ▷▷▷▷▷ rim
 *      x=0                                            x=length
 */
export interface Bore {
  readonly stations: readonly BoreStation[];
  readonly length: number;
  readonly referenceRadius: number;
  /** m, added to the bell's end correction; 0 unless calibrated */
  readonly bellCorrection: number;
}

/**
 * Checks and freezes a bore.
 *
 * @throws RangeError where stations are fewer than two, run backwards, or hold a radius ≤ 0
 */
export function makeBore(
  stations: readonly BoreStation[],
  referenceRadius: number,
  bellCorrection = 0,
): Bore {
  if (!(stations.length >= 2))
    throw new RangeError(`invalid bore: ${stations.length} stations; expected at least 2`);
  stations.forEach((s, i) => {
    if (!(s.radius > 0))
      throw new RangeError(`invalid bore radius: ${s.radius} m at ${s.x} m; expected more than 0`);
    if (i > 0 && !(s.x >= stations[i - 1].x)) {
      throw new RangeError(`invalid bore station: ${s.x} m; expected ${stations[i - 1].x} m or more`);
    }
  });
  if (!(stations[0].x === 0))
    throw new RangeError(`invalid first bore station: ${stations[0].x} m; expected 0 m`);
  const length = stations[stations.length - 1].x;
  if (!(length > 0)) throw new RangeError(`invalid bore length: ${length} m; expected more than 0`);
  if (!(referenceRadius > 0))
    throw new RangeError(`invalid reference radius: ${referenceRadius} m; expected more than 0`);
  if (!(Math.abs(bellCorrection) < 1))
    throw new RangeError(`invalid bell correction: ${bellCorrection} m; expected under 1 m`);
  return Object.freeze({ stations, length, referenceRadius, bellCorrection });
}

/** Bore radius at x, m; at a step the bell side's. */
export function radiusAt(bore: Bore, x: number): number {
  const { stations } = bore;
  let i = stations.length - 1;
  while (i > 0 && stations[i].x > x) i--;
  if (i === stations.length - 1) return stations[i].radius;
  const a = stations[i];
  const b = stations[i + 1];
  return a.radius + ((b.radius - a.radius) * (x - a.x)) / (b.x - a.x);
}

/** The places between x1 and x2 (exclusive) where the bore changes its taper. */
function breaksBetween(bore: Bore, x1: number, x2: number): number[] {
  return bore.stations.map((s) => s.x).filter((x, i, all) => x > x1 && x < x2 && x !== all[i - 1]);
}

/** Bore volume between two places, m³ (exact for straight-sided cones). */
export function boreVolume(bore: Bore, x1: number, x2: number): number {
  const cuts = [x1, ...breaksBetween(bore, x1, x2), x2];
  let sum = 0;
  for (let i = 1; i < cuts.length; i++) {
    const r1 = radiusAt(bore, cuts[i - 1]);
    const r2 = radiusBefore(bore, cuts[i]);
    sum += (Math.PI / 3) * (cuts[i] - cuts[i - 1]) * (r1 * r1 + r1 * r2 + r2 * r2);
  }
  return sum;
}

/** Bore radius just before x, m: at a step the mouthpiece side's. */
export function radiusBefore(bore: Bore, x: number): number {
  const { stations } = bore;
  let i = 0;
  while (i < stations.length - 1 && stations[i].x < x) i++;
  if (i === 0) return stations[0].radius;
  const a = stations[i - 1];
  const b = stations[i];
  return b.x === a.x ? a.radius : a.radius + ((b.radius - a.radius) * (x - a.x)) / (b.x - a.x);
}

/** Cuts the bore between two places into cone pieces of at most `longest` metres and no steeper than allowed, each with its own air. */
export function cutBore(
  bore: Bore,
  x1: number,
  x2: number,
  air: AirColumn,
  longest = LONGEST_PIECE,
): ConePiece[] {
  const cuts = [x1, ...breaksBetween(bore, x1, x2), x2];
  const pieces: ConePiece[] = [];
  for (let i = 1; i < cuts.length; i++) {
    const span = cuts[i] - cuts[i - 1];
    if (!(span > 0)) continue;
    const r1 = radiusAt(bore, cuts[i - 1]);
    const r2 = radiusBefore(bore, cuts[i]);
    const steep = Math.abs(Math.log(r2 / r1)) / STEEPEST_PIECE;
    const count = Math.max(1, Math.ceil(span / longest), Math.ceil(steep));
    for (let j = 0; j < count; j++) {
      const from = r1 + ((r2 - r1) * j) / count;
      const to = r1 + ((r2 - r1) * (j + 1)) / count;
      const middle = cuts[i - 1] + (span * (j + 0.5)) / count;
      pieces.push(makeConePiece(span / count, from, to, airAt(air, middle / bore.length)));
    }
  }
  return pieces;
}
