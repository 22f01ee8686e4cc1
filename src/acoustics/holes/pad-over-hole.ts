import { flangedEndLength } from '../bore/open-end.ts';
import { linkLimit, type LinkLimit, type PadState } from '../keywork/linkage.ts';
import { makePadPose, type PadPose } from '../keywork/hinge.ts';
import { holeOf, keySetupOf, type Horn, type Setup, type ToneHole } from '../horn.ts';
import type { PadEnd, PadLengths, PadModel } from './pad-models/pad-model.ts';
import { ventShareOf, type HoleShape } from './hole-lengths.ts';
import { CLOSED, type HoleEnd } from './hole-tube.ts';

/** A pad as it really stands: its own stop or the link that rules, whichever is tighter. */
export interface StandingPad {
  readonly pose: PadPose;
  /** what its own stop would give, m at the front */
  readonly ownFront: number;
  /** set where a link holds the pad lower than its own stop */
  readonly ruledBy: LinkLimit | null;
}

/** How a pad stands at rest-open or fully opened, own stop and links considered. */
export function standingPad(horn: Horn, setup: Setup, id: string): StandingPad {
  const own = ownPose(horn, setup, id);
  const limit = linkLimit(horn.keywork, id, (driver) => standingPad(horn, setup, driver).pose.front);
  if (limit === null || limit.front >= own.front) return { pose: own, ownFront: own.front, ruledBy: null };
  return { pose: poseFromFront(horn, setup, id, limit.front), ownFront: own.front, ruledBy: limit };
}

/** The pose a key's own stop gives, links left out. */
export function ownPose(horn: Horn, setup: Setup, id: string): PadPose {
  const hole = holeOf(horn, id);
  const key = keySetupOf(setup, id);
  return makePadPose(hingeOf(hole), key.padRadius, key.opening);
}

function poseFromFront(horn: Horn, setup: Setup, id: string, front: number): PadPose {
  return makePadPose(hingeOf(holeOf(horn, id)), keySetupOf(setup, id).padRadius, {
    at: 'front',
    height: front,
  });
}

function hingeOf(hole: ToneHole): NonNullable<ToneHole['hinge']> {
  if (hole.hinge === null)
    throw new RangeError(`invalid key: "${hole.id}" is a vent; expected a pad with a hinge`);
  return hole.hinge;
}

/** What a pad model says of a pad in a pose over its hole. */
export function padEnd(hole: ToneHole, setup: Setup, pose: PadPose, model: PadModel): PadEnd {
  const key = keySetupOf(setup, hole.id);
  const hinge = hingeOf(hole);
  return model.endOf({
    holeRadius: hole.holeRadius,
    rimThickness: hole.rimThickness,
    padRadius: key.padRadius,
    padThickness: key.padThickness,
    hingeDistance: hinge.distance,
    hingeHeight: hinge.height,
    centreHeight: pose.centre,
  });
}

/**
 * How a hole ends for the network, from its pad's end.
 *
 * @param opening m, the height of the pad's centre: the gap that friction is reckoned with
 */
export function holeEnd(hole: HoleShape, end: PadLengths<number>, opening: number): HoleEnd {
  if (end.length === Infinity) return CLOSED;
  return {
    endLength: end.length,
    ventShare: ventShareOf(hole, end.length, end.noPadLength),
    gap: { share: end.gapShare, opening },
  };
}

/** How a hole ends under a fingering. */
export function holeEndIn(
  horn: Horn,
  setup: Setup,
  hole: ToneHole,
  state: PadState,
  model: PadModel,
): HoleEnd {
  if (!state.open) return CLOSED;
  if (hole.hinge === null) return openVent(hole);
  const standing = standingPad(horn, setup, hole.id);
  const pose =
    state.front !== undefined && state.front < standing.pose.front
      ? poseFromFront(horn, setup, hole.id, state.front)
      : standing.pose;
  return holeEnd(hole, padEnd(hole, setup, pose, model), pose.centre);
}

/** A vent's end: the plain rim of its tube. A vent pad lifts by a tube's width or more and does not limit it. */
function openVent(hole: ToneHole): HoleEnd {
  return { endLength: flangedEndLength(hole.holeRadius, hole.rimThickness), ventShare: 1 };
}
