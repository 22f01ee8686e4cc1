import type { AirColumn } from '../air/air.ts';
import type { Horn, Setup } from '../horn.ts';
import { FINGERINGS, noteFrequency, type Fingering } from '../keywork/fingerings.ts';
import { makeNetwork, type Network, type NetworkOptions } from '../network/network.ts';
import { latticeCutoff, type CutoffOutcome } from '../resonance/lattice-cutoff.ts';
import { findResonances, resonanceNear, type NoteOutcome, type Resonance } from '../resonance/resonances.ts';

/** What one fingering does on this horn as set up. */
export interface ScaleNote {
  readonly fingering: Fingering;
  /** ids of the holes that stand open, from the mouthpiece down */
  readonly openHoles: readonly string[];
  /** Hz, equal temperament */
  readonly target: number;
  /** the resonance the note sounds on */
  readonly played: NoteOutcome;
  /** every resonance up to four times the target or 2 kHz, whichever is lower */
  readonly resonances: readonly Resonance[];
  readonly cutoff: CutoffOutcome;
}

/** Choices about the scale. */
export interface ScaleOptions extends NetworkOptions {
  /** Hz, sounding A4, default 440 */
  readonly a4?: number;
  /** which fingerings, default all */
  readonly fingerings?: readonly Fingering[];
}

const LOWEST_HZ = 40;
const HIGHEST_HZ = 2000;

/** Every fingering's note on a horn as set up. */
export function playScale(horn: Horn, setup: Setup, air: AirColumn, options: ScaleOptions = {}): ScaleNote[] {
  return (options.fingerings ?? FINGERINGS).map((fingering) => {
    const target = noteFrequency(fingering.note, horn.transposition, options.a4);
    const network = makeNetwork(horn, setup, fingering, air, options);
    return {
      fingering,
      openHoles: openHolesOf(network),
      target,
      played: resonanceNear(network, target),
      resonances: findResonances(
        network,
        LOWEST_HZ,
        Math.max(Math.min(4.2 * target, HIGHEST_HZ), 1.5 * target),
      ),
      cutoff: latticeCutoff(horn, network),
    };
  });
}

/** Ids of the open holes, from the mouthpiece down. */
export function openHolesOf(network: Network): string[] {
  const ids: string[] = [];
  for (const e of network.elements) {
    if (e.kind === 'hole' && e.end.endLength !== Infinity) ids.push(e.hole.id);
  }
  return ids;
}
