import { describe, expect, it } from 'vitest';
import { ruleOfThumbParallel } from '../../src/acoustics/holes/pad-gap/rule-of-thumb.ts';
import { readTable } from '../../datasets/pad-gap/table.ts';
import { endLengthOf, type PadOverHole } from '../../datasets/pad-gap/plain.ts';

/** Table rows of usual keys, with the hole radius as the unit of length. */
const usual = readTable()
  .filter((r) => r.kind === 'hinged' || r.kind === 'heldHinged')
  .filter(
    (r) => r.pad >= 1.08 && r.pad <= 1.3 && r.rim >= 0.04 && r.rim <= 0.2 && r.hinge >= 1.3 && r.hinge <= 4,
  )
  .filter((r) => r.rod >= -0.3 && r.rod <= 0.6 && r.height >= 0.2 && r.height <= 0.8)
  .map((row) => ({
    row,
    pad: {
      holeRadius: 1,
      rimThickness: row.rim,
      padRadius: row.pad,
      padThickness: row.thick,
      hingeDistance: row.hinge,
      hingeHeight: row.rod,
      centreHeight: row.height,
    } satisfies PadOverHole,
  }));

/** The error the rule states: of the end length, and of the opening. */
const statedLength = 0.035;
const statedOpening = 0.09;

describe('the rule of thumb', () => {
  it('keeps its stated error against the table', () => {
    expect(usual.length).toBeGreaterThan(40);
    for (const { row, pad } of usual) {
      const parallel = endLengthOf({
        ...pad,
        hingeDistance: Infinity,
        centreHeight: ruleOfThumbParallel(pad),
      });
      expect(Math.abs(parallel.length / row.length - 1)).toBeLessThan(statedLength);
      expect(Math.abs(ruleOfThumbParallel(pad) / endLengthOf(pad).equivalentParallel - 1)).toBeLessThan(
        statedOpening,
      );
    }
  });

  it('does nothing to a parallel pad', () => {
    expect(ruleOfThumbParallel({ ...usual[0].pad, hingeDistance: Infinity })).toBe(usual[0].pad.centreHeight);
  });
});
