import { findRoot } from './find-root.ts';

/**
 * Scatter beyond what is stated: the s by which numbers that err by their own ± and by s scatter as they do.
 */

/** What is left of one number, and its own ±. */
export interface Residual {
  readonly value: number;
  /** > 0 */
  readonly plusMinus: number;
}

/** Half of normal deviates are smaller than this. */
const NORMAL_MEDIAN = 0.674489750196082;

/**
 * s from the median, which up to half of the numbers may be wrong without spoiling: the median of
 * |r|/√(±² + s²) is that of normal deviates.
 *
 * @param freedom numbers less what was fitted to them, > 0
 * @returns ≥ 0; 0 where they scatter no more than stated
 */
export function robustScatter(residuals: readonly Residual[], freedom: number): number {
  // Fitting draws all residuals closer by the same share, as far as this can know.
  const median = NORMAL_MEDIAN * Math.sqrt(freedom / residuals.length);
  return scatterWhere(residuals, (s) => {
    const sizes = residuals.map(({ value, plusMinus }) => Math.abs(value) / Math.hypot(plusMinus, s));
    return medianOf(sizes) / median - 1;
  });
}

/**
 * s from the sum of squares: Σ r²/(±² + s²) is the number of degrees of freedom.
 *
 * **Source:** Paule & Mandel 1982. From memory.
 *
 * @returns ≥ 0; 0 where they scatter no more than stated
 */
export function unexplainedScatter(residuals: readonly Residual[], freedom: number): number {
  return scatterWhere(
    residuals,
    (s) =>
      residuals.reduce((sum, { value, plusMinus }) => sum + value ** 2 / (plusMinus ** 2 + s ** 2), 0) /
        freedom -
      1,
  );
}

/** Root of a function that falls with s, by bisection; 0 where it is not positive at 0. */
function scatterWhere(residuals: readonly Residual[], excess: (s: number) => number): number {
  if (!(excess(0) > 0)) return 0;
  const most = Math.hypot(...residuals.map(({ value }) => value), 1) * Math.sqrt(residuals.length) * 10;
  const outcome = findRoot(
    (s, out) => {
      out[0] = excess(s);
      // No slope is known; a step of infinite slope is refused, and the bracket halved.
      out[1] = NaN;
    },
    0,
    most,
    1e-12,
  );
  return outcome.x;
}

/** The middle of some numbers. */
export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}
