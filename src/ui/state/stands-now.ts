import type { BenchContents } from '../../documents/bench-contents.ts';
import { layered, saysNothing } from '../../documents/complete-setup.ts';
import { keyedHoles, type HornDocument } from '../../documents/horn-document.ts';
import { listed } from '../../documents/listed.ts';
import type { PlayedSetup } from '../../documents/pitch-log.ts';
import { SETUP_FIELDS, type KeySetupDocument, type SetupDocument } from '../../documents/setup-document.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import { foundDocuments } from './key-lengths.ts';
import { memoLast } from './memo-last.ts';
import { proposedFronts, setFronts } from './proposed-fronts.ts';

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
  if (saysNothing(asSet.document)) return foundDocuments(contents);
  return standingMemo(horn.document, asFound.document, asSet.document);
}

/** How the horn is told, beside as found. */
export type Told = 'as found' | 'as proposed' | 'as set';

/** What is set as it was proposed is set: nearer than a bench reads, mm at the front. */
export const SAME_MM = 0.05;

/** What of the visit is told over as found: what was set, and what is proposed beyond it. */
export function toldOver(contents: BenchContents): { readonly told: Told; readonly over: SetupDocument } {
  const [proposed, asSet] = [contents.proposed.document, contents.asSet.document];
  const [wanted, set] = [proposedFronts(contents), setFronts(contents)];
  const isSet = (key: KeySetupDocument): boolean => {
    const there = asSet.keys.find(({ pad }) => pad === key.pad);
    return SETUP_FIELDS.every((field) =>
      field === 'openingMm'
        ? !(key.pad in wanted) || Math.abs(wanted[key.pad] - set[key.pad]) < SAME_MM
        : key[field] === undefined || key[field] === there?.[field],
    );
  };
  const isOpen = (proposed.links ?? []).length > 0 || !proposed.keys.every(isSet);
  if (isOpen) return { told: 'as proposed', over: overMemo(proposed, asSet) };
  return { told: saysNothing(asSet) ? 'as found' : 'as set', over: asSet };
}

/** Nothing set leaves what is proposed as it is, which those who ask by identity count on. */
const overMemo = memoLast((proposed: SetupDocument, asSet: SetupDocument) =>
  saysNothing(asSet) ? proposed : layered(proposed, asSet),
);

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
