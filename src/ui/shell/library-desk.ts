import type { LibraryReading } from '../../documents/library-file.ts';
import { makeStore, type Store } from '../state/bench-store.ts';
import {
  copyOfHorn,
  copyOfSetup,
  copyOfVisit,
  removalOfSetup,
  removalOfVisit,
  type Removal,
} from '../state/library-copies.ts';
import {
  EMPTY_DESK,
  mayBeCleared,
  problemWithName,
  withDone,
  withProblem,
  withRemoved,
  withSavedFile,
  type LibraryDeskState,
  type SavedFile,
} from '../state/library-desk-state.ts';
import type { UnreadRecords } from '../state/library-records.ts';
import { lastChangedFirst, nameIn } from '../state/library-state.ts';
import type { Bench } from './bench.ts';
import { makeId, today } from './demo-horns.ts';
import type { Library, SaveOutcome } from './library.ts';
import { rememberedFiling, rememberFiling } from './remembered.ts';
import { guidanceOf } from './guidance.ts';
import { exportsOf } from './library-export.ts';
import { bringIn } from './library-import-files.ts';
import { makeLookThrough } from './library-look-through.ts';

/** Everything a person can do in the library, as calls. */
export interface LibraryDesk {
  readonly store: Store<LibraryDeskState>;
  /** Lists the library anew. */
  look(): Promise<void>;
  search(text: string): void;
  /** Shows a horn's setups and visits, or hides them. */
  show(hornId: string | null): Promise<void>;
  /** Puts a horn on the bench and shows its sheet. */
  open(hornId: string, visitId?: string): Promise<void>;
  startRenaming(kind: 'horns' | 'setups', id: string, text: string): void;
  typeName(text: string): void;
  finishRenaming(): Promise<void>;
  dropRenaming(): void;
  duplicateHorn(hornId: string): Promise<void>;
  duplicateSetup(setupId: string): Promise<void>;
  duplicateVisit(visitId: string): Promise<void>;
  removeHorn(hornId: string): Promise<void>;
  removeSetup(setupId: string): Promise<void>;
  removeVisit(visitId: string): Promise<void>;
  /** Puts back what was last removed. */
  undoRemoval(): Promise<void>;
  bringIn(files: readonly File[]): Promise<void>;
  closeReports(): void;
  saveAllAsFile(): Promise<void>;
  saveHornAsFile(hornId: string): Promise<void>;
  saveBenchAsFile(): void;
  saveSheetAsFile(decimalComma: boolean): void;
}

const desks = new WeakMap<Bench, LibraryDesk>();

/** The library's desk of a bench: what was typed, shown and removed stays while other views are looked at. */
export function deskOf(bench: Bench): LibraryDesk {
  const known = desks.get(bench);
  if (known !== undefined) return known;
  const made = makeDesk(bench);
  desks.set(bench, made);
  return made;
}

function makeDesk(bench: Bench): LibraryDesk {
  const store = makeStore(EMPTY_DESK);
  const set = (part: Partial<LibraryDeskState>): void => store.update((state) => ({ ...state, ...part }));
  const tell = (sentence: string): void => store.update((state) => withProblem(state, sentence));
  const fail = (error: unknown): void =>
    tell(`The library could not be read: ${error instanceof Error ? error.message : String(error)}`);

  /** Work that may meet a storage that fails: whatever it says is told, and the desk stays usable. */
  const attempt = async (busy: string | null, work: (library: Library) => Promise<void>): Promise<void> => {
    set({ busy });
    try {
      await work(await bench.library());
    } catch (error) {
      fail(error);
    } finally {
      set({ busy: null });
    }
  };

  const lookThrough = makeLookThrough(store);

  const look = async (library: Library): Promise<void> => {
    const entries = lastChangedFirst(await library.list());
    const { shownId } = store.get();
    const shown = shownId === null ? null : await library.read([shownId]);
    set({ entries, ...(store.get().shownId === shownId ? { shown } : {}) });
    await cautionOf(library);
    void lookThrough(library).catch(fail);
  };

  const cautionOf = async (library: Library): Promise<void> => {
    const standing = library.refusal === null ? await library.standing() : 'only while open';
    set({ caution: library.refusal ?? (standing === 'kept' ? null : mayBeCleared(rememberedFiling())) });
  };

  /** Tells what became of a writing; lists anew where it was written. */
  const told = async (library: Library, outcome: SaveOutcome, done: string): Promise<boolean> => {
    if (outcome.kind === 'saved') {
      store.update((state) => withDone(state, done));
      await look(library);
      return true;
    }
    tell(
      outcome.kind === 'refused'
        ? outcome.message
        : 'Nothing was changed: this horn was changed meanwhile. Look at it again, then try once more.',
    );
    return false;
  };

  const files = exportsOf(bench);
  const written = (file: SavedFile): void => store.update((state) => withSavedFile(state, file));

  /** What can be read of the horn that is shown. */
  const inHand = (): LibraryReading => store.get().shown ?? NOTHING_READ;
  const nameOf = (hornId: string): string =>
    store.get().entries?.find(({ id }) => id === hornId)?.name ?? 'The horn';

  const remove = async (
    library: Library,
    hornId: string,
    ids: readonly string[] | 'all',
    words: string,
  ): Promise<void> => {
    const before = await library.raw([hornId]);
    const outcome = await library.remove({ hornId, ids });
    if (outcome.kind !== 'saved') return void (await told(library, outcome, ''));
    store.update((state) => withRemoved(state, { words, records: only(before, ids) }));
    if (ids === 'all' && store.get().shownId === hornId) set({ shownId: null, shown: null });
    await look(library);
  };

  const removePart = (removal: Removal, hornId: string, words: string): Promise<void> =>
    removal.ok
      ? attempt(null, (library) => remove(library, hornId, removal.ids, words))
      : asTold(removal.message);
  const asTold = (message: string): Promise<void> => Promise.resolve(tell(message));

  // What another tab writes shows here too.
  void bench.library().then(
    (library) =>
      library.watch((_hornId, by) => {
        if (by === 'another tab' && store.get().entries !== null) void look(library).catch(fail);
      }),
    fail,
  );

  return {
    store,
    look: () => attempt(store.get().entries === null ? 'Opening the library' : null, look),
    search: (search) => set({ search }),
    async show(hornId) {
      set({ shownId: hornId, shown: null, renaming: null });
      if (hornId === null) return;
      await attempt(null, async (library) => {
        const shown = await library.read([hornId]);
        if (store.get().shownId === hornId) set({ shown });
      });
    },
    async open(hornId, visitId) {
      const problem = await bench.openHorn(hornId, visitId);
      if (problem === null) location.hash = '#sheet';
      else tell(problem);
    },
    startRenaming: (kind, id, text) => set({ renaming: { kind, id, text, problem: null } }),
    typeName: (text) => {
      const { renaming } = store.get();
      if (renaming !== null) set({ renaming: { ...renaming, text, problem: null } });
    },
    dropRenaming: () => set({ renaming: null }),
    async finishRenaming() {
      const { renaming, shownId } = store.get();
      if (renaming === null || shownId === null) return;
      const { kind, id } = renaming;
      const problem = problemWithName(kind === 'horns' ? 'horn name' : 'setup name', renaming.text);
      if (problem !== null) return set({ renaming: { ...renaming, problem } });
      const name = renaming.text.trim();
      await attempt(null, async (library) => {
        const outcome = await library.amend({ kind, id, hornId: shownId }, (document) => ({
          ...(document as object),
          name,
        }));
        if (await told(library, outcome, `It is called “${name}” now.`)) set({ renaming: null });
      });
    },
    duplicateHorn: (hornId) =>
      attempt('Duplicating the horn', async (library) => {
        const taken = (store.get().entries ?? []).map(({ name }) => name);
        const copy = copyOfHorn(await library.raw([hornId]), taken, makeId);
        await told(library, await library.add(copy), `“${nameIn(copy.horns[0].document)}” was added.`);
      }),
    async duplicateSetup(setupId) {
      const { setups } = inHand().records;
      const setup = setups.find(({ id }) => id === setupId);
      if (setup === undefined) return;
      const copy = copyOfSetup(setup, setups, makeId);
      await attempt(null, async (library) => {
        const outcome = await library.add({ horns: [], setups: [copy], visits: [] });
        await told(library, outcome, `“${copy.document.name}” was added.`);
      });
    },
    async duplicateVisit(visitId) {
      const { records } = inHand();
      const visit = records.visits.find(({ id }) => id === visitId);
      const copy = visit === undefined ? null : copyOfVisit(records, visit, makeId);
      if (visit === undefined || copy === null) return;
      await attempt(null, async (library) => {
        await told(
          library,
          await library.add(copy),
          `The visit of ${visit.document.date} was added once more.`,
        );
      });
    },
    removeHorn: (hornId) => attempt(null, (library) => remove(library, hornId, 'all', `“${nameOf(hornId)}”`)),
    async removeSetup(setupId) {
      const { records } = inHand();
      const setup = records.setups.find(({ id }) => id === setupId);
      if (setup === undefined) return;
      await removePart(removalOfSetup(records, setup), setup.hornId, `The setup “${setup.document.name}”`);
    },
    async removeVisit(visitId) {
      const { records } = inHand();
      const visit = records.visits.find(({ id }) => id === visitId);
      if (visit === undefined) return;
      await removePart(removalOfVisit(records, visit), visit.hornId, `The visit of ${visit.document.date}`);
    },
    async undoRemoval() {
      const { removed } = store.get();
      const last = removed[removed.length - 1];
      if (last === undefined) return;
      await attempt(null, async (library) => {
        const outcome = await library.add(last.records);
        if (await told(library, outcome, `${last.words} is back.`)) set({ removed: removed.slice(0, -1) });
      });
    },
    bringIn: (files) =>
      attempt(
        files.length === 1 ? `Reading ${files[0].name}` : `Reading ${files.length} files`,
        async (library) => {
          const reports = await bringIn(files, library, bench);
          set({ reports: [...reports, ...store.get().reports], done: null, problem: null });
          await look(library);
        },
      ),
    closeReports: () => set({ reports: [] }),
    saveAllAsFile: () =>
      attempt('Writing the file', async (library) => {
        written(await files.all());
        rememberFiling(today());
        await cautionOf(library);
      }),
    saveHornAsFile: (hornId) => attempt(null, async () => written(await files.horn(hornId))),
    saveBenchAsFile: () => {
      guidanceOf(bench).filed();
      written(files.bench());
    },
    saveSheetAsFile: (decimalComma) => written(files.sheet(decimalComma)),
  };
}

const NOTHING_READ: LibraryReading = { records: { horns: [], setups: [], visits: [] }, issues: [] };

function only(records: UnreadRecords, ids: readonly string[] | 'all'): UnreadRecords {
  if (ids === 'all') return records;
  const isIn = ({ id }: { readonly id: string }): boolean => ids.includes(id);
  return {
    horns: records.horns.filter(isIn),
    setups: records.setups.filter(isIn),
    visits: records.visits.filter(isIn),
  };
}
