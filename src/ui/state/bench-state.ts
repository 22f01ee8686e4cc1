import type { MeasuringPoint } from '../../acoustics/index.ts';
import type { BenchContents } from '../../documents/bench-contents.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import type { VisitDocument } from '../../documents/visit-document.ts';
import { onBench, type HornOnBench } from './horn-on-bench.ts';
import type { Keeping, KnownVisits } from './keeping.ts';
import { foundDocuments, measurementsOf } from './key-lengths.ts';
import { makeLeaksState, type LeaksState } from './leaks-state.ts';
import { makeLinksState, type LinksState } from './links-state.ts';
import { makePadsState, type PadsState } from './pads-state.ts';
import { makePlayerSheetState, type PlayerSheetState } from './player-sheet-state.ts';
import { proposedFronts } from './proposed-fronts.ts';
import type { ProposedOpenings } from './scale-report.ts';
import { nothingAsked } from './asked-answer.ts';
import type { CalibrationState } from './calibration-state.ts';
import { makePlayedState, type PlayedState } from './played-state.ts';
import { makeProposalState, type ProposalState } from './proposal-state.ts';
import { makeScaleState, type ScaleState } from './scale-state.ts';
import { makeSheetState, type SheetState } from './sheet-state.ts';
import type { SurePointReport } from './study-report.ts';
import { makeStudyState, type StudyState } from './study-state.ts';
import { makeSideBySideState, type SideBySideState } from './side-by-side-state.ts';
import type { ColumnSources } from './side-by-side-columns.ts';
import { FIRST_VIEW, type ViewName } from './view-names.ts';
import { makeWorkState, type WorkState } from './work-state.ts';

/** What the curve's upper panel shows. */
export type Measure = 'pitch' | 'strength' | 'rise time';

/** How notes are called: as the player reads them, or as they sound. */
export type NoteNaming = 'written' | 'concert';

/** Which notes the scale's chart shows. */
export type NoteSpan = 'all' | 'low' | 'octave';

/** What the sheet is filled in with: how keys stand, or what is measured once. */
export type SheetColumns = 'openings' | 'measures';

/** Everything the screen depends on. */
export interface BenchState {
  readonly view: ViewName;
  /** what of the view the page's hash names, as a note and its heading; empty where it names nothing */
  readonly place: string;
  /** what can be put on the bench, and its name */
  readonly shelf: readonly { readonly id: string; readonly label: string }[];
  readonly hornId: string;
  readonly horns: Readonly<Record<string, HornOnBench>>;
  readonly unit: LengthUnit;
  /** where proposed openings are read and told */
  readonly readAt: MeasuringPoint;
  readonly measure: Measure;
  readonly study: StudyState;
  /** the key at the last proposed opening the physics answered for */
  readonly point: SurePointReport | null;
  readonly scale: ScaleState;
  readonly sideBySide: SideBySideState;
  readonly links: LinksState;
  readonly leaks: LeaksState;
  readonly pads: PadsState;
  readonly work: WorkState;
  readonly playerSheet: PlayerSheetState;
  readonly sheet: SheetState;
  /** which columns the sheet shows */
  readonly columns: SheetColumns;
  /** the fingering picked on the scale */
  readonly noteId: string;
  readonly naming: NoteNaming;
  readonly span: NoteSpan;
  readonly keeping: Keeping;
  readonly visits: KnownVisits;
  readonly played: PlayedState;
  readonly proposal: ProposalState;
  readonly calibration: CalibrationState;
  /** a browser failure to tell, or null */
  readonly alert: string | null;
  /** a newer program that waits to be taken, unless a person put that off */
  readonly newer: 'none' | 'ready' | 'put off';
}

/** The note that the key the bench opens with vents. */
const FIRST_NOTE = 'F4';

export function makeBenchState(shelf: BenchState['shelf'], contents: BenchContents): BenchState {
  const hornId = contents.horn.id;
  return {
    view: FIRST_VIEW,
    place: '',
    shelf,
    hornId,
    horns: { [hornId]: onBench(contents) },
    unit: 'mm',
    readAt: 'front',
    measure: 'pitch',
    study: makeStudyState(hornId),
    point: null,
    scale: makeScaleState(hornId),
    sideBySide: makeSideBySideState(),
    links: makeLinksState(hornId),
    leaks: makeLeaksState(hornId),
    pads: makePadsState(hornId),
    work: makeWorkState(),
    playerSheet: makePlayerSheetState(hornId),
    sheet: makeSheetState(hornId),
    columns: 'openings',
    noteId: FIRST_NOTE,
    naming: 'written',
    span: 'all',
    keeping: { kind: 'untouched' },
    visits: { hornId, list: [] },
    played: makePlayedState(),
    proposal: makeProposalState(hornId),
    calibration: nothingAsked(hornId),
    alert: null,
    newer: 'none',
  };
}

/** The horn in hand. */
export function hornInHand(state: BenchState): HornOnBench {
  return state.horns[state.hornId];
}

/** The key in hand as measured. */
export function keyInHand(state: BenchState): ReturnType<typeof measurementsOf> {
  return measurementsOf(documentsInHand(state), hornInHand(state).keyId);
}

/** The horn in hand as found, everything typed written in; the same object as long as nothing of it changes. */
export function documentsInHand(state: BenchState): HornAndSetup {
  return foundDocuments(hornInHand(state).contents);
}

/** The day's air and tuning. */
export function dayInHand(state: BenchState): VisitDocument {
  return hornInHand(state).contents.visit.document;
}

/** Where setups side by side are looked up: on the bench first. */
export function columnSources(state: BenchState): ColumnSources {
  return {
    bench: hornInHand(state).contents,
    opened: state.horns,
    fetched: state.sideBySide.fetched,
  };
}

/** The openings proposed on the horn in hand, mm at the front; the same object as long as none changes. */
export function proposedInHand(state: BenchState): ProposedOpenings {
  return proposedFronts(hornInHand(state).contents);
}

/** Whether the whole horn on screen is the horn in hand and nothing newer was asked. */
export function isScaleCurrent({ scale, hornId }: BenchState): boolean {
  return scale.report !== null && scale.asked === scale.answered && scale.hornId === hornId;
}
