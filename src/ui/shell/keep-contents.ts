import type { BenchContents } from '../../documents/bench-contents.ts';
import { leaveBench, putOnBench, withHornOf } from '../state/horns-on-bench.ts';
import type { BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { stepped } from '../state/horn-on-bench.ts';
import { keptCopy, knownVisits } from '../state/keeping.ts';
import { recordList, saysTheSame } from '../state/unsaved.ts';
import type { ChangedBy, Library, OpenOutcome } from './library.ts';
import { rememberBench, type RememberedBench } from './remembered.ts';
import { saveInTurn } from './save-in-turn.ts';

/** Keeps what is on the bench in the library as it changes. */
export interface ContentsKeeper {
  /** Puts a horn of the library on the bench, its latest visit unless one is named; null, or why it cannot. */
  open(hornId: string, visitId?: string): Promise<string | null>;
  /** Puts what was last on the bench there again, else what was last changed; not over anything done meanwhile. */
  comeBack(last: RememberedBench | null): Promise<void>;
  /** Notes a horn that comes with the workbench: it is kept once something is done to it. */
  untouched(contents: BenchContents): void;
  /** After a conflict: what the other tab wrote comes to the bench, or what is here is kept beside it. */
  settle(how: 'theirs' | 'copy'): Promise<void>;
  /** Waits for what is on its way; whether all that was done on the bench is in the library then. */
  allSaved(): Promise<boolean>;
}

/** What the keeper needs. */
export interface KeeperMeans {
  /** opened when it is first needed */
  readonly library: () => Promise<Library>;
  readonly makeId: () => string;
}

/** Saves every change of every horn on the bench, and takes over what other tabs change where nothing here is unsaved. */
export function keepContents(store: Store<BenchState>, { library, makeId }: KeeperMeans): ContentsKeeper {
  /** changes heard of while something here was unsaved */
  const heard = new Map<string, ChangedBy>();
  let opened: Promise<Library> | null = null;

  const opening = (): Promise<Library> => {
    opened ??= library().then((kept) => {
      kept.watch((hornId, by) => void takeOver(hornId, by));
      return kept;
    });
    // What could not be fetched is asked for again the next time.
    opened.catch(() => (opened = null));
    return opened;
  };

  const saving = saveInTurn(store, {
    library: opening,
    async onSaved(contents, hasVisit) {
      const hornId = contents.horn.id;
      rememberBench({ hornId, visitId: contents.visit.id });
      if (hasVisit) await listVisits(hornId);
      const by = heard.get(hornId);
      if (by !== undefined && saving.isAllSaved(hornId)) await takeOver(hornId, by);
    },
  });

  const alert = (sentence: string): void => store.update((state) => ({ ...state, alert: sentence }));

  const listVisits = async (hornId: string): Promise<void> => {
    const { records } = await (await opening()).read([hornId]);
    store.update((state) => ({ ...state, visits: knownVisits(hornId, records.visits) }));
  };

  /** What the library gave is known to lie there; what it could not read is told. */
  const arrived = ({ contents, isNewVisit, issues }: OpenOutcome & { readonly ok: true }): void => {
    saving.isKnown(isNewVisit ? [contents.horn] : recordList(contents));
    if (isNewVisit) saving.leaveUntilTouched(contents);
    if (issues.length > 0) alert(issues.map(({ message }) => message).join(' '));
  };

  /** @param isWanted asked before anything is put on the bench */
  const open = async (
    hornId: string,
    visitId?: string,
    isWanted: () => boolean = () => true,
  ): Promise<string | null> => {
    const kept = await opening();
    await saving.settled();
    if (saving.isWaiting(hornId))
      return 'What was changed on this horn is not saved yet: that has to be settled first.';
    const outcome = await kept.open(hornId, visitId, isWanted);
    if (!isWanted()) return null;
    if (!outcome.ok) return outcome.message;
    arrived(outcome);
    store.update((state) => putOnBench(state, outcome.contents));
    rememberBench({ hornId, visitId: outcome.contents.visit.id });
    await listVisits(hornId);
    return null;
  };

  /** A horn was changed elsewhere: where nothing here is unsaved, the bench shows it, as one step. */
  const takeOver = async (hornId: string, by: ChangedBy): Promise<void> => {
    const here = store.get().horns[hornId]?.contents;
    if (here === undefined) return;
    heard.set(hornId, by);
    const isFree = (): boolean => store.get().horns[hornId]?.contents === here && saving.isAllSaved(hornId);
    if (!isFree()) return;
    const kept = await opening();
    const outcome = await kept.open(hornId, saving.isUntouched(here) ? undefined : here.visit.id, isFree);
    if (!isFree()) return;
    heard.delete(hornId);
    if (!outcome.ok) return isGone(here, by);
    if (saysTheSame(here, outcome.contents)) return saving.isKnown(recordList(here));
    arrived(outcome);
    store.update((state) => withHornOf(state, hornId, (horn) => stepped(horn, outcome.contents, null)));
    await listVisits(hornId);
    if (by === 'another tab') {
      alert(`Another tab changed ${here.horn.document.name}; what it wrote is shown here too.`);
    }
  };

  const isGone = (here: BenchContents, by: ChangedBy): void => {
    if (by === 'this tab') {
      // What a hand took out of the library stays on the bench; whole it goes back, should something be done to it.
      saving.isGone(here);
      return;
    }
    alert(
      `Another tab removed ${here.horn.document.name}, or this visit of it. It stays on this bench, and can be kept as a copy once something is changed.`,
    );
  };

  const copyBeside = async (hornId: string): Promise<void> => {
    const { records } = await (await opening()).read([hornId]);
    const theirs = records.horns.find((horn) => horn.id === hornId) ?? null;
    if (theirs !== null) saving.isKnown([theirs]);
    for (const mine of saving.takeBack(hornId)) {
      const copy = keptCopy(mine, theirs, makeId);
      store.update((state) => {
        const next = putOnBench(state, copy);
        return copy.horn.id === hornId ? next : leaveBench(next, hornId);
      });
    }
  };

  return {
    open: (hornId, visitId) => open(hornId, visitId),
    untouched: (contents) => saving.leaveUntilTouched(contents),
    async comeBack(last) {
      const { horns } = store.get();
      const isWanted = (): boolean => store.get().horns === horns;
      if (last !== null) {
        if ((await open(last.hornId, last.visitId, isWanted)) === null) return;
        if ((await open(last.hornId, undefined, isWanted)) === null) return;
      }
      const [first, ...others] = await (await opening()).list();
      if (first === undefined) return;
      const latest = others.reduce((a, b) => (b.changedMs > a.changedMs ? b : a), first);
      const problem = await open(latest.id, undefined, isWanted);
      if (problem !== null) alert(problem);
    },
    async allSaved() {
      await saving.settled();
      return Object.keys(store.get().horns).every((hornId) => saving.isAllSaved(hornId));
    },
    async settle(how) {
      const { keeping, horns } = store.get();
      if (keeping.kind !== 'conflict') return;
      const { hornId } = keeping;
      if (how === 'copy') return copyBeside(hornId);
      const visitId = horns[hornId]?.contents.visit.id;
      saving.takeBack(hornId);
      if ((await open(hornId, visitId)) === null) return;
      const problem = await open(hornId);
      if (problem !== null) alert(problem);
    },
  };
}
