import { keyedHoles } from '../../documents/horn-document.ts';
import { formatBoth, type LengthUnit } from '../../documents/length-format.ts';
import { shiftWords } from '../../documents/player-sheet-lengths.ts';
import type { VisitDocument } from '../../documents/visit-document.ts';
import { hornInHand, type BenchState } from '../state/bench-state.ts';

/** What is chosen where the wish is about all keys; no pad has this id. */
export const ALL_KEYS = ' all';

/** The wish as it can be named: a key and how far open, or all keys and how much higher or lower. */
export interface WishEntry {
  /** a pad’s id, {@link ALL_KEYS}, or empty where nothing is named */
  readonly key: string;
  readonly keys: readonly { readonly id: string; readonly label: string }[];
  /** as typed, or what is in use */
  readonly text: string;
  /** what the field asks for */
  readonly label: string;
  readonly echo: string;
  readonly problem: string | null;
  readonly isNamed: boolean;
}

/** The wish of the visit on the bench. */
export function makeWishEntry(state: BenchState): WishEntry {
  const { horn, visit } = hornInHand(state).contents;
  const { wishKey, wishShiftMm } = visit.document;
  const typed = state.playerSheet.wishTyped[state.hornId];
  const keys = keyedHoles(horn.document).map(({ id, name, number }) => ({ id, label: `${number} ${name}` }));
  const isForAll = wishShiftMm !== undefined;
  const isNamed = isForAll || keys.some(({ id }) => id === wishKey);
  const inUse = wishInUse(visit.document, state.unit);
  const example = isForAll ? 'such as 1 mm lower or +0.02 in' : 'such as 6.5 mm or 1/4 in';
  return {
    key: isForAll ? ALL_KEYS : isNamed ? wishKey! : '',
    keys,
    text: typed?.text ?? inUse,
    label: isForAll ? 'All keys lower or higher by' : 'Wanted open, at the front',
    echo: !isNamed ? 'choose the key first' : inUse === '' ? example : inUse,
    problem: typed?.problem ?? null,
    isNamed,
  };
}

/** Empty where it was not said how far. */
function wishInUse({ wishOpeningMm, wishShiftMm = 0 }: VisitDocument, unit: LengthUnit): string {
  if (wishOpeningMm !== undefined) return formatBoth(wishOpeningMm, unit);
  return wishShiftMm === 0 ? '' : shiftWords(wishShiftMm, unit);
}
