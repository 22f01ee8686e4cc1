import { KEPT_KINDS, type Kept, type KeptKind } from '../state/library-records.ts';
import { shelfEntry, type ShelfEntry } from '../state/library-state.ts';
import type { KeptStore } from './library-store.ts';

type Drawers = Readonly<Record<KeptKind, ReadonlyMap<string, Kept>>>;

/** Keeps records as long as the page lives: for a browser that refuses its database. */
export function makeMemoryStore(): KeptStore {
  let drawers: Drawers = { horns: new Map(), setups: new Map(), visits: new Map() };
  let shelf: ReadonlyMap<string, ShelfEntry> = new Map();
  let last: Promise<unknown> = Promise.resolve();

  const listOf = (from: Drawers, kind: KeptKind, hornId?: string): readonly Kept[] =>
    [...from[kind].values()].filter((r) => hornId === undefined || r.hornId === hornId);

  const run = async <T>(work: Parameters<KeptStore['write']>[0]): Promise<T> => {
    const next = Object.fromEntries(KEPT_KINDS.map((kind) => [kind, new Map(drawers[kind])])) as Record<
      KeptKind,
      Map<string, Kept>
    >;
    const entries = new Map(shelf);
    const result = await work({
      get: (kind, id) => Promise.resolve(next[kind].get(id)),
      has: (kind, id) => Promise.resolve(next[kind].has(id)),
      ofHorn: (kind, hornId) => Promise.resolve(listOf(next, kind, hornId)),
      put: async (kind, record) => void next[kind].set(record.id, record),
      remove: async (kind, id) => void next[kind].delete(id),
      shelve: async (entry) => void entries.set(entry.id, entry),
      unshelve: async (hornId) => void entries.delete(hornId),
    });
    drawers = next;
    shelf = entries;
    return result as T;
  };

  return {
    isReadOnly: false,
    list: () =>
      Promise.resolve(
        [...drawers.horns.values()].map(
          (horn) =>
            shelf.get(horn.id) ??
            shelfEntry(horn, listOf(drawers, 'setups', horn.id), listOf(drawers, 'visits', horn.id), 0),
        ),
      ),
    ofHorn: (hornId) =>
      Promise.resolve({
        horns: listOf(drawers, 'horns', hornId),
        setups: listOf(drawers, 'setups', hornId),
        visits: listOf(drawers, 'visits', hornId),
      }),
    all: () =>
      Promise.resolve({
        horns: listOf(drawers, 'horns'),
        setups: listOf(drawers, 'setups'),
        visits: listOf(drawers, 'visits'),
      }),
    write: (work) => {
      // One after the other, as a database does it.
      const turn = last.then(() => run<Awaited<ReturnType<typeof work>>>(work));
      last = turn.catch(() => undefined);
      return turn;
    },
    close: () => undefined,
  };
}
