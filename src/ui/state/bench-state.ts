import type { MeasuringPoint } from '../../acoustics/index.ts';
import type { BenchContents } from '../../documents/bench-contents.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import type { VisitDocument } from '../../documents/visit-document.ts';
import type { DayFieldId, FieldId, HeadFieldId } from './fields.ts';
import { onBench, rested, stepped, type HornOnBench, type TypedText } from './horn-on-bench.ts';
import type { Keeping, KnownVisits } from './keeping.ts';
import {
  foundDocuments,
  measurementsOf,
  withFoundLengths,
  withoutProposals,
  withProposed,
  type KeyLengths,
} from './key-lengths.ts';
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
import type { PointReport, StudyReport } from './study-report.ts';
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

/** A study asked for, and what came of it. */
export interface StudyState {
  /** what the report answers; null before the first */
  readonly report: StudyReport | null;
  /** the horn the report is of */
  readonly hornId: string;
  /** counts studies asked for; a report is current when it answers the last */
  readonly asked: number;
  readonly answered: number;
  readonly problem: string | null;
}

/** Everything the screen depends on. */
export interface BenchState {
  /** what can be put on the bench, and its name */
  readonly view: ViewName;
  /** what of the view the page's hash names, as a note and its heading; empty where it names nothing */
  readonly place: string;
  readonly shelf: readonly { readonly id: string; readonly label: string }[];
  readonly hornId: string;
  readonly horns: Readonly<Record<string, HornOnBench>>;
  readonly unit: LengthUnit;
  /** where proposed openings are read and told */
  readonly readAt: MeasuringPoint;
  readonly measure: Measure;
  readonly study: StudyState;
  /** the key at the last proposed opening the physics answered for */
  readonly point: PointReport | null;
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
    study: { report: null, hornId, asked: 0, answered: 0, problem: null },
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

/** mm at the front: what was proposed for the key in hand, or else the answer, or else as it stands. */
export function proposedMmOf(state: BenchState, report: StudyReport): number {
  return proposedInHand(state)[report.keyId] ?? suggestedMmOf(report);
}

/**
 * Whether a person proposed an opening for the key in hand. Only such count on the whole horn; what the key
 * study suggests of itself does not, until it is taken.
 */
export function isProposed(state: BenchState): boolean {
  return proposedInHand(state)[hornInHand(state).keyId] !== undefined;
}

/** The least and greatest opening a hand can propose, mm at the front, on the slider's own steps. */
export function proposableMm(report: StudyReport): { readonly lowMm: number; readonly highMm: number } {
  return { lowMm: 0.3, highMm: Math.floor(report.reachMm * 10 + 1e-6) / 10 };
}

/** Where a proposal starts: at the answer, or as found where there is none the key can reach. */
export function suggestedMmOf(report: StudyReport): number {
  return report.answer.kind === 'reached' ? report.answer.point.frontMm : report.present.frontMm;
}

/** Whether a report belongs to the horn and key in hand and nothing newer was asked. */
export function isCurrent(state: BenchState): boolean {
  return state.study.asked === state.study.answered && isOfKeyInHand(state);
}

/** Whether the whole horn on screen is the horn in hand and nothing newer was asked. */
export function isScaleCurrent({ scale, hornId }: BenchState): boolean {
  return scale.report !== null && scale.asked === scale.answered && scale.hornId === hornId;
}

/** Whether the report on screen is of the horn and key in hand, be it with older measurements. */
export function isOfKeyInHand(state: BenchState): boolean {
  const { report, hornId } = state.study;
  return report !== null && hornId === state.hornId && report.keyId === hornInHand(state).keyId;
}

// Actions: each takes a state and gives the next.

/** Takes up a horn that is on the bench already, with all that was done to it. */
export function takeUp(state: BenchState, hornId: string): BenchState {
  return state.horns[hornId] === undefined ? state : { ...state, hornId, point: null };
}

/** Puts a visit of a horn on the bench, afresh. */
export function putOnBench(state: BenchState, contents: BenchContents): BenchState {
  const { id, document } = contents.horn;
  const known = state.shelf.some((entry) => entry.id === id);
  return {
    ...state,
    hornId: id,
    point: null,
    shelf: known ? state.shelf : [...state.shelf, { id, label: document.name }],
    horns: { ...state.horns, [id]: onBench(contents) },
  };
}

/** Takes a horn that is not in hand off the bench. */
export function leaveBench(state: BenchState, hornId: string): BenchState {
  if (hornId === state.hornId) return state;
  const horns = { ...state.horns };
  delete horns[hornId];
  return { ...state, horns };
}

/** A change of a horn on the bench: what it is, and what is known of it. */
export function withHornOf(
  state: BenchState,
  hornId: string,
  change: (horn: HornOnBench) => HornOnBench,
): BenchState {
  const horn = state.horns[hornId];
  const next = change(horn);
  return next === horn ? state : { ...state, horns: { ...state.horns, [hornId]: next } };
}

/** The same of the horn in hand. */
export function withHorn(state: BenchState, change: (horn: HornOnBench) => HornOnBench): BenchState {
  return withHornOf(state, state.hornId, change);
}

/** The hand rests, on every horn: what it does next is a step of its own, and what it did can be saved. */
export function endMovements(state: BenchState): BenchState {
  return Object.keys(state.horns).reduce((now, hornId) => withHornOf(now, hornId, rested), state);
}

export function chooseKey(state: BenchState, keyId: string): BenchState {
  return withHorn({ ...state, point: null }, (horn) => ({ ...horn, keyId }));
}

/** Takes checked lengths of the key in hand into use, as measured. */
export function acceptEdit(
  state: BenchState,
  field: FieldId | 'measuredAt',
  lengths: KeyLengths,
  text: string | null,
): BenchState {
  const next = withHorn(state, (horn) =>
    stepped(horn, withFoundLengths(horn.contents, horn.keyId, lengths), null),
  );
  const value = field === 'measuredAt' || field === 'proposed' || field === 'asSet' ? null : lengths[field];
  return text === null ? forgetText(next, field) : keepText(next, field, accepted(text, value ?? null));
}

/** A text that was understood. */
export function accepted(text: string, value: number | null): TypedText {
  return { text, problem: null, value };
}

/** A text that was refused. */
export function refused(text: string, problem: string): TypedText {
  return { text, problem, value: null };
}

/** Keeps a text as typed on the key in hand, in use or refused. */
export function keepText(state: BenchState, field: FieldId | 'measuredAt', typed: TypedText): BenchState {
  return withHorn(state, (horn) => ({
    ...horn,
    typed: { ...horn.typed, [horn.keyId]: { ...horn.typed[horn.keyId], [field]: typed } },
  }));
}

/** The field shows what is in use again. */
export function forgetText(state: BenchState, field: FieldId | 'measuredAt'): BenchState {
  return withHorn(state, (horn) => {
    if (horn.typed[horn.keyId]?.[field] === undefined) return horn;
    const rest = { ...horn.typed[horn.keyId] };
    delete rest[field];
    return { ...horn, typed: { ...horn.typed, [horn.keyId]: rest } };
  });
}

/**
 * Proposes an opening for the key in hand; null follows the answer. While the screen still shows the key before,
 * a hand on its slider proposes nothing for the next. A slider's whole movement is one step of the history.
 */
export function propose(state: BenchState, frontMm: number | null): BenchState {
  if (!isOfKeyInHand(state)) return state;
  const { keyId } = hornInHand(state);
  if ((proposedInHand(state)[keyId] ?? null) === frontMm) return forgetText(state, 'proposed');
  return forgetText(
    withHorn(state, (horn) =>
      stepped(
        horn,
        withProposed(horn.contents, keyId, frontMm),
        frontMm === null ? null : `propose ${keyId}`,
      ),
    ),
    'proposed',
  );
}

/** Every key as found again. */
export function withdrawProposals(state: BenchState): BenchState {
  if (Object.keys(proposedInHand(state)).length === 0) return state;
  return withHorn(state, (horn) => ({
    ...stepped(horn, withoutProposals(horn.contents), null),
    typed: Object.fromEntries(
      Object.entries(horn.typed).map(([id, typed]) => {
        const rest = { ...typed };
        delete rest.proposed;
        return [id, rest];
      }),
    ),
  }));
}

/** A number of the day, written into the visit. */
export function acceptDay(state: BenchState, field: DayFieldId, value: number, text: string): BenchState {
  return withHorn(state, (horn) => {
    const { visit } = horn.contents;
    const next =
      visit.document[field] === value
        ? horn
        : stepped(
            horn,
            { ...horn.contents, visit: { ...visit, document: { ...visit.document, [field]: value } } },
            null,
          );
    return { ...next, dayTyped: { ...horn.dayTyped, [field]: accepted(text, value) } };
  });
}

export function keepDayText(
  state: BenchState,
  field: DayFieldId | HeadFieldId,
  typed: TypedText | null,
): BenchState {
  return withHorn(state, (horn) => {
    const rest = { ...horn.dayTyped };
    delete rest[field];
    return { ...horn, dayTyped: typed === null ? rest : { ...rest, [field]: typed } };
  });
}

export function studyAsked(state: BenchState, asked: number): BenchState {
  return { ...state, study: { ...state.study, asked } };
}

export function studyArrived(state: BenchState, answered: number, report: StudyReport): BenchState {
  return {
    ...state,
    point: null,
    study: { ...state.study, answered, report, hornId: state.hornId, problem: null },
  };
}

export function studyFailed(state: BenchState, answered: number, problem: string): BenchState {
  return { ...state, study: { ...state.study, answered, problem } };
}
