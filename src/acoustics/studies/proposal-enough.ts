import { findThreshold } from '../numerics/find-root.ts';
import type { Look, ProposalNote } from './proposal-objective.ts';
import type { ProposalProblem } from './proposal-problem.ts';
import { LEAST_OPENING } from './venting.ts';

/**
 * Enough, quickly: the point of diminishing return of every pad at once.
 *
 * The definition is that of diminishing-return.ts. What differs is how a note's cents are had: instead of
 * following its resonance, from its exact slope at one look, in proportion to the hole's end length, which is
 * what a pad changes:
 *
 *   c_n(s) = c_n + (∂c_n/∂s)/(∂L/∂s)·(L(s) − L)      L the end length, slopes taken at the look
 *
 * **Source:** ours; compared with the full search in the tests.
 */
export interface Enough {
  /** m at the front; the reach where there is none within it */
  readonly front: number;
  readonly reached: boolean;
  /** the note that decides; null where the vent share does */
  readonly fingering: string | null;
}

/** How fine the search looks before it bisects, and how fine it ends, m. */
const SEARCH_STEPS = 24;
const FINEST = 5e-6;
/** cents: a key governs a note that it moves by more between half of and one and a half times its opening */
const GOVERNS = 1;

/** Enough for every pad, from one look. */
export function enoughForAll(problem: ProposalProblem, notes: readonly ProposalNote[], look: Look): Enough[] {
  return problem.keys.map((_, k) => enoughFor(problem, notes, look, k));
}

function enoughFor(problem: ProposalProblem, notes: readonly ProposalNote[], look: Look, k: number): Enough {
  const { curve, reach, found } = problem.keys[k];
  const { step, cents, share } = problem.thresholds;
  const { lengthSlope } = look.pads[k];
  const spread = Math.abs(curve.at(0.5 * found).length - curve.at(1.5 * found).length);
  const governed = notes.flatMap(({ fingering }, n) => {
    const perLength = lengthSlope < 0 ? Math.abs(look.centsSlopes[n][k] / lengthSlope) : 0;
    return fingering.register < 3 && perLength * spread > GOVERNS ? [{ id: fingering.id, perLength }] : [];
  });
  const most = governed.reduce((a, b) => (b.perLength > a.perLength ? b : a), {
    id: null as string | null,
    perLength: 0,
  });
  const moves = (front: number): number =>
    most.perLength * Math.abs(curve.at(front + step).length - curve.at(front).length);
  const stops = (front: number): boolean =>
    moves(front) < cents && curve.at(front + step).share - curve.at(front).share < share;
  const last = reach - step;
  if (!(last > LEAST_OPENING) || !stops(last)) return { front: reach, reached: false, fingering: most.id };
  let below = Math.min(curve.from, last);
  let above = last;
  for (let i = SEARCH_STEPS - 1; i >= 0; i--) {
    const front = below + ((last - below) * i) / SEARCH_STEPS;
    if (!stops(front)) {
      below = front;
      break;
    }
    above = front;
  }
  const front = findThreshold(stops, Math.min(below, above), above, FINEST) ?? above;
  return { front, reached: true, fingering: moves(front - 2 * FINEST) >= cents ? most.id : null };
}
