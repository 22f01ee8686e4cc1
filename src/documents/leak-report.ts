import {
  widestGap,
  type Horn,
  type LargestLeak,
  type LeakingNote,
  type LeakMap,
  type LeakStudy,
} from '../acoustics/index.ts';
import { reportResonance, type ResonanceReport } from './scale-report.ts';

/** One note with a leak, bench units. */
export interface LeakingNoteReport {
  readonly fingering: string;
  readonly note: string;
  readonly way: string;
  readonly register: number;
  readonly targetHz: number;
  /** pads that leak in it, and the widest gap of each */
  readonly pads: readonly { readonly pad: string; readonly gapMm: number }[];
  readonly sealed: ResonanceReport;
  /** null where the note is lost, with the reason */
  readonly leaking: ResonanceReport | null;
  readonly reason: string | null;
  readonly changeCents: number | null;
  readonly lostDb: number | null;
  readonly riseChangeMs: number | null;
}

/** A leak on every note it touches, bench units. */
export interface LeakReport {
  readonly horn: string;
  readonly notes: readonly LeakingNoteReport[];
  /** the fingering that is lost or loses most; null where none is touched */
  readonly worst: string | null;
  readonly warnings: readonly string[];
}

/** The largest leak a note bears, bench units. */
export interface LargestLeakReport {
  readonly horn: string;
  readonly fingering: string;
  readonly lostDb: number;
  /** null where there is none, with the reason */
  readonly gapMm: number | null;
  readonly papers: number | null;
  readonly note: LeakingNoteReport | null;
  readonly reason: string | null;
}

/** Leak place × note, bench units. */
export interface LeakMapReport {
  readonly horn: string;
  readonly gapMm: number;
  readonly fingerings: readonly string[];
  readonly rows: readonly {
    readonly pad: string;
    /** the driver of a link; null for the pad's own seat */
    readonly by: string | null;
    readonly worst: string | null;
    /** per fingering: null where the fault does not act */
    readonly cells: readonly (LeakCellReport | null)[];
  }[];
}

/** One cell: `lost` where the note has no resonance left. */
export interface LeakCellReport {
  readonly lost: boolean;
  readonly changeCents: number | null;
  readonly lostDb: number | null;
  readonly riseChangeMs: number | null;
}

const MM = 1e-3;
/** A cigarette paper. **Source:** common practice, no source. */
export const PAPER_MM = 0.025;

/** A leak study in bench units. */
export function reportLeak(horn: Horn, { notes, warnings }: LeakStudy): LeakReport {
  const lost = (note: LeakingNote): number => (note.played.found ? note.played.loss.lostDb : Infinity);
  const worst = notes.length === 0 ? null : notes.reduce((a, b) => (lost(b) > lost(a) ? b : a));
  return {
    horn: horn.name,
    notes: notes.map(reportLeakingNote),
    worst: worst?.fingering.id ?? null,
    warnings,
  };
}

/** One leaking note in bench units. */
export function reportLeakingNote(note: LeakingNote): LeakingNoteReport {
  const { fingering, target, played } = note;
  return {
    fingering: fingering.id,
    note: fingering.note,
    way: fingering.way,
    register: fingering.register,
    targetHz: target,
    pads: [...note.gaps].map(([pad, { gap }]) => ({ pad, gapMm: widestGap(gap) / MM })),
    sealed: reportResonance(note.sealed, target),
    leaking: played.found ? reportResonance(played.resonance, target) : null,
    reason: played.found ? null : played.reason,
    changeCents: played.found ? played.loss.cents : null,
    lostDb: played.found ? played.loss.lostDb : null,
    riseChangeMs: played.found ? 1000 * played.loss.riseTime : null,
  };
}

/** The largest leak in bench units. */
export function reportLargestLeak(
  horn: Horn,
  asked: { readonly fingering: string; readonly lostDb: number },
  outcome: LargestLeak,
): LargestLeakReport {
  const gapMm = outcome.found ? outcome.gap / MM : null;
  return {
    horn: horn.name,
    ...asked,
    gapMm,
    papers: gapMm === null ? null : gapMm / PAPER_MM,
    note: outcome.found ? reportLeakingNote(outcome.note) : null,
    reason: outcome.found ? null : outcome.reason,
  };
}

/** A leak map in bench units. */
export function reportLeakMap(horn: Horn, map: LeakMap): LeakMapReport {
  return {
    horn: horn.name,
    gapMm: map.gap / MM,
    fingerings: map.fingerings.map((f) => f.id),
    rows: map.rows.map(({ place, cells, worst }) => ({
      pad: place.kind === 'seat' ? place.pad : place.driven,
      by: place.kind === 'seat' ? null : place.driver,
      worst: worst === null ? null : map.fingerings[worst.index].id,
      cells: cells.map((cell): LeakCellReport | null => {
        if (cell === null) return null;
        if (cell === 'lost') return { lost: true, changeCents: null, lostDb: null, riseChangeMs: null };
        const { cents, lostDb, riseTime } = cell;
        return { lost: false, changeCents: cents, lostDb, riseChangeMs: 1000 * riseTime };
      }),
    })),
  };
}
