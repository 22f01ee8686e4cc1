import { holdsDownFrom, ownPose } from '../../../acoustics/index.ts';
import type { BenchContents } from '../../../documents/bench-contents.ts';
import { layered } from '../../../documents/complete-setup.ts';
import {
  contradictingReadings,
  type ContradictingReadings,
} from '../../../documents/contradicting-readings.ts';
import { linkedHorn, lostMotionOf, type LostMotionReport } from '../../../documents/lost-motion.ts';
import { regulationFacts } from '../../../documents/regulation-facts.ts';
import type { SetupDocument } from '../../../documents/setup-document.ts';
import {
  loadHorn,
  loadSetupOver,
  type HornAndSetup,
  type LoadedHorn,
} from '../../../documents/to-acoustics.ts';
import { withOpeningReading } from '../../../documents/sheet-edits.ts';
import { foundDocuments, MEANT } from '../../state/key-lengths.ts';
import { memoLast } from '../../state/memo-last.ts';

/** A pad that the key’s arm holds down once the key stands low enough, mm at the key’s front. */
export interface HoldsDown {
  readonly drivenName: string;
  readonly belowMm: number;
  readonly plusMinusMm: number;
  /** the key whose arm holds that pad anyway; null where its own stop rules */
  readonly heldByName: string | null;
}

/** What the key in hand leaves behind in links, set to one opening. */
export interface LeftBehind {
  readonly setup: 'proposed' | 'as set';
  /** of the key, at its front */
  readonly frontMm: number;
  readonly lost: readonly LostMotionReport[];
}

/** What the key in hand does to its links. Links are levers: all this is there at once, without the physics of sound. */
export interface StudyLinks {
  readonly holdsDown: readonly HoldsDown[];
  readonly leftBehind: readonly LeftBehind[];
  /** openings as found, this key’s among them, that cannot both be read right */
  readonly contradicting: readonly ContradictingReadings[];
}

const NO_LINKS: StudyLinks = { holdsDown: [], leftBehind: [], contradicting: [] };
const MM = 1e-3;

/** Openings that differ by less are one, mm. */
const SAME_MM = 0.05;

/** @param proposedMm mm at the front, whether a person proposed it or not */
export const makeStudyLinks = memoLast(
  (contents: BenchContents, keyId: string, proposedMm: number): StudyLinks => {
    const found = asFound(foundDocuments(contents), keyId);
    if (found === null) return NO_LINKS;
    return { ...found.links, leftBehind: leftBehind(found.loaded, contents, keyId, proposedMm) };
  },
);

/** What does not change with what is proposed. */
const asFound = memoLast(
  (
    documents: HornAndSetup,
    keyId: string,
  ): { readonly loaded: LoadedHorn; readonly links: Omit<StudyLinks, 'leftBehind'> } | null => {
    const read = loadHorn(documents);
    if (!read.ok) return null;
    const loaded = read.value;
    const nameOf = (id: string): string => loaded.horn.holes.find((hole) => hole.id === id)?.name ?? id;
    const linked = linkedHorn(loaded, regulationFacts(loaded));
    return {
      loaded,
      links: {
        holdsDown: holdsDownFrom(linked, keyId).map(({ driven, below, budget, heldBy }) => ({
          drivenName: nameOf(driven),
          belowMm: below / MM,
          plusMinusMm: budget.plusMinus / MM,
          heldByName: heldBy === null ? null : nameOf(heldBy),
        })),
        contradicting: contradictingReadings(loaded).filter(
          ({ driver, driven }) => driver === keyId || driven === keyId,
        ),
      },
    };
  },
);

/** As proposed, and as set where that is another opening; the other keys stand as they are to leave. */
function leftBehind(
  found: LoadedHorn,
  { proposed, asSet }: BenchContents,
  keyId: string,
  proposedMm: number,
): LeftBehind[] {
  const set = asSet.document.keys.filter(({ openingMm }) => openingMm !== undefined);
  const leaves = layered({ ...proposed.document, keys: set }, proposed.document);
  const others = withOpeningReading(leaves, keyId, null);
  const before = load(found, others);
  const left = (setup: LeftBehind['setup'], document: SetupDocument): LeftBehind | null => {
    const then = load(found, document);
    if (before === null || then === null) return null;
    const frontMm = ownPose(then.horn, then.setup, keyId).front / MM;
    return { setup, frontMm, lost: byThisKey(lostMotionOf(found, then), lostMotionOf(before, then)) };
  };
  const meant = left('proposed', withOpeningReading(others, keyId, { mm: proposedMm, at: 'front' }, MEANT));
  const isSet = set.some(({ pad }) => pad === keyId);
  const stands = isSet ? left('as set', leaves) : null;
  const isOne = meant !== null && stands !== null && Math.abs(meant.frontMm - stands.frontMm) < SAME_MM;
  return [isOne ? null : meant, stands].filter((one) => one !== null && one.lost.length > 0) as LeftBehind[];
}

function load(found: LoadedHorn, sparse: SetupDocument): LoadedHorn | null {
  const read = loadSetupOver(found, sparse);
  return read.ok ? read.value : null;
}

/** Of what links lose more than as found, what they lose more than with this key alone as found. */
function byThisKey(
  sinceFound: readonly LostMotionReport[],
  byKey: readonly LostMotionReport[],
): LostMotionReport[] {
  return sinceFound.filter((a) => byKey.some((b) => a.driver === b.driver && a.driven === b.driven));
}
