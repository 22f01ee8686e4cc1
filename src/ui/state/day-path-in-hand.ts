import { hornInHand, type BenchState } from './bench-state.ts';
import type { DayFacts } from './day-path-facts.ts';
import { makeDayPath, type DayPath } from './day-path.ts';
import { planWork } from './work-plan.ts';

/** What the day’s path is told by, gathered from the bench. */
function dayFactsOf(state: BenchState, mayBeCleared: boolean | null): DayFacts {
  const { contents, keyId } = hornInHand(state);
  const visit = contents.visit.document;
  const known = state.visits.hornId === state.hornId ? state.visits.list : [];
  return {
    contents,
    visit,
    plan: planWork(contents),
    view: state.view,
    keyId,
    earlier: known.filter(({ id, date }) => id !== contents.visit.id && date < visit.date),
    keeping: state.keeping.kind,
    mayBeCleared,
  };
}

/** What of the bench the path depends on: as long as no part is another, neither is the path. */
export function pathParts(state: BenchState, mayBeCleared: boolean | null): readonly unknown[] {
  const { contents, keyId } = hornInHand(state);
  return [contents, keyId, state.view, state.visits, state.keeping.kind, mayBeCleared];
}

/** The path of the horn in hand. */
export function pathInHand(state: BenchState, mayBeCleared: boolean | null): DayPath {
  return makeDayPath(dayFactsOf(state, mayBeCleared));
}
