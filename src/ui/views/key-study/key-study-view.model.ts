import type { MeasuringPoint } from '../../../acoustics/index.ts';
import type { HornDocument } from '../../../documents/horn-document.ts';
import { formatBoth, formatLength, lengthOnAxis, type LengthUnit } from '../../../documents/length-format.ts';
import type { ChartLine, ChartModel, ProposedMark } from '../../parts/chart/chart.model.ts';
import { makePadDrawing, type PadDrawing } from '../../parts/pad-drawing.model.ts';
import {
  hornInHand,
  isCurrent,
  keyInHand,
  proposableMm,
  proposedMmOf,
  suggestedMmOf,
  type BenchState,
  type Measure,
} from '../../state/bench-state.ts';
import { DAY_FIELDS, LENGTH_FIELDS, type DayFieldId, type FieldId } from '../../state/fields.ts';
import { keyedHoles, keyOf, type HornEdits } from '../../state/key-edits.ts';
import type { GovernedReport, NoteReport, PointReport, StudyReport } from '../../state/study-report.ts';
import { makeAnswerSentences, openingMm, percent, type AnswerSentences } from './answer-sentences.ts';
import { listed, noteLabel, signedCents, unbroken } from './note-names.ts';

/** One pad on the strip. */
export interface StripKey {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly padMm: number;
  readonly rests: 'open' | 'closed';
  /** `F`, or empty until the physics has said */
  readonly vents: string;
  readonly edited: boolean;
}

/** A text field as the screen shows it. */
export interface FieldView<Id extends string> {
  readonly id: Id;
  readonly label: string;
  readonly hint: string;
  readonly text: string;
  readonly echo: string;
  readonly problem: string | null;
}

/** What the proposed opening does to one note. */
export interface NoteChange {
  readonly label: string;
  readonly change: string;
}

/** The slider and what it says. */
export interface ProposalView {
  readonly frontMm: number;
  readonly lowMm: number;
  readonly highMm: number;
  readonly foundMm: number;
  /** null where no answer lies within reach */
  readonly enoughMm: number | null;
  readonly valueText: string;
  /** `Cents from as found, at 9.0 mm at the front` */
  readonly heading: string;
  readonly changes: readonly NoteChange[];
  readonly shareWords: string;
  readonly field: FieldView<'proposed'>;
  /** whether it follows the answer of itself */
  readonly follows: boolean;
}

/** One row of the table behind the chart. */
export interface TableRow {
  readonly opening: string;
  readonly share: string;
  readonly cells: readonly string[];
}

/** Everything the key-study page shows. */
export interface KeyStudyView {
  readonly shelf: BenchState['shelf'];
  readonly hornId: string;
  readonly hornName: string;
  readonly unit: LengthUnit;
  readonly measure: Measure;
  readonly readAt: MeasuringPoint;
  readonly alert: string | null;
  /** mouthpiece first */
  readonly strip: readonly StripKey[];
  readonly keyId: string;
  readonly keyTitle: string;
  readonly keyDetail: string;
  /** a study newer than what is shown is on its way */
  readonly waiting: boolean;
  readonly problem: string | null;
  readonly fields: readonly FieldView<FieldId>[];
  readonly measuredAt: MeasuringPoint;
  readonly measuredAtProblem: string | null;
  readonly edited: boolean;
  readonly dayFields: readonly FieldView<DayFieldId>[];
  readonly inputLines: readonly string[];
  readonly study: StudyView | null;
}

/** The part that needs a finished study. */
export interface StudyView {
  readonly answer: AnswerSentences;
  readonly warnings: readonly string[];
  readonly chart: ChartModel;
  readonly proposed: ProposedMark;
  readonly proposal: ProposalView;
  readonly drawing: PadDrawing;
  readonly report: StudyReport;
  readonly tableHead: readonly string[];
  readonly tableRows: readonly TableRow[];
}

/** What the screen says about how far to trust it; the thesis and the player's spread are in the notes. */
export const HONESTY =
  'Absolute pitch is good to about ±10 cents, differences far better; a player repeats a note to ±3–5 cents.';

/** The chart depends on less than the whole state: it is rebuilt only when one of these changes. */
const chartMemo = memoLast(
  (
    report: StudyReport,
    unit: LengthUnit,
    measure: Measure,
  ): Pick<StudyView, 'chart' | 'tableHead' | 'tableRows'> => ({
    chart: makeChart(report, unit, measure),
    tableHead: tableHead(report, measure),
    tableRows: tableRows(report, unit, measure),
  }),
);

/** The strip changes with edits and horns, not with the slider. */
const stripMemo = memoLast(makeStrip);

/** Every pad as it stands on the horn, mouthpiece first. */
function makeStrip(document: HornDocument, edits: HornEdits, vents: StudyReport['vents'] | null): StripKey[] {
  return keyedHoles(document)
    .sort((a, b) => a.positionMm - b.positionMm)
    .map((k) => ({
      id: k.id,
      number: k.number,
      name: k.name,
      padMm: edits[k.id]?.padDiameterMm ?? keyOf(document, k.id).entry.padDiameterMm,
      rests: k.rests,
      vents: ventWords(vents, k.id),
      edited: edits[k.id] !== undefined,
    }));
}

/** The whole page from the state. */
export function makeKeyStudyView(state: BenchState): KeyStudyView {
  const horn = hornInHand(state);
  const { report } = state.study;
  const hole = keyedHoles(horn.document).find((k) => k.id === horn.keyId)!;
  const vents = ventWords(report?.vents ?? null, horn.keyId);
  return {
    shelf: state.shelf,
    hornId: state.hornId,
    hornName: horn.document.name,
    unit: state.unit,
    measure: state.measure,
    readAt: state.readAt,
    alert: state.alert,
    strip: stripMemo(horn.document, horn.edits, report?.vents ?? null),
    keyId: horn.keyId,
    keyTitle: `Pad ${hole.number} · ${hole.name} key`,
    keyDetail: [
      vents === '' ? '' : `vents ${vents}`,
      report?.keyId === horn.keyId && report.governed.length > 0
        ? `moves ${listed(report.governed.map((g) => noteLabel(g.id)))}`
        : '',
    ]
      .filter((part) => part !== '')
      .join('; '),
    waiting: !isCurrent(state) && state.study.asked !== state.study.answered,
    problem: state.study.problem,
    ...fieldsPart(state),
    study: report === null ? null : makeStudyView(state, report),
  };
}

function ventWords(vents: StudyReport['vents'] | null, keyId: string): string {
  return (vents?.[keyId] ?? []).map(noteLabel).join(', ');
}

function fieldsPart(
  state: BenchState,
): Pick<KeyStudyView, 'fields' | 'measuredAt' | 'measuredAtProblem' | 'edited' | 'dayFields' | 'inputLines'> {
  const horn = hornInHand(state);
  const key = keyInHand(state);
  const typed = horn.typed[horn.keyId] ?? {};
  const kept = (value: string, problem: string | null = null): string | null =>
    problem === null ? null : `${sentence(problem)} Still in use: ${value}.`;
  const fields = LENGTH_FIELDS.map((plan): FieldView<FieldId> => {
    const value = key[plan.id];
    const text = typed[plan.id];
    return {
      id: plan.id,
      label: plan.label,
      hint: plan.hint,
      text: text?.text ?? formatLength(value, state.unit),
      echo: formatBoth(value, state.unit),
      problem: kept(formatBoth(value, state.unit), text?.problem),
    };
  });
  const dayFields = DAY_FIELDS.map((plan): FieldView<DayFieldId> => {
    const value = `${trimmed(state.day[plan.id])} ${plan.unit}`;
    const text = state.dayTyped[plan.id];
    return {
      id: plan.id,
      label: plan.label,
      hint: plan.hint,
      text: text?.text ?? value,
      echo: value,
      problem: kept(value, text?.problem),
    };
  });
  return {
    fields,
    measuredAt: key.measuredAt,
    measuredAtProblem: kept(`at the ${key.measuredAt}`, typed.measuredAt?.problem),
    edited: horn.edits[horn.keyId] !== undefined || Object.keys(typed).length > 0,
    dayFields,
    inputLines: [...fields, ...dayFields].map((f) =>
      f.id === 'openingMm' ? `${f.label}: ${f.echo} at the ${key.measuredAt}` : `${f.label}: ${f.echo}`,
    ),
  };
}

function makeStudyView(state: BenchState, report: StudyReport): StudyView {
  const { unit, readAt } = state;
  const frontMm = Math.min(proposedMmOf(state, report), report.reachMm);
  const point = proposedPoint(state, report, frontMm);
  const drawing = makePadDrawing(
    report.geometry,
    { frontMm, foundFrontMm: report.present.frontMm, reachMm: report.reachMm },
    unit,
  );
  return {
    answer: makeAnswerSentences(report, { unit, readAt }, frontMm),
    warnings: report.warnings,
    ...chartMemo(report, unit, state.measure),
    proposed: makeProposedMark(report, unit, state.measure, frontMm, point),
    proposal: makeProposal(state, report, { frontMm, readMm: drawing.openMm[readAt] }, point),
    drawing,
    report,
  };
}

/** What the physics said of the proposed opening, or last said on the way there; null where it never did. */
function proposedPoint(state: BenchState, report: StudyReport, frontMm: number): PointReport | null {
  if (state.point !== null) return state.point;
  if (report.answer.kind !== 'none in reach' && frontMm === report.answer.point.frontMm)
    return report.answer.point;
  return frontMm === report.present.frontMm ? report.present : null;
}

function makeProposal(
  state: BenchState,
  report: StudyReport,
  proposed: { readonly frontMm: number; readonly readMm: number },
  point: PointReport | null,
): ProposalView {
  const { unit, readAt } = state;
  const { frontMm, readMm: valueMm } = proposed;
  const typed = hornInHand(state).typed[report.keyId]?.proposed;
  const changes = report.governed.map((note, i): NoteChange => {
    const there = point?.notes[i] ?? null;
    return {
      label: noteLabel(note.id),
      change: point === null ? '…' : there === null ? 'lost' : signedCents(there.cents),
    };
  });
  return {
    frontMm,
    ...proposableMm(report),
    foundMm: report.present.frontMm,
    enoughMm: report.answer.kind === 'none in reach' ? null : report.answer.point.frontMm,
    valueText: `${formatBoth(valueMm, unit)} at the ${readAt}`,
    heading: unbroken(
      `Cents from as found, at ${formatLength(point === null ? valueMm : openingMm(point, readAt), unit)} at the ${readAt}`,
    ),
    changes,
    shareWords: point === null ? '…' : `${percent(report.present.ventShare)} → ${percent(point.ventShare)}`,
    field: {
      id: 'proposed',
      label: 'Proposed opening',
      hint: '',
      text: typed?.text ?? formatLength(valueMm, unit),
      echo: `${formatBoth(valueMm, unit)} at the ${readAt}`,
      problem:
        (typed?.problem ?? null) === null
          ? null
          : `${sentence(typed!.problem!)} Still in use: ${formatBoth(valueMm, unit)} at the ${readAt}.`,
    },
    follows: Math.abs(frontMm - suggestedMmOf(report)) < 1e-9,
  };
}

/** What the upper panel shows of a note, in its unit. */
function measured(note: NoteReport | null, measure: Measure): number | null {
  if (note === null) return null;
  switch (measure) {
    case 'pitch':
      return note.cents;
    case 'strength':
      return 100 * note.strength;
    case 'rise time':
      return note.riseMs;
  }
}

const MEASURES: Readonly<
  Record<Measure, { title: string; suffix: string; digits: number; inWords: string; least: number }>
> = {
  pitch: { title: 'cents from as found', suffix: ' cents', digits: 1, inWords: 'cents', least: 4 },
  strength: { title: '% of strength without pad', suffix: ' %', digits: 1, inWords: '%', least: 2 },
  'rise time': { title: 'rise time, ms', suffix: ' ms', digits: 1, inWords: 'ms', least: 2 },
};

export function makeChart(report: StudyReport, unit: LengthUnit, measure: Measure): ChartModel {
  const { title, suffix, digits, least } = MEASURES[measure];
  const axis = (mm: number): number => lengthOnAxis(mm, unit);
  const x = report.curve.map((p) => axis(p.frontMm));
  const pitchClasses = [...new Set(report.governed.map(tintName))];
  const lines = report.governed.map((note, i): ChartLine => ({
    id: note.id,
    label: noteLabel(note.id),
    register: note.register,
    tint: pitchClasses.indexOf(tintName(note)),
    x,
    y: report.curve.map((p) => measured(p.notes[i], measure)),
  }));
  const { low, high } = report.spreadMm;
  return {
    lines,
    share: { x, y: report.curve.map((p) => 100 * p.ventShare) },
    xTitle: unit === 'mm' ? 'opening at the front, mm' : 'opening at the front, thousandths of an inch',
    yTitle: title,
    ySuffix: suffix,
    yDigits: digits,
    xDigits: unit === 'mm' ? 1 : 0,
    xSuffix: unit === 'mm' ? ' mm' : ' thou',
    // The last point rather than the reach: a rounding beyond the axis would hide the lines' names.
    xRange: [0, x[x.length - 1]],
    yRange: paddedRange(shownValues(report, measure), least),
    shareRange: [0, 100],
    band: low === null || high === null ? null : [axis(low), axis(high)],
    fixedMarkers: [
      { id: 'found', word: 'as found', x: axis(report.present.frontMm) },
      ...(report.answer.kind === 'none in reach'
        ? []
        : [{ id: 'enough' as const, word: 'enough', x: axis(report.answer.point.frontMm) }]),
    ],
    summary: chartSummary(report, unit, measure),
  };
}

/**
 * The values the panel is scaled to: those from a third of the least opening in question upwards. Below it
 * every line dives, and would press the part that matters flat; there the lines run on out of the panel.
 */
function shownValues(report: StudyReport, measure: Measure): number[] {
  const { answer, present } = report;
  const least =
    answer.kind === 'none in reach' ? present.frontMm : Math.min(present.frontMm, answer.point.frontMm);
  return report.curve
    .filter((p) => p.frontMm >= least / 3)
    .flatMap((p) => p.notes.map((note) => measured(note, measure)))
    .filter((value): value is number => value !== null);
}

function tintName(note: GovernedReport): string {
  return note.id.replace(/\d/, '');
}

/** The values' range with room at both ends, and never so narrow that noise looks like news. */
function paddedRange(values: readonly number[], least: number): [number, number] {
  if (values.length === 0) return [-least / 2, least / 2];
  const low = Math.min(...values);
  const high = Math.max(...values);
  const span = Math.max(high - low, least);
  const middle = (low + high) / 2;
  return [middle - 0.56 * span, middle + 0.56 * span];
}

function makeProposedMark(
  report: StudyReport,
  unit: LengthUnit,
  measure: Measure,
  frontMm: number,
  point: PointReport | null,
): ProposedMark {
  return {
    marker: { id: 'proposed', word: 'proposed', x: lengthOnAxis(frontMm, unit) },
    at:
      point === null
        ? null
        : {
            x: lengthOnAxis(point.frontMm, unit),
            y: report.governed.map((_, i) => measured(point.notes[i], measure)),
            share: 100 * point.ventShare,
          },
  };
}

function chartSummary(report: StudyReport, unit: LengthUnit, measure: Measure): string {
  const first = report.curve[0];
  const last = report.curve[report.curve.length - 1];
  const { inWords, digits } = MEASURES[measure];
  const told = report.governed.map((note, i) => {
    const from = measured(first.notes[i], measure);
    const to = measured(last.notes[i], measure);
    return from === null || to === null
      ? `${noteLabel(note.id)} is lost on the way`
      : `${noteLabel(note.id)} from ${number(from, digits)} to ${number(to, digits)} ${inWords}`;
  });
  return (
    `From ${formatLength(first.frontMm, unit)} to ${formatLength(last.frontMm, unit)} at the front: ` +
    `${told.length === 0 ? 'no note moves by more than a cent' : told.join('; ')}. ` +
    `Vent share from ${percent(first.ventShare)} to ${percent(last.ventShare)}.`
  );
}

function tableHead(report: StudyReport, measure: Measure): string[] {
  const { inWords } = MEASURES[measure];
  return [
    'opening at the front',
    'vent share',
    ...report.governed.map((g) => `${noteLabel(g.id)}, ${inWords}`),
  ];
}

function tableRows(report: StudyReport, unit: LengthUnit, measure: Measure): TableRow[] {
  const { digits } = MEASURES[measure];
  return report.curve.map((p) => ({
    opening: formatBoth(p.frontMm, unit),
    share: percent(p.ventShare),
    cells: report.governed.map((_, i) => {
      const value = measured(p.notes[i], measure);
      if (value === null) return 'lost';
      return measure === 'pitch' ? signedCents(value) : number(value, digits);
    }),
  }));
}

function number(value: number, digits: number): string {
  return value.toFixed(digits).replace('-', '−');
}

function trimmed(value: number): string {
  return String(Math.round(value * 100) / 100);
}

/** A message as a sentence: capital first, full stop last. */
export function sentence(message: string): string {
  const text = message.charAt(0).toUpperCase() + message.slice(1);
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** Keeps the last answer of a pure function, for the same arguments. */
function memoLast<A extends readonly unknown[], R>(work: (...args: A) => R): (...args: A) => R {
  let last: { args: A; value: R } | null = null;
  return (...args) => {
    if (last === null || last.args.some((arg, i) => arg !== args[i])) last = { args, value: work(...args) };
    return last.value;
  };
}
