import { FEWEST_COMPARED, MOST_COMPARED, type MeasuringPoint } from '../../../acoustics/index.ts';
import type { ComparisonReport } from '../../../documents/comparison-report.ts';
import { keyedHoles, type HornDocument } from '../../../documents/horn-document.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import type { SideBySideChartModel } from '../../parts/chart/side-by-side-chart.model.ts';
import { unbroken } from '../../parts/note-names.ts';
import { columnSources, dayInHand, hornInHand, type BenchState } from '../../state/bench-state.ts';
import { memoLast } from '../../state/memo-last.ts';
import type { ComparedColumns } from '../../state/side-by-side-answer.ts';
import {
  columnsOf,
  recordsOfHorn,
  standingOf,
  type ColumnSources,
} from '../../state/side-by-side-columns.ts';
import { nextColumn, setupOffers, type SetupOffers } from '../../state/side-by-side-offers.ts';
import type { Column, ListedHorn, SideOrder } from '../../state/side-by-side-state.ts';
import { makeKeysTable, makeNotesTable, type ComparisonTable } from './comparison-tables.model.ts';
import { makeDifferenceChart } from './difference-chart.model.ts';
import { makeDifferenceSureness, type DifferenceSureness } from './difference-sureness.model.ts';
import { letterOf, lettered } from './letters.ts';

/** One of the columns as a person chooses it. */
export interface ColumnView {
  readonly letter: string;
  readonly column: Column;
  readonly horns: readonly ListedHorn[];
  readonly setups: readonly SetupOffers[];
  /** horn and setup in words, where nothing can be chosen */
  readonly onPaper: string;
  readonly waiting: boolean;
  readonly problem: string | null;
}

/** What was compared, as the page shows it. */
export interface ComparisonView {
  /** what the player would notice, one sentence a column after the reference */
  readonly sentences: readonly string[];
  readonly chart: SideBySideChartModel;
  readonly notes: ComparisonTable;
  readonly keys: ComparisonTable;
  readonly limits: string;
  readonly cautions: readonly string[];
  /** pads outside their model's range */
  readonly pads: { readonly summary: string; readonly list: readonly string[] } | null;
}

/** The whole page. */
export interface SideBySideView {
  readonly columns: readonly ColumnView[];
  /** what a further column begins with; null where there is no room for one */
  readonly next: Column | null;
  readonly canRemove: boolean;
  /** whether nobody chose and the visit on the bench stands in the columns */
  readonly isBench: boolean;
  readonly waiting: boolean;
  readonly problem: string | null;
  /** what to do where the columns cannot differ, or null */
  readonly hint: string | null;
  /** the day all are played in */
  readonly day: string;
  readonly order: SideOrder;
  readonly unit: LengthUnit;
  readonly at: MeasuringPoint;
  /** null before the first answer, or where there is nothing to compare */
  readonly comparison: ComparisonView | null;
  /** of one note's difference; null where none can be compared */
  readonly sureness: DifferenceSureness | null;
}

export function makeSideBySideView(state: BenchState): SideBySideView {
  const { sideBySide: side, unit, readAt } = state;
  const sources = columnSources(state);
  const chosen = columnsOf(side.chosen, sources);
  const horns = hornsOf(state);
  const columns = chosen.map((column, i) => makeColumn(state, sources, column, i, horns));
  const { airC, a4Hz } = dayInHand(state);
  const comparison =
    side.answer === null || side.answer.report === null
      ? null
      : comparisonOf(side.answer, side.order, unit, readAt);
  const isEmpty = side.chosen === null && nothingDone(state);
  return {
    columns,
    next:
      chosen.length < MOST_COMPARED
        ? nextColumn(chosen, recordsOfHorn(sources, chosen[0].hornId), horns)
        : null,
    canRemove: chosen.length > FEWEST_COMPARED,
    isBench: side.chosen === null,
    waiting: side.asked !== side.answered,
    problem: side.problem ?? unreadable(side.answer, columns),
    hint: isEmpty
      ? 'Nothing is proposed or set on this visit yet: do that on the sheet, or choose another setup or horn here.'
      : hintOf(chosen),
    day: unbroken(`All are played in one air: ${airC.toFixed(1)} °C, A4 at ${a4Hz} Hz, from this visit.`),
    order: side.order,
    unit,
    at: readAt,
    sureness: isEmpty ? null : surenessOf(state, chosen),
    comparison:
      isEmpty && comparison !== null
        ? { ...comparison, sentences: ['As found stands alone: nothing is beside it yet.'] }
        : comparison,
  };
}

const surenessMemo = memoLast(makeDifferenceSureness);
const mendableMemo = memoLast((horn: HornDocument, isInHand: boolean, firstIsFound: boolean) => ({
  keys: new Set(isInHand ? keyedHoles(horn).map(({ id }) => id) : []),
  firstIsFound,
}));

function surenessOf(state: BenchState, [first]: readonly Column[]): DifferenceSureness | null {
  const { answer, noteId } = state.sideBySide;
  if (answer === null || answer.report === null) return null;
  const { horn, asFound } = hornInHand(state).contents;
  const isInHand =
    first.hornId === state.hornId && answer.report.setups.every(({ sameHornAsFirst }) => sameHornAsFirst);
  const mendable = mendableMemo(horn.document, isInHand, first.setupId === asFound.id);
  return surenessMemo(answer.report, answer.columns, noteId, state.unit, mendable);
}

/** What was opened and what the library has, each once; what is on the bench has the newer name. */
function hornsOf({ horns, shelf, sideBySide, hornId }: BenchState): ListedHorn[] {
  const opened = Object.values(horns).map(({ contents: { horn } }) => ({
    id: horn.id,
    label: horn.document.name,
  }));
  const first = opened.filter(({ id }) => id === hornId);
  const all = [...first, ...opened, ...sideBySide.shelf, ...shelf];
  return all.filter(({ id }, i) => all.findIndex((other) => other.id === id) === i);
}

function makeColumn(
  state: BenchState,
  sources: ColumnSources,
  column: Column,
  index: number,
  horns: readonly ListedHorn[],
): ColumnView {
  const records = recordsOfHorn(sources, column.hornId);
  const standing = standingOf(sources, column);
  const setups = records === null ? [] : setupOffers(records, column.hornId);
  const horn = horns.find(({ id }) => id === column.hornId)?.label ?? 'a horn that is gone';
  const setup = setups.flatMap(({ offers }) => offers).find(({ id }) => id === column.setupId)?.label;
  return {
    letter: letterOf(index),
    column,
    horns,
    setups,
    onPaper: setup === undefined ? horn : `${horn}: ${setup}`,
    waiting: standing.kind === 'on its way',
    problem:
      standing.kind === 'missing' ? standing.message : (state.sideBySide.answer?.problems[index] ?? null),
  };
}

/** Why there is no comparison although all that was asked is answered. */
function unreadable(answer: ComparedColumns | null, columns: readonly ColumnView[]): string | null {
  if (answer === null || answer.report !== null || columns.some(({ waiting }) => waiting)) return null;
  return columns[0].problem === null
    ? 'Only one of these can be read: choose another beside it.'
    : 'The first cannot be read, and it is what the others are held against: choose another there.';
}

/** A word to whoever holds a thing against itself. */
function hintOf(columns: readonly Column[]): string | null {
  const [first, ...others] = columns;
  if (others.some(({ hornId, setupId }) => hornId === first.hornId && setupId === first.setupId)) {
    return 'A setup stands beside itself: choose another in one of the columns.';
  }
  return null;
}

function nothingDone(state: BenchState): boolean {
  const { proposed, asSet } = hornInHand(state).contents;
  return [proposed, asSet].every(({ document }) => document.keys.length === 0);
}

const comparisonOf = memoLast(
  (answer: ComparedColumns, order: SideOrder, unit: LengthUnit, at: MeasuringPoint): ComparisonView =>
    makeComparisonView(answer, { order, unit, at }),
);

const chartOf = memoLast(makeDifferenceChart);

/** @param answer with a report */
export function makeComparisonView(
  { report: maybe, columns, examples }: ComparedColumns,
  { order, unit, at }: { readonly order: SideOrder; readonly unit: LengthUnit; readonly at: MeasuringPoint },
): ComparisonView {
  const report = maybe!;
  const padWords = report.warnings.filter(isOfPad);
  return {
    sentences: report.sentences.map((s) => kept(lettered(s, report, columns))),
    chart: chartOf(report, columns),
    notes: makeNotesTable(report, columns, order),
    keys: makeKeysTable(report, columns, order, { unit, at }),
    limits: unbroken(report.limits),
    cautions: [
      ...exampleWords(report, columns, examples),
      ...report.warnings.filter((w) => !isOfPad(w)).map((w) => lettered(w, report, columns)),
    ].map(kept),
    pads:
      padWords.length === 0
        ? null
        : {
            summary: 'Some pads lie outside the range the pad model was made for; what they do is less sure',
            list: padWords.map((w) => kept(lettered(w, report, columns))),
          },
  };
}

/** Numbers stay with their units, and days on one line. */
function kept(sentence: string): string {
  return unbroken(sentence)
    .replace(/(\d) ±/g, '$1\u00a0±')
    .replace(/(\d) dB/g, '$1\u00a0dB')
    .replace(/(\d{4})-(\d\d)-(\d\d)/g, '$1\u2011$2\u2011$3');
}

/** The report tells pads as `“as set”, low C key: …`. */
const isOfPad = (warning: string): boolean => /^“[^”]*”, .* key: /.test(warning);

/** Cents of a horn whose bore was never measured rest on an example; of one horn their difference hardly does. */
function exampleWords(
  { setups }: ComparisonReport,
  columns: readonly number[],
  examples: readonly boolean[],
): string[] {
  if (!setups.every(({ sameHornAsFirst }) => sameHornAsFirst)) return [];
  return columns.some((column) => examples[column])
    ? [
        'The bore and the hole places of this horn are an example’s: its cents are the example’s. What differs between two of its setups depends on them far less; openings and vent shares not at all.',
      ]
    : [];
}
