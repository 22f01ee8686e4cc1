import type { MoveReport } from '../../documents/regulation-report.ts';
import type { BenchContents } from '../../documents/bench-contents.ts';
import { refused, stepped, type TypedText } from '../state/horn-on-bench.ts';
import { withHorn } from '../state/horns-on-bench.ts';
import type { BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { withDone, withLeakingSeat, withoutDone } from '../state/work-edits.ts';
import { withWorkText } from '../state/work-state.ts';
import type { Reading } from './pads-acts.ts';

type WorkReader = typeof import('../state/read-work.ts');

/** Everything a person can do about the work on a horn. */
export interface WorkActs {
  /** Fetches what reading a field needs, ahead of the first word typed. */
  expectTyping(): void;
  /** Done, and it came to what was asked. */
  checkOff(move: MoveReport): void;
  /** Done, and it came back as typed. */
  typeBack(move: MoveReport, text: string): Promise<void>;
  restore(move: string): void;
  /** Not done after all, by its place in the visit’s list. */
  takeBack(index: number): void;
  /** A seat leaks, or seals after all. */
  setLeaks(pad: string, leaks: boolean): void;
  /** How wide a seat leaks. */
  typeLeak(pad: string, text: string): Promise<void>;
}

/** The name a seat’s gap as found has among texts of the work. */
export function seatText(pad: string): string {
  return `leak ${pad}`;
}

export function makeWorkActs(store: Store<BenchState>, reading: Reading): WorkActs {
  const withReader = (work: (reader: WorkReader) => void): Promise<void> =>
    reading(() => import('../state/read-work.ts'), work);
  const step = (change: (contents: BenchContents) => BenchContents): void =>
    store.update((state) => withHorn(state, (horn) => stepped(horn, change(horn.contents), null)));
  const keepText = (name: string, typed: TypedText | null): void =>
    store.update((state) => ({ ...state, work: withWorkText(state.work, state.hornId, name, typed) }));

  return {
    expectTyping: () => void withReader(() => undefined),
    checkOff: ({ id, toMm }) => {
      step((contents) => withDone(contents, { move: id, valueMm: toMm, read: false }));
      keepText(id, null);
    },
    typeBack: ({ id, kind }, text) =>
      withReader(({ readBack }) => {
        if (text.trim() === '') {
          keepText(id, null);
          return;
        }
        const read = readBack(kind, text, store.get().unit);
        if (!read.ok) {
          keepText(id, refused(text, read.message));
          return;
        }
        step((contents) => withDone(contents, { move: id, valueMm: read.value, read: true }));
        keepText(id, null);
      }),
    restore: (move) => keepText(move, null),
    takeBack: (index) => step((contents) => withoutDone(contents, index)),
    setLeaks: (pad, leaks) => {
      step((contents) => withLeakingSeat(contents, pad, leaks ? {} : null));
      keepText(seatText(pad), null);
    },
    typeLeak: (pad, text) =>
      withReader(({ readBack }) => {
        const name = seatText(pad);
        if (text.trim() === '') {
          step((contents) => withLeakingSeat(contents, pad, {}));
          keepText(name, null);
          return;
        }
        const read = readBack('seat', text, store.get().unit);
        if (!read.ok) {
          keepText(name, refused(text, read.message));
          return;
        }
        step((contents) => withLeakingSeat(contents, pad, { gapMm: read.value }));
        keepText(name, null);
      }),
  };
}
