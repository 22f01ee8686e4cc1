import { formatBoth, formatLength, lengthOnAxis, type LengthUnit } from '../../../documents/length-format.ts';
import type { ChartLine, ChartModel, ProposedMark } from '../../parts/chart/chart.model.ts';
import { noteLabel, signedCents } from '../../parts/note-names.ts';
import type { Measure } from '../../state/bench-state.ts';
import { memoLast } from '../../state/memo-last.ts';
import type { GovernedReport, NoteReport, PointReport, StudyReport } from '../../state/study-report.ts';
import { percent } from './opening-words.ts';
import type { Reason } from '../../state/reasons.ts';
import { curveReason } from './study-reasons.model.ts';

/** One row of the table behind the chart. */
export interface TableRow {
  readonly opening: string;
  readonly share: string;
  readonly cells: readonly string[];
}

/** The curve and the table behind it. */
export interface StudyChart {
  readonly chart: ChartModel;
  readonly tableHead: readonly string[];
  /** of the columns that are notes */
  readonly headReasons: readonly Reason[];
  readonly tableRows: readonly TableRow[];
}

/** The chart depends on less than the whole state: it is rebuilt only when one of these changes. */
export const makeStudyChart = memoLast(
  (report: StudyReport, unit: LengthUnit, measure: Measure): StudyChart => ({
    chart: makeChart(report, unit, measure),
    tableHead: tableHead(report, measure),
    headReasons: tableHead(report, measure)
      .slice(NOT_NOTES)
      .map((head) => curveReason(measure, head, report)),
    tableRows: tableRows(report, unit, measure),
  }),
);

/** What the upper panel shows of a note, in its unit. */
function measured(note: NoteReport | null, measure: Measure): number | null {
  if (note === null) return null;
  switch (measure) {
    case 'pitch':
      return note.fromPresentCents;
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
  const { answer, budgets } = report;
  return {
    lines,
    share: { x, y: report.curve.map((p) => 100 * p.ventShare) },
    parallel: {
      share: report.parallelCurve.map((p) => 100 * p.ventShare),
      note: parallelNote(report, measure, lines),
    },
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
    band:
      answer.kind === 'none in reach' || budgets.answerMm === null
        ? null
        : ([-1, 1].map((way) => axis(answer.point.frontMm + way * budgets.answerMm!.plusMinus)) as [
            number,
            number,
          ]),
    fixedMarkers: [
      { id: 'found', word: 'as found', x: axis(report.present.frontMm) },
      ...(report.answer.kind === 'none in reach'
        ? []
        : [{ id: 'enough' as const, word: 'enough', x: axis(report.answer.point.frontMm) }]),
    ],
    summary: chartSummary(report, unit, measure),
  };
}

/** The line of the note that moves most, were the pad parallel: one faint line, not a second bundle. */
function parallelNote(
  report: StudyReport,
  measure: Measure,
  lines: readonly ChartLine[],
): ChartModel['parallel']['note'] {
  const last = report.curve[report.curve.length - 1];
  const moves = last.notes.map((note) => (note === null ? 0 : Math.abs(note.fromPresentCents)));
  const most = moves.indexOf(Math.max(...moves));
  if (most < 0) return null;
  const { label, tint } = lines[most];
  return { label, tint, y: report.parallelCurve.map((p) => measured(p.notes[most], measure)) };
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

export function makeProposedMark(
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

/** Columns before those of the notes. */
const NOT_NOTES = 2;

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
