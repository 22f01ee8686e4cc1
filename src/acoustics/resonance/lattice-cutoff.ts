import { boreVolume } from '../bore/bore.ts';
import { holeLength } from '../holes/hole-lengths.ts';
import type { Horn } from '../horn.ts';
import type { HoleElement, Network } from '../network/network.ts';

/** The cutoff of the open holes below the first one, or why there is none. */
export type CutoffOutcome =
  | { readonly found: true; readonly frequency: number; readonly holes: readonly string[] }
  | { readonly found: false; readonly reason: string };

/** How many cells below the first open hole are averaged; the sound hardly reaches further. */
const CELLS = 3;

/**
 * Cutoff frequency of the lattice of open holes that begins at the first open hole, Hz.
 *
 *   f_c = (c/2π)·√(S_h/(t_e·V_cell))    per open hole, geometric mean of the first three
 *
 * V_cell is the bore volume between the mid-points to the neighbouring open holes; the first hole's cell
 * reaches as far up as it reaches down. Below f_c the sound turns back at the first open hole, above it it
 * runs on down the bore: the higher, the brighter.
 *
 * **Source:** cell form after Moers & Kergomard 2011, Acta Acustica 97, 970 (from memory). The mean of three
 * cells is our definition.
 */
export function latticeCutoff(horn: Horn, network: Network): CutoffOutcome {
  const open = network.elements.filter(
    (e): e is HoleElement => e.kind === 'hole' && e.end.endLength !== Infinity && e.hole.hinge !== null,
  );
  if (open.length < 2) {
    return { found: false, reason: `a lattice needs two open holes; this fingering has ${open.length}` };
  }
  const count = Math.min(CELLS, open.length - 1);
  let logSum = 0;
  for (let i = 0; i < count; i++) {
    const { hole, end, air } = open[i];
    const down = (open[i + 1].hole.x - hole.x) / 2;
    const up = i === 0 ? Math.min(down, hole.x) : (hole.x - open[i - 1].hole.x) / 2;
    const volume = boreVolume(horn.bore, hole.x - up, hole.x + down);
    const area = Math.PI * hole.holeRadius ** 2;
    logSum += Math.log(
      (air.soundSpeed / (2 * Math.PI)) * Math.sqrt(area / (holeLength(hole, end.endLength) * volume)),
    );
  }
  return {
    found: true,
    frequency: Math.exp(logSum / count),
    holes: open.slice(0, count).map((e) => e.hole.id),
  };
}
