import type { Horn } from '../horn.ts';
import { FINGERINGS, type Fingering } from './fingerings.ts';
import { padStates } from './linkage.ts';

/**
 * Under which pad a note speaks: the first that its fingering leaves fully open, counted from the mouthpiece. Vents
 * have no pad on a hinge and are passed by.
 *
 * @returns hole id; null where every pad is shut
 */
export function padUnder(horn: Horn, { touches }: Fingering): string | null {
  const states = padStates(horn.keywork, new Set(touches));
  const first = horn.holes.find(({ id, hinge }) => {
    const state = states.get(id)!;
    return hinge !== null && state.open && state.front === undefined;
  });
  return first?.id ?? null;
}

/** The lowest note that speaks under a pad; null where none does. */
export function noteUnder(horn: Horn, pad: string): Fingering | null {
  return FINGERINGS.find((fingering) => padUnder(horn, fingering) === pad) ?? null;
}
