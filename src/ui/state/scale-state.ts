import type { LoudReport, ScaleNumbers, ScaleReport } from './scale-report.ts';

/** The whole horn asked for, and what came of it. */
export interface ScaleState {
  /** the horn as found; null before the first */
  readonly report: ScaleReport | null;
  /** the horn the report is of */
  readonly hornId: string;
  /** counts horns asked for; the report is current when it answers the last */
  readonly asked: number;
  readonly answered: number;
  readonly problem: string | null;
  /** as proposed: the last the physics answered, while a hand moves and after */
  readonly proposed: ScaleNumbers | null;
  /** as proposed, once the hand rests: what is too slow to follow every move shows this */
  readonly rested: ScaleNumbers | null;
  readonly loud: LoudReport | null;
}

export function makeScaleState(hornId: string): ScaleState {
  return {
    report: null,
    hornId,
    asked: 0,
    answered: 0,
    problem: null,
    proposed: null,
    rested: null,
    loud: null,
  };
}

// Each takes what is known of the scale and gives the next.

export function scaleAsked(scale: ScaleState, asked: number): ScaleState {
  return { ...scale, asked };
}

/** @param hornId the horn in hand */
export function scaleArrived(
  scale: ScaleState,
  answered: number,
  hornId: string,
  report: ScaleReport,
): ScaleState {
  const { found } = report;
  return {
    ...scale,
    answered,
    hornId,
    report,
    problem: null,
    proposed: found,
    rested: found,
    loud: null,
  };
}

export function scaleFailed(scale: ScaleState, answered: number, problem: string): ScaleState {
  return { ...scale, answered, problem };
}

export function moveArrived(scale: ScaleState, proposed: ScaleNumbers): ScaleState {
  return { ...scale, proposed, problem: null };
}

export function moveFailed(scale: ScaleState, problem: string): ScaleState {
  return { ...scale, problem };
}

export function handRested(scale: ScaleState): ScaleState {
  return scale.rested === scale.proposed ? scale : { ...scale, rested: scale.proposed };
}

export function loudArrived(scale: ScaleState, loud: LoudReport): ScaleState {
  return { ...scale, loud };
}
