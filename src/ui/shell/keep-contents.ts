import type { BenchContents } from '../../documents/bench-contents.ts';
import { leaveBench, putOnBench, withHornOf, type BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { changedRecords, stepped } from '../state/horn-on-bench.ts';
import { keptCopy, knownVisits, type Keeping } from '../state/keeping.ts';
import type { Library, OpenOutcome } from './library.ts';
import { rememberBench } from './remembered.ts';

/** Keeps what is on the bench in the library as it changes. */
export interface ContentsKeeper {
  /** Puts a horn of the library on the bench, its latest visit unless one is named; null, or why it cannot. */
  open(hornId: string, visitId?: string): Promise<string | null>;
  /** Notes a horn that comes with the workbench: it is kept once something is done to it. */
  untouched(contents: BenchContents): void;
  /** After a conflict: what the other tab wrote comes to the bench, or what is here is kept beside it. */
  settle(how: 'theirs' | 'copy'): Promise<void>;
}

/** What the keeper needs. */
export interface KeeperMeans {
  /** opened when it is first needed */
  readonly library: () => Promise<Library>;
  readonly makeId: () => string;
}

/** What the library has of a horn, as far as this tab knows. */
interface Known {
  readonly contents: BenchContents;
  /** false for a horn that came with the workbench and was never saved */
  readonly isStored: boolean;
}

/**
 * Saves every change of every horn on the bench, one save at a time, each with all that changed meanwhile. A
 * movement of the hand is saved when it has ended.
 */
export function keepContents(store: Store<BenchState>, { library, makeId }: KeeperMeans): ContentsKeeper {
  const known = new Map<string, Known>();
  /** what was refused: it is tried again with the next change, not in a circle */
  const tried = new Map<string, BenchContents>();
  let isSaving = false;
  let opened: Promise<Library> | null = null;

  const opening = (): Promise<Library> => {
    opened ??= library().then((kept) => {
      kept.watch((hornId) => void takeOver(hornId));
      return kept;
    });
    return opened;
  };
  const show = (keeping: Keeping): void => store.update((state) => ({ ...state, keeping }));

  /** The next horn with something to save; a horn with a movement under way waits. */
  const nextChanged = (): BenchContents | null => {
    for (const { contents, movement } of Object.values(store.get().horns)) {
      const { id } = contents.horn;
      if (movement === null && known.get(id)?.contents !== contents && tried.get(id) !== contents) {
        return contents;
      }
    }
    return null;
  };

  const save = async (): Promise<void> => {
    if (isSaving || store.get().keeping.kind === 'conflict') return;
    const contents = nextChanged();
    if (contents === null) return;
    isSaving = true;
    show({ kind: 'saving' });
    const hornId = contents.horn.id;
    const before = known.get(hornId);
    const changed = changedRecords(before?.isStored === true ? before.contents : null, contents);
    const kept = await opening();
    const outcome = await kept.save(changed);
    if (outcome.kind === 'saved') {
      known.set(hornId, { contents, isStored: true });
      rememberBench({ hornId, visitId: contents.visit.id });
      if (changed.visits.length > 0) await listVisits(kept, hornId);
      isSaving = false;
      if (nextChanged() === null) show({ kind: 'saved' });
      else void save();
    } else {
      tried.set(hornId, contents);
      isSaving = false;
      show(outcome);
    }
  };

  const listVisits = async (kept: Library, hornId: string): Promise<void> => {
    const { records } = await kept.read([hornId]);
    store.update((state) => ({ ...state, visits: knownVisits(hornId, records.visits) }));
  };

  /** What the library gave is known to be stored; what it could not read is told. */
  const arrived = (outcome: OpenOutcome & { readonly ok: true }): void => {
    const { contents, issues } = outcome;
    known.set(contents.horn.id, { contents, isStored: true });
    if (issues.length === 0) return;
    store.update((state) => ({ ...state, alert: issues.map((issue) => issue.message).join(' ') }));
  };

  const open = async (hornId: string, visitId?: string): Promise<string | null> => {
    const kept = await opening();
    const outcome = await kept.open(hornId, visitId);
    if (!outcome.ok) return outcome.message;
    arrived(outcome);
    store.update((state) => putOnBench({ ...state, keeping: { kind: 'saved' } }, outcome.contents));
    rememberBench({ hornId, visitId: outcome.contents.visit.id });
    await listVisits(kept, hornId);
    return null;
  };

  /** Another tab changed a horn: where nothing here waits to be saved, this tab shows it, as one step. */
  const takeOver = async (hornId: string): Promise<void> => {
    const here = store.get().horns[hornId];
    if (here === undefined || known.get(hornId)?.contents !== here.contents) return;
    const kept = await opening();
    const outcome = await kept.open(hornId, here.contents.visit.id);
    if (!outcome.ok || store.get().horns[hornId]?.contents !== here.contents) return;
    arrived(outcome);
    store.update((state) => ({
      ...withHornOf(state, hornId, (horn) => stepped(horn, outcome.contents, null)),
      alert: `Another tab changed ${outcome.contents.horn.document.name}; what it wrote is shown here too.`,
    }));
    await listVisits(kept, hornId);
  };

  store.subscribe(() => void save());

  return {
    open,
    untouched: (contents) => known.set(contents.horn.id, { contents, isStored: false }),
    async settle(how) {
      const { keeping, horns } = store.get();
      if (keeping.kind !== 'conflict') return;
      const { hornId } = keeping;
      const { contents } = horns[hornId];
      if (how === 'theirs') {
        const problem = await open(hornId, contents.visit.id);
        if (problem !== null) store.update((state) => ({ ...state, alert: problem }));
        return;
      }
      const { records } = await (await opening()).read([hornId]);
      const theirs = records.horns.find((h) => h.id === hornId) ?? null;
      const copy = keptCopy(contents, theirs, makeId);
      // The horn as the other tab left it is stored; what is copied is not.
      known.set(hornId, { contents: { ...contents, horn: copy.horn }, isStored: true });
      store.update((state) => {
        const next = putOnBench({ ...state, keeping: { kind: 'saving' } }, copy);
        return copy.horn.id === hornId ? next : leaveBench(next, hornId);
      });
    },
  };
}
