import type { LoudReport, ScaleNumbers, ScaleReport } from './scale-report.ts';
import type { ScaleSureness, SurenessSlice } from './scale-sureness.ts';

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
  /** the least and the most of every number since the hand last rested, for the rows' ranges */
  readonly swept: readonly [ScaleNumbers, ScaleNumbers] | null;
  readonly loud: LoudReport | null;
  /** how sure it is, as found and of what moves; null until that is worked out */
  readonly sure: (ScaleSureness & { readonly of: ScaleNumbers }) | null;
  /** as much of the next as has arrived, of the numbers at which the hand rests */
  readonly surer: (ScaleSureness & { readonly of: ScaleNumbers }) | null;
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
    swept: null,
    loud: null,
    sure: null,
    surer: null,
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
    swept: [found, found],
    loud: null,
    sure: null,
    surer: null,
  };
}

export function scaleFailed(scale: ScaleState, answered: number, problem: string): ScaleState {
  return { ...scale, answered, problem };
}

export function moveArrived(scale: ScaleState, proposed: ScaleNumbers): ScaleState {
  const [least, most] = scale.swept ?? [proposed, proposed];
  return {
    ...scale,
    proposed,
    problem: null,
    swept: [extremes(least, proposed, Math.min), extremes(most, proposed, Math.max)],
  };
}

export function moveFailed(scale: ScaleState, problem: string): ScaleState {
  return { ...scale, problem };
}

export function handRested(scale: ScaleState): ScaleState {
  const { rested, proposed } = scale;
  if (proposed === null || rested === proposed) return scale;
  return { ...scale, rested: proposed, swept: [proposed, proposed] };
}

/** Number by number the lesser or the greater of two; where one is lost the other. */
function extremes(a: ScaleNumbers, b: ScaleNumbers, pick: (x: number, y: number) => number): ScaleNumbers {
  const each = (x: Float64Array, y: Float64Array): Float64Array =>
    x.map((value, i) => (Number.isNaN(value) ? y[i] : Number.isNaN(y[i]) ? value : pick(value, y[i])));
  return {
    ...b,
    cents: each(a.cents, b.cents),
    heights: each(a.heights, b.heights),
    cutoffHz: each(a.cutoffHz, b.cutoffHz),
  };
}

/** From which fingering on sureness is still to be asked for; null where it is all there, or the hand moves. */
export function surenessFrom({ report, rested, proposed, sure, surer }: ScaleState): number | null {
  if (report === null || rested === null || rested !== proposed || sure?.of === rested) return null;
  return surer?.of === rested ? surer.found.length : 0;
}

/** A slice that does not continue what has arrived is of another proposal, and dropped. */
export function surenessArrived(scale: ScaleState, slice: SurenessSlice): ScaleState {
  const { report, rested } = scale;
  if (report === null || rested === null || slice.from !== surenessFrom(scale)) return scale;
  const before = slice.from === 0 ? null : scale.surer;
  const surer = {
    of: rested,
    found: [...(before?.found ?? []), ...slice.found],
    moves: [...(before?.moves ?? []), ...slice.moves],
  };
  return surer.found.length < report.fingerings.length
    ? { ...scale, surer }
    : { ...scale, sure: surer, surer: null };
}

export function loudArrived(scale: ScaleState, loud: LoudReport): ScaleState {
  return { ...scale, loud };
}
