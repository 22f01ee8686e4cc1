import { flangedEndLength, flangedEndSlope } from '../bore/open-end.ts';
import { ventShareSlopes } from './hole-lengths.ts';
import { keySetupOf, type Horn, type Setup, type ToneHole } from '../horn.ts';
import { centrePerFront, HINGE_LENGTHS, makePadPose, poseSlopes, type PadPose } from '../keywork/hinge.ts';
import type { PadEnd, PadLengths, PadModel } from './pad-models/pad-model.ts';
import { holeEnd, padEnd, standingPad } from './pad-over-hole.ts';
import type { HoleEnd } from './hole-tube.ts';

/** An open hole and how its end moves with everything that is set or measured of its key: what the chain rule needs. */

/** How an open hole's end moves along one direction: its length, its gap's share (m each) and the gap's logarithm. */
export interface EndMotion {
  readonly length: number;
  readonly noPadLength: number;
  readonly gapShare: number;
  readonly lnGap: number;
}

/** An open hole, with what it contributes to the chain rule. */
export interface OpenHole {
  readonly end: HoleEnd;
  readonly lengths: PadLengths<number>;
  /** per m of the front opening of the stop that decides it; null where no stop does */
  readonly byOpening: EndMotion | null;
  /** whose own stop that is: its own, or a driver's through links */
  readonly ruler: string;
  /** per m of pad thickness at the same stop */
  readonly byThickness: EndMotion;
  /** per m of hole radius */
  readonly byRadius: EndMotion;
  /** per unit of the pad model's factor: all that the pad adds, larger by so much */
  readonly byPadModel: EndMotion;
  /** per m of the rest, the front held; worked out when first called */
  readonly byGeometry: () => GeometryMotions;
}

/** What else is measured of a key, each with the pad standing as high at its front. */
export const GEOMETRY = ['padThickness', ...HINGE_LENGTHS, 'rimThickness'] as const;
export type GeometryMotions = Readonly<Record<(typeof GEOMETRY)[number], EndMotion>>;

const STILL: EndMotion = Object.freeze({ length: 0, noPadLength: 0, gapShare: 0, lnGap: 0 });
const ALL_STILL: GeometryMotions = Object.freeze({
  padThickness: STILL,
  padRadius: STILL,
  hingeDistance: STILL,
  hingeHeight: STILL,
  rimThickness: STILL,
});

/** A hole standing open: as its stop and links let it, or no further than a touch opens it (m at the front). */
export function openHole(
  horn: Horn,
  setup: Setup,
  hole: ToneHole,
  padModel: PadModel,
  byTouch: number | undefined,
): OpenHole {
  if (hole.hinge === null) return openVent(hole);
  const { padRadius } = keySetupOf(setup, hole.id);
  const { pose: asSet } = standingPad(horn, setup, hole.id);
  const limited = byTouch !== undefined && byTouch < asSet.front;
  const pose = limited ? makePadPose(hole.hinge, padRadius, { at: 'front', height: byTouch }) : asSet;
  const model = padEnd(hole, setup, pose, padModel);
  const end = holeEnd(hole, model, pose.centre);
  const ruler = rulerOf(horn, setup, hole.id);
  const shut = {
    end,
    lengths: model,
    byOpening: null,
    ruler: hole.id,
    byThickness: STILL,
    byRadius: STILL,
    byPadModel: STILL,
    byGeometry: () => ALL_STILL,
  };
  if (model.length === Infinity) return shut;
  const { centreHeight, holeRadius, padThickness } = model.slopes;
  const rise = centrePerFront(hole.hinge, padRadius, pose) * ruler.ratio;
  // A pad that gains thickness sinks along its own normal.
  const sink = -Math.cos(pose.angle);
  return {
    end,
    lengths: model,
    byOpening: limited ? null : motion(centreHeight, rise, rise / pose.centre),
    ruler: ruler.id,
    byThickness: {
      length: padThickness.length + sink * centreHeight.length,
      noPadLength: 0,
      gapShare: padThickness.gapShare + sink * centreHeight.gapShare,
      lnGap: sink / pose.centre,
    },
    byRadius: motion(holeRadius, 1, 0),
    byPadModel: {
      length: model.length - model.noPadLength,
      noPadLength: 0,
      gapShare: model.gapShare,
      lnGap: 0,
    },
    byGeometry: whenFirstCalled(() => geometryMotions(hole, padRadius, pose, model)),
  };
}

/** How the end moves with what else is measured, the front opening held: by itself, and by the centre's rise. */
function geometryMotions(
  { hinge }: ToneHole,
  padRadius: number,
  pose: PadPose,
  { slopes }: PadEnd,
): GeometryMotions {
  const rises = poseSlopes(hinge!, padRadius, pose, 'front');
  const along = (own: PadLengths<number>, rise: number): EndMotion => ({
    length: own.length + rise * slopes.centreHeight.length,
    noPadLength: own.noPadLength + rise * slopes.centreHeight.noPadLength,
    gapShare: own.gapShare + rise * slopes.centreHeight.gapShare,
    lnGap: rise / pose.centre,
  });
  // A pad that stays parallel has no hinge to measure.
  const hinged = (length: 'hingeDistance' | 'hingeHeight'): EndMotion =>
    hinge!.distance === Infinity ? STILL : along(slopes[length], rises[length].centre);
  return {
    padThickness: along(slopes.padThickness, 0),
    padRadius: along(slopes.padRadius, rises.padRadius.centre),
    hingeDistance: hinged('hingeDistance'),
    hingeHeight: hinged('hingeHeight'),
    rimThickness: along(slopes.rimThickness, 0),
  };
}

function whenFirstCalled<T>(work: () => T): () => T {
  let known: { readonly value: T } | null = null;
  return () => (known ??= { value: work() }).value;
}

function motion(slopes: PadLengths<number>, by: number, lnGap: number): EndMotion {
  return {
    length: by * slopes.length,
    noPadLength: by * slopes.noPadLength,
    gapShare: by * slopes.gapShare,
    lnGap,
  };
}

/** A vent: only its own radius changes its end. */
function openVent(hole: ToneHole): OpenHole {
  const length = flangedEndLength(hole.holeRadius, hole.rimThickness);
  const slope = flangedEndSlope(hole.holeRadius, hole.rimThickness);
  return {
    end: { endLength: length, ventShare: 1 },
    lengths: { length, noPadLength: length, gapShare: 0 },
    byOpening: null,
    ruler: hole.id,
    byThickness: STILL,
    byRadius: { length: slope, noPadLength: slope, gapShare: 0, lnGap: 0 },
    byPadModel: STILL,
    byGeometry: () => ALL_STILL,
  };
}

/** Follows the links that rule a pad to the stop that decides, multiplying their ratios. */
function rulerOf(horn: Horn, setup: Setup, id: string): { id: string; ratio: number } {
  const { ruledBy, pose } = standingPad(horn, setup, id);
  if (ruledBy === null) return { id, ratio: 1 };
  const driver = standingPad(horn, setup, ruledBy.driver);
  const above = rulerOf(horn, setup, ruledBy.driver);
  return { id: above.id, ratio: (above.ratio * pose.front) / driver.pose.front };
}

/** How a pad's vent share moves along a direction, no unit per m. @param hole with its own shape held */
export function shareAlong(hole: ToneHole, { lengths }: OpenHole, by: EndMotion): number {
  const slopes = ventShareSlopes(hole, lengths.length, lengths.noPadLength);
  return slopes.end * by.length + slopes.noPadEnd * by.noPadLength;
}
