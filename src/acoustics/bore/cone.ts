import type { Air } from '../air/air.ts';
import type { Complex } from '../numerics/complex.ts';
import type { TwoPort } from '../two-port.ts';
import { epsilonSlope } from '../numerics/even-hyperbolics.ts';
import { lossyLineAt, makeLossyLine, writeLineMotion } from './lossy-line.ts';
import { lineTermsAt, makeLineTerms, makeWalls, turnSlopesToTemperature, type Walls } from './wall-losses.ts';

/** One short cone (or cylinder) of bore, from its mouthpiece end to its bell end. Metres. */
export interface ConePiece {
  readonly length: number;
  /** radius at the mouthpiece end */
  readonly r1: number;
  /** radius at the bell end */
  readonly r2: number;
  readonly air: Air;
  /** its walls, at the radius that stands for the piece, (r2 − r1)/ln(r2/r1) */
  readonly walls: Walls;
}

/** The longest piece that may stand for a cone with losses, m. */
export const LONGEST_PIECE = 0.05;

/**
 * The most a piece's radius may change, as a natural logarithm: one radius has to stand for its losses.
 * With both limits a horn is within 0.01 cent and 0.1 % in height of one cut ever finer.
 */
export const STEEPEST_PIECE = 0.1;

/**
 * Checks and freezes a cone piece.
 *
 * @param length m, > 0 (at most {@link LONGEST_PIECE} for accurate losses; cut with `cutBore`)
 * @param r1     m, > 0, mouthpiece end
 * @param r2     m, > 0, bell end
 * @throws RangeError naming the value
 */
export function makeConePiece(length: number, r1: number, r2: number, air: Air): ConePiece {
  if (!(length > 0 && length < 20)) throw new RangeError(`invalid length: ${length} m; expected 0 to 20 m`);
  for (const r of [r1, r2]) {
    if (!(r > 0 && r < 1)) throw new RangeError(`invalid bore radius: ${r} m; expected 0 to 1 m`);
  }
  const ratio = r2 / r1 - 1;
  // (r2−r1)/ln(r2/r1) loses its digits as r2 → r1; below 1e-4 its series is exact to rounding.
  const rEq =
    Math.abs(ratio) < 1e-4 ? r1 * (1 + ratio / 2 - (ratio * ratio) / 12) : (r2 - r1) / Math.log(r2 / r1);
  return { length, r1, r2, air, walls: makeWalls(rEq, air) };
}

const terms = makeLineTerms();
const line = makeLossyLine();
const motion = new Float64Array(4);
const bend = new Float64Array(2);

/**
 * Two-port of a cone with wall losses (spherical waves).
 *
 *   w = Z'Y'L²,  σ = sinh s/s,  ε = (cosh s − σ)/s²,  s² = w,  t₁ = (r₂−r₁)/r₁,  t₂ = (r₂−r₁)/r₂
 *   A = (r₂/r₁)(σ + wε) − t₁σ          B = (Z'S)L σ/(πr₁r₂)
 *   C = πr₁r₂(Y'/S)L (σ + t₁t₂ε)        D = (r₁/r₂)(σ + wε) + t₂σ
 *
 * Z'S and Y'/S are taken at the piece's own walls. A cylinder is the case t₁ = t₂ = 0 and needs no branch.
 *
 * @param f   Hz, > 0
 * @param out A…D and their slopes per Hz
 *
 * **Source:** derived from the spherical wave equation in the cone (Benade 1988, JASA 83, 1764, lossless
 * form); losses by pieces after Keefe 1984. Slopes by the chain rule.
 * **Holds for:** pieces ≤ 5 cm: 0.01 cent, 0.1 % in height against finer cutting (tested).
 */
export function coneTwoPortAt(piece: ConePiece, f: number, out: TwoPort, withSlope: boolean): void {
  lineTermsAt(piece.walls, f, terms, withSlope);
  writeTwoPort(piece, out, withSlope);
}

/** The same two-port with its slopes per °C in the place of those per Hz. */
export function coneWarmingAt(piece: ConePiece, f: number, logSlopes: Air, out: TwoPort): void {
  lineTermsAt(piece.walls, f, terms, true);
  turnSlopesToTemperature(piece.walls, f, logSlopes, terms);
  writeTwoPort(piece, out, true);
}

/** Series impedance and shunt admittance of a bore per metre at one of its places. */
export interface BorePerMetre {
  /** Pa·s/m⁴ */
  readonly z: Complex;
  /** m²/(Pa·s) */
  readonly y: Complex;
}

/**
 * What a metre of bore would add at a place where its radius is known, with the walls of the piece it belongs to:
 * the Z' and Y' that {@link coneTwoPortAt} is the solution of.
 *
 * @param radius m, at the place
 * @param f      Hz, > 0
 */
export function borePerMetreAt(piece: ConePiece, radius: number, f: number): BorePerMetre {
  lineTermsAt(piece.walls, f, terms, false);
  const area = Math.PI * radius * radius;
  return {
    z: { re: terms[0] / area, im: terms[1] / area },
    y: { re: terms[2] * area, im: terms[3] * area },
  };
}

/** A…D, and their slopes along whatever the line terms' slopes are taken. */
function writeTwoPort(piece: ConePiece, out: TwoPort, withSlope: boolean): void {
  const { length, r1, r2 } = piece;
  lossyLineAt(terms, length, line);
  const zRe = line[4];
  const zIm = line[5];
  const sRe = line[0];
  const sIm = line[1];
  const chRe = line[8];
  const chIm = line[9];
  const up = r2 / r1;
  const down = 1 / up;
  const t1 = up - 1;
  const t2 = 1 - down;
  const area = Math.PI * r1 * r2;
  const perArea = 1 / area;
  const kRe = sRe + t1 * t2 * line[2];
  const kIm = sIm + t1 * t2 * line[3];
  out[0] = up * chRe - t1 * sRe;
  out[1] = up * chIm - t1 * sIm;
  out[2] = (zRe * sRe - zIm * sIm) * perArea;
  out[3] = (zRe * sIm + zIm * sRe) * perArea;
  out[4] = area * (line[6] * kRe - line[7] * kIm);
  out[5] = area * (line[6] * kIm + line[7] * kRe);
  out[6] = down * chRe + t2 * sRe;
  out[7] = down * chIm + t2 * sIm;
  if (withSlope) writeSlopes(piece, out);
}

/** Slopes of A…D, from the line just written. */
function writeSlopes(piece: ConePiece, out: TwoPort): void {
  const { length, r1, r2 } = piece;
  const zRe = terms[0];
  const zIm = terms[1];
  const yRe = terms[2];
  const yIm = terms[3];
  const dzRe = terms[4];
  const dzIm = terms[5];
  const dyRe = terms[6];
  const dyIm = terms[7];
  const sRe = line[0];
  const sIm = line[1];
  const up = r2 / r1;
  const down = r1 / r2;
  const t1 = up - 1;
  const t2 = 1 - down;
  const area = Math.PI * r1 * r2;
  const l2 = length * length;
  const wRe = line[4] * line[6] - line[5] * line[7];
  const wIm = line[4] * line[7] + line[5] * line[6];
  const dwRe = l2 * (dzRe * yRe - dzIm * yIm + zRe * dyRe - zIm * dyIm);
  const dwIm = l2 * (dzRe * yIm + dzIm * yRe + zRe * dyIm + zIm * dyRe);
  writeLineMotion(line, dwRe, dwIm, motion);
  const dsRe = motion[0];
  const dsIm = motion[1];
  const dchRe = motion[2];
  const dchIm = motion[3];
  epsilonSlope(wRe, wIm, line, bend);
  const kRe = sRe + t1 * t2 * line[2];
  const kIm = sIm + t1 * t2 * line[3];
  const dkRe = dsRe + t1 * t2 * (bend[0] * dwRe - bend[1] * dwIm);
  const dkIm = dsIm + t1 * t2 * (bend[0] * dwIm + bend[1] * dwRe);
  out[8] = up * dchRe - t1 * dsRe;
  out[9] = up * dchIm - t1 * dsIm;
  out[10] = (length * (dzRe * sRe - dzIm * sIm + zRe * dsRe - zIm * dsIm)) / area;
  out[11] = (length * (dzRe * sIm + dzIm * sRe + zRe * dsIm + zIm * dsRe)) / area;
  out[12] = area * length * (dyRe * kRe - dyIm * kIm + yRe * dkRe - yIm * dkIm);
  out[13] = area * length * (dyRe * kIm + dyIm * kRe + yRe * dkIm + yIm * dkRe);
  out[14] = down * dchRe + t2 * dsRe;
  out[15] = down * dchIm + t2 * dsIm;
}
