import { describe, expect, it } from 'vitest';
import {
  boreVolume,
  holeLength,
  latticeCutoff,
  makeAirColumn,
  makeNetwork,
  type HoleElement,
} from '../../../src/acoustics/index.ts';
import { published } from '../../published/published-values.ts';
import { demoHorn, fingeringOf } from '../demo-horns.ts';
import { relative, ROUNDING } from '../tolerances.ts';

/** Model: one cell knows nothing of the closed holes between, and comes out up to this factor low. */
const CELL_FORM = 2;

const air = makeAirColumn();

describe('the cutoff of the open holes', () => {
  it('is the cell formula where the holes in it are one and a half', () => {
    const { horn, setup } = demoHorn('alto');
    const network = makeNetwork(horn, setup, fingeringOf('D4'), air);
    const cutoff = latticeCutoff(horn, network);
    expect(cutoff.found).toBe(true);
    if (!cutoff.found) return;
    const open = network.elements.filter(
      (e): e is HoleElement => e.kind === 'hole' && e.end.endLength !== Infinity,
    );
    const cells = cutoff.holes.map((id, i) => {
      const { hole, end } = open[i];
      expect(hole.id).toBe(id);
      const down = (open[i + 1].hole.x - hole.x) / 2;
      const up = i === 0 ? down : (hole.x - open[i - 1].hole.x) / 2;
      const volume = boreVolume(horn.bore, hole.x - up, hole.x + down);
      const area = Math.PI * hole.holeRadius ** 2;
      return (
        (open[i].air.soundSpeed / (2 * Math.PI)) *
        Math.sqrt(area / (holeLength(hole, end.endLength) * volume))
      );
    });
    const mean = cells.reduce((p, c) => p * c, 1) ** (1 / cells.length);
    expect(relative(cutoff.frequency, mean)).toBeLessThan(ROUNDING);
  });

  it('of the demo tenor falls towards the low notes, within what one cell can tell of the range a tenor shows', () => {
    const range = published<{ lowHz: number; highHz: number }>('moers-kergomard-2011/cell-cutoff');
    const { horn, setup } = demoHorn('tenor');
    const at = (id: string): number => {
      const cutoff = latticeCutoff(horn, makeNetwork(horn, setup, fingeringOf(id), air));
      return cutoff.found ? cutoff.frequency : NaN;
    };
    const mean = (...ids: string[]): number =>
      Math.exp(ids.reduce((sum, id) => sum + Math.log(at(id)), 0) / ids.length);
    expect(mean('C4', 'D4', 'E4')).toBeLessThan(mean('A4', 'B4', 'C5'));
    for (const id of ['C4', 'D4', 'F4', 'G4', 'A4', 'B4', 'C#5']) {
      expect(at(id)).toBeGreaterThan(range.lowHz / CELL_FORM);
      expect(at(id)).toBeLessThan(range.highHz);
    }
  });

  it('does not exist with one open hole, and says so', () => {
    const { horn, setup } = demoHorn('alto');
    const cutoff = latticeCutoff(horn, makeNetwork(horn, setup, fingeringOf('Bb3'), air));
    expect(cutoff).toMatchObject({ found: false });
    if (!cutoff.found) expect(cutoff.reason).toMatch(/needs two open holes/);
  });
});
