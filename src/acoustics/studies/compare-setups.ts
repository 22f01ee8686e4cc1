import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import { FINGERINGS, type Fingering } from '../keywork/fingerings.ts';
import { compareKeys, type ComparedKey } from './compare-keys.ts';
import {
  compareNote,
  isSameHorn,
  noteIn,
  playCompared,
  type Compared,
  type CompareOptions,
  type NoteDifference,
  type NoteInSetup,
} from './compare-notes.ts';
import { canBeShown, NOTICED } from './noticed.ts';

/** One fingering in every setup. */
export interface ComparedNote {
  readonly fingering: Fingering;
  /** in the order of the setups */
  readonly setups: readonly NoteInSetup[];
  /** of every setup after the first against the first; null where the note is lost in either */
  readonly differences: readonly (NoteDifference | null)[];
}

/** Setups side by side. */
export interface SetupComparison {
  readonly compared: readonly Compared[];
  /** whether each setup after the first is of the first one's horn */
  readonly sameHorn: readonly boolean[];
  /** what can be shown to differ most first */
  readonly notes: readonly ComparedNote[];
  /** vent share that differs most first */
  readonly keys: readonly ComparedKey[];
}

/** How many setups stand side by side. */
export const FEWEST_COMPARED = 2;
export const MOST_COMPARED = 4;

/**
 * Compares two to four setups.
 *
 * @throws RangeError for another number of setups, or a ± that is negative or no number
 */
export function compareSetups(compared: readonly Compared[], options: CompareOptions = {}): SetupComparison {
  if (!(compared.length >= FEWEST_COMPARED && compared.length <= MOST_COMPARED)) {
    throw new RangeError(
      `invalid comparison: ${compared.length} setups; expected ${FEWEST_COMPARED} to ${MOST_COMPARED}`,
    );
  }
  const played = compared.map((each) => playCompared(each, options));
  const [first, ...others] = played;
  const sameHorn = others.map(({ compared: { horn } }) => isSameHorn(first.compared.horn, horn));
  const fingerings = options.fingerings ?? FINGERINGS;
  const notes = fingerings.map((fingering): ComparedNote => ({
    fingering,
    setups: played.map((each) => noteIn(each, fingering)),
    differences: others.map((other, i) => compareNote(first, other, sameHorn[i], fingering)),
  }));
  return {
    compared,
    sameHorn,
    notes: sortedBy(notes, weightOf),
    keys: compareKeys(compared, sameHorn, options.padModel ?? DEFAULT_PAD_MODEL),
  };
}

/** How much of a difference there is, in units of what would be noticed: what can be shown, and at all. */
function weightOf({ differences }: ComparedNote): readonly [number, number] {
  let shown = 0;
  let all = 0;
  for (const difference of differences) {
    if (difference === null) continue;
    const { cents, strengthDb } = difference;
    for (const [measured, unit] of [
      [cents, NOTICED.cents],
      [strengthDb, NOTICED.strengthDb],
    ] as const) {
      if (measured === null) continue;
      const weight = Math.abs(measured.value) / unit;
      all = Math.max(all, weight);
      if (canBeShown(measured)) shown = Math.max(shown, weight);
    }
  }
  return [shown, all];
}

/** Sorted by the first weight, then the second, greatest first; equals stay in order. */
function sortedBy<T>(items: readonly T[], weight: (item: T) => readonly [number, number]): T[] {
  return items
    .map((item) => ({ item, weight: weight(item) }))
    .sort((a, b) => b.weight[0] - a.weight[0] || b.weight[1] - a.weight[1])
    .map(({ item }) => item);
}
