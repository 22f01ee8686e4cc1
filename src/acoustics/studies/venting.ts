import type { AirColumn } from '../air/air.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { PadEnd } from '../holes/pad-models/pad-model.ts';
import type { HoleEnd } from '../holes/hole-tube.ts';
import { holeEnd, padEnd, standingPad, type StandingPad } from '../holes/pad-over-hole.ts';
import { holeOf, keySetupOf, type Horn, type Setup, type ToneHole } from '../horn.ts';
import { centsBetween, FINGERINGS, noteFrequency, type Fingering } from '../keywork/fingerings.ts';
import { largestOpening, makePadPose, type PadPose } from '../keywork/hinge.ts';
import { padStates } from '../keywork/linkage.ts';
import { prepareNetworks, withHoleEnds, type Network, type NetworkOptions } from '../network/network.ts';
import {
  firstStepCents,
  followResonance,
  resonanceNear,
  type NoteOutcome,
  type Resonance,
} from '../resonance/resonances.ts';

/**
 * The venting study: one key moves, all else stays as set, and every note of the two registers that the key
 * governs is followed.
 *
 * Definitions, all ours:
 *
 *   governs    half of and one and a half times the present opening differ by more than `governsCents` on the note
 *   vent share the hole's acoustic conductance as a share of what it would be with no pad at all
 *   strength   the height of the note's resonance as a share of its height with no pad over this hole
 *   point of diminishing return   see diminishing-return.ts
 */
export interface VentingOptions extends NetworkOptions {
  /** Hz, sounding A4, default 440 */
  readonly a4?: number;
  /** m at the front, how far the study looks; default 1.75 times the present opening, at least the hole's radius */
  readonly reach?: number;
  /** cents, default 1 */
  readonly governsCents?: number;
  /** which notes are looked at; default all of the two registers */
  readonly fingerings?: readonly Fingering[];
}

/** One note the key governs, in its network as found. */
export interface GovernedNote {
  readonly fingering: Fingering;
  /** Hz, equal temperament */
  readonly target: number;
  /** the resonance at the present opening */
  readonly present: Resonance;
  /** the resonance with no pad over this hole */
  readonly noPad: Resonance;
  readonly network: Network;
}

/** A key made ready for the study. */
export interface VentingContext {
  readonly horn: Horn;
  readonly setup: Setup;
  readonly hole: ToneHole;
  readonly standing: StandingPad;
  readonly governed: readonly GovernedNote[];
  /** m at the front, as far as the study looks */
  readonly reach: number;
  readonly options: VentingOptions;
}

/** One governed note at one opening; null where the resonance is lost. */
export interface NoteAtOpening {
  readonly frequency: number;
  /** from the present opening */
  readonly cents: number;
  /** from equal temperament */
  readonly pitchCents: number;
  /** height of the resonance, Z/Z_c */
  readonly height: number;
  /** height as a share of that with no pad over this hole */
  readonly strength: number;
  readonly q: number;
  /** s */
  readonly riseTime: number;
}

/** The key at one opening. */
export interface VentingPoint {
  readonly pose: PadPose;
  readonly end: PadEnd;
  readonly ventShare: number;
  /** one entry per governed note, in their order */
  readonly notes: readonly (NoteAtOpening | null)[];
}

/** m at the front: below this a pad is a leak, and the study begins. */
export const LEAST_OPENING = 0.25e-3;

/**
 * Finds which notes a key governs and makes each ready to follow.
 *
 * @param id hole id
 * @throws RangeError for an unknown id or a vent
 */
export function prepareVenting(
  horn: Horn,
  setup: Setup,
  id: string,
  air: AirColumn,
  options: VentingOptions = {},
): VentingContext {
  const hole = holeOf(horn, id);
  if (hole.hinge === null)
    throw new RangeError(`invalid key: "${id}" is a vent; expected a pad with a hinge`);
  const { padRadius } = keySetupOf(setup, id);
  const standing = standingPad(horn, setup, id);
  const present = Math.max(standing.pose.front, LEAST_OPENING);
  const reach = Math.min(
    options.reach ?? Math.max(1.75 * present, hole.holeRadius),
    largestOpening(hole.hinge, padRadius, 'front'),
  );
  if (!(reach > LEAST_OPENING)) {
    throw new RangeError(`invalid reach: ${reach * 1000} mm; expected more than ${LEAST_OPENING * 1000} mm`);
  }
  const context = { horn, setup, hole, standing, governed: [], reach, options };
  const looked = options.fingerings ?? FINGERINGS.filter((f) => f.register < 3);
  const candidates = looked.filter((f) => fullyOpenIn(horn, f, id));
  const networkOf = prepareNetworks(horn, setup, air, options);
  const ends = comparedEnds(context, Math.min(present, reach / 1.5));
  const governed = candidates.flatMap((fingering) => {
    const note = governedNote(context, fingering, networkOf(fingering), ends);
    return note === null ? [] : [note];
  });
  return { ...context, governed };
}

/** Whether a fingering lets the pad stand fully open. */
function fullyOpenIn(horn: Horn, fingering: Fingering, id: string): boolean {
  const state = padStates(horn.keywork, new Set(fingering.touches)).get(id)!;
  return state.open && state.front === undefined;
}

/** How the hole ends where a note is looked at to tell whether the key governs it. */
interface ComparedEnds {
  readonly present: HoleEnd;
  /** half of and one and a half times as open */
  readonly less: HoleEnd;
  readonly more: HoleEnd;
  readonly noPad: HoleEnd;
}

function comparedEnds(context: VentingContext, present: number): ComparedEnds {
  const { noPadLength } = padAt(context, context.reach).end;
  return {
    present: endAt(context, context.standing.pose.front),
    less: endAt(context, 0.5 * present),
    more: endAt(context, 1.5 * present),
    noPad: { endLength: noPadLength, ventShare: 1 },
  };
}

/** The note, if the key governs it. */
function governedNote(
  { horn, hole, options }: VentingContext,
  fingering: Fingering,
  network: Network,
  ends: ComparedEnds,
): GovernedNote | null {
  const endingIn = (end: HoleEnd): Network => withHoleEnds(network, new Map([[hole.id, end]]));
  const target = noteFrequency(fingering.note, horn.transposition, options.a4);
  const now = resonanceNear(endingIn(ends.present), target);
  if (!now.found) return null;
  const from = now.resonance.frequency;
  const less = endingIn(ends.less);
  const more = endingIn(ends.more);
  const governsCents = options.governsCents ?? 1;
  // Most keys hardly touch most notes: where the first step towards either is this short, it is all there is to go.
  const firstSteps = Math.abs(firstStepCents(less, from)) + Math.abs(firstStepCents(more, from));
  if (firstSteps < 0.5 * Math.min(governsCents, 1)) return null;
  const low = followResonance(less, from);
  const high = followResonance(more, from);
  if (!low.found || !high.found) return null;
  const moved = Math.abs(centsBetween(low.resonance.frequency, high.resonance.frequency));
  if (!(moved > governsCents)) return null;
  const noPad = followResonance(endingIn(ends.noPad), from);
  if (!noPad.found) return null;
  return { fingering, target, present: now.resonance, noPad: noPad.resonance, network };
}

/** The pad at a front opening: its pose and what the pad model says. */
function padAt(context: VentingContext, front: number): { pose: PadPose; end: PadEnd } {
  const { hole, setup, options } = context;
  const pose = makePadPose(hole.hinge!, keySetupOf(setup, hole.id).padRadius, { at: 'front', height: front });
  return { pose, end: padEnd(hole, setup, pose, options.padModel ?? DEFAULT_PAD_MODEL) };
}

function endAt(context: VentingContext, front: number): HoleEnd {
  const { pose, end } = padAt(context, front);
  return holeEnd(context.hole, end, pose.centre);
}

/**
 * The key at one front opening: pose, vent share, and every governed note.
 *
 * @param front m, 0…reach
 */
export function ventingAt(context: VentingContext, front: number): VentingPoint {
  const { hole } = context;
  const { pose, end } = padAt(context, front);
  const ending = holeEnd(hole, end, pose.centre);
  const notes = context.governed.map((note) => {
    const network = withHoleEnds(note.network, new Map([[hole.id, ending]]));
    const outcome = followResonance(network, note.present.frequency);
    return noteAtOpening(note, outcome);
  });
  return { pose, end, ventShare: ending.ventShare, notes };
}

function noteAtOpening(note: GovernedNote, outcome: NoteOutcome): NoteAtOpening | null {
  if (!outcome.found) return null;
  const { frequency, height, q, riseTime } = outcome.resonance;
  return {
    frequency,
    cents: centsBetween(note.present.frequency, frequency),
    pitchCents: centsBetween(note.target, frequency),
    height,
    strength: height / note.noPad.height,
    q,
    riseTime,
  };
}

/** The same key with a pad that rises parallel to its rim, all else as it is. */
export function withParallelPad(context: VentingContext): VentingContext {
  return { ...context, hole: { ...context.hole, hinge: { distance: Infinity, height: 0 } } };
}

/** A pad that this key's arm would hold down if the key were set lower. */
export interface HeldDown {
  readonly driven: string;
  /** m at this key's front: below it the arm rules the driven pad */
  readonly below: number;
}

/** Which pads this key's arms would hold down, and from where. */
export function heldDownBy(horn: Horn, setup: Setup, id: string): HeldDown[] {
  return horn.keywork.links.flatMap((link) => {
    if (link.driver !== id || link.ratio === undefined) return [];
    // Without this arm: one that holds the pad down already would name its own height as the limit.
    const keywork = { ...horn.keywork, links: horn.keywork.links.filter((other) => other !== link) };
    const driven = standingPad({ ...horn, keywork }, setup, link.driven);
    return [{ driven: link.driven, below: driven.pose.front / link.ratio }];
  });
}
