import type { MeasuringPoint } from '../../../acoustics/index.ts';
import type { ComparisonReport } from '../../../documents/comparison-report.ts';
import { comparisonSentence } from '../../../documents/comparison-words.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import type { SideBySideChartModel } from '../../parts/chart/side-by-side-chart.model.ts';
import { unbroken } from '../../parts/note-names.ts';
import { hornInHand, type BenchState } from '../../state/bench-state.ts';
import { calibrationInUse } from '../../state/calibration-source.ts';
import { memoLast } from '../../state/memo-last.ts';
import type { ComparedColumns } from '../../state/side-by-side-answer.ts';
import type { SideOrder } from '../../state/side-by-side-state.ts';
import type { ComparisonTable } from './comparison-tables.model.ts';
import { makeDifferenceChart } from './difference-chart.model.ts';
import { makeKeysTable } from './keys-table.model.ts';
import { kept, lettered, letteredBeside } from './letters.ts';
import { makeNotesTable } from './notes-table.model.ts';
import type { ColumnView } from './side-by-side-columns.model.ts';

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

/** The comparison with what the columns' own standing adds to it; null before the first answer. */
export function comparisonShown(state: BenchState, columns: readonly ColumnView[]): ComparisonView | null {
  const { answer, order } = state.sideBySide;
  if (answer === null || answer.report === null) return null;
  const comparison = comparisonOf(answer, order, state.unit, state.readAt);
  const [first] = columns;
  const standsAs = columns.flatMap(({ letter, nothingOwn }, i) =>
    nothingOwn === null ? [] : [{ i, words: `${letter}: ${nothingOwn.words}`, asId: nothingOwn.asId }],
  );
  /** Beside as found itself there is nothing to compare: that is the answer. */
  const isAlone = ({ i, asId }: (typeof standsAs)[number]): boolean => i > 0 && asId === first.column.setupId;
  const sentences = comparison.sentences.map(
    (sentence, k) => standsAs.find((s) => isAlone(s) && s.i === answer.columns[k + 1])?.words ?? sentence,
  );
  const standings = standsAs.filter((s) => !isAlone(s)).map(({ words }) => words);
  const calibration = calibrationWords(state, answer.report);
  const cautions = [...standings, ...(calibration === null ? [] : [calibration]), ...comparison.cautions];
  return { ...comparison, sentences, cautions };
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
    sentences: report.sentences.map((_, i) =>
      kept(letteredBeside(comparisonSentence(report, i, unit), report, columns, i)),
    ),
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

/** A calibration in use moves every column of its horn alike; what that means here. null where none is in use. */
function calibrationWords(state: BenchState, { setups }: ComparisonReport): string | null {
  if (calibrationInUse(hornInHand(state).contents) === null) return null;
  const used = 'The calibration in use on this visit is not used here';
  return setups.every(({ sameHornAsFirst }) => sameHornAsFirst)
    ? `${used}: it moves every column of one horn alike, so differences hardly need it. Cents from equal temperament are without it.`
    : `${used}: it was fitted to one horn and would move that one only. Every column is as worked out, in one air.`;
}
