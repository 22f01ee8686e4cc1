import type { ChangedPad, FollowedNote, Horn, PadChange, PadPose } from '../acoustics/index.ts';
import { PAPER_MM } from './leak-report.ts';
import { reportResonance, type ResonanceReport } from './scale-report.ts';

/** An opening at all three places, bench units. */
export interface OpeningReport {
  readonly frontMm: number;
  readonly centreMm: number;
  readonly backMm: number;
}

/** One key with another pad, bench units. */
export interface ChangedPadReport {
  readonly pad: string;
  readonly thickerMm: number;
  readonly before: OpeningReport;
  readonly after: OpeningReport;
  readonly ventShareBefore: number;
  readonly ventShareAfter: number;
  /** where the pad touches first if it is dropped in as it is, and what gapes on the other side */
  readonly droppedIn: { readonly touches: string; readonly gapMm: number };
  /** the stop that gives the old venting back; null where the hinge cannot */
  readonly restored: {
    readonly frontMm: number;
    readonly raiseMm: number;
    /** null where the foot's leverage is not known */
    readonly thinnerCorkMm: number | null;
  } | null;
}

/** One note before and after, bench units. */
export interface FollowedNoteReport {
  readonly fingering: string;
  readonly before: ResonanceReport | null;
  readonly after: ResonanceReport | null;
  readonly changeCents: number | null;
  readonly changeDb: number | null;
}

/** Other pads on a horn, bench units. */
export interface PadChangeReport {
  readonly horn: string;
  readonly seating: 'levelled' | 'dropped in';
  readonly pads: readonly ChangedPadReport[];
  /** what the change leaves of links that shut both at once; minus, at the driver's front */
  readonly links: readonly {
    readonly driver: string;
    readonly driven: string;
    readonly leftMm: number;
    readonly leftPapers: number;
  }[];
  readonly notes: readonly FollowedNoteReport[];
  readonly warnings: readonly string[];
}

const MM = 1e-3;

/** A change of pads in bench units. */
export function reportPadChange(
  horn: Horn,
  { pads, links, change, warnings }: PadChange,
  seating: PadChangeReport['seating'],
): PadChangeReport {
  return {
    horn: horn.name,
    seating,
    pads: pads.map(reportChangedPad),
    links: links.map(({ driver, driven, left }) => ({
      driver,
      driven,
      leftMm: left / MM,
      leftPapers: left / MM / PAPER_MM,
    })),
    notes: change.notes.map(reportFollowedNote),
    warnings,
  };
}

function opening({ front, centre, back }: PadPose): OpeningReport {
  return { frontMm: front / MM, centreMm: centre / MM, backMm: back / MM };
}

function reportChangedPad(pad: ChangedPad): ChangedPadReport {
  const { restored } = pad;
  return {
    pad: pad.pad,
    thickerMm: pad.thicker / MM,
    before: opening(pad.before),
    after: opening(pad.after),
    ventShareBefore: pad.ventBefore,
    ventShareAfter: pad.ventAfter,
    droppedIn: { touches: pad.contact.touches, gapMm: pad.contact.gap / MM },
    restored:
      restored === null
        ? null
        : {
            frontMm: restored.front / MM,
            raiseMm: restored.raise / MM,
            thinnerCorkMm: restored.thinnerCork === null ? null : restored.thinnerCork / MM,
          },
  };
}

/** A note before and after, in bench units. */
export function reportFollowedNote({ fingering, before, after, change }: FollowedNote): FollowedNoteReport {
  const played = ({ outcome, target }: FollowedNote['before']): ResonanceReport | null =>
    outcome.found ? reportResonance(outcome.resonance, target) : null;
  return {
    fingering: fingering.id,
    before: played(before),
    after: played(after),
    changeCents: change?.cents ?? null,
    changeDb: change?.heightDb ?? null,
  };
}
