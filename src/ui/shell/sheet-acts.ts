import { hornInHand, type BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { withdrawProposals } from '../state/edits-in-hand.ts';
import { refused, stepped, type TypedText } from '../state/horn-on-bench.ts';
import { withHorn } from '../state/horns-on-bench.ts';
import { sheetShiftTyped, sheetTold } from '../state/sheet-state.ts';
import type { Reading } from './pads-acts.ts';

type ShiftReader = typeof import('../state/read-sheet-shift.ts');

/** What a person can do on the bench sheet to all keys at once. */
export interface SheetActs {
  /** Proposes all keys higher or lower, as typed. */
  shiftAll(text: string): Promise<void>;
  /** Shows nothing instead of a refused text. */
  restoreShift(): void;
  /** Withdraws every opening proposed, and says so. */
  withdrawAll(): Promise<void>;
}

export function makeSheetActs(store: Store<BenchState>, reading: Reading): SheetActs {
  const withReader = (work: (reader: ShiftReader) => void): Promise<void> =>
    reading(() => import('../state/read-sheet-shift.ts'), work);
  const keepText = (typed: TypedText | null): void =>
    store.update((state) => ({ ...state, sheet: sheetShiftTyped(state.sheet, typed) }));

  return {
    shiftAll: (text) =>
      withReader(({ readShift, shiftProposals, SHIFT_NAME }) => {
        const { unit } = store.get();
        const read = readShift(text, SHIFT_NAME, unit);
        keepText(read.ok ? null : refused(text, read.message));
        if (!read.ok) return;
        store.update((state) => {
          const { contents, told } = shiftProposals(hornInHand(state).contents, read.value, unit);
          const next = withHorn(state, (horn) => stepped(horn, contents, null));
          return { ...next, sheet: sheetTold(next.sheet, told, hornInHand(next).contents) };
        });
      }),
    restoreShift: () => keepText(null),
    withdrawAll: () =>
      withReader(({ withdrawalSentence }) =>
        store.update((state) => {
          const told = withdrawalSentence(hornInHand(state).contents);
          const next = withdrawProposals(state);
          return { ...next, sheet: sheetTold(next.sheet, told, hornInHand(next).contents) };
        }),
      ),
  };
}
