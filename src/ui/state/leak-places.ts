import { FINGERINGS, padUnder } from '../../acoustics/index.ts';
import { keyedHoles, type HornDocument } from '../../documents/horn-document.ts';
import { hornFromDocument } from '../../documents/to-acoustics.ts';
import type { FaultPlaces } from './leaks-state.ts';
import { memoLast } from './memo-last.ts';

/** Every pad and link of a horn that may leak, from the bell up: the same lists for the same horn. */
export const placesOn = memoLast((horn: HornDocument): FaultPlaces => ({
  pads: keyedHoles(horn).map(({ id }) => id),
  links: horn.links.map(({ driver, driven }) => ({ driver, driven })),
}));

/** Which note speaks under which pad. */
export interface NotesAndPads {
  /** the lowest note under a pad, by pad id */
  readonly noteUnder: ReadonlyMap<string, string>;
  /** by fingering id; a note with every pad shut is left out */
  readonly padUnder: ReadonlyMap<string, string>;
}

/** The same for the same horn. */
export const notesAndPadsOn = memoLast((document: HornDocument): NotesAndPads => {
  const horn = hornFromDocument(document);
  const pads = FINGERINGS.flatMap((fingering) => {
    const pad = padUnder(horn, fingering);
    return pad === null ? [] : [[fingering.id, pad] as const];
  });
  // From the top down, so that the lowest note under a pad is what stays.
  const notes = [...pads].reverse().map(([note, pad]) => [pad, note] as const);
  return { noteUnder: new Map(notes), padUnder: new Map(pads) };
});
