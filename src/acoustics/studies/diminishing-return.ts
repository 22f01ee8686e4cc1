import { findThreshold } from '../numerics/find-root.ts';
import { LEAST_OPENING, ventingAt, type VentingContext, type VentingPoint } from './venting.ts';

/**
 * The point of diminishing return, our definition: the least opening from which the next 0.5 mm (0.020 in)
 * at the front buys less than 1 cent on every governed note and less than 1 % of vent share.
 */
export interface ReturnThresholds {
  /** m at the front, default 0.5 mm */
  readonly step: number;
  /** cents per step, default 1 */
  readonly cents: number;
  /** vent share per step, default 0.01 */
  readonly share: number;
}

export const DEFAULT_THRESHOLDS: ReturnThresholds = { step: 0.5e-3, cents: 1, share: 0.01 };

/** What the next step buys at an opening. */
export interface StepGain {
  /** the largest change on any governed note, cents, and which note it is; null where no note is governed */
  readonly cents: number;
  readonly fingering: string | null;
  readonly share: number;
}

/** Where more height stops helping, or why that cannot be said. */
export type DiminishingReturn =
  | { readonly kind: 'reached'; readonly at: VentingPoint; readonly decidedBy: Decision }
  | {
      /** it lies above what a link lets the pad open */
      readonly kind: 'set by a link';
      readonly at: VentingPoint;
      readonly decidedBy: Decision;
      readonly driver: string;
      /** m at the front */
      readonly linkFront: number;
    }
  | {
      readonly kind: 'none in reach';
      readonly reach: number;
      readonly gain: StepGain;
      readonly reason: string;
    };

/** What was the last to stop: a note's pitch, the vent share, or neither even at the least opening. */
export type Decision =
  | { readonly by: 'pitch'; readonly fingering: string }
  | { readonly by: 'vent share' }
  | { readonly by: 'least opening' };

/** How fine the search looks before it bisects, and how fine it ends, m. */
const SEARCH_STEPS = 24;
const FINEST = 5e-6;

/** What the next step of height buys from an opening. */
export function stepGain(context: VentingContext, front: number, step: number): StepGain {
  const here = ventingAt(context, front);
  const next = ventingAt(context, front + step);
  let cents = 0;
  let fingering: string | null = null;
  context.governed.forEach((note, i) => {
    const a = here.notes[i];
    const b = next.notes[i];
    // A note that is lost on the way is not known to have stopped changing.
    const change = a === null || b === null ? Infinity : Math.abs(b.cents - a.cents);
    if (fingering === null || change > cents) {
      cents = change;
      fingering = note.fingering.id;
    }
  });
  return { cents, fingering, share: next.ventShare - here.ventShare };
}

/** Finds the point of diminishing return of a prepared key. */
export function findDiminishingReturn(
  context: VentingContext,
  thresholds: ReturnThresholds = DEFAULT_THRESHOLDS,
): DiminishingReturn {
  const { step } = thresholds;
  const last = context.reach - step;
  const enough = (gain: StepGain): boolean => gain.cents < thresholds.cents && gain.share < thresholds.share;
  const gainAt = (front: number): StepGain => stepGain(context, front, step);
  const atReach = gainAt(Math.max(last, LEAST_OPENING));
  if (!(last > LEAST_OPENING) || !enough(atReach)) {
    return {
      kind: 'none in reach',
      reach: context.reach,
      gain: atReach,
      reason: reasonFor(atReach, thresholds),
    };
  }
  // The highest opening of a coarse walk at which a step still buys something; the answer lies just above it.
  let below = LEAST_OPENING;
  let above = last;
  for (let i = SEARCH_STEPS - 1; i >= 0; i--) {
    const front = LEAST_OPENING + ((last - LEAST_OPENING) * i) / SEARCH_STEPS;
    below = front;
    if (!enough(gainAt(front))) break;
    above = front;
  }
  const front = findThreshold((x) => enough(gainAt(x)), below, above, FINEST)!;
  const at = ventingAt(context, front);
  const decidedBy = decisionAt(front, gainAt(Math.max(front - 2 * FINEST, LEAST_OPENING)), thresholds);
  const { ruledBy } = context.standing;
  if (ruledBy !== null && ruledBy.front < front) {
    return { kind: 'set by a link', at, decidedBy, driver: ruledBy.driver, linkFront: ruledBy.front };
  }
  return { kind: 'reached', at, decidedBy };
}

function decisionAt(front: number, justBelow: StepGain, thresholds: ReturnThresholds): Decision {
  if (front <= LEAST_OPENING) return { by: 'least opening' };
  if (justBelow.cents >= thresholds.cents && justBelow.fingering !== null) {
    return { by: 'pitch', fingering: justBelow.fingering };
  }
  return { by: 'vent share' };
}

function reasonFor(gain: StepGain, thresholds: ReturnThresholds): string {
  if (gain.cents >= thresholds.cents) {
    return Number.isFinite(gain.cents)
      ? `the last step within reach still moves ${gain.fingering} by ${gain.cents.toFixed(1)} cents`
      : `${gain.fingering} has no resonance to follow there`;
  }
  if (gain.share >= thresholds.share) {
    return `the last step within reach still buys ${(100 * gain.share).toFixed(1)} % of vent share`;
  }
  return 'the reach is shorter than one step';
}
