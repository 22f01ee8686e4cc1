import type { BenchContents } from '../../documents/bench-contents.ts';
import type { BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import type { Keeping } from '../state/keeping.ts';
import { isAlike, isSaved, recordList, unsavedRecords } from '../state/unsaved.ts';
import type { Library } from './library.ts';

/** What is saved of the bench, and what is known of it. */
export interface Saving {
  /** Notes records that lie in the library as they are here. */
  isKnown(records: readonly { readonly id: string; readonly document: object }[]): void;
  /** Notes contents that need no saving until something is done to them. */
  leaveUntilTouched(contents: BenchContents): void;
  /** Notes that the library holds nothing of a visit any more. */
  isGone(contents: BenchContents): void;
  isUntouched(contents: BenchContents): boolean;
  /** Whether the library holds all that was done to a horn. */
  isAllSaved(hornId: string): boolean;
  /** Whether something of a horn was refused, or stands against what another tab wrote. */
  isWaiting(hornId: string): boolean;
  /** What of a horn could not be saved, each visit as it is here; it waits no longer. */
  takeBack(hornId: string): readonly BenchContents[];
  /** When nothing is on its way to the library. */
  settled(): Promise<void>;
}

/** What saving needs. */
export interface SavingMeans {
  readonly library: () => Promise<Library>;
  /** called after each visit saved; told whether what is told of the visit itself was among it */
  readonly onSaved: (contents: BenchContents, hasVisit: boolean) => Promise<void>;
}

/**
 * Saves every change of every visit on the bench, one save at a time, each with all that changed meanwhile. A movement
 * of the hand is saved when it has ended. What is refused waits and is tried again with the next change; what stands
 * against another tab waits for a person. A visit that left the bench is saved all the same.
 */
export function saveInTurn(store: Store<BenchState>, { library, onSaved }: SavingMeans): Saving {
  const known = new Map<string, object>();
  /** by visit id, the latest of each */
  const waiting = new Map<string, BenchContents>();
  /** as they came, by horn id */
  const untouched = new Map<string, BenchContents>();
  const conflicts = new Set<string>();
  let refusal: string | null = null;
  let isHeld = false;
  let running: Promise<void> | null = null;

  /** Takes up what has changed. @param all what a hand is still moving too */
  const queue = (all = false): void => {
    for (const { contents, movement } of Object.values(store.get().horns)) {
      if (movement !== null && !all) continue;
      if (untouched.get(contents.horn.id) === contents) continue;
      if (isSaved(known, contents)) {
        // What was refused may have been undone: then nothing is left to refuse.
        if (waiting.delete(contents.visit.id) && isHeld && waiting.size === 0) refusal = null;
      } else if (waiting.get(contents.visit.id) !== contents) {
        untouched.delete(contents.horn.id);
        waiting.set(contents.visit.id, contents);
        isHeld = false;
      }
    }
    show();
    if (next() !== undefined) running ??= run();
  };

  const next = (): BenchContents | undefined =>
    isHeld ? undefined : [...waiting.values()].find(({ horn }) => !conflicts.has(horn.id));

  const run = async (): Promise<void> => {
    // Whoever changed the store goes on first.
    await null;
    for (let contents = next(); contents !== undefined; contents = next()) {
      show();
      await save(contents);
      queue();
    }
    running = null;
    show();
  };

  const save = async (contents: BenchContents): Promise<void> => {
    const records = unsavedRecords(known, contents);
    try {
      const kept = await library();
      const outcome = await kept.save(records);
      if (outcome.kind === 'conflict') conflicts.add(contents.horn.id);
      else if (outcome.kind === 'refused') hold(outcome.message);
      else {
        for (const { id, document } of recordList(contents)) known.set(id, document);
        if (waiting.get(contents.visit.id) === contents) waiting.delete(contents.visit.id);
        // A library that only lasts as long as the page is not where things are safe.
        refusal = kept.refusal;
        await onSaved(contents, records.visits.length > 0);
      }
    } catch (error) {
      hold(`Not saved: the library failed: ${error instanceof Error ? error.message : String(error)}`);
    }
  };

  /** Nothing more is tried until something changes. */
  const hold = (message: string): void => {
    refusal = message;
    isHeld = true;
  };

  const show = (): void => {
    const keeping = keepingNow();
    store.update((state) => (isAlike(state.keeping, keeping) ? state : { ...state, keeping }));
  };

  const keepingNow = (): Keeping => {
    const { hornId, horns } = store.get();
    const inConflict = conflicts.has(hornId) ? hornId : [...conflicts][0];
    if (inConflict !== undefined) return { kind: 'conflict', hornId: inConflict };
    if (refusal !== null) return { kind: 'refused', message: refusal };
    const { contents } = horns[hornId];
    if (waiting.size === 0 && untouched.get(hornId) === contents) return { kind: 'untouched' };
    // What a hand is still moving is not saved yet either.
    return { kind: waiting.size === 0 && isSaved(known, contents) ? 'saved' : 'saving' };
  };

  store.subscribe(() => queue());
  globalThis.addEventListener?.('beforeunload', (event) => {
    queue(true);
    if (waiting.size > 0 || refusal !== null) event.preventDefault();
  });

  return {
    isKnown(records) {
      for (const { id, document } of records) known.set(id, document);
      queue();
    },
    leaveUntilTouched: (contents) => void untouched.set(contents.horn.id, contents),
    isGone(contents) {
      for (const { id } of recordList(contents)) known.delete(id);
      untouched.set(contents.horn.id, contents);
    },
    isUntouched: (contents) => untouched.get(contents.horn.id) === contents,
    isAllSaved(hornId) {
      const here = store.get().horns[hornId]?.contents;
      const isHere = here === undefined || untouched.get(hornId) === here || isSaved(known, here);
      return isHere && ![...waiting.values()].some(({ horn }) => horn.id === hornId);
    },
    isWaiting: (hornId) => [...waiting.values()].some(({ horn }) => horn.id === hornId),
    takeBack(hornId) {
      const mine = [...waiting.values()].filter(({ horn }) => horn.id === hornId);
      for (const { visit } of mine) waiting.delete(visit.id);
      conflicts.delete(hornId);
      const here = store.get().horns[hornId]?.contents;
      if (here !== undefined) untouched.set(hornId, here);
      return mine;
    },
    async settled() {
      queue();
      while (running !== null) await running;
    },
  };
}
