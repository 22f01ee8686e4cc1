import type { MeasuringPoint } from '../../acoustics/index.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import type { PointReport, StudyReport } from './study-report.ts';
import type { DayFieldId, FieldId } from './fields.ts';
import { makeScaleState, type ScaleState } from './scale-state.ts';
import { keyedHoles } from '../../documents/horn-document.ts';
import { applyEdits, measurementsOf, type HornEdits, type KeyEdits } from './key-edits.ts';

/** What the curve's upper panel shows. */
export type Measure = 'pitch' | 'strength' | 'rise time';

/** What the page shows: one key through all its openings, or every note at once. */
export type ViewName = 'key' | 'scale';

/** How notes are called: as the player reads them, or as they sound. */
export type NoteNaming = 'written' | 'concert';

/** Which notes the scale's chart shows. */
export type NoteSpan = 'all' | 'low' | 'octave';

/** A text as typed, and what is wrong with it; null where it is in use. */
export interface TypedText {
  readonly text: string;
  readonly problem: string | null;
}

/** One horn on the bench with all that was done to it. */
export interface HornOnBench {
  readonly documents: HornAndSetup;
  readonly keyId: string;
  readonly edits: HornEdits;
  /** mm at the front by pad id; left out where the proposal follows the answer */
  readonly proposedMm: Readonly<Record<string, number>>;
  readonly typed: Readonly<Record<string, Readonly<Partial<Record<FieldId | 'measuredAt', TypedText>>>>>;
}

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
  readonly shelf: readonly { readonly id: string; readonly label: string }[];
  readonly hornId: string;
  readonly horns: Readonly<Record<string, HornOnBench>>;
  readonly unit: LengthUnit;
  /** where proposed openings are read and told */
  readonly readAt: MeasuringPoint;
  readonly measure: Measure;
  readonly day: Readonly<Record<DayFieldId, number>>;
  readonly dayTyped: Readonly<Partial<Record<DayFieldId, TypedText>>>;
  readonly study: StudyState;
  /** the key at the last proposed opening the physics answered for */
  readonly point: PointReport | null;
  readonly scale: ScaleState;
  /** the fingering picked on the scale */
  readonly noteId: string;
  readonly naming: NoteNaming;
  readonly span: NoteSpan;
  /** a browser failure to tell, or null */
  readonly alert: string | null;
}

/** The lower-stack E key: the one the bench opens with. */
const FIRST_KEY = 'e';
/** The note it vents. */
const FIRST_NOTE = 'F4';

export function makeBenchState(
  shelf: BenchState['shelf'],
  hornId: string,
  documents: HornAndSetup,
): BenchState {
  return {
    view: 'key',
    shelf,
    hornId,
    horns: { [hornId]: onBench(documents) },
    unit: 'mm',
    readAt: 'front',
    measure: 'pitch',
    day: { airC: documents.setup.airC ?? 26.85, a4Hz: 440 },
    dayTyped: {},
    study: { report: null, hornId, asked: 0, answered: 0, problem: null },
    point: null,
    scale: makeScaleState(hornId),
    noteId: FIRST_NOTE,
    naming: 'written',
    span: 'all',
    alert: null,
  };
}

function onBench(documents: HornAndSetup): HornOnBench {
  const keys = keyedHoles(documents.horn);
  const keyId = keys.some((k) => k.id === FIRST_KEY) ? FIRST_KEY : keys[0].id;
  return { documents, keyId, edits: {}, proposedMm: {}, typed: {} };
}

/** The horn in hand. */
export function hornInHand(state: BenchState): HornOnBench {
  return state.horns[state.hornId];
}

/** The key in hand as measured, edits included. */
export function keyInHand(state: BenchState): ReturnType<typeof measurementsOf> {
  const horn = hornInHand(state);
  return { ...measurementsOf(horn.documents, horn.keyId), ...horn.edits[horn.keyId] };
}

/** The documents with everything typed over it. */
export function documentsInHand(state: BenchState): HornAndSetup {
  const horn = hornInHand(state);
  return applyEdits(horn.documents, horn.edits);
}

/** mm at the front: what was proposed for the key in hand, or else the answer, or else as it stands. */
export function proposedMmOf(state: BenchState, report: StudyReport): number {
  return hornInHand(state).proposedMm[report.keyId] ?? suggestedMmOf(report);
}

/**
 * Whether a person proposed an opening for the key in hand. Only such count on the whole horn; what the key
 * study suggests of itself does not, until it is taken.
 */
export function isProposed(state: BenchState): boolean {
  const horn = hornInHand(state);
  return horn.proposedMm[horn.keyId] !== undefined;
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

/** Puts a horn on the bench, or takes up one that is there already with all that was done to it. */
export function takeHorn(state: BenchState, hornId: string, documents: HornAndSetup): BenchState {
  const horns = state.horns[hornId] ? state.horns : { ...state.horns, [hornId]: onBench(documents) };
  return { ...state, hornId, horns, point: null };
}

function withHorn(state: BenchState, change: (horn: HornOnBench) => Partial<HornOnBench>): BenchState {
  const horn = hornInHand(state);
  return { ...state, horns: { ...state.horns, [state.hornId]: { ...horn, ...change(horn) } } };
}

export function chooseKey(state: BenchState, keyId: string): BenchState {
  return withHorn({ ...state, point: null }, () => ({ keyId }));
}

/** Takes a checked change of the key in hand into use. */
export function acceptEdit(
  state: BenchState,
  field: FieldId | 'measuredAt',
  edit: KeyEdits,
  text: string | null,
): BenchState {
  const next = withHorn(state, (horn) => ({
    edits: { ...horn.edits, [horn.keyId]: { ...horn.edits[horn.keyId], ...edit } },
  }));
  return text === null ? forgetText(next, field) : keepText(next, field, { text, problem: null });
}

/** Keeps a text as typed, in use or refused. */
export function keepText(state: BenchState, field: FieldId | 'measuredAt', typed: TypedText): BenchState {
  return withHorn(state, (horn) => ({
    typed: { ...horn.typed, [horn.keyId]: { ...horn.typed[horn.keyId], [field]: typed } },
  }));
}

function forgetText(state: BenchState, field: FieldId | 'measuredAt'): BenchState {
  return withHorn(state, (horn) => {
    const rest = { ...horn.typed[horn.keyId] };
    delete rest[field];
    return { typed: { ...horn.typed, [horn.keyId]: rest } };
  });
}

/**
 * Proposes an opening for the key in hand; null follows the answer. While the screen still shows the key before,
 * a hand on its slider proposes nothing for the next.
 */
export function propose(state: BenchState, frontMm: number | null): BenchState {
  if (!isOfKeyInHand(state)) return state;
  return forgetText(
    withHorn(state, (horn) => {
      const rest = { ...horn.proposedMm };
      delete rest[horn.keyId];
      return { proposedMm: frontMm === null ? rest : { ...rest, [horn.keyId]: frontMm } };
    }),
    'proposed',
  );
}

/** The key in hand as the document has it; what was typed over it is dropped. */
export function resetKey(state: BenchState): BenchState {
  return withHorn(state, (horn) => {
    const edits = { ...horn.edits };
    const typed = { ...horn.typed };
    const proposed = { ...horn.proposedMm };
    delete edits[horn.keyId];
    delete typed[horn.keyId];
    delete proposed[horn.keyId];
    return { edits, typed, proposedMm: proposed };
  });
}

/** Every key as found again. */
export function withdrawProposals(state: BenchState): BenchState {
  return withHorn(state, (horn) => ({
    proposedMm: {},
    typed: Object.fromEntries(
      Object.entries(horn.typed).map(([id, typed]) => {
        const rest = { ...typed };
        delete rest.proposed;
        return [id, rest];
      }),
    ),
  }));
}

export function acceptDay(state: BenchState, field: DayFieldId, value: number, text: string): BenchState {
  return {
    ...state,
    day: { ...state.day, [field]: value },
    dayTyped: { ...state.dayTyped, [field]: { text, problem: null } },
  };
}

export function refuseDay(state: BenchState, field: DayFieldId, typed: TypedText): BenchState {
  return { ...state, dayTyped: { ...state.dayTyped, [field]: typed } };
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
