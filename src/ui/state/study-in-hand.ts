import { hornInHand, proposedInHand, type BenchState } from './bench-state.ts';
import type { StudyReport } from './study-report.ts';
import { startMmOf } from './study-state.ts';

// The key study on screen beside the key in hand: the key may be another, or measured anew since.

/** Whether a report belongs to the horn and key in hand and nothing newer was asked. */
export function isCurrent(state: BenchState): boolean {
  return state.study.asked === state.study.answered && isOfKeyInHand(state);
}

/** Whether the report on screen is of the horn and key in hand, be it with older measurements. */
export function isOfKeyInHand(state: BenchState): boolean {
  const { report, hornId } = state.study;
  return report !== null && hornId === state.hornId && report.keyId === hornInHand(state).keyId;
}

/** mm at the front: what was proposed for the key in hand, or else the answer, or else as it stands. */
export function proposedMmOf(state: BenchState, report: StudyReport): number {
  return proposedInHand(state)[report.keyId] ?? startMmOf(report);
}

/**
 * Whether a person proposed an opening for the key in hand. Only such count on the whole horn; what the key
 * study shows of itself does not, until it is taken.
 */
export function isProposed(state: BenchState): boolean {
  return proposedInHand(state)[hornInHand(state).keyId] !== undefined;
}

// Actions: each takes a state and gives the next.

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
