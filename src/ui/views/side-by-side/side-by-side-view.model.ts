import { FEWEST_COMPARED, MOST_COMPARED, type MeasuringPoint } from '../../../acoustics/index.ts';
import { keyedHoles, type HornDocument } from '../../../documents/horn-document.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import { unbroken } from '../../parts/note-names.ts';
import { columnSources, dayInHand, hornInHand, type BenchState } from '../../state/bench-state.ts';
import { memoLast } from '../../state/memo-last.ts';
import type { ComparedColumns } from '../../state/side-by-side-answer.ts';
import { columnsOf, recordsOfHorn } from '../../state/side-by-side-columns.ts';
import { nextColumn } from '../../state/side-by-side-offers.ts';
import type { Column, SideOrder } from '../../state/side-by-side-state.ts';
import { comparisonShown, type ComparisonView } from './comparison-view.model.ts';
import { makeDifferenceSureness, type DifferenceSureness } from './difference-sureness.model.ts';
import { makeLike, type LikeView } from './like.model.ts';
import { nothingApart, playAlike, type NothingApart } from './nothing-apart.model.ts';
import { hornsOf, makeColumn, type ColumnView } from './side-by-side-columns.model.ts';

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
  /** what the player would notice, one sentence a column after the reference; none before the first answer */
  readonly sentences: readonly string[];
  /** to whoever holds a thing against itself beside others, or null */
  readonly hint: string | null;
  /** what stands in the picture's place; null where there is something to draw, or nothing is known yet */
  readonly nothingApart: NothingApart | null;
  /** the day all are played in */
  readonly day: string;
  readonly order: SideOrder;
  readonly unit: LengthUnit;
  readonly at: MeasuringPoint;
  /** null before the first answer, or where there is nothing to compare */
  readonly comparison: ComparisonView | null;
  /** of one note's difference; null where none can be compared */
  readonly sureness: DifferenceSureness | null;
  /** the horn in hand set to a column's openings; null where there is none to take */
  readonly like: LikeView | null;
}

export function makeSideBySideView(state: BenchState): SideBySideView {
  const { sideBySide: side, unit, readAt } = state;
  const sources = columnSources(state);
  const chosen = columnsOf(side.chosen, sources);
  const horns = hornsOf(state);
  const columns = chosen.map((column, i) => makeColumn(state, sources, column, i, horns));
  const { airC, a4Hz } = dayInHand(state);
  const waiting = side.asked !== side.answered;
  const isEmpty = side.chosen === null && nothingDone(state);
  const report = side.answer?.report ?? null;
  const apart = nothingApart(columns, isEmpty, waiting ? null : report);
  // What was played before something stood apart is no answer to what does now.
  const isStale = waiting && apart === null && report !== null && playAlike(report);
  const comparison = isStale ? null : comparisonShown(state, columns);
  return {
    columns,
    next:
      chosen.length < MOST_COMPARED
        ? nextColumn(chosen, recordsOfHorn(sources, chosen[0].hornId), horns)
        : null,
    canRemove: chosen.length > FEWEST_COMPARED,
    isBench: side.chosen === null,
    waiting,
    problem: side.problem ?? unreadable(side.answer, columns),
    sentences: isEmpty ? ['As found stands alone: nothing is beside it yet.'] : (comparison?.sentences ?? []),
    hint: apart === null ? hintOf(chosen) : null,
    nothingApart: apart,
    day: unbroken(`All are played in one air: ${airC.toFixed(1)} °C, A4 at ${a4Hz} Hz, from this visit.`),
    order: side.order,
    unit,
    at: readAt,
    sureness: apart !== null || isStale ? null : surenessOf(state, chosen),
    comparison,
    like: makeLike(
      state,
      chosen,
      columns.map(({ onPaper }) => onPaper),
      waiting,
    ),
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
