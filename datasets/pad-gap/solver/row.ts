import { solveFlow, usualSettings, type FlowCase, type FlowSettings } from './flow.ts';
import { isReachable } from './fan-map.ts';
import { solvePanels, type PanelSettings } from './panels.ts';

/**
 * One row of the table: a parallel case straight from a fine grid; a hinged case as the fine parallel value times the ratio
 * hinged/parallel on one coarser grid, which takes most of the grid's own error out. The few positions that no fan reaches
 * without folding come from boundary elements: the fine parallel value plus hinged − parallel on the same panels.
 */
export interface RowAnswer {
  /** End length in hole radii. */
  length: number;
  /** Estimated error of `length`, hole radii. */
  error: number;
}

/** Fine and rough grids for parallel cases; their difference is the error estimate. */
export const fineSettings: FlowSettings = { ...usualSettings, degree: 5, finest: 0.005 };
const checkSettings: FlowSettings = { ...usualSettings, degree: 4, finest: 0.01 };
/** The grid for hinged cases. */
export const hingedSettings: FlowSettings = {
  ...usualSettings,
  degree: 4,
  finest: 0.03,
  harmonics: 8,
  tolerance: 1e-4,
};

/** Shift from placing the outer boundary at 10 hole radii, found by moving it to 20 and 40. */
const farShift = 1e-4;

/** Panels for the positions the fan cannot reach, and what they are good to, found on positions both ways can reach. */
const foldedPanels: PanelSettings = { across: 20, finest: 0.03, growth: 1.6 };
const panelError = 0.009;

const withPanels = (input: FlowCase, parallel: FlowCase, fine: number): RowAnswer | undefined => {
  if (input.body !== Infinity || !isReachable(input)) return undefined;
  const length = fine + solvePanels(input, foldedPanels).length - solvePanels(parallel, foldedPanels).length;
  return { length, error: panelError * length };
};

/** @returns the row's answer, or undefined if the position is out of reach, or its map folds and there is a body below */
export const solveRow = (input: FlowCase): RowAnswer | undefined => {
  const parallel: FlowCase = { ...input, hinge: Infinity, rod: 0 };
  const fine = solveFlow(parallel, fineSettings);
  if (!fine) return undefined;
  if (input.hinge === Infinity) {
    const check = solveFlow(parallel, checkSettings);
    if (!check) return undefined;
    return { length: fine.length, error: Math.abs(fine.length - check.length) + farShift };
  }
  const hinged = solveFlow(input, hingedSettings);
  if (!hinged) return withPanels(input, parallel, fine.length);
  const rough = solveFlow(parallel, hingedSettings);
  if (!rough) return undefined;
  const length = (hinged.length * fine.length) / rough.length;
  // The tilt changes the edge flows by less than half, so at most half of the grid's error survives the ratio.
  return { length, error: Math.abs(fine.length - rough.length) / 2 + farShift + 3e-4 * length };
};
