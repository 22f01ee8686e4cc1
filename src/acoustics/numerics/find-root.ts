/** What a search for a root came to: the root, or the best point so far and why it is not one. */
export type RootOutcome =
  | { readonly found: true; readonly x: number; readonly evaluations: number }
  | { readonly found: false; readonly x: number; readonly reason: string };

/**
 * Root of a function with a known slope inside a bracket: Newton's step where it stays inside and helps,
 * a bisection where it does not.
 *
 * @param f         writes the value to `out[0]` and the slope to `out[1]`
 * @param lower     one end of the bracket
 * @param upper     the other end; f must differ in sign between the two
 * @param tolerance the last step, relative to |x|, at which the root counts as found
 *
 * **Source:** Press et al., Numerical Recipes, "Newton–Raphson with bracketing" (the idea; the code is ours).
 */
export function findRoot(
  f: (x: number, out: Float64Array) => void,
  lower: number,
  upper: number,
  tolerance: number,
): RootOutcome {
  const out = new Float64Array(2);
  f(lower, out);
  const fLower = out[0];
  if (fLower === 0) return { found: true, x: lower, evaluations: 1 };
  f(upper, out);
  const fUpper = out[0];
  if (fUpper === 0) return { found: true, x: upper, evaluations: 2 };
  if (!(fLower * fUpper < 0)) {
    return { found: false, x: lower, reason: 'the function has the same sign at both ends of the bracket' };
  }
  let a = lower;
  let b = upper;
  // First guess: where the chord crosses.
  let x = a - (fLower * (b - a)) / (fUpper - fLower);
  for (let i = 3; i <= 80; i++) {
    f(x, out);
    const value = out[0];
    if (value === 0) return { found: true, x, evaluations: i };
    if (value * fLower > 0) a = x;
    else b = x;
    const newton = x - value / out[1];
    // A step this short is the root, also where rounding puts it a hair outside the bracket.
    if (Math.abs(newton - x) <= tolerance * Math.abs(x)) return { found: true, x: newton, evaluations: i };
    const inside = (newton - a) * (newton - b) < 0;
    const next = inside ? newton : 0.5 * (a + b);
    // A bracket as narrow as the tolerance is a root too, whatever the slope says.
    if (Math.abs(next - x) <= tolerance * Math.abs(next)) return { found: true, x: next, evaluations: i };
    x = next;
  }
  return { found: false, x, reason: 'eighty steps were not enough' };
}

/**
 * The least x in [lower, upper] from which a condition holds, by bisection; the condition must be false
 * below and true above that point.
 *
 * @returns x within `tolerance` (absolute) on the side where the condition holds; `lower` where it holds
 *          there already, `null` where it does not hold at `upper` either
 */
export function findThreshold(
  holds: (x: number) => boolean,
  lower: number,
  upper: number,
  tolerance: number,
): number | null {
  if (!holds(upper)) return null;
  if (holds(lower)) return lower;
  let a = lower;
  let b = upper;
  while (b - a > tolerance) {
    const middle = 0.5 * (a + b);
    if (holds(middle)) b = middle;
    else a = middle;
  }
  return b;
}
