import type { BenchContents } from '../../documents/bench-contents.ts';
import { layered } from '../../documents/complete-setup.ts';
import { keyedHoles, type HornDocument } from '../../documents/horn-document.ts';
import { listed } from '../../documents/listed.ts';
import type { PlayedSetup } from '../../documents/pitch-log.ts';
import type { SetupDocument } from '../../documents/setup-document.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import { foundDocuments } from './key-lengths.ts';
import { memoLast } from './memo-last.ts';

// How the horn stands now: what was set this visit, over as found.

const standingMemo = memoLast(
  (horn: HornDocument, asFound: SetupDocument, asSet: SetupDocument): HornAndSetup => ({
    horn,
    setup: layered(asSet, asFound),
  }),
);

/** The horn and its setup as it stands: the same pair for the same documents, as found where nothing was set. */
export function standingDocuments(contents: BenchContents): HornAndSetup {
  const { horn, asFound, asSet } = contents;
  const { keys, links = [] } = asSet.document;
  if (keys.length === 0 && links.length === 0) return foundDocuments(contents);
  return standingMemo(horn.document, asFound.document, asSet.document);
}

/** Which takes were played on the horn as it stands. */
export function playedInStanding(contents: BenchContents): PlayedSetup {
  return standingDocuments(contents) === foundDocuments(contents) ? 'as found' : 'as set';
}

/** Pads whose openings were set this visit. */
export function padsSet({ asSet }: BenchContents): ReadonlySet<string> {
  return new Set(asSet.document.keys.flatMap(({ pad, openingMm }) => (openingMm === undefined ? [] : [pad])));
}

/** So many keys are named. */
const NAMED = 4;

/** `Starts from D and E as set, the other keys as found.` */
export function startSentence(contents: BenchContents): string {
  const keyed = keyedHoles(contents.horn.document);
  const pads = padsSet(contents);
  const set = keyed.filter(({ id }) => pads.has(id)).map(({ name }) => name);
  if (set.length === 0) return 'Starts from the openings as found.';
  if (set.length === keyed.length) return 'Starts from the openings as set.';
  const keys = set.length > NAMED ? `${set.length} keys` : listed(set);
  return `Starts from ${keys} as set, the other keys as found.`;
}
