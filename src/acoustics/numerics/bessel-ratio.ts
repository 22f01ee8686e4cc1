/**
 * The ratio g = J₁(x)/J₀(x) on the ray x = s·e^{−jπ/4}, s > 0, which is all that viscous and thermal
 * layers in a round tube ask for.
 *
 * Two routes, joined at s = 26 where both are good to 1e-14:
 *   s < 26   backward recurrence Jₙ₋₁ = (2n/x)Jₙ − Jₙ₊₁ from far up  (Miller's method)
 *   s ≥ 26   the Hankel expansion. On this ray the growing exponential drowns the other one
 *            (e^{−√2·s} < 1e-15), so g solves the Riccati equation g' = 1 − g/x + g² as a plain series
 *            in 1/x with g → −j.
 *
 * **Source:** Abramowitz & Stegun 1964, 9.1.27, 9.2.3 and 9.12 (recurrence, Hankel, Miller).
 * **Holds for:** s from 1e-6 up; the tests bound the error at 1e-12 relative.
 */

const SERIES_FROM = 26;
/** How many terms of the expansion are kept. */
export const HANKEL_TERMS = 14;

/** Coefficients bₖ = aₖ·e^{jkπ/4} of g = Σ bₖ s^{−k}, interleaved re, im. */
export const HANKEL_COEFFICIENTS: Float64Array = makeCoefficients();

function makeCoefficients(): Float64Array {
  // aₖ from g' = 1 − g/x + g²:  2a₀aₖ = (2−k)aₖ₋₁ − Σ aᵢaₖ₋ᵢ,  a₀ = −j.
  const aRe = [0];
  const aIm = [-1];
  for (let k = 1; k < HANKEL_TERMS; k++) {
    let sumRe = (2 - k) * aRe[k - 1];
    let sumIm = (2 - k) * aIm[k - 1];
    for (let i = 1; i < k; i++) {
      sumRe -= aRe[i] * aRe[k - i] - aIm[i] * aIm[k - i];
      sumIm -= aRe[i] * aIm[k - i] + aIm[i] * aRe[k - i];
    }
    // Divide by 2a₀ = −2j: (p + jq)/(−2j) = −q/2 + jp/2.
    aRe.push(-sumIm / 2);
    aIm.push(sumRe / 2);
  }
  const out = new Float64Array(2 * HANKEL_TERMS);
  for (let k = 0; k < HANKEL_TERMS; k++) {
    const cos = Math.cos((k * Math.PI) / 4);
    const sin = Math.sin((k * Math.PI) / 4);
    out[2 * k] = aRe[k] * cos - aIm[k] * sin;
    out[2 * k + 1] = aRe[k] * sin + aIm[k] * cos;
  }
  return out;
}

/**
 * Writes g = J₁(x)/J₀(x), x = s·e^{−jπ/4}, into `out[0]` (real) and `out[1]` (imaginary part).
 *
 * @param s   modulus of the argument, > 0, no unit
 * @param out at least two numbers long
 */
export function besselRatioAt(s: number, out: Float64Array): void {
  if (s >= SERIES_FROM) hankelRatio(s, out);
  else recurrenceRatio(s, out);
}

function hankelRatio(s: number, out: Float64Array): void {
  const y = 1 / s;
  let re = HANKEL_COEFFICIENTS[2 * HANKEL_TERMS - 2];
  let im = HANKEL_COEFFICIENTS[2 * HANKEL_TERMS - 1];
  for (let k = HANKEL_TERMS - 2; k >= 0; k--) {
    re = re * y + HANKEL_COEFFICIENTS[2 * k];
    im = im * y + HANKEL_COEFFICIENTS[2 * k + 1];
  }
  out[0] = re;
  out[1] = im;
}

function recurrenceRatio(s: number, out: Float64Array): void {
  // Jₙ₋₁ = (2n/x)Jₙ − Jₙ₊₁ from far up, in any scale; 1/x = (1 + j)/(√2 s).
  const inverse = Math.SQRT2 / s;
  let re = 1e-100;
  let im = 0;
  let aboveRe = 0;
  let aboveIm = 0;
  for (let n = Math.ceil(s) + 18; n >= 1; n--) {
    const c = n * inverse;
    const belowRe = c * (re - im) - aboveRe;
    const belowIm = c * (re + im) - aboveIm;
    aboveRe = re;
    aboveIm = im;
    re = belowRe;
    im = belowIm;
  }
  const norm = re * re + im * im;
  out[0] = (aboveRe * re + aboveIm * im) / norm;
  out[1] = (aboveIm * re - aboveRe * im) / norm;
}
