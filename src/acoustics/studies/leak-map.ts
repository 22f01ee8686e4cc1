import type { AirColumn } from '../air/air.ts';
import { seatLeak, type Leaks } from '../holes/leak-ends.ts';
import { ringGap } from '../holes/leak-gap.ts';
import type { Horn, Setup } from '../horn.ts';
import { FINGERINGS, type Fingering } from '../keywork/fingerings.ts';
import { leakingNote, sealedNote, type LeakLoss, type LeakOptions, type SealedNote } from './leak-study.ts';

/**
 * Which leak hurts which notes: one fault of the same size at every pad and every link in turn, on every note.
 */

/** Where a leak of the map sits: a pad's whole ring, or a link that leaves its driven pad hanging at the front. */
export type LeakPlace =
  | { readonly kind: 'seat'; readonly pad: string }
  | { readonly kind: 'link'; readonly driver: string; readonly driven: string };

/** What one fault does to one note; `lost` where the resonance is gone, null where the fault does not act. */
export type LeakMapCell = LeakLoss | 'lost' | null;

/** One fault on every note. */
export interface LeakMapRow {
  readonly place: LeakPlace;
  /** one entry per fingering of the map */
  readonly cells: readonly LeakMapCell[];
  /** the note that loses most, its index and its dB (Infinity where it is lost); null where no note is touched */
  readonly worst: WorstNote | null;
}

/** The note a fault hurts most. */
export interface WorstNote {
  readonly index: number;
  readonly lostDb: number;
}

/** Leak place × note at one gap. */
export interface LeakMap {
  /** m */
  readonly gap: number;
  readonly fingerings: readonly Fingering[];
  /** pads from the bell up, then links in the horn's order */
  readonly rows: readonly LeakMapRow[];
}

/** Every place a leak can be: each pad with a hinge from the bell up, each link that shuts or holds a pad. */
export function leakPlaces(horn: Horn): LeakPlace[] {
  const pads = horn.holes.filter((h) => h.hinge !== null).sort((a, b) => a.number - b.number);
  return [
    ...pads.map((hole): LeakPlace => ({ kind: 'seat', pad: hole.id })),
    ...horn.keywork.links.map(({ driver, driven }): LeakPlace => ({ kind: 'link', driver, driven })),
  ];
}

/** A fault of a size at a place: a whole ring of that gap, or a link that leaves that much at the driven front. */
export function leakAtPlace(place: LeakPlace, gap: number): Leaks {
  return place.kind === 'seat'
    ? seatLeak(place.pad, ringGap(gap))
    : { seats: new Map(), screws: [{ driver: place.driver, driven: place.driven, left: gap }] };
}

/**
 * Maps a fault of one size over every place and note.
 *
 * @param gap m, as 0.025e-3, a cigarette paper
 */
export function mapLeaks(
  horn: Horn,
  setup: Setup,
  gap: number,
  air: AirColumn,
  options: LeakOptions & { readonly places?: readonly LeakPlace[] } = {},
): LeakMap {
  if (!(gap > 0 && gap < Infinity))
    throw new RangeError(`invalid gap: ${gap * 1000} mm; expected more than 0 mm`);
  const notes = (options.fingerings ?? FINGERINGS).flatMap((fingering) => {
    const note = sealedNote(horn, setup, fingering, air, options);
    return note === null ? [] : [note];
  });
  const cell = (leaks: Leaks, note: SealedNote): LeakMapCell => {
    const played = leakingNote(horn, setup, leaks, note, options)?.played;
    if (played === undefined) return null;
    return played.found ? played.loss : 'lost';
  };
  const rows = (options.places ?? leakPlaces(horn)).map((place) => {
    const leaks = leakAtPlace(place, gap);
    const cells = notes.map((note) => cell(leaks, note));
    return { place, cells, worst: worstOf(cells) };
  });
  return { gap, fingerings: notes.map((n) => n.fingering), rows };
}

function worstOf(cells: readonly LeakMapCell[]): WorstNote | null {
  let worst: WorstNote | null = null;
  cells.forEach((cell, index) => {
    if (cell === null) return;
    const lostDb = cell === 'lost' ? Infinity : cell.lostDb;
    if (worst === null || lostDb > worst.lostDb) worst = { index, lostDb };
  });
  return worst;
}
