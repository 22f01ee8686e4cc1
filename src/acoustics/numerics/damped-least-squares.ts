import { solveLeastSquares } from './linear-system.ts';

/**
 * Damped least squares: the place x that makes
 *
 *   Σ ρ(u_i(x)) + Σ x_j²
 *
 * least. u are misfits in units of their own ±, x the unknowns in units of what is known of them beforehand, and
 * ρ says what a misfit costs. Every step solves the stacked rows
 *
 *   [√w·∂u/∂x]        [√w·u]
 *   [    1   ] δx = − [  x  ]      w = ρ'(u)/2u
 *   [   √λ   ]        [  0  ]
 *
 * by QR; λ falls while steps help and rises where one does not.
 *
 * **Source:** Levenberg 1944, Marquardt 1963 (damping); Holland & Welsch 1977 (weights renewed at every step). From memory.
 */

/** What a misfit costs, and the weight it has in a step. */
export interface Loss {
  costOf(u: number): number;
  weightOf(u: number): number;
}

/** u²: every misfit counts in full. */
export const SQUARES: Loss = Object.freeze({ costOf: (u: number) => u * u, weightOf: () => 1 });

/**
 * As squares up to 1.345, in proportion beyond, so that one wrong number cannot pull the rest along.
 *
 * **Source:** Huber 1964; 1.345 for 95 % efficiency with normal errors. From memory.
 */
export const HUBER: Loss = Object.freeze({
  costOf: (u: number) => (Math.abs(u) <= HUBER_TURN ? u * u : HUBER_TURN * (2 * Math.abs(u) - HUBER_TURN)),
  weightOf: (u: number) => (Math.abs(u) <= HUBER_TURN ? 1 : HUBER_TURN / Math.abs(u)),
});
const HUBER_TURN = 1.345;

/** Misfits at a place, and their slopes: one row per misfit, one column per unknown. */
export interface Misfits {
  readonly values: readonly number[];
  readonly slopes: readonly (readonly number[])[];
}

/** A place where the cost is least, or the best so far and why it is not. */
export interface LeastPlace<M extends Misfits> {
  readonly x: readonly number[];
  /** as they are there */
  readonly misfits: M;
  /** null where it is found */
  readonly problem: string | null;
}

const FIRST_DAMPING = 1e-4;
const MOST_DAMPING = 1e8;
const MOST_STEPS = 60;
/** Slopes and costs round: a step as short as this is taken whatever the cost says. */
const TRUSTED_STEP = 1e-5;

/**
 * Finds where the cost is least.
 *
 * @param misfitsAt null at a place that cannot be tried
 * @param start     the first place, and the misfits there
 * @param lastStep  a step shorter than this, as a share of what is known beforehand, is the end
 */
export function findLeast<M extends Misfits>(
  misfitsAt: (x: readonly number[]) => M | null,
  start: { readonly x: readonly number[]; readonly misfits: M },
  { loss, lastStep }: { readonly loss: Loss; readonly lastStep: number },
): LeastPlace<M> {
  let { x, misfits } = start;
  if (x.length === 0) return { x, misfits, problem: null };
  let cost = costOf(x, misfits, loss);
  let damping = FIRST_DAMPING;
  for (let i = 0; i < MOST_STEPS; i++) {
    const step = stepFrom(x, misfits, loss, damping);
    const length = Math.hypot(...step);
    if (length < lastStep) return { x, misfits, problem: null };
    const there = x.map((value, j) => value + step[j]);
    const misfitsThere = misfitsAt(there);
    const costThere = misfitsThere === null ? Infinity : costOf(there, misfitsThere, loss);
    if (misfitsThere !== null && (costThere <= cost || length < TRUSTED_STEP)) {
      x = there;
      misfits = misfitsThere;
      cost = costThere;
      damping /= 10;
    } else {
      damping = Math.max(10 * damping, FIRST_DAMPING);
      if (damping > MOST_DAMPING) return { x, misfits, problem: 'no step from the best so far helps' };
    }
  }
  return { x, misfits, problem: `${MOST_STEPS} steps were not enough` };
}

function costOf(x: readonly number[], { values }: Misfits, loss: Loss): number {
  return (
    values.reduce((sum, u) => sum + loss.costOf(u), 0) + x.reduce((sum, value) => sum + value * value, 0)
  );
}

function stepFrom(x: readonly number[], { values, slopes }: Misfits, loss: Loss, damping: number): number[] {
  const roots = values.map((u) => Math.sqrt(loss.weightOf(u)));
  const only = (j: number, value: number): number[] => x.map((_, k) => (k === j ? value : 0));
  const rows = [
    ...slopes.map((row, i) => row.map((slope) => roots[i] * slope)),
    ...x.map((_, j) => only(j, 1)),
    ...x.map((_, j) => only(j, Math.sqrt(damping))),
  ];
  const wanted = [...values.map((u, i) => -roots[i] * u), ...x.map((value) => -value), ...x.map(() => 0)];
  return solveLeastSquares(rows, wanted);
}
