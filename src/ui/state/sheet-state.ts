import type { BenchContents } from '../../documents/bench-contents.ts';
import { keyedHoles, type HornDocument } from '../../documents/horn-document.ts';
import type { SetupDocument } from '../../documents/setup-document.ts';
import { calibrationInUse } from './calibration-source.ts';
import type { TypedText } from './horn-on-bench.ts';
import type { EnoughReport, SheetReport } from './sheet-report.ts';

/** The sheet asked for, and what came of it. */
export interface SheetState {
  /** null before the first */
  readonly report: SheetReport | null;
  /** the horn the report is of */
  readonly hornId: string;
  readonly asked: number;
  readonly answered: number;
  readonly problem: string | null;
  /** by pad id, as they come; each with what it was worked out from */
  readonly enough: Readonly<Record<string, KnownEnough>>;
  /** a text for all keys that was refused */
  readonly shiftTyped: TypedText | null;
  /** what was done to all keys at once, as long as nothing was done after it */
  readonly told: { readonly text: string; readonly after: BenchContents } | null;
}

/** Where more height stops helping, and the documents' parts it was worked out from. */
export interface KnownEnough {
  readonly report: EnoughReport;
  readonly parts: readonly unknown[];
}

export function makeSheetState(hornId: string): SheetState {
  return {
    report: null,
    hornId,
    asked: 0,
    answered: 0,
    problem: null,
    enough: {},
    shiftTyped: null,
    told: null,
  };
}

// Each takes what is known of the sheet and gives the next.

export function sheetAsked(sheet: SheetState, asked: number, hornId: string): SheetState {
  if (hornId === sheet.hornId) return { ...sheet, asked };
  return { ...makeSheetState(hornId), asked, answered: sheet.answered };
}

export function sheetArrived(sheet: SheetState, answered: number, report: SheetReport): SheetState {
  return { ...sheet, answered, report, problem: null };
}

export function sheetFailed(sheet: SheetState, answered: number, problem: string): SheetState {
  return { ...sheet, answered, problem };
}

export function sheetShiftTyped(sheet: SheetState, shiftTyped: TypedText | null): SheetState {
  return { ...sheet, shiftTyped };
}

/** @param after what is on the bench once it is done */
export function sheetTold(sheet: SheetState, text: string, after: BenchContents): SheetState {
  return { ...sheet, told: { text, after } };
}

export function enoughArrived(sheet: SheetState, pad: string, known: KnownEnough): SheetState {
  return { ...sheet, enough: { ...sheet.enough, [pad]: known } };
}

/**
 * What the point of diminishing return of a key is worked out from: the bore and the day, and everything about
 * the key itself and the keys that may rule it through links. How the other keys stand moves it by a hundredth of
 * a millimetre while they stand about as they do; so they count by steps of a fifth, and one nearly shut counts.
 */
export function enoughParts(contents: BenchContents, pad: string): unknown[] {
  const { horn, asFound, asSet, visit } = contents;
  const { bore, mouthpiece, links, touches, bellCorrectionMm, holes } = horn.document;
  const { airC, a4Hz } = visit.document;
  const { keys: found, links: foundLinks } = asFound.document;
  const { keys: set, links: setLinks } = asSet.document;
  return [
    bore,
    mouthpiece,
    bellCorrectionMm,
    links,
    touches,
    foundLinks,
    setLinks,
    airC,
    a4Hz,
    calibrationInUse(contents),
    surroundings(holes, found, set),
    ...rulersOf(horn.document.links, pad).flatMap((id) => [
      holes.find((h) => h.id === id),
      found.find((k) => k.pad === id),
      set.find((k) => k.pad === id),
    ]),
  ];
}

/** How every key stands, coarsely: the same text while none has moved by more than a step. */
function surroundings(
  holes: HornDocument['holes'],
  found: SetupDocument['keys'],
  set: SetupDocument['keys'],
): string {
  const step = (mm: number | undefined): string =>
    mm === undefined ? '' : String(Math.round(STEPS_PER_OCTAVE * Math.log2(Math.max(mm, LEAST_MM))));
  return holes
    .map(({ id, diameterMm }) => {
      const openingIn = (keys: SetupDocument['keys']): number | undefined =>
        keys.find((k) => k.pad === id)?.openingMm;
      return `${step(diameterMm)},${step(openingIn(set) ?? openingIn(found))}`;
    })
    .join(' ');
}

const STEPS_PER_OCTAVE = 4;
/** As good as shut. */
const LEAST_MM = 0.05;

/** A pad and every pad that may rule it through links with a ratio, in a lasting order. */
function rulersOf(links: BenchContents['horn']['document']['links'], pad: string): string[] {
  const rulers = new Set([pad]);
  const queue = [pad];
  while (queue.length > 0) {
    const id = queue.pop()!;
    for (const { driver, driven, travelRatio } of links) {
      if (travelRatio === undefined) continue;
      if (driven !== id || rulers.has(driver)) continue;
      rulers.add(driver);
      queue.push(driver);
    }
  }
  return [...rulers].sort();
}

/** Whether an answer still stands for the horn as it is. */
export function isKnown({ enough }: SheetState, contents: BenchContents, pad: string): boolean {
  const known = enough[pad];
  if (known === undefined) return false;
  const parts = enoughParts(contents, pad);
  return known.parts.length === parts.length && known.parts.every((part, i) => part === parts[i]);
}

/** The key to work out next, the one in hand first, then from the bell up; null where all are known. */
export function nextUnknown(sheet: SheetState, contents: BenchContents, keyId: string): string | null {
  const pads = keyedHoles(contents.horn.document).map(({ id }) => id);
  return [keyId, ...pads].find((pad) => !isKnown(sheet, contents, pad)) ?? null;
}

/** Whether the sheet on screen is that of the horn in hand and nothing newer was asked. */
export function isSheetCurrent({ report, asked, answered, hornId }: SheetState, inHand: string): boolean {
  return report !== null && asked === answered && hornId === inHand;
}
