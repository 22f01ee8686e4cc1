import type {
  ComparedKeyReport,
  ComparisonReport,
  KeyInSetupReport,
  NoteDifferenceReport,
} from './comparison-report.ts';
import type { LengthUnit } from './length-format.ts';
import { noteLabel } from './note-label.ts';
import { notesPlayed, takesIn } from './pitch-log.ts';
import { isPitchShown, isStrengthShown } from './player-sheet-decisions.ts';
import type { PlayerSheetFacts } from './player-sheet-facts.ts';
import { followersOf } from './player-sheet-followers.ts';
import { movedKeys } from './player-sheet-leaving.ts';
import { bothWithPlusMinus, inARow, many, signed } from './player-sheet-lengths.ts';
import type { SetupDocument } from './setup-document.ts';
import { tenths } from './tenths.ts';
import type { VisitDocument } from './visit-document.ts';

/** As many keys, and as many notes, as the player’s page has rows for. */
export const KEY_ROWS = 4;
export const NOTE_ROWS = 6;

/** Keys without a row are named up to so many. */
const NAMED_REST = 8;

/** One key that stands otherwise, at the front in both units. */
export interface SheetKeyRow {
  readonly pad: string;
  readonly name: string;
  /** `8.0 ± 0.2 mm (0.315 in)` */
  readonly found: string;
  readonly set: string;
  /** `84 ± 1 → 91 ± 1 %` */
  readonly vented: string;
  /** `read at the centre` where it was not read at the front in both setups, `reckoned` where nobody set it, and where nobody read it as found; else empty */
  readonly readAt: string;
}

export interface SheetKeyTable {
  readonly rows: readonly SheetKeyRow[];
  /** the keys that did not get a row, or that no other stands otherwise */
  readonly rest: string;
}

/** As found, and what the keys leave as: as set, or as proposed. */
interface KeySetups {
  readonly asFound: SetupDocument;
  readonly leaving: SetupDocument;
}

/** The keys that moved, those whose venting changed most first. */
export function keyTableOf(
  facts: Pick<PlayerSheetFacts, 'comparison' | 'setByHand' | 'isProposal' | 'unreadAsFound'>,
  setups: KeySetups,
  unit: LengthUnit,
): SheetKeyTable {
  const moved = movedKeys(facts.comparison);
  const followers = followersOf(facts);
  const rows = moved.slice(0, KEY_ROWS).map((key) => {
    const isFollower = followers.some((each) => each.key.id === key.id);
    const read = [
      isFollower ? 'reckoned' : readAtWords(key.id, setups),
      facts.unreadAsFound.includes(key.id) ? 'as found the example’s' : '',
    ];
    return keyRow(key, read.filter((words) => words !== '').join(', '), unit);
  });
  return { rows, rest: restOf(moved, facts.isProposal) };
}

/** What is said of the keys without a row; empty where no key moved, which the headline says. */
function restOf(moved: readonly ComparedKeyReport[], isProposal: boolean): string {
  const rest = moved.slice(KEY_ROWS);
  if (moved.length === 0) return '';
  if (rest.length === 0)
    return isProposal
      ? 'Every other key is to stay as it was found.'
      : 'Every other key stands as it was found.';
  const which = rest.length === 1 ? 'One more key' : `The other ${rest.length} keys`;
  const named = rest.length > NAMED_REST ? '' : `: ${rest.map(restWords).join(', ')}`;
  return `${which} ${isProposal ? 'would change' : 'changed'} less in venting${named} (numbers on the shop’s page).`;
}

function readAtWords(id: string, { asFound, leaving }: KeySetups): string {
  const pointIn = ({ keys }: SetupDocument): string | undefined =>
    keys.find(({ pad }) => pad === id)?.measuredAt;
  const [before, after] = [pointIn(asFound), pointIn(leaving) ?? pointIn(asFound)];
  const elsewhere = [...new Set([before, after])].filter((at) => at !== undefined && at !== 'front');
  return elsewhere.length === 0 ? '' : `read at the ${elsewhere.join(' and the ')}`;
}

function keyRow(
  { id, name, setups: [found, set] }: ComparedKeyReport,
  readAt: string,
  unit: LengthUnit,
): SheetKeyRow {
  const opening = (mm: number, plusMinusMm: number): string => bothWithPlusMinus(mm, plusMinusMm, unit);
  return {
    pad: id,
    name,
    found: opening(found!.frontMm, found!.frontPlusMinusMm),
    set: opening(set!.frontMm, set!.frontPlusMinusMm),
    vented: `${share(found!)} → ${share(set!)} %`,
    readAt,
  };
}

function share({ ventShare, ventSharePlusMinus }: KeyInSetupReport): string {
  return `${(100 * ventShare).toFixed(0)} ± ${Math.max(1, Math.round(100 * ventSharePlusMinus))}`;
}

/** `bis ↓`: a key that moved by less, and which way. */
function restWords({ name, differences: [d] }: ComparedKeyReport): string {
  return `${name} ${d!.frontMm > 0 ? '↑' : '↓'}`;
}

/** One note whose change can be shown. */
export interface SheetNoteRow {
  readonly fingering: string;
  readonly label: string;
  /** `+12.1 ± 0.8`; where the change of pitch is inside its ±, that */
  readonly cents: string;
  /** `+1.3 ± 0.1`; empty where nothing of it can be shown */
  readonly strengthDb: string;
  /** what was heard of the same, `+11`; empty where it was not played in both setups */
  readonly heardCents: string;
}

export interface SheetNoteTable {
  readonly rows: readonly SheetNoteRow[];
  readonly rest: string;
}

/** A note that changes by less is not worth a row, cents and dB. */
const LEAST_CENTS = 0.5;
const LEAST_DB = 0.1;
/** The same of what is only proposed or wished: half of what a player notices, dB. */
const LEAST_MEANT_DB = 0.5;

/**
 * The notes whose change can be shown, the greatest first.
 *
 * @param visit what was played of it; null for what is only proposed or wished
 */
export function noteTableOf({ notes }: ComparisonReport, visit: VisitDocument | null): SheetNoteTable {
  const told = notes.flatMap(({ fingering, differences: [d] }) =>
    d !== null && d !== undefined && d.canBeShown ? [{ fingering, d }] : [],
  );
  const leastDb = visit === null ? LEAST_MEANT_DB : LEAST_DB;
  const shown = told.filter(({ d }) => isWorthARow(d, leastDb)).slice(0, NOTE_ROWS);
  const lost = notes.filter(({ differences: [d] }) => d === null).map(({ label }) => label);
  const rest = told.filter((each) => !shown.includes(each));
  const most = Math.max(0, ...rest.map(({ d }) => Math.abs(d.cents)));
  const unheard = lost.length === 0 ? '' : ` ${inARow(lost)} cannot be compared.`;
  const changed = visit === null ? 'would change' : 'changed';
  return {
    rows: shown.map(({ fingering, d }) => noteRow(fingering, d, visit)),
    rest:
      (told.length === 0
        ? `No note ${changed} by more than can be shown.`
        : rest.length === 0
          ? `Nothing else ${changed} by more than can be shown.`
          : `${many(rest.length, 'more note')} ${changed} by ${most.toFixed(1)} cents or less; nothing else by more than can be shown.`) +
      unheard,
  };
}

function isWorthARow(d: NoteDifferenceReport, leastDb: number): boolean {
  const isPitch = isPitchShown(d) && Math.abs(d.cents) >= LEAST_CENTS;
  return isPitch || (isStrengthShown(d) && Math.abs(d.strengthDb!) >= leastDb);
}

function noteRow(fingering: string, d: NoteDifferenceReport, visit: VisitDocument | null): SheetNoteRow {
  const heard = visit === null ? null : heardChange(visit, fingering);
  const leastDb = visit === null ? LEAST_MEANT_DB : LEAST_DB;
  const measured = (value: number, plusMinus: number): string => {
    // A ± is not rounded to nothing.
    const digits = plusMinus < 0.05 ? 2 : 1;
    return `${signed(value, digits)} ± ${plusMinus.toFixed(digits)}`;
  };
  return {
    fingering,
    label: noteLabel(fingering),
    cents: isPitchShown(d) ? measured(d.cents, d.centsPlusMinus) : `inside ± ${tenths(d.centsPlusMinus)}`,
    strengthDb:
      isStrengthShown(d) && Math.abs(d.strengthDb!) >= leastDb
        ? measured(d.strengthDb!, d.strengthDbPlusMinus!)
        : '',
    heardCents: heard === null ? '' : signed(heard, 0),
  };
}

/** What a player’s notes as set lay from those as found, cents; null where one was not played. */
function heardChange(visit: VisitDocument, fingering: string): number | null {
  const [found, set] = (['as found', 'as set'] as const).map(
    (setup) => notesPlayed(takesIn(visit, setup)).find((note) => note.fingering === fingering)?.cents ?? null,
  );
  return found === null || set === null ? null : set - found;
}
