import {
  dual,
  expOf,
  linear,
  lnOf,
  minus,
  over,
  plus,
  powerOf,
  sinOf,
  times,
  type Dual,
} from '../../numerics/dual.ts';
import { bodyNet, openCurve, parallelNet, tiltNet } from './coefficients.ts';
import { gapPoseAt, highestCentre } from './hinge-pose.ts';
import { lnOuterEnd, publishedOpenLength, publishedParallelPad } from './published-parallel.ts';
import { leveledOff, netAt, type SmoothNet } from './smooth-net.ts';

/**
 * The end length as a sum, in hole radii:
 *
 *   δ = N(w) + G(h, d, w, t_p)·exp(ε² n₁ + ελ n₂ + λ² n₃) + B
 *
 * N open chimney; G what a parallel pad adds, the published fit times exp of a fitted net; the exponent what
 * the tilt changes, with ε = d sin θ/h (opening lost at the back edge over centre opening) and
 * λ = (sideways shift)/h, so that it vanishes without tilt and does not change when the picture is mirrored;
 * B what a plane body below the rim adds, of the order of 1/(8(1 + D)), the image of a source a depth D above a plane.
 * Nets see dimensionless inputs near −1…1. Everything is a dual number, so every term carries its exact
 * derivative along whatever direction the shape and the height move in.
 *
 * **Source:** N and G's stem Dalmont, Nederveen & Joly 2001; image source from potential theory; the rest is
 * ours, fitted to `datasets/pad-gap`.
 */

/** The pad and its surroundings in hole radii, within the ranges of the fits (see {@link shapeWithin}). */
export interface GapShape {
  readonly rim: Dual;
  readonly pad: Dual;
  readonly thick: Dual;
  readonly hinge: Dual;
  readonly rod: Dual;
  readonly body: Dual;
}

/** Ranges the fits were made over, hole radii; `soft` is how far beyond a quantity still counts before it levels off. */
export const FIT_RANGES = {
  rim: { low: 0.025, high: 0.355, soft: 0.01 },
  pad: { low: 1.022, high: 1.51, soft: 0.01 },
  thick: { low: 0.092, high: 0.508, soft: 0.05 },
  rod: { low: -0.53, high: 1.03, soft: 0.05 },
  height: { low: 0.004, high: 2.04, soft: 0.2 },
  tiltedHeight: { low: 0.028, high: 2.04, soft: 0.1 },
  body: { low: 0.19, high: Infinity, soft: 0.02 },
} as const;

/** The rod is beyond the pad's edge by at least this, hole radii. */
const LEAST_CLEARANCE = 0.025;

/** A shape that stands still, from plain numbers. */
export function stillShape(shape: Readonly<Record<keyof GapShape, number>>): GapShape {
  const { rim, pad, thick, hinge, rod, body } = shape;
  return {
    rim: dual(rim),
    pad: dual(pad),
    thick: dual(thick),
    hinge: dual(hinge),
    rod: dual(rod),
    body: dual(body),
  };
}

/** Levels every quantity off to the range of the fits; infinite hinge and body stay infinite. */
export function shapeWithin(shape: GapShape): GapShape {
  const pad = leveledOff(shape.pad, FIT_RANGES.pad);
  const { hinge, body } = shape;
  return {
    rim: leveledOff(shape.rim, FIT_RANGES.rim),
    pad,
    thick: leveledOff(shape.thick, FIT_RANGES.thick),
    rod: leveledOff(shape.rod, FIT_RANGES.rod),
    hinge: hinge.value === Infinity ? hinge : beyondEdge(hinge, pad),
    body: body.value === Infinity ? body : leveledOff(body, FIT_RANGES.body),
  };
}

/** The hinge distance, levelled off just beyond the pad's edge. */
function beyondEdge(hinge: Dual, pad: Dual): Dual {
  const clearance = minus(hinge, pad);
  return plus(pad, leveledOff(clearance, { low: LEAST_CLEARANCE, high: Infinity, soft: 0.005 }));
}

/** What is added to the published curve for the open chimney: a polynomial in w that levels off outside the fit's range. */
export function openCorrection(rim: Dual, coefficients: readonly number[] = openCurve): Dual {
  const x = leveledOff(rim, FIT_RANGES.rim);
  return coefficients.reduceRight((sum, c) => linear(times(sum, x), 1, c), dual(0));
}

/** N: the open chimney. @param rim w as given, any ≥ 0 */
export function openLength(rim: Dual): Dual {
  return plus(publishedOpenLength(rim), openCorrection(rim));
}

function lnHeight(height: Dual): Dual {
  const { low, high, soft } = FIT_RANGES.height;
  const level = leveledOff(lnOf(height), { low: Math.log(low), high: Math.log(high), soft });
  return linear(level, 1 / 1.5, 1.4 / 1.5);
}

function shapeInputs({ pad, rim, thick }: GapShape): readonly [Dual, Dual, Dual] {
  return [
    linear(lnOf(linear(pad, 1 / 0.2, -1 / 0.2)), 1 / 1.2),
    linear(lnOf(linear(rim, 1 / 0.12)), 1 / 1.2),
    linear(thick, 1 / 0.2, -0.3 / 0.2),
  ];
}

/** Inputs of the parallel net. */
export function parallelInputs(shape: GapShape, height: Dual): Dual[] {
  return [lnHeight(height), ...shapeInputs(shape)];
}

function withinTable(net: SmoothNet, shape: GapShape, height: Dual): Dual {
  const stem = publishedParallelPad(height, shape.rim, shape.pad);
  return times(stem, expOf(netAt(net, parallelInputs(shape, height))[0]));
}

/**
 * G: what a parallel pad adds. Below the fit's range it goes over into the thin slit, G → ln(r₂)/(2h) with r₂
 * the outer end of the gap: the rest, hG − ½ ln r₂, falls as the power of h that makes value and slope
 * continuous.
 *
 * **Source:** thin slit, lubrication theory (radial flow between discs), from memory; the junction is ours.
 */
export function parallelTerm(shape: GapShape, height: Dual, net: SmoothNet = parallelNet): Dual {
  const least = FIT_RANGES.height.low;
  if (height.value >= least) return withinTable(net, shape, height);
  const edge = withinTable(net, shape, dual(least));
  const steep = withinTable(net, stillOf(shape), dual(least, 1)).slope;
  const slit = linear(lnOuterEnd(shape.rim, shape.pad), 0.5);
  const rest = minus(linear(edge, least), slit);
  if (!(rest.value > 0)) return over(linear(edge, least), height);
  // The power's own change with the shape is left out of the derivative: it acts below 0.004 hole radii only.
  const power = Math.max(0, (least * (edge.value + least * steep)) / rest.value);
  const now = times(rest, powerOf(linear(height, 1 / least), power));
  return over(plus(slit, now), height);
}

function stillOf(shape: GapShape): GapShape {
  const { rim, pad, thick, hinge, rod, body } = shape;
  return stillShape({
    rim: rim.value,
    pad: pad.value,
    thick: thick.value,
    hinge: hinge.value,
    rod: rod.value,
    body: body.value,
  });
}

/** The part of a parallel pad's length that lies in the slit between r = 1 and its outer end: ln(min(d, 1 + w))/(2h). */
export function slitLength({ pad, rim }: GapShape, height: Dual): Dual {
  return over(linear(lnOuterEnd(rim, pad), 0.5), height);
}

/** The three factors ε², ελ, λ² that the tilt net's outputs are weighted with, and its inputs. */
export function tiltInputs(shape: GapShape, height: Dual): { inputs: Dual[]; factors: Dual[] } {
  const { low, high, soft } = FIT_RANGES.tiltedHeight;
  const at = leveledOff(height, { low, high, soft: height.value < low ? low / 3 : soft });
  const { angle, shift } = gapPoseAt(shape.hinge, shape.rod, shape.pad, at);
  const epsilon = over(times(shape.pad, sinOf(angle)), at);
  const lambda = over(shift, at);
  const factors = [times(epsilon, epsilon), times(epsilon, lambda), times(lambda, lambda)];
  return {
    factors,
    inputs: [
      lnHeight(at),
      ...shapeInputs(shape),
      linear(factors[0], 2, -1),
      linear(factors[1], 2),
      linear(factors[2], 2, -0.5),
      linear(times(angle, angle), 1, -0.5),
    ],
  };
}

/** Exponent by which the tilt changes G. */
export function tiltExponent(shape: GapShape, height: Dual, net: SmoothNet = tiltNet): Dual {
  if (shape.hinge.value === Infinity) return dual(0);
  const { inputs, factors } = tiltInputs(shape, height);
  const n = netAt(net, inputs);
  return factors.reduce((sum, factor, i) => plus(sum, times(factor, n[i])), dual(0));
}

/** Inputs of the body net; s = 1/(1 + h/0.4) lets the pad's properties fade out as it rises. */
export function bodyInputs(shape: GapShape, height: Dual): Dual[] {
  const away = height.value === Infinity;
  const s = away ? dual(0) : over(dual(1), linear(height, 1 / 0.4, 1));
  const [pad, rim, thick] = shapeInputs(shape);
  const depth = shape.body.value === Infinity ? dual(0) : over(dual(1), linear(shape.body, 1, 1));
  const tilted = shape.hinge.value !== Infinity && !away;
  const factors = tilted ? tiltInputs(shape, height).factors : [dual(0), dual(0)];
  return [
    linear(s, 2, -1),
    times(s, pad),
    rim,
    times(s, thick),
    linear(depth, 1 / 0.35, -0.45 / 0.35),
    times(s, factors[0]),
    times(s, factors[1]),
  ];
}

/** B: what the body adds. @param height value Infinity for no pad */
export function bodyTerm(shape: GapShape, height: Dual, net: SmoothNet = bodyNet): Dual {
  if (shape.body.value === Infinity) return dual(0);
  const [exponent] = netAt(net, bodyInputs(shape, height));
  return over(expOf(exponent), linear(shape.body, 8, 8));
}

/** G e^T + B(h) − B(∞); where the hinge cannot bring the pad, the last value it can, falling on as a parallel pad's does. */
function addedWithin(shape: GapShape, height: Dual): Dual {
  const gap = parallelTerm(shape, height);
  const highest = highestCentre(shape.hinge, shape.rod, shape.pad);
  if (height.value > highest.value) {
    const last = over(addedWithin(shape, highest), parallelTerm(shape, highest));
    return times(last, gap);
  }
  const tilted = times(gap, expOf(tiltExponent(shape, height)));
  return plus(tilted, minus(bodyTerm(shape, height), bodyTerm(shape, dual(Infinity))));
}

/**
 * What the pad adds to the open chimney with its body: G e^T + B(h) − B(∞). Above the fit's range it dies away
 * as the published fit's far term does, h^−2.6.
 */
export function padTerm(shape: GapShape, height: Dual): Dual {
  if (height.value === Infinity) return dual(0);
  const level = leveledOff(height, { low: 0, high: FIT_RANGES.height.high, soft: 0.2 });
  const added = addedWithin(shape, level);
  if (level.value === height.value) return added;
  return times(added, powerOf(over(level, height), 2.6));
}
