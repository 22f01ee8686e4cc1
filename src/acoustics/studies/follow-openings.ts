import type { AirColumn } from '../air/air.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { PadModel } from '../holes/pad-models/pad-model.ts';
import { holeEnd, padEnd, standingPad } from '../holes/pad-over-hole.ts';
import { holeOf, type Horn, type Setup } from '../horn.ts';
import { centsBetween, type Fingering } from '../keywork/fingerings.ts';
import { playWholeHorn, type WholeHornNote, type WholeHornOptions } from './whole-horn.ts';

/**
 * One setup after another: which pads stand otherwise, their own stops and links considered, and what every
 * note makes of it.
 */

/** A pad that stands otherwise than before. Metres at the front. */
export interface MovedPad {
  readonly pad: string;
  readonly before: StandingThere;
  readonly after: StandingThere;
}

/** How a pad stands, and how much of its hole it leaves. */
export interface StandingThere {
  readonly front: number;
  readonly centre: number;
  readonly back: number;
  /** 0…1 */
  readonly ventShare: number;
  /** the driver whose arm holds it down; null where its own stop rules */
  readonly ruledBy: string | null;
}

/** A note before and after. */
export interface FollowedNote {
  readonly fingering: Fingering;
  readonly before: WholeHornNote;
  readonly after: WholeHornNote;
  /** null where either has no resonance */
  readonly change: NoteChange | null;
}

/** What a change does to a note. */
export interface NoteChange {
  readonly cents: number;
  /** dB of height gained; negative, lost */
  readonly heightDb: number;
}

/** What a change of setup does. */
export interface FollowedChange {
  /** pads that moved, from the bell up */
  readonly pads: readonly MovedPad[];
  /** every note, in the order of the fingerings */
  readonly notes: readonly FollowedNote[];
}

/** m: a pad that moves less has not moved. */
const MOVED = 1e-9;

/** Follows a change of setup: as when lower-stack heights are chosen and bis, G♯, F♯ auxiliary and small C follow. */
export function followOpenings(
  horn: Horn,
  before: Setup,
  after: Setup,
  air: AirColumn,
  options: Omit<WholeHornOptions, 'near' | 'answers'> = {},
): FollowedChange {
  const model = options.padModel ?? DEFAULT_PAD_MODEL;
  const pads = horn.holes
    .filter((hole) => hole.hinge !== null)
    .sort((a, b) => a.number - b.number)
    .flatMap(({ id }): MovedPad[] => {
      const [was, is] = [before, after].map((setup) => standingThere(horn, setup, id, model));
      const same = Math.abs(was.front - is.front) < MOVED && Math.abs(was.back - is.back) < MOVED;
      return same ? [] : [{ pad: id, before: was, after: is }];
    });
  const played = playWholeHorn(horn, before, air, { ...options, answers: false });
  const near = new Map(
    played.flatMap(({ fingering, outcome }): [string, number][] =>
      outcome.found ? [[fingering.id, outcome.resonance.frequency]] : [],
    ),
  );
  const then = playWholeHorn(horn, after, air, { ...options, answers: false, near });
  const notes = played.map((note, i) => followed(note, then[i]));
  return { pads, notes };
}

/** How a pad stands and vents. */
export function standingThere(horn: Horn, setup: Setup, id: string, model: PadModel): StandingThere {
  const hole = holeOf(horn, id);
  const { pose, ruledBy } = standingPad(horn, setup, id);
  const { ventShare } = holeEnd(hole, padEnd(hole, setup, pose, model), pose.centre);
  return {
    front: pose.front,
    centre: pose.centre,
    back: pose.back,
    ventShare,
    ruledBy: ruledBy?.driver ?? null,
  };
}

function followed(before: WholeHornNote, after: WholeHornNote): FollowedNote {
  const { fingering } = before;
  if (!before.outcome.found || !after.outcome.found) return { fingering, before, after, change: null };
  const was = before.outcome.resonance;
  const is = after.outcome.resonance;
  return {
    fingering,
    before,
    after,
    change: {
      cents: centsBetween(was.frequency, is.frequency),
      heightDb: 20 * Math.log10(is.height / was.height),
    },
  };
}

/**
 * The notes that suffer: those that lose height or go flat by more than asked, the most hurt first. A cent
 * counts as much as a tenth of a decibel, a choice of ours.
 */
export function sufferingNotes(
  { notes }: FollowedChange,
  least: { readonly cents: number; readonly db: number } = { cents: 1, db: 0.1 },
): FollowedNote[] {
  const hurt = ({ change }: FollowedNote): number =>
    change === null ? Infinity : Math.max(-change.heightDb, -change.cents / 10);
  return notes
    .filter(
      ({ before, change }) =>
        (change === null && before.outcome.found) ||
        (change !== null && (change.cents < -least.cents || change.heightDb < -least.db)),
    )
    .sort((a, b) => hurt(b) - hurt(a));
}
