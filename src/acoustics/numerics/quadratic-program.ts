import quadprog from 'quadprog';

/** The least of a quadratic within straight limits: the one door by which the package for it comes in. */

/** One limit: a·x ≥ b, with a given by the variables it names. */
export interface LinearLimit {
  readonly terms: readonly (readonly [variable: number, factor: number])[];
  readonly least: number;
}

/** The least point, and what each limit holds against it. */
export type QuadraticOutcome =
  | {
      readonly found: true;
      readonly x: Float64Array;
      /** one per limit, ≥ 0: how much the least value would fall per unit that the limit gives way */
      readonly multipliers: Float64Array;
    }
  | { readonly found: false };

/**
 * Finds the least of ½xᵀHx + gᵀx within limits.
 *
 * @param hessian  H, n rows of n, positive definite
 * @param gradient g, n numbers
 * @returns `found: false` where H is not positive definite or the limits exclude each other
 *
 * **Source:** Goldfarb & Idnani 1983.
 */
export function leastWithin(
  hessian: readonly Float64Array[],
  gradient: Float64Array,
  limits: readonly LinearLimit[],
): QuadraticOutcome {
  const n = gradient.length;
  if (n === 0) return { found: true, x: new Float64Array(0), multipliers: new Float64Array(limits.length) };
  const a = Array.from({ length: n }, () => [0, ...limits.map(() => 0)]);
  limits.forEach(({ terms }, j) => {
    for (const [variable, factor] of terms) a[variable][j + 1] += factor;
  });
  const { solution, Lagrangian, message } = quadprog.solveQP(
    [[], ...hessian.map((row) => [0, ...row])],
    [0, ...gradient.map((value) => -value)],
    [[], ...a],
    [0, ...limits.map(({ least }) => least)],
  );
  if (message !== '' || !solution.slice(1).every(Number.isFinite)) return { found: false };
  return {
    found: true,
    x: Float64Array.from(solution.slice(1)),
    multipliers: Float64Array.from(Lagrangian.slice(1, limits.length + 1)),
  };
}
