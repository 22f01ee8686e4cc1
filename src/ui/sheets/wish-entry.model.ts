import { keyedHoles } from '../../documents/horn-document.ts';
import { formatBoth } from '../../documents/length-format.ts';
import { hornInHand, type BenchState } from '../state/bench-state.ts';

/** The wish as it can be named: a key, and how far open. */
export interface WishEntry {
  readonly key: string;
  readonly keys: readonly { readonly id: string; readonly label: string }[];
  /** as typed, or what is in use */
  readonly text: string;
  readonly echo: string;
  readonly problem: string | null;
  readonly isNamed: boolean;
}

/** The wish of the visit on the bench. */
export function makeWishEntry(state: BenchState): WishEntry {
  const { horn, visit } = hornInHand(state).contents;
  const { wishKey, wishOpeningMm } = visit.document;
  const typed = state.playerSheet.wishTyped[state.hornId];
  const keys = keyedHoles(horn.document).map(({ id, name, number }) => ({ id, label: `${number} ${name}` }));
  const isNamed = keys.some(({ id }) => id === wishKey);
  const inUse = wishOpeningMm === undefined ? '' : formatBoth(wishOpeningMm, state.unit);
  return {
    key: isNamed ? wishKey! : '',
    keys,
    text: typed?.text ?? inUse,
    echo: !isNamed ? 'choose the key first' : inUse === '' ? 'such as 6.5 mm or 1/4 in' : inUse,
    problem: typed?.problem ?? null,
    isNamed,
  };
}
