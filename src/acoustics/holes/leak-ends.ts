import { holeOf, keySetupOf, type Horn, type Setup, type ToneHole } from '../horn.ts';
import { closingHeights, type LinkScrews } from '../keywork/closing.ts';
import { makePadPose } from '../keywork/hinge.ts';
import { padStates } from '../keywork/linkage.ts';
import { addGaps, isSealed, SEALED, tiltedGap, widestGap, type SeatGap } from './leak-gap.ts';
import { makeLeakSlit, WIDEST_LEAK } from './leak-slit.ts';
import type { PadModel } from './pad-models/pad-model.ts';
import { holeEnd, padEnd } from './pad-over-hole.ts';
import { CLOSED, type HoleEnd } from './hole-tube.ts';

/** Everything that leaks: pads that do not seal wherever they are shut, and links that shut late or early. */
export interface Leaks {
  /** by pad id: the gap left when the pad is pressed home */
  readonly seats: ReadonlyMap<string, SeatGap>;
  readonly screws: LinkScrews;
}

/** One pad's seat that leaks and nothing else. */
export function seatLeak(pad: string, gap: SeatGap): Leaks {
  return { seats: new Map([[pad, gap]]), screws: [] };
}

/**
 * The gap under a pad that hangs open a little on its hinge: wider at the front than at the back.
 *
 * @param front m, height of the pad's front edge above the rim plane
 */
export function hangingGap(hole: ToneHole, padRadius: number, front: number): SeatGap {
  if (!(front > 0)) return SEALED;
  if (hole.hinge === null)
    throw new RangeError(`invalid key: "${hole.id}" is a vent; expected a pad with a hinge`);
  const pose = makePadPose(hole.hinge, padRadius, { at: 'front', height: front });
  // Over the middle of the rim.
  const outward =
    (hole.holeRadius + Math.min(padRadius, hole.holeRadius + hole.rimThickness)) / 2 / padRadius;
  const at = (edge: number): number => Math.max(0, pose.centre + (edge - pose.centre) * outward);
  return tiltedGap(at(pose.front), at(pose.back));
}

/** How a shut hole ends when its pad leaves a gap. */
export function leakEnd(horn: Horn, setup: Setup, id: string, gap: SeatGap): HoleEnd {
  const hole = holeOf(horn, id);
  const padRadius = hole.hinge === null ? Infinity : keySetupOf(setup, id).padRadius;
  return isSealed(gap) ? CLOSED : { ...CLOSED, leak: makeLeakSlit(hole, padRadius, gap) };
}

/**
 * How every leaking hole ends under a fingering: the holes that should be shut and are not. A pad that links
 * leave hanging beyond a leak's range ({@link WIDEST_LEAK}) ends as the open pad it is.
 *
 * @param touches ids of the touches held down
 * @throws RangeError for a pad or a link the horn does not have
 */
export function leakEndsIn(
  horn: Horn,
  setup: Setup,
  touches: readonly string[],
  leaks: Leaks,
  model: PadModel,
): Map<string, HoleEnd> {
  const ends = new Map<string, HoleEnd>();
  for (const [id, { gap, front }] of gapsIn(horn, setup, touches, leaks)) {
    const hole = holeOf(horn, id);
    const hangs = front > 0 && widestGap(gap) > WIDEST_LEAK * hole.holeRadius;
    ends.set(id, hangs ? hangingEnd(hole, setup, front, model) : leakEnd(horn, setup, id, gap));
  }
  return ends;
}

/** A shut pad's whole gap, and how far its front hangs open because of links, m. */
export interface PadGap {
  readonly gap: SeatGap;
  readonly front: number;
}

/** The gap of every pad that should be shut under a fingering and is not, seat and links together. */
export function gapsIn(
  horn: Horn,
  setup: Setup,
  touches: readonly string[],
  { seats, screws }: Leaks,
): Map<string, PadGap> {
  for (const id of seats.keys()) holeOf(horn, id);
  const gaps = new Map<string, PadGap>();
  const shut = padStates(horn.keywork, new Set(touches));
  const heights = screws.length === 0 ? null : closingHeights(horn.keywork, new Set(touches), screws);
  for (const hole of horn.holes) {
    if (shut.get(hole.id)!.open) continue;
    const front = heights?.get(hole.id) ?? 0;
    const hanging = front > 0 ? hangingGap(hole, keySetupOf(setup, hole.id).padRadius, front) : SEALED;
    const gap = addGaps(seats.get(hole.id) ?? SEALED, hanging);
    if (!isSealed(gap)) gaps.set(hole.id, { gap, front });
  }
  return gaps;
}

function hangingEnd(hole: ToneHole, setup: Setup, front: number, model: PadModel): HoleEnd {
  const { padRadius } = keySetupOf(setup, hole.id);
  const pose = makePadPose(hole.hinge!, padRadius, { at: 'front', height: front });
  return holeEnd(hole, padEnd(hole, setup, pose, model), pose.centre);
}
