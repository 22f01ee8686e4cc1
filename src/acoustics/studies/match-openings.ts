import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { PadModel } from '../holes/pad-models/pad-model.ts';
import { holeEnd, padEnd, standingPad } from '../holes/pad-over-hole.ts';
import { keySetupOf, withOpening, type Horn, type Setup, type ToneHole } from '../horn.ts';
import { largestOpening, makePadPose } from '../keywork/hinge.ts';
import { findThreshold } from '../numerics/find-root.ts';
import { alignHoles } from './compare-keys.ts';

/**
 * This horn set like that one: own stops of one horn at which its pads stand as another horn’s do, links followed.
 *
 *   front        the same height at the pad’s front, whatever the hinge
 *   vent share   the height at which this hole, under its own pad and hinge, vents the same share
 */
export const MATCHED_BY = ['front', 'vent share'] as const;
export type MatchedBy = (typeof MATCHED_BY)[number];

/** What becomes of one pad; heights in m at the front. */
export interface MatchedPad {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  /** the own stop that is wanted; null where the pad cannot be set so */
  readonly front: number | null;
  /** what stands against it */
  readonly against:
    | { readonly by: 'absent' }
    /** its hinge, or where its venting is looked at, ends there */
    | { readonly by: 'stop'; readonly most: number }
    /** with every pad set, the arm of this driver holds it there */
    | { readonly by: 'arm'; readonly driver: string; readonly lets: number }
    | null;
}

/** How far the same vent share is looked for: times the larger of the two fronts. Ours, as far as a study looks. */
const REACH = 1.75;
/** How close the search ends, m. */
const FINEST = 1e-6;
/** m: a pad held lower by less is not seen to be held. */
const APART = 5e-5;

/** Every pad with a hinge of `horn`, from the bell up. @param like the horn whose pads are taken as the measure */
export function matchOpenings(
  { horn, setup }: { readonly horn: Horn; readonly setup: Setup },
  like: { readonly horn: Horn; readonly setup: Setup },
  by: MatchedBy,
  padModel: PadModel = DEFAULT_PAD_MODEL,
): MatchedPad[] {
  const pads = alignHoles([horn, like.horn]).flatMap(([hole, other]) =>
    hole === null ? [] : [matchPad({ horn, setup }, like, hole, other, by, padModel)],
  );
  const set = pads.reduce(
    (now, { id, front }) => (front === null ? now : withOpening(now, id, { at: 'front', height: front })),
    setup,
  );
  return pads.map((pad) => {
    const { pose, ruledBy } = standingPad(horn, set, pad.id);
    if (pad.front === null || ruledBy === null || pad.front - pose.front <= APART) return pad;
    return { ...pad, against: { by: 'arm', driver: ruledBy.driver, lets: pose.front } };
  });
}

function matchPad(
  { horn, setup }: { readonly horn: Horn; readonly setup: Setup },
  like: { readonly horn: Horn; readonly setup: Setup },
  hole: ToneHole,
  other: ToneHole | null,
  by: MatchedBy,
  padModel: PadModel,
): MatchedPad {
  const { id, number, name } = hole;
  const pad = { id, number, name, against: null };
  if (other === null) return { ...pad, front: null, against: { by: 'absent' } };
  const hinge = hole.hinge!;
  const { padRadius } = keySetupOf(setup, id);
  const theirs = standingPad(like.horn, like.setup, other.id).pose;
  const largest = largestOpening(hinge, padRadius, 'front');
  if (by === 'front') {
    if (theirs.front <= largest) return { ...pad, front: theirs.front };
    return { ...pad, front: null, against: { by: 'stop', most: largest } };
  }
  const shareAt = (front: number): number => {
    const pose = makePadPose(hinge, padRadius, { at: 'front', height: front });
    return holeEnd(hole, padEnd(hole, setup, pose, padModel), pose.centre).ventShare;
  };
  const wanted = holeEnd(other, padEnd(other, like.setup, theirs, padModel), theirs.centre).ventShare;
  if (theirs.front === 0) return { ...pad, front: 0 };
  const present = standingPad(horn, setup, id).pose.front;
  const most = Math.min(largest, REACH * Math.max(present, theirs.front));
  const front = findThreshold((at) => shareAt(at) >= wanted, 0, most, FINEST);
  return front === null ? { ...pad, front, against: { by: 'stop', most } } : { ...pad, front };
}
