import { describe, expect, it } from 'vitest';
import { solveFlow, type FlowCase } from '../../datasets/pad-gap/solver/flow.ts';
import { solvePanels } from '../../datasets/pad-gap/solver/panels.ts';
import { fineSettings, solveRow } from '../../datasets/pad-gap/solver/row.ts';

/**
 * Two independent ways to the same number: finite elements in the fan's coordinates, and boundary elements on the metal itself.
 * Coarse panels lose some flux along the bore; the loss is the same for the parallel pad on the same panels, whose length is
 * known from the fine axisymmetric grid, so the difference hinged − parallel is what is compared. Panels must not be much
 * larger than the gap at the back edge; short hinges at small openings need far more of them (see notes/physics/hinged-pad.md).
 */
const panels = { across: 14, finest: 0.05, growth: 1.8 };
const base: FlowCase = { rim: 0.15, pad: 1.2, thick: 0.25, height: 0.4, hinge: 1.5, rod: 0, body: Infinity };
/** Of the whole length; panels this coarse leave about half of it. */
const wayTolerance = 0.005;

const cases: [string, FlowCase][] = [
  ['a usual key', { ...base, hinge: 2 }],
  ['a high rod', { ...base, hinge: 1.8, rod: 0.6, height: 0.5 }],
  ['a low rod', { ...base, hinge: 2, rod: -0.4 }],
  ['a key flung wide open', { ...base, hinge: 1.3, rod: 1, height: 0.8 }],
  ['a low rod and a wide opening', { ...base, rim: 0.09, pad: 1.29, hinge: 1.5, rod: -0.33, height: 0.68 }],
];

describe('finite elements and boundary elements', () => {
  it.each(cases)('agree on %s', (_, input) => {
    const parallel = { ...input, hinge: Infinity, rod: 0 };
    const fine = solveFlow(parallel, fineSettings);
    const row = solveRow(input);
    if (!fine || !row) throw new Error('the case cannot be solved');
    const other = fine.length + solvePanels(input, panels).length - solvePanels(parallel, panels).length;
    expect(Math.abs(other / row.length - 1)).toBeLessThan(wayTolerance);
  });

  it('agree on the parallel pad itself as the panels get finer', () => {
    const parallel = { ...base, hinge: Infinity, rod: 0 };
    const fine = solveFlow(parallel, fineSettings);
    if (!fine) throw new Error('the case cannot be solved');
    const misses = [
      { across: 8, finest: 0.1, growth: 2 },
      { across: 12, finest: 0.06, growth: 1.8 },
      { across: 15, finest: 0.045, growth: 1.8 },
    ].map((settings) => Math.abs(solvePanels(parallel, settings).length / fine.length - 1));
    expect(misses[1]).toBeLessThan(misses[0]);
    expect(misses[2]).toBeLessThan(misses[1]);
    expect(misses[2]).toBeLessThan(0.05);
  });
});
