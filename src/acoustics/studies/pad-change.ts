import type { AirColumn } from '../air/air.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { PadModel } from '../holes/pad-models/pad-model.ts';
import { holeEnd, ownPose, padEnd } from '../holes/pad-over-hole.ts';
import { holeOf, keySetupOf, type Horn, type KeySetup, type Setup } from '../horn.ts';
import { closingContact, levelledTurn, type ClosingContact } from '../keywork/closing-contact.ts';
import { largestOpening, makePadPose, poseAtAngle, type PadPose } from '../keywork/hinge.ts';
import { findThreshold } from '../numerics/find-root.ts';
import { followOpenings, type FollowedChange } from './follow-openings.ts';
import type { WholeHornOptions } from './whole-horn.ts';

/**
 * What other pads do at the same stops. The foot cork holds the open cup where it was; the pad's face is nearer
 * the rim by what the pad gained.
 *
 *   dropped in   the face stays parallel to the cup's floor, so the open face sinks Δt along its own normal: all
 *                round by Δt cos θ. It no longer seats flat (closing-contact.ts says what gapes). Its venting is
 *                reckoned from its centre, as if it had turned down to there.
 *   levelled     the pad is floated until it seats flat. The key then stops turning θ₀ before its old place
 *                (levelledTurn), and open it has turned by θ − θ₀: the centre loses about Δt, the front
 *                (L + d)/L of that, the back (L − d)/L.
 *
 * Links are taken as regulated again after the change; {@link LinkShift} says by how much they were put out.
 *
 * **Source:** plain geometry.
 */
export type PadSeating = 'levelled' | 'dropped in';

/** Choices about the change. */
export interface PadChangeOptions extends Omit<WholeHornOptions, 'near' | 'answers'> {
  /** default levelled: a pad that does not seal is no change worth hearing */
  readonly seating?: PadSeating;
  /** by pad: travel at the foot cork per travel of the front, where known */
  readonly footPerFront?: ReadonlyMap<string, number>;
}

/** One key with another pad. */
export interface ChangedPad {
  readonly pad: string;
  /** m, Δt */
  readonly thicker: number;
  /** its own stop, links left out */
  readonly before: PadPose;
  readonly after: PadPose;
  readonly ventBefore: number;
  readonly ventAfter: number;
  /** what gapes when the new pad is dropped in as it is and shut */
  readonly contact: ClosingContact;
  /** the stop that gives the old venting back; null where the hinge cannot */
  readonly restored: RestoredStop | null;
}

/** Where to set the stop for the old venting, the pad levelled in either case. Metres. */
export interface RestoredStop {
  /** at the front */
  readonly front: number;
  /** how far the front must rise from where the new pad, levelled, puts it; negative, come down */
  readonly raise: number;
  /** how much thinner the foot cork must be; negative, thicker; null where the leverage is not known */
  readonly thinnerCork: number | null;
}

/** What pads of other thickness leave of a link that shut both at once: to be regulated away. */
export interface LinkShift {
  readonly driver: string;
  readonly driven: string;
  /** m, as a link screw reads: at the driven front, or, negative, at the driver's */
  readonly left: number;
}

/** Everything a change of pads does. */
export interface PadChange {
  readonly setup: Setup;
  readonly pads: readonly ChangedPad[];
  readonly links: readonly LinkShift[];
  readonly change: FollowedChange;
  /** pads that no longer open, in whole or at the back */
  readonly warnings: readonly string[];
}

/**
 * Changes pads.
 *
 * @param thicker by pad id: Δt, m; negative for a thinner pad
 * @throws RangeError for an unknown pad, a vent, a pad of no thickness or one its hinge cannot take
 */
export function changePads(
  horn: Horn,
  setup: Setup,
  thicker: ReadonlyMap<string, number>,
  air: AirColumn,
  options: PadChangeOptions = {},
): PadChange {
  const model = options.padModel ?? DEFAULT_PAD_MODEL;
  const { seating = 'levelled', footPerFront } = options;
  const keys = new Map(setup.keys);
  const pads = [...thicker].map(([id, by]) => {
    const { key, pose } = changedKey(horn, setup, id, by, seating);
    keys.set(id, key);
    return changedPad(horn, setup, { id, by, key, pose, model, foot: footPerFront?.get(id) });
  });
  const changed = { keys };
  return {
    setup: changed,
    pads: pads.sort((a, b) => holeOf(horn, a.pad).number - holeOf(horn, b.pad).number),
    links: linkShifts(horn, setup, thicker),
    change: followOpenings(horn, setup, changed, air, options),
    warnings: pads.flatMap((changed) => warningsFor(horn, changed)),
  };
}

/** The key with its new pad at the old stop, and how it stands. */
function changedKey(
  horn: Horn,
  setup: Setup,
  id: string,
  by: number,
  seating: PadSeating,
): { key: KeySetup; pose: PadPose } {
  const key = keySetupOf(setup, id);
  const { hinge } = holeOf(horn, id);
  const padThickness = key.padThickness + by;
  if (!(padThickness > 0))
    throw new RangeError(
      `invalid pad thickness of ${id}: ${(padThickness * 1000).toFixed(2)} mm; expected more than 0 mm`,
    );
  const before = ownPose(horn, setup, id);
  if (hinge!.distance === Infinity || seating === 'dropped in') {
    const sinks = (height: number): number => Math.max(0, height - by * Math.cos(before.angle));
    const pose = {
      angle: before.angle,
      front: sinks(before.front),
      centre: sinks(before.centre),
      back: sinks(before.back),
      shift: before.shift + by * Math.sin(before.angle),
    };
    return { key: { ...key, padThickness, opening: { at: 'centre', height: pose.centre } }, pose };
  }
  const angle = Math.max(0, before.angle - levelledTurn(hinge!, key.padThickness, by));
  const pose = poseAtAngle(hinge!, key.padRadius, angle);
  return { key: { ...key, padThickness, opening: { at: 'front', height: Math.max(0, pose.front) } }, pose };
}

interface Changing {
  readonly id: string;
  readonly by: number;
  readonly key: KeySetup;
  readonly pose: PadPose;
  readonly model: PadModel;
  readonly foot: number | undefined;
}

function changedPad(horn: Horn, setup: Setup, { id, by, key, pose, model, foot }: Changing): ChangedPad {
  const hole = holeOf(horn, id);
  const after: Setup = { keys: new Map(setup.keys).set(id, key) };
  const vent = (there: Setup, at: PadPose): number =>
    holeEnd(hole, padEnd(hole, there, at, model), at.centre).ventShare;
  const before = ownPose(horn, setup, id);
  const ventBefore = vent(setup, before);
  const seatRadius = Math.min(key.padRadius, hole.holeRadius + hole.rimThickness);
  const at = (front: number): PadPose =>
    makePadPose(hole.hinge!, key.padRadius, { at: 'front', height: front });
  const most = Math.min(largestOpening(hole.hinge!, key.padRadius, 'front'), 4 * before.front + Math.abs(by));
  const front = findThreshold((h) => vent(after, at(h)) >= ventBefore, 0, most, FINEST);
  const levelled = changedKey(horn, setup, id, by, 'levelled').pose.front;
  const raise = front === null ? 0 : front - levelled;
  return {
    pad: id,
    thicker: by,
    before,
    after: pose,
    ventBefore,
    ventAfter: vent(after, pose),
    contact: closingContact(hole.hinge!, seatRadius, by),
    restored: front === null ? null : { front, raise, thinnerCork: foot === undefined ? null : raise * foot },
  };
}

function warningsFor(horn: Horn, { pad, before, after }: ChangedPad): string[] {
  const { name } = holeOf(horn, pad);
  if (before.centre > 0 && !(after.centre > 0))
    return [`${name} no longer opens: the new pad takes up all of its opening.`];
  if (before.back > 0 && !(after.back > 0))
    return [
      `${name} stays on its rim at the back when it opens: the new pad is thicker than that edge rises.`,
    ];
  return [];
}

/** m, how fine a stop is sought. */
const FINEST = 1e-8;

/**
 * How links are put out: each key now shuts earlier by Δ at its front, levelled, so the link's offset becomes
 * k·Δ_driver − Δ_driven.
 */
function linkShifts(horn: Horn, setup: Setup, thicker: ReadonlyMap<string, number>): LinkShift[] {
  const earlier = (id: string): number => {
    const by = thicker.get(id) ?? 0;
    const { hinge } = holeOf(horn, id);
    if (by === 0 || hinge === null) return 0;
    if (hinge.distance === Infinity) return by;
    const { padRadius, padThickness } = keySetupOf(setup, id);
    return poseAtAngle(hinge, padRadius, levelledTurn(hinge, padThickness, by)).front;
  };
  return horn.keywork.links.flatMap(({ driver, driven, ratio }) => {
    if (ratio === undefined) return [];
    const offset = ratio * earlier(driver) - earlier(driven);
    return offset === 0 ? [] : [{ driver, driven, left: offset >= 0 ? offset : offset / ratio }];
  });
}
