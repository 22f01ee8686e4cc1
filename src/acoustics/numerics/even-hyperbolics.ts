/**
 * The two even functions a lossy line is made of, for a complex w = s² = Z'Y'L²:
 *
 *   σ(w) = sinh s/s = Σ wⁿ/(2n+1)!        ε(w) = (cosh s − sinh s/s)/s² = Σ (2n+2)wⁿ/(2n+3)!
 *
 * and from them cosh s = σ + wε, σ' = ε/2, ε' = (σ − 3ε)/2w. Both are entire, so no root of w is ever needed,
 * and nothing is lost where s is small.
 *
 * Two routes, joined at |w| = 2.5: the series below, the closed forms above.
 */

/** Above this |w| the closed forms serve. */
const LARGE = 2.5;
/** Terms kept just below it: the next is under 1e-17. */
const TERMS = 11;

/** How many terms are needed for the next one to stay below 1e-16. */
function termsAt(size: number): number {
  if (size < 0.02) return size < 0.0025 ? 4 : 5;
  if (size < 0.25) return size < 0.09 ? 6 : 7;
  return size < 1 ? 9 : TERMS;
}

/** σ's and ε's coefficients, interleaved. */
const COEFFICIENTS = makeCoefficients();

function makeCoefficients(): Float64Array {
  const out = new Float64Array(2 * TERMS);
  let factorial = 1;
  for (let n = 0; n < TERMS; n++) {
    out[2 * n] = 1 / factorial;
    factorial *= (2 * n + 2) * (2 * n + 3);
    out[2 * n + 1] = (2 * n + 2) / factorial;
  }
  return out;
}

/** Writes σ (0, 1) and ε (2, 3) at w = wRe + j·wIm. */
export function evenHyperbolicsAt(wRe: number, wIm: number, out: Float64Array): void {
  const size = Math.abs(wRe) + Math.abs(wIm);
  if (size > LARGE) {
    closedForms(wRe, wIm, out);
    return;
  }
  let i = 2 * termsAt(size) - 2;
  let sRe = COEFFICIENTS[i];
  let sIm = 0;
  let eRe = COEFFICIENTS[i + 1];
  let eIm = 0;
  for (i -= 2; i >= 0; i -= 2) {
    const s = sRe * wRe - sIm * wIm + COEFFICIENTS[i];
    const e = eRe * wRe - eIm * wIm + COEFFICIENTS[i + 1];
    sIm = sRe * wIm + sIm * wRe;
    eIm = eRe * wIm + eIm * wRe;
    sRe = s;
    eRe = e;
  }
  out[0] = sRe;
  out[1] = sIm;
  out[2] = eRe;
  out[3] = eIm;
}

function closedForms(wRe: number, wIm: number, out: Float64Array): void {
  // s = √w = x + jy; the larger of the two first, so that no digits are lost near the axes.
  const size = Math.hypot(wRe, wIm);
  const larger = Math.sqrt(0.5 * (size + Math.abs(wRe)));
  const smaller = wIm / (2 * larger);
  const x = wRe >= 0 ? larger : smaller;
  const y = wRe >= 0 ? smaller : larger;
  const grow = Math.exp(x);
  const coshR = 0.5 * (grow + 1 / grow);
  const sinhR = 0.5 * (grow - 1 / grow);
  const shRe = sinhR * Math.cos(y);
  const shIm = coshR * Math.sin(y);
  const norm = x * x + y * y;
  out[0] = (shRe * x + shIm * y) / norm;
  out[1] = (shIm * x - shRe * y) / norm;
  const dRe = coshR * Math.cos(y) - out[0];
  const dIm = sinhR * Math.sin(y) - out[1];
  const wNorm = size * size;
  out[2] = (dRe * wRe + dIm * wIm) / wNorm;
  out[3] = (dIm * wRe - dRe * wIm) / wNorm;
}

/** Writes ε' = dε/dw into out[0, 1] from w, σ and ε; by its series where the closed form loses digits. */
export function epsilonSlope(wRe: number, wIm: number, even: Float64Array, out: Float64Array): void {
  const size = Math.abs(wRe) + Math.abs(wIm);
  if (size > LARGE) {
    const nRe = even[0] - 3 * even[2];
    const nIm = even[1] - 3 * even[3];
    const norm = 2 * (wRe * wRe + wIm * wIm);
    out[0] = (nRe * wRe + nIm * wIm) / norm;
    out[1] = (nIm * wRe - nRe * wIm) / norm;
    return;
  }
  let re = 0;
  let im = 0;
  for (let n = TERMS - 1; n >= 1; n--) {
    const c = n * COEFFICIENTS[2 * n + 1];
    const next = re * wRe - im * wIm + c;
    im = re * wIm + im * wRe;
    re = next;
  }
  out[0] = re;
  out[1] = im;
}
