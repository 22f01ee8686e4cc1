import { accepted, refused } from '../state/horn-on-bench.ts';
import { documentsInHand, type BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { chooseKey } from '../state/horns-on-bench.ts';
import type { LeakShape } from '../state/leak-fault.ts';
import { notesAndPadsOn } from '../state/leak-places.ts';
import { askedAbout, atLink, atPad, withGap, type LeaksState } from '../state/leaks-state.ts';
import type { Reading } from './pads-acts.ts';

/** Everything a person can do with leaks. */
export interface LeaksActs {
  /** A fault of a pad's own seat. */
  atPad(pad: string): void;
  /** A fault of a link, or of every link onto the pad. */
  atLink(driver: string | null, driven: string): void;
  setShape(shape: LeakShape): void;
  setArc(arcDeg: number): void;
  setShuts(shuts: 'late' | 'early'): void;
  setGap(gapMm: number): void;
  typeGap(text: string): Promise<void>;
  restoreGap(): void;
  /** The note the player asks about. */
  setNote(fingeringId: string): void;
  /** The same by the key it speaks under: the lowest note there. */
  askKey(pad: string): void;
  /** Takes up a key the note hears for the key study; the note asked about stays. */
  studyKey(pad: string): void;
  setLostDb(lostDb: number): void;
  setMapGap(gapMm: number): void;
  expectTyping(): void;
}

export function makeLeaksActs(store: Store<BenchState>, reading: Reading): LeaksActs {
  const change = (next: (leaks: LeaksState) => LeaksState): void =>
    store.update((state) => ({ ...state, leaks: next(state.leaks) }));
  const withReader = (work: (reader: typeof import('../state/read-links.ts')) => void): Promise<void> =>
    reading(() => import('../state/read-links.ts'), work);
  const fault = (part: Partial<LeaksState['fault']>): void =>
    change((leaks) => ({ ...leaks, fault: { ...leaks.fault, ...part } }));

  return {
    atPad: (pad) => change((leaks) => atPad(leaks, pad)),
    atLink: (driver, driven) => change((leaks) => atLink(leaks, driver, driven)),
    setShape: (shape) => fault({ shape }),
    setArc: (arcDeg) => fault({ arcDeg }),
    setShuts: (shuts) =>
      change((leaks) => {
        const { source } = leaks.fault;
        if (source.kind === 'seat') return leaks;
        return { ...leaks, fault: { ...leaks.fault, source: { ...source, shuts } } };
      }),
    setGap: (gapMm) => change((leaks) => withGap(leaks, gapMm, null)),
    typeGap: (text) =>
      withReader(({ readLeakGap }) =>
        change((leaks) => {
          const read = readLeakGap(text);
          return read.ok
            ? withGap(leaks, read.value, accepted(text, read.value))
            : { ...leaks, gapText: refused(text, read.message) };
        }),
      ),
    restoreGap: () => change((leaks) => ({ ...leaks, gapText: null })),
    setNote: (fingeringId) => change((leaks) => askedAbout(leaks, fingeringId)),
    askKey: (pad) => {
      const note = notesAndPadsOn(documentsInHand(store.get()).horn).noteUnder.get(pad);
      if (note !== undefined) change((leaks) => askedAbout(leaks, note));
    },
    studyKey: (pad) =>
      store.update((state) => {
        const { hornId, noteId, leaks } = state;
        const followed = { hornId, noteId, keyId: pad };
        return chooseKey({ ...state, leaks: { ...leaks, followed } }, pad);
      }),
    setLostDb: (lostDb) => change((leaks) => ({ ...leaks, limit: { ...leaks.limit, lostDb } })),
    setMapGap: (mapGapMm) => change((leaks) => ({ ...leaks, mapGapMm })),
    expectTyping: () => void withReader(() => undefined),
  };
}
