import { evenHyperbolicsAt } from '../numerics/even-hyperbolics.ts';
import type { LineTerms } from './wall-losses.ts';

/**
 * A length l of lossy tube, as a cone of bore and the chimney of a hole are both made of it:
 *
 *   z = Z'S·l,  y = (Y'/S)·l,  w = zy,  s² = w
 *   σ = sinh s/s,  ε = (cosh s − σ)/s²,  χ = cosh s = σ + wε
 *
 * Where {@link lossyLineAt} writes: complex numbers as re, im pairs.
 *
 *   0, 1  σ     2, 3  ε     4, 5  z     6, 7  y     8, 9  χ
 */
export type LossyLine = Float64Array;

/** Room for one length of tube. */
export function makeLossyLine(): LossyLine {
  return new Float64Array(10);
}

/** Writes a length of tube. @param terms per metre, as lineTermsAt leaves them @param length l, m */
export function lossyLineAt(terms: LineTerms, length: number, out: LossyLine): void {
  const zRe = terms[0] * length;
  const zIm = terms[1] * length;
  const yRe = terms[2] * length;
  const yIm = terms[3] * length;
  const wRe = zRe * yRe - zIm * yIm;
  const wIm = zRe * yIm + zIm * yRe;
  evenHyperbolicsAt(wRe, wIm, out);
  const sRe = out[0];
  const sIm = out[1];
  const eRe = out[2];
  const eIm = out[3];
  out[4] = zRe;
  out[5] = zIm;
  out[6] = yRe;
  out[7] = yIm;
  out[8] = sRe + wRe * eRe - wIm * eIm;
  out[9] = sIm + wRe * eIm + wIm * eRe;
}

/** Writes how σ (0, 1) and χ (2, 3) move with w: dσ = ½ε dw, dχ = ½σ dw. */
export function writeLineMotion(line: LossyLine, dwRe: number, dwIm: number, out: Float64Array): void {
  out[0] = 0.5 * (line[2] * dwRe - line[3] * dwIm);
  out[1] = 0.5 * (line[2] * dwIm + line[3] * dwRe);
  out[2] = 0.5 * (line[0] * dwRe - line[1] * dwIm);
  out[3] = 0.5 * (line[0] * dwIm + line[1] * dwRe);
}
