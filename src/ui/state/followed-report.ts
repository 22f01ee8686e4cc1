import {
  followOpenings,
  sufferingNotes,
  type AirColumn,
  type FollowedChange,
  type FollowedNote,
  type StandingThere,
} from '../../acoustics/index.ts';
import { regulationFacts } from '../../documents/regulation-facts.ts';
import type { LoadedHorn } from '../../documents/to-acoustics.ts';

/** How a pad stands, bench units. */
export interface StandingMm {
  readonly frontMm: number;
  /** 0…1 */
  readonly ventShare: number;
  /** the driver whose arm holds it down; null where its own stop rules */
  readonly ruledBy: string | null;
}

/** A pad that stands otherwise than found. */
export interface MovedPadReport {
  readonly pad: string;
  readonly before: StandingMm;
  readonly after: StandingMm;
}

/** A note that is otherwise than found; null where it is lost. */
export interface MovedNoteReport {
  readonly id: string;
  readonly cents: number | null;
  readonly heightDb: number | null;
}

/** What proposed openings do, links followed. */
export interface FollowedReport {
  /** from the bell up */
  readonly pads: readonly MovedPadReport[];
  /** that suffer, the most hurt first */
  readonly suffering: readonly MovedNoteReport[];
  /** how many notes there are, and how many gain pitch or height by as much as others must lose to suffer */
  readonly notes: number;
  readonly gaining: number;
}

const PER_MM = 1e-3;
/** What a note must lose to be told: a cent, a tenth of a decibel. A choice of ours. */
export const LEAST_TOLD = { cents: 1, db: 0.1 };

/** Follows from a horn as found to the same horn with openings proposed. */
export function reportFollowed(
  found: LoadedHorn,
  proposed: LoadedHorn,
  air: AirColumn,
  a4Hz: number,
): FollowedReport {
  const { horn } = regulationFacts(found);
  const change = followOpenings(horn, found.setup, proposed.setup, air, { a4: a4Hz });
  return makeFollowedReport(change);
}

export function makeFollowedReport(change: FollowedChange): FollowedReport {
  return {
    pads: change.pads.map(({ pad, before, after }) => ({
      pad,
      before: standing(before),
      after: standing(after),
    })),
    suffering: sufferingNotes(change, LEAST_TOLD).map(movedNote),
    notes: change.notes.length,
    gaining: change.notes.filter(
      ({ change: by }) => by !== null && (by.cents > LEAST_TOLD.cents || by.heightDb > LEAST_TOLD.db),
    ).length,
  };
}

function standing({ front, ventShare, ruledBy }: StandingThere): StandingMm {
  return { frontMm: front / PER_MM, ventShare, ruledBy };
}

function movedNote({ fingering, change }: FollowedNote): MovedNoteReport {
  return { id: fingering.id, cents: change?.cents ?? null, heightDb: change?.heightDb ?? null };
}
