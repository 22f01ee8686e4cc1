import { keyedHoles, type HornDocument } from '../../documents/horn-document.ts';
import type { FaultPlaces } from './leaks-state.ts';
import { memoLast } from './memo-last.ts';

/** Every pad and link of a horn that may leak, from the bell up: the same lists for the same horn. */
export const placesOn = memoLast((horn: HornDocument): FaultPlaces => ({
  pads: keyedHoles(horn).map(({ id }) => id),
  links: horn.links.map(({ driver, driven }) => ({ driver, driven })),
}));
