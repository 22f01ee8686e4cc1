import { describe, expect, it } from 'vitest';
import { solveFlow, usualSettings, type FlowCase } from '../../datasets/pad-gap/solver/flow.ts';
import { fineSettings, solveRow } from '../../datasets/pad-gap/solver/row.ts';
import { endLengthOf, publishedOpenLength } from '../../datasets/pad-gap/plain.ts';

const open: FlowCase = {
  rim: 0.1,
  pad: 1.2,
  thick: 0.25,
  height: Infinity,
  hinge: Infinity,
  rod: 0,
  body: Infinity,
};
const parallel: FlowCase = { ...open, height: 0.3 };
const hinged: FlowCase = { ...parallel, hinge: 1.4, rod: 0.3 };

const lengthOf = (input: FlowCase, change: Partial<typeof usualSettings> = {}): number => {
  const answer = solveFlow(input, { ...usualSettings, ...change });
  if (!answer) throw new Error('the case cannot be solved');
  return answer.length;
};

/** What the check cases are known to. */
const truthTolerance = 0.003;
/** What the published curve for rims of finite width is known to. */
const publishedTolerance = 0.01;
/** What the grids of the table are allowed to be wrong by. */
const gridTolerance = 0.002;
/** What the choices that should not matter (outer boundary, lid, fan, harmonics) may change. */
const indifferent = 3e-4;

describe('the flow solver', () => {
  it('gives 0.8216 for a flange', () => {
    expect(Math.abs(lengthOf({ ...open, flanged: true }, fineSettings) / 0.8216 - 1)).toBeLessThan(
      truthTolerance,
    );
  });

  it('gives 0.6127 to 0.6133 for a thin wall', () => {
    const length = lengthOf({ ...open, rim: 1e-3 }, { ...fineSettings, finest: 4e-4 });
    expect(length).toBeGreaterThan(0.6127 * (1 - truthTolerance));
    expect(length).toBeLessThan(0.6133 * (1 + truthTolerance));
  });

  it.each([0.03, 0.1, 0.35, 1])('agrees with the published curve for a rim of %s hole radii', (rim) => {
    expect(Math.abs(lengthOf({ ...open, rim }, fineSettings) / publishedOpenLength(rim) - 1)).toBeLessThan(
      publishedTolerance,
    );
  });

  it.each([
    ['parallel', parallel],
    ['thin gap', { ...parallel, height: 0.05 }],
    ['hinged', hinged],
  ])('climbs towards its limit from below as the elements get richer: %s', (_, input) => {
    const lengths = [2, 3, 4, 5].map((degree) => lengthOf(input, { degree, harmonics: 6 }));
    for (let i = 1; i < lengths.length; i++) expect(lengths[i]).toBeGreaterThan(lengths[i - 1]);
    const last = lengths[3] - lengths[2];
    expect(last).toBeLessThan((lengths[2] - lengths[1]) * 0.7);
    expect(last / lengths[3]).toBeLessThan(gridTolerance);
  });

  it('climbs towards its limit as the elements beside the edges get finer', () => {
    const lengths = [0.2, 0.05, 0.0125, 0.003].map((finest) => lengthOf(parallel, { finest, degree: 5 }));
    for (let i = 1; i < lengths.length; i++) expect(lengths[i]).toBeGreaterThan(lengths[i - 1]);
    expect((lengths[3] - lengths[2]) / lengths[3]).toBeLessThan(indifferent);
  });

  it.each([
    ['parallel', parallel],
    ['hinged', hinged],
    ['with a body below', { ...parallel, body: 0.5 }],
    ['with a body far below', { ...parallel, body: 5 }],
  ])('does not notice where the outer boundary and the lid are: %s', (_, input) => {
    const plain = lengthOf(input);
    expect(Math.abs(lengthOf(input, { far: 20 }) / plain - 1)).toBeLessThan(indifferent);
    expect(Math.abs(lengthOf(input, { lid: 3.5 }) / plain - 1)).toBeLessThan(indifferent);
  });

  it('does not notice which fan carries the tilt', () => {
    const lengths = [
      { power: 0.6, side: 4, above: 3, scale: 1 },
      { power: 1.5, side: 6, above: 6, scale: 1 },
      { power: 1, side: 2.5, above: 3, scale: 0.7 },
    ].map((fan) => lengthOf({ ...hinged, fan }, { degree: 5, harmonics: 8 }));
    for (const length of lengths) expect(Math.abs(length / lengths[0] - 1)).toBeLessThan(indifferent);
  });

  it('needs no more harmonics than the table takes', () => {
    const extreme: FlowCase = { ...parallel, height: 0.06, pad: 1.25, hinge: 1.29 };
    const few = lengthOf(extreme, { degree: 3, harmonics: 8 });
    expect(Math.abs(lengthOf(extreme, { degree: 3, harmonics: 14 }) / few - 1)).toBeLessThan(indifferent);
  });

  it('comes to the parallel pad when the rod is far away', () => {
    expect(lengthOf({ ...parallel, hinge: 1e5 })).toBeCloseTo(lengthOf(parallel), 4);
  });

  it('comes to the open chimney when the pad is far away, and to the free chimney when the body is', () => {
    const none = lengthOf(open);
    expect(lengthOf({ ...parallel, height: 4 }) - none).toBeGreaterThan(0);
    expect(lengthOf({ ...parallel, height: 4 }) - none).toBeLessThan(0.002);
    // A source near the rim plane and its image below the body: 1/(8(D + c)), c of the order of the hole's radius.
    const added = lengthOf({ ...open, body: 8 }) - none;
    expect(added).toBeGreaterThan(1 / (8 * 9.5));
    expect(added).toBeLessThan(1 / (8 * 8));
  });

  it.each([parallel, hinged, { ...hinged, body: 0.4 }])('loses no flux on the way out (%#)', (input) => {
    const answer = solveFlow(input);
    expect(answer?.fluxOut).toBeCloseTo(1, 5);
  });

  it.each([0.7, 1, 1.5])('leaves the model within 0.35 %% where the pad is %s hole radii thick', (thick) => {
    const levelledOff = 0.0035;
    for (const input of [
      { ...hinged, thick },
      { ...open, rim: 0.25, pad: 1.375, height: 0.7, hinge: 4.2, rod: 0.8, thick },
    ]) {
      const solved = solveRow(input);
      const model = endLengthOf({
        holeRadius: 1,
        rimThickness: input.rim,
        padRadius: input.pad,
        padThickness: thick,
        hingeDistance: input.hinge,
        hingeHeight: input.rod,
        centreHeight: input.height,
      });
      expect(model.warnings).toEqual([]);
      expect(Math.abs(model.length / solved!.length - 1)).toBeLessThan(levelledOff);
    }
  });

  it('refuses positions the hinge cannot reach', () => {
    expect(solveFlow({ ...hinged, height: 3 })).toBeUndefined();
    expect(solveFlow({ ...hinged, hinge: 1.25, rod: -0.5, height: 0.4 })).toBeUndefined();
  });
});
