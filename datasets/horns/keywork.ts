import type { HornDocument } from '../../src/documents/horn-document.ts';

/**
 * The modern key layout: which pad is which, what a finger moves and which pad moves which.
 *
 * **Source:** common practice, no source; checked by the first-open-hole test.
 */
export const PAD_NAMES: Readonly<
  Record<number, readonly [id: string, name: string, rests: 'open' | 'closed']>
> = {
  1: ['low-b-flat', 'low B♭', 'open'],
  2: ['low-b', 'low B', 'open'],
  3: ['low-c-sharp', 'low C♯', 'closed'],
  4: ['low-c', 'low C', 'open'],
  5: ['e-flat', 'low E♭', 'closed'],
  6: ['d', 'D', 'open'],
  7: ['e', 'E', 'open'],
  8: ['side-f-sharp', 'side F♯', 'closed'],
  9: ['f', 'F', 'open'],
  10: ['f-sharp-auxiliary', 'F♯ auxiliary', 'open'],
  11: ['g-sharp', 'G♯', 'closed'],
  12: ['g', 'G', 'open'],
  13: ['side-b-flat', 'side B♭', 'closed'],
  14: ['a', 'A', 'open'],
  15: ['bis', 'bis', 'open'],
  16: ['side-c', 'side C', 'closed'],
  17: ['b', 'B', 'open'],
  18: ['small-c', 'small C', 'open'],
  19: ['palm-d', 'palm D', 'closed'],
  20: ['palm-e-flat', 'palm E♭', 'closed'],
  21: ['high-e', 'high E', 'closed'],
  22: ['palm-f', 'palm F', 'closed'],
  23: ['body-vent', 'body octave vent', 'closed'],
  24: ['neck-vent', 'neck octave vent', 'closed'],
  25: ['high-f-sharp', 'high F♯', 'closed'],
};

const closing = (id: string, ...closes: string[]) => ({ id, closes, opens: [] });
const opening = (id: string, pad: string) => ({ id, closes: [], opens: [{ pad }] });

export const TOUCHES: HornDocument['touches'] = [
  closing('L1', 'b'),
  closing('L2', 'a'),
  closing('L3', 'g'),
  closing('R1', 'f'),
  closing('R2', 'e'),
  closing('R3', 'd'),
  closing('bis', 'bis'),
  closing('low C', 'low-c'),
  { id: 'low B', closes: ['low-b'], opens: [{ pad: 'g-sharp' }] },
  { id: 'low Bb', closes: ['low-b-flat'], opens: [{ pad: 'g-sharp' }] },
  { id: 'low C#', closes: [], opens: [{ pad: 'low-c-sharp' }, { pad: 'g-sharp' }] },
  opening('Eb', 'e-flat'),
  opening('G#', 'g-sharp'),
  opening('side F#', 'side-f-sharp'),
  opening('side Bb', 'side-b-flat'),
  opening('side C', 'side-c'),
  opening('palm D', 'palm-d'),
  opening('palm Eb', 'palm-e-flat'),
  opening('high E', 'high-e'),
  opening('palm F', 'palm-f'),
  opening('high F#', 'high-f-sharp'),
  { id: 'front F', closes: [], opens: [{ pad: 'palm-f', frontMm: 1 }] },
  {
    id: 'thumb',
    closes: [],
    opens: [
      { pad: 'body-vent', whileDown: 'L3' },
      { pad: 'neck-vent', whileUp: 'L3' },
    ],
  },
];

/** Links, and which of them are arms whose travel ratio limits how far the driven pad may open. */
export const LINKS: readonly {
  readonly driver: string;
  readonly driven: string;
  readonly effect: 'closes' | 'holds shut';
  readonly arm: boolean;
}[] = [
  { driver: 'low-b-flat', driven: 'low-b', effect: 'closes', arm: true },
  { driver: 'low-b-flat', driven: 'low-c-sharp', effect: 'holds shut', arm: false },
  { driver: 'low-b', driven: 'low-c-sharp', effect: 'holds shut', arm: false },
  { driver: 'd', driven: 'f-sharp-auxiliary', effect: 'closes', arm: true },
  { driver: 'e', driven: 'f-sharp-auxiliary', effect: 'closes', arm: true },
  { driver: 'f', driven: 'f-sharp-auxiliary', effect: 'closes', arm: true },
  { driver: 'f-sharp-auxiliary', driven: 'g-sharp', effect: 'holds shut', arm: true },
  { driver: 'f-sharp-auxiliary', driven: 'bis', effect: 'closes', arm: true },
  { driver: 'a', driven: 'bis', effect: 'closes', arm: true },
  { driver: 'a', driven: 'small-c', effect: 'closes', arm: true },
  { driver: 'b', driven: 'small-c', effect: 'closes', arm: true },
];

/** Which fingering each pad's place is solved for, in the order of solving. */
export const SOLVED_BY: readonly (readonly [pad: number, fingering: string])[] = [
  [1, 'B3'],
  [2, 'C4'],
  [3, 'C#4'],
  [4, 'D4'],
  [5, 'Eb4'],
  [6, 'E4'],
  [7, 'F4'],
  [9, 'F#4'],
  [8, 'F#4 side'],
  [10, 'G4'],
  [11, 'G#4'],
  [12, 'A4'],
  [14, 'Bb4 bis'],
  [13, 'Bb4 side'],
  [15, 'B4'],
  [17, 'C5'],
  [16, 'C5 side'],
  [18, 'C#5'],
  [19, 'D6'],
  [20, 'Eb6'],
  [21, 'E6'],
  [22, 'F6'],
  [25, 'F#6'],
];

/**
 * Where each pad lies round the bore, by number: degrees from the line of the stacks, positive to the
 * player's right. An invented common layout, for drawing only; no sound depends on it.
 */
export const MODERN_AROUND: Readonly<Record<number, number>> = {
  // bell and bow: the bell keys on the right
  1: 80, 2: 80, 3: 75, 4: 20, 5: 35,
  // stacks, G♯ and small C beside their line
  6: 0, 7: 0, 9: 0, 10: 0, 11: -40, 12: 0, 14: 0, 15: 0, 17: 0, 18: 20,
  // side keys, high E and high F♯ on the right, palm keys on the left
  8: 75, 13: 80, 16: 80, 21: 80, 25: 85, 19: -40, 20: -92, 22: -70,
  // body vent behind, towards the thumb; neck vent on top of the neck
  23: 140, 24: 0,
}; // prettier-ignore
