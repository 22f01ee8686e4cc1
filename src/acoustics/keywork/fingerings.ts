/**
 * The written notes of the saxophone and the touches that finger them.
 *
 * **Source:** the modern fingering chart; common practice, no source. Checked by logic in the tests: every
 * note's first open hole, counted from the mouthpiece, is the expected semitone.
 */

/** One way of fingering one written note. */
export interface Fingering {
  /** the note, and the way where there is more than one: `Bb4`, `Bb4 bis` */
  readonly id: string;
  /** written note, ASCII: `F#4`, `Bb4` */
  readonly note: string;
  /** how this fingering differs from the usual one; empty for the usual one */
  readonly way: string;
  readonly touches: readonly string[];
  /** which resonance of the column sounds: 1 fundamental register, 2 octave register, 3 above */
  readonly register: 1 | 2 | 3;
}

const NAMES = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'G#', 'A', 'Bb', 'B'] as const;

const LEFT = ['L1', 'L2', 'L3'];

/** Fundamental register: note, way, touches. */
const LOW: readonly (readonly [string, string, readonly string[]])[] = [
  ['Bb3', '', [...LEFT, 'R1', 'R2', 'R3', 'low C', 'low Bb']],
  ['B3', '', [...LEFT, 'R1', 'R2', 'R3', 'low C', 'low B']],
  ['C4', '', [...LEFT, 'R1', 'R2', 'R3', 'low C']],
  ['C#4', '', [...LEFT, 'R1', 'R2', 'R3', 'low C', 'low C#']],
  ['D4', '', [...LEFT, 'R1', 'R2', 'R3']],
  ['Eb4', '', [...LEFT, 'R1', 'R2', 'R3', 'Eb']],
  ['E4', '', [...LEFT, 'R1', 'R2']],
  ['F4', '', [...LEFT, 'R1']],
  ['F#4', '', [...LEFT, 'R2']],
  ['F#4', 'side', [...LEFT, 'R1', 'side F#']],
  ['G4', '', LEFT],
  ['G#4', '', [...LEFT, 'G#']],
  ['A4', '', ['L1', 'L2']],
  ['Bb4', 'side', ['L1', 'L2', 'side Bb']],
  ['Bb4', 'bis', ['L1', 'bis']],
  ['Bb4', 'one-and-one', ['L1', 'R1']],
  ['B4', '', ['L1']],
  ['C5', '', ['L2']],
  ['C5', 'side', ['L1', 'side C']],
  ['C#5', '', []],
];

/** Above the octave register: note, way, touches, register. */
const HIGH: readonly (readonly [string, string, readonly string[], 2 | 3])[] = [
  ['D6', '', ['thumb', 'palm D'], 2],
  ['Eb6', '', ['thumb', 'palm D', 'palm Eb'], 2],
  ['E6', '', ['thumb', 'palm D', 'palm Eb', 'high E'], 2],
  ['F6', '', ['thumb', 'palm D', 'palm Eb', 'high E', 'palm F'], 2],
  ['F#6', '', ['thumb', 'palm D', 'palm Eb', 'high E', 'palm F', 'high F#'], 2],
  ['E6', 'front', ['thumb', 'front F', 'L2', 'L3'], 3],
  ['F6', 'front', ['thumb', 'front F', 'L2'], 3],
  ['F#6', 'front', ['thumb', 'front F', 'L2', 'side Bb'], 3],
];

/** Every fingering, from low B♭ up. */
export const FINGERINGS: readonly Fingering[] = Object.freeze(
  [
    ...LOW.map(([note, way, touches]) => fingering(note, way, touches, 1)),
    ...LOW.filter(([note]) => noteNumber(note) >= noteNumber('D4')).map(([note, way, touches]) =>
      fingering(noteAt(noteNumber(note) + 12), way, ['thumb', ...touches], 2),
    ),
    fingering('C#6', '', ['thumb'], 2),
    ...HIGH.map(([note, way, touches, register]) => fingering(note, way, touches, register)),
  ].filter((f, i, all) => all.findIndex((g) => g.id === f.id) === i),
);

function fingering(note: string, way: string, touches: readonly string[], register: 1 | 2 | 3): Fingering {
  return Object.freeze({ id: way === '' ? note : `${note} ${way}`, note, way, touches, register });
}

/**
 * Which of some fingerings are their note's usual one, in any order: of each note the first that the chart gives.
 * Front, side and bis fingerings are none wherever the note has another.
 */
export function usualFingerings(fingerings: readonly Pick<Fingering, 'id' | 'note'>[]): boolean[] {
  const places = fingerings.map(({ id }) => FINGERINGS.findIndex((f) => f.id === id));
  const first = new Map<string, number>();
  fingerings.forEach(({ note }, i) => {
    const best = first.get(note);
    if (best === undefined || places[i] < places[best]) first.set(note, i);
  });
  return fingerings.map(({ note }, i) => first.get(note) === i);
}

/** The fingering with this id or, failing that, the first way of this written note; undefined if unknown. */
export function findFingering(name: string): Fingering | undefined {
  const plain = name.trim().replaceAll('♭', 'b').replaceAll('♯', '#');
  return FINGERINGS.find((f) => f.id === plain) ?? FINGERINGS.find((f) => f.note === plain);
}

/**
 * Semitones above C0 of a written note: `A4` is 57.
 *
 * @throws RangeError for a name that is none
 */
export function noteNumber(note: string): number {
  const match = /^([A-G])([#b]?)(-?\d)$/.exec(note);
  if (match === null)
    throw new RangeError(
      `invalid note: "${note}"; expected a letter A to G, # or b, and an octave, as in F#4`,
    );
  const letter = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 }[match[1] as 'A'];
  return letter + (match[2] === '#' ? 1 : match[2] === 'b' ? -1 : 0) + 12 * Number(match[3]);
}

/** Name of the note so many semitones above C0. */
export function noteAt(semitones: number): string {
  return `${NAMES[((semitones % 12) + 12) % 12]}${Math.floor(semitones / 12)}`;
}

/**
 * Sounding frequency of a written note in equal temperament, Hz.
 *
 * @param transposition semitones from written to sounding pitch: alto −9, tenor −14
 * @param a4            Hz, the sounding A4; ISO 16 gives 440
 *
 * **Source:** ISO 16:1975 for A4.
 */
export function noteFrequency(note: string, transposition: number, a4 = 440): number {
  return a4 * 2 ** ((noteNumber(note) + transposition - 57) / 12);
}

/** The interval from one frequency to another, cents. */
export function centsBetween(from: number, to: number): number {
  return 1200 * Math.log2(to / from);
}
