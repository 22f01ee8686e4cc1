import type { BenchContents } from '../../documents/bench-contents.ts';
import { layered, saysNothing } from '../../documents/complete-setup.ts';
import { keyedHoles, type HornDocument } from '../../documents/horn-document.ts';
import { listed } from '../../documents/listed.ts';
import type { PlayedSetup } from '../../documents/pitch-log.ts';
import { knownReading } from '../../documents/readings.ts';
import { SETUP_FIELDS, type KeySetupDocument, type SetupDocument } from '../../documents/setup-document.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import { foundDocuments } from './key-lengths.ts';
import { memoLast } from './memo-last.ts';
import { frontsOf } from './proposed-fronts.ts';
import type { ProposedOpenings } from './scale-report.ts';

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

/** Lengths typed to hundredths differ by no rounding of theirs, mm. */
const ROUNDING_MM = 1e-6;

/** How the horn is told, beside as found. */
export type Told = 'as found' | 'as proposed' | 'as set';

/** What of the visit is told over as found. */
export interface ToldOver {
  /** as proposed where something is proposed beyond what was set */
  readonly told: Told;
  /** the same as long as neither setup changes */
  readonly over: SetupDocument;
  /** mm at the front by pad id, of the openings in it */
  readonly frontsMm: ProposedOpenings;
  /** pads whose openings in it are proposed */
  readonly proposed: ReadonlySet<string>;
}

/**
 * What was set, and what is proposed beyond it. A proposal is beyond what was set where its opening lies further
 * from that than the reading's ±, or another number of the pad is not what was set.
 */
export function toldOver(contents: BenchContents): ToldOver {
  return toldMemo(foundDocuments(contents), contents.proposed.document, contents.asSet.document);
}

const toldMemo = memoLast((found: HornAndSetup, proposed: SetupDocument, asSet: SetupDocument): ToldOver => {
  const [wanted, set] = [proposed, asSet].map((document) => frontsOf(found, document));
  const isSet = (key: KeySetupDocument): boolean => {
    const there = asSet.keys.find(({ pad }) => pad === key.pad);
    if (there === undefined) return false;
    const { plusMinusMm } = knownReading('openingMm', there.readings?.openingMm, asSet.origin);
    return SETUP_FIELDS.every((field) =>
      field === 'openingMm'
        ? !(key.pad in wanted) || Math.abs(wanted[key.pad] - set[key.pad]) <= plusMinusMm + ROUNDING_MM
        : key[field] === undefined || key[field] === there[field],
    );
  };
  const beyond = { ...proposed, keys: proposed.keys.filter((key) => !isSet(key)) };
  const over = saysNothing(beyond) ? asSet : saysNothing(asSet) ? proposed : layered(beyond, asSet);
  return {
    told: !saysNothing(beyond) ? 'as proposed' : saysNothing(asSet) ? 'as found' : 'as set',
    over,
    frontsMm: frontsOf(found, over),
    proposed: new Set(beyond.keys.flatMap(({ pad, openingMm }) => (openingMm === undefined ? [] : [pad]))),
  };
});

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
