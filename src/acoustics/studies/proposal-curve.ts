import { openHole, shareAlong } from '../holes/open-hole.ts';
import type { PadModel } from '../holes/pad-models/pad-model.ts';
import { withOpening, type Horn, type Setup, type ToneHole } from '../horn.ts';

/** How a pad's hole ends as the pad rises: what the proposal asks of it again and again. */

/** At one front opening. */
export interface PadThere {
  /** m, beyond the rim plane */
  readonly length: number;
  /** m per m of front opening, negative */
  readonly lengthSlope: number;
  /** 0…1 */
  readonly share: number;
  /** per m of front opening */
  readonly shareSlope: number;
}

/** As the pad model has it. @param front m, > 0; links of the horn left out */
export function padThere(
  horn: Horn,
  setup: Setup,
  hole: ToneHole,
  padModel: PadModel,
  front: number,
): PadThere {
  const open = openHole(
    horn,
    withOpening(setup, hole.id, { at: 'front', height: front }),
    hole,
    padModel,
    undefined,
  );
  if (open.byOpening === null) return { length: Infinity, lengthSlope: 0, share: 0, shareSlope: 0 };
  return {
    length: open.lengths.length,
    lengthSlope: open.byOpening.length,
    share: open.end.ventShare,
    shareSlope: shareAlong(hole, open, open.byOpening),
  };
}

/** The same with the bend of its length, 1/m. */
export interface PadOnCurve extends PadThere {
  readonly lengthBend: number;
}

/** The same quickly, between two openings. */
export interface PadCurve {
  /** m at the front */
  readonly from: number;
  readonly to: number;
  readonly at: (front: number) => PadOnCurve;
}

/** Cubic pieces: at half a millimetre each they err by less than a hundred thousandth of the length. */
const PIECES = 24;

/** Tabulates a pad with its slopes; beyond its ends the curve goes on straight. */
export function makePadCurve(at: (front: number) => PadThere, from: number, to: number): PadCurve {
  const width = (to - from) / PIECES;
  const nodes = Array.from({ length: PIECES + 1 }, (_, i) => at(from + i * width));
  const piece = (front: number): PadOnCurve => {
    if (front <= from) return straightOn(nodes[0], front - from);
    if (front >= to) return straightOn(nodes[PIECES], front - to);
    const i = Math.min(Math.floor((front - from) / width), PIECES - 1);
    const t = (front - from) / width - i;
    const [a, b] = [nodes[i], nodes[i + 1]];
    const length = cubic(a.length, a.lengthSlope, b.length, b.lengthSlope, width, t);
    const share = cubic(a.share, a.shareSlope, b.share, b.shareSlope, width, t);
    return {
      length: length.value,
      lengthSlope: length.slope,
      lengthBend: length.bend,
      share: share.value,
      shareSlope: share.slope,
    };
  };
  return { from, to, at: piece };
}

function straightOn(end: PadThere, by: number): PadOnCurve {
  return {
    ...end,
    lengthBend: 0,
    length: end.length + by * end.lengthSlope,
    share: end.share + by * end.shareSlope,
  };
}

/** The cubic through two values with two slopes, at t = 0…1 of its width. */
function cubic(
  a: number,
  slopeA: number,
  b: number,
  slopeB: number,
  width: number,
  t: number,
): { readonly value: number; readonly slope: number; readonly bend: number } {
  const [da, db] = [slopeA * width, slopeB * width];
  const bend = 3 * (b - a) - 2 * da - db;
  const twist = 2 * (a - b) + da + db;
  return {
    value: a + t * (da + t * (bend + t * twist)),
    slope: (da + t * (2 * bend + 3 * t * twist)) / width,
    bend: (2 * bend + 6 * t * twist) / width ** 2,
  };
}
