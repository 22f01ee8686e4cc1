import { dual } from '../../src/acoustics/numerics/dual.ts';
import * as terms from '../../src/acoustics/holes/pad-gap/end-length-terms.ts';
import { gapPoseAt } from '../../src/acoustics/holes/pad-gap/hinge-pose.ts';
import * as published from '../../src/acoustics/holes/pad-gap/published-parallel.ts';
import type { SmoothNet } from '../../src/acoustics/holes/pad-gap/smooth-net.ts';
import { hingedFlow } from '../../src/acoustics/holes/pad-models/hinged-flow.ts';
import type { PadOverHole } from '../../src/acoustics/holes/pad-models/pad-model.ts';

/**
 * The runtime model's parts in plain numbers, for the fit, the picture and the tests: what the model carries as
 * dual numbers stands still here. Lengths in hole radii, but for the whole pad, which is in metres.
 */
export type { PadOverHole };

export type PlainShape = Readonly<Record<keyof terms.GapShape, number>>;

/** A shape within the ranges of the fits. */
export const shapeWithin = ({ rim, pad, thick, hinge, rod, body }: PlainShape): terms.GapShape =>
  terms.shapeWithin(terms.stillShape({ rim, pad, thick, hinge, rod, body }));

export const openCorrection = (rim: number, coefficients?: readonly number[]): number =>
  terms.openCorrection(dual(rim), coefficients).value;

export const publishedOpenLength = (rim: number): number => published.publishedOpenLength(dual(rim)).value;

export const publishedParallelPad = (height: number, rim: number, pad: number): number =>
  published.publishedParallelPad(dual(height), dual(rim), dual(pad)).value;

export const parallelInputs = (shape: terms.GapShape, height: number): number[] =>
  terms.parallelInputs(shape, dual(height)).map((d) => d.value);

export const tiltInputs = (
  shape: terms.GapShape,
  height: number,
): { inputs: number[]; factors: number[] } => {
  const { inputs, factors } = terms.tiltInputs(shape, dual(height));
  return { inputs: inputs.map((d) => d.value), factors: factors.map((d) => d.value) };
};

export const bodyInputs = (shape: terms.GapShape, height: number): number[] =>
  terms.bodyInputs(shape, dual(height)).map((d) => d.value);

export const parallelTerm = (shape: terms.GapShape, height: number, net?: SmoothNet): number =>
  terms.parallelTerm(shape, dual(height), net).value;

export const tiltExponent = (shape: terms.GapShape, height: number, net?: SmoothNet): number =>
  terms.tiltExponent(shape, dual(height), net).value;

export const bodyTerm = (shape: terms.GapShape, height: number, net?: SmoothNet): number =>
  terms.bodyTerm(shape, dual(height), net).value;

/** Sideways place of the face's centre, towards the front positive. */
export const shiftAt = (hinge: number, rod: number, pad: number, height: number): number =>
  gapPoseAt(dual(hinge), dual(rod), dual(pad), dual(height)).shift.value;

/** The whole model, with its slope in the centre's height. */
export const endLengthOf = (pad: PadOverHole) => {
  const { length, noPadLength, slopes, equivalentParallel, warnings } = hingedFlow.endOf(pad);
  return { length, noPadLength, slope: slopes.centreHeight.length, equivalentParallel, warnings };
};

/** The part of the end length that lies in the thin gap, m. */
export const gapShareOf = (pad: PadOverHole): number => hingedFlow.endOf(pad).gapShare;
