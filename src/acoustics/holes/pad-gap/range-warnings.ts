import { dual } from '../../numerics/dual.ts';
import type { PadOverHole } from '../pad-models/pad-model.ts';
import { highestCentre } from './hinge-pose.ts';

/** Ranges over which the flow was solved, as multiples of the hole's inner radius. */
export const statedRanges = {
  centreHeight: [0.03, 2],
  padRadius: [1.03, 1.5],
  // Solved to 0.5; above it the model levels off, and solved cases up to 1.5 lie within 0.35 %.
  padThickness: [0.1, 1.5],
  rimThickness: [0.03, 0.35],
  hingeHeight: [-0.5, 1],
  bodyBelow: [0.2, Infinity],
} as const;

/** The rod must lie at least this far beyond the pad's edge, hole radii. */
const hingeClearance = 0.03;

const names: Record<keyof typeof statedRanges, string> = {
  centreHeight: 'The opening at the pad centre',
  padRadius: 'The pad radius',
  padThickness: 'The pad thickness',
  rimThickness: 'The rim thickness',
  hingeHeight: 'The hinge rod height above the rim',
  bodyBelow: 'The distance of the body below the rim',
};

const mm = (metres: number): string => {
  const value = metres * 1e3;
  return `${Math.abs(value) < 10 ? value.toFixed(2) : value.toFixed(1)} mm`;
};

/** Rounding in the bench's own units must not raise a warning at the very border. */
const slack = 1e-9;

/**
 * Says in plain words which quantity of a pad lies outside the range the flow was solved for, its value and the range.
 * @returns one sentence a quantity; empty within the range
 */
export const rangeWarnings = (p: PadOverHole): string[] => {
  const b = p.holeRadius;
  const warnings: string[] = [];
  for (const key of Object.keys(statedRanges) as (keyof typeof statedRanges)[]) {
    const value = p[key];
    if (value === undefined || (key === 'centreHeight' && value === Infinity)) continue;
    if (key === 'hingeHeight' && p.hingeDistance === Infinity) continue;
    const [low, high] = statedRanges[key];
    if (value >= b * low - slack && value <= b * high + slack) continue;
    const range = high === Infinity ? `at least ${mm(b * low)}` : `${mm(b * low)} to ${mm(b * high)}`;
    warnings.push(`${names[key]} is ${mm(value)}; solved flows cover ${range} for this hole.`);
  }
  if (p.hingeDistance === Infinity || p.centreHeight === Infinity) return warnings;
  const nearest = p.padRadius + hingeClearance * b;
  if (p.hingeDistance < nearest - slack) {
    warnings.push(
      `The hinge rod is ${mm(p.hingeDistance)} from the pad centre; solved flows cover at least ${mm(nearest)}, just beyond the pad's edge.`,
    );
    return warnings;
  }
  const [hinge, rod, height] = [p.hingeDistance / b, p.hingeHeight / b, p.centreHeight / b];
  const most = highestCentre(dual(hinge), dual(rod), dual(p.padRadius / b)).value;
  if (height > most + slack) {
    warnings.push(
      `The opening at the pad centre is ${mm(p.centreHeight)}; on this hinge the pad cannot swing higher than about ${mm(b * most)} before it stands upright or its hinge-side edge meets the rim plane.`,
    );
  }
  return warnings;
};
