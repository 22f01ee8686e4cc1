import type { VisitDocument } from '../../documents/visit-document.ts';
import {
  withSheetWords,
  withWish,
  withWishForAll,
  type SheetSentence,
} from '../../documents/player-sheet-edits.ts';
import { dayInHand, type BenchState } from '../state/bench-state.ts';
import { refused, stepped, type TypedText } from '../state/horn-on-bench.ts';
import { withHorn } from '../state/horns-on-bench.ts';
import type { Store } from '../state/bench-store.ts';
import { withWishText } from '../state/player-sheet-state.ts';
import type { Reading } from './pads-acts.ts';

type WishReader = typeof import('../state/read-wish.ts');

/** Everything a person can do on the player’s sheet. */
export interface PlayerSheetActs {
  /** Writes a sentence otherwise; null gives it back to the program. */
  rewrite(sentence: Pick<SheetSentence, 'id' | 'written'>, words: string | null): void;
  /** Says which key the wish is about; null for none. */
  wishKey(pad: string | null): void;
  /** Says that the wish is about all keys. */
  wishForAll(): void;
  /** Says how far open its key is wished for, or how much higher or lower all keys, as typed; nothing takes it back. */
  typeWish(text: string): Promise<void>;
  /** Shows what is in use instead of a refused text. */
  restoreWish(): void;
  /** Fetches what reading a field needs, ahead of the first word typed. */
  expectTyping(): void;
}

export function makePlayerSheetActs(store: Store<BenchState>, reading: Reading): PlayerSheetActs {
  const withReader = (work: (reader: WishReader) => void): Promise<void> =>
    reading(() => import('../state/read-wish.ts'), work);
  const step = (change: (visit: VisitDocument) => VisitDocument): void =>
    store.update((state) =>
      withHorn(state, (horn) => {
        const { visit } = horn.contents;
        const document = change(visit.document);
        if (document === visit.document) return horn;
        return stepped(horn, { ...horn.contents, visit: { ...visit, document } }, null);
      }),
    );
  const keepText = (typed: TypedText | null): void =>
    store.update((state) => ({
      ...state,
      playerSheet: withWishText(state.playerSheet, state.hornId, typed),
    }));

  return {
    rewrite: (sentence, words) => step((visit) => withSheetWords(visit, sentence, words)),
    wishKey: (pad) => {
      keepText(null);
      step((visit) => withWish(visit, pad, null));
    },
    wishForAll: () => {
      keepText(null);
      step((visit) => withWishForAll(visit, 0));
    },
    typeWish: (text) =>
      withReader(({ readWish, readWishForAll }) => {
        const state = store.get();
        const { wishKey, wishShiftMm } = dayInHand(state);
        const wish = (value: number | null) => (visit: VisitDocument) =>
          wishKey === undefined ? withWishForAll(visit, value ?? 0) : withWish(visit, wishKey, value);
        if (wishKey === undefined && wishShiftMm === undefined) return;
        if (text.trim() === '') {
          keepText(null);
          step(wish(null));
          return;
        }
        const read = (wishKey === undefined ? readWishForAll : readWish)(text, state.unit);
        keepText(read.ok ? null : refused(text, read.message));
        if (read.ok) step(wish(read.value));
      }),
    restoreWish: () => keepText(null),
    expectTyping: () => void withReader(() => undefined),
  };
}
