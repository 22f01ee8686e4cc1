import { contentsOf, contentsOrFirstVisit } from '../../documents/bench-contents.ts';
import { readLibrary } from '../../documents/library-file.ts';
import type { DocumentIssue } from '../../documents/schema-parts.ts';
import {
  fileOf,
  hornIdOf,
  hornIdsOf,
  keptList,
  type Kept,
  type KeptKind,
  type KeptRecords,
  type UnreadRecords,
} from '../state/library-records.ts';
import type { ChangedBy, Library, LibraryMeans, SaveOutcome, Standing } from './library-contract.ts';
import { makeMemoryStore } from './library-memory.ts';
import {
  damagedHorn,
  damagedVisit,
  NO_SUCH_HORN,
  READ_ONLY,
  whyNotOpened,
  whyNotWritten,
} from './library-sentences.ts';
import { openKeptStore, type KeptStore } from './library-store.ts';
import { addAll, reshelve, takeAway } from './library-writing.ts';

export type {
  ChangedBy,
  Library,
  LibraryMeans,
  OpenOutcome,
  RecordName,
  SaveOutcome,
  Standing,
} from './library-contract.ts';

const CHANNEL = 'ventwright library';

/** Opens the library, or one in memory where the browser refuses to keep anything. */
export async function openLibrary(means: LibraryMeans): Promise<Library> {
  try {
    const store = await openKeptStore(means.onGone);
    return makeLibrary(store, means, store.isReadOnly ? READ_ONLY : null);
  } catch (error) {
    return makeLibrary(makeMemoryStore(), means, whyNotOpened(error));
  }
}

/** A library over a store. */
export function makeLibrary(store: KeptStore, means: LibraryMeans, refusal: string | null): Library {
  /** revisions this tab has seen, by record id; what it removed itself is seen as gone */
  const seen = new Map<string, string>();
  const listeners = new Set<(hornId: string, by: ChangedBy) => void>();
  const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(CHANNEL);
  let isAsked = refusal !== null;

  const tell = (hornId: string, by: ChangedBy): void => {
    for (const listener of [...listeners]) listener(hornId, by);
  };
  channel?.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
    if (typeof data === 'string') tell(data, 'another tab');
  });
  /** What the library itself changed is news for the bench of this tab too. */
  const tellAll = (hornId: string): void => {
    channel?.postMessage(hornId);
    tell(hornId, 'this tab');
  };

  const note = (records: Iterable<Kept>): void => {
    for (const { id, revision } of records) seen.set(id, revision);
  };
  const keptOf = async (hornIds: readonly string[] | 'all'): Promise<KeptRecords> => {
    if (hornIds === 'all') return store.all();
    const each = await Promise.all(hornIds.map((id) => store.ofHorn(id)));
    return {
      horns: each.flatMap((k) => k.horns),
      setups: each.flatMap((k) => k.setups),
      visits: each.flatMap((k) => k.visits),
    };
  };
  const standing = async (): Promise<Standing> => {
    if (refusal !== null) return 'only while open';
    return (await navigator.storage?.persisted?.()) ? 'kept' : 'may be cleared';
  };
  const askToKeep = async (): Promise<Standing> => {
    isAsked = true;
    if (refusal === null) await navigator.storage?.persist?.();
    return standing();
  };

  const withRevision = (records: UnreadRecords): readonly (readonly [KeptKind, Kept])[] =>
    keptList(records).map(([kind, record]) => [kind, { ...record, revision: means.makeId() }]);

  /** What was written is seen by this tab, and told to the others. */
  const written = (records: readonly (readonly [KeptKind, Kept])[], hornIds: readonly string[]): void => {
    note(records.map(([, record]) => record));
    for (const hornId of hornIds) channel?.postMessage(hornId);
    // A first save is a person's act: only on such do browsers listen.
    if (!isAsked) void askToKeep().catch(() => undefined);
  };

  /** Writes records of a horn if each is as this tab has seen it, and they are not left without the horn. */
  const overwrite = async (records: UnreadRecords, hornId: string): Promise<boolean> => {
    const writes = withRevision(records);
    const isWritten = await store.write(async (writer) => {
      const there = await Promise.all(writes.map(([kind, { id }]) => writer.get(kind, id)));
      if (writes.some(([, { id }], i) => there[i]?.revision !== seen.get(id))) return false;
      const [horn] = await writer.ofHorn('horns', hornId);
      if (horn === undefined && records.horns.length === 0) return false;
      await Promise.all(writes.map(([kind, record]) => writer.put(kind, record)));
      await reshelve(writer, hornId, means.now());
      return true;
    });
    if (isWritten) written(writes, [hornId]);
    return isWritten;
  };

  /** Writes records under ids that are not in use, all or none. */
  const insert = async (records: UnreadRecords): Promise<boolean> => {
    const writes = withRevision(records);
    const hornIds = hornIdsOf(records);
    const isWritten = await store.write((writer) => addAll(writer, writes, hornIds, means.now()));
    if (isWritten) written(writes, hornIds);
    return isWritten;
  };

  return {
    refusal,
    standing,
    askToKeep,
    list: () => store.list(),
    async open(hornId, visitId, isWanted = () => true) {
      const kept = await store.ofHorn(hornId);
      const { records, issues } = readLibrary(fileOf(kept), means.makeId);
      const held = contentsOf(records, hornId, visitId);
      const isNewVisit = held === null && visitId === undefined;
      const contents = isNewVisit ? contentsOrFirstVisit(records, hornId, means.plan(), means.makeId) : held;
      if (!isWanted()) return { ok: false, message: 'The horn on the bench was changed meanwhile.', issues };
      if (contents === null) return { ok: false, message: whyNotRead(kept, issues, visitId), issues };
      note([...kept.horns, ...kept.setups, ...kept.visits]);
      return { ok: true, contents, isNewVisit, issues };
    },
    save: (changed) =>
      attempt(async () => {
        const hornId = hornIdOf(changed);
        return (await overwrite(changed, hornId)) ? { kind: 'saved' } : { kind: 'conflict', hornId };
      }),
    add: (records) =>
      attempt(async () => {
        if (!(await insert(records))) return { kind: 'conflict', hornId: hornIdsOf(records)[0] };
        for (const hornId of hornIdsOf(records)) tell(hornId, 'this tab');
        return { kind: 'saved' };
      }),
    amend: ({ kind, id, hornId }, change) =>
      attempt(async () => {
        const isThere = await store.write(async (writer) => {
          const record = await writer.get(kind, id);
          if (record === undefined) return false;
          await writer.put(kind, { ...record, document: change(record.document), revision: means.makeId() });
          await reshelve(writer, hornId, means.now());
          return true;
        });
        if (!isThere) return { kind: 'conflict', hornId };
        tellAll(hornId);
        return { kind: 'saved' };
      }),
    remove: ({ hornId, ids }) =>
      attempt(async () => {
        const gone = await store.write(async (writer) => {
          const removed = await takeAway(writer, hornId, ids);
          await reshelve(writer, hornId, means.now());
          return removed;
        });
        for (const id of gone) seen.delete(id);
        tellAll(hornId);
        return { kind: 'saved' };
      }),
    async read(hornIds) {
      return readLibrary(fileOf(await keptOf(hornIds)), means.makeId);
    },
    async raw(hornIds) {
      return fileOf(await keptOf(hornIds));
    },
    async yieldTo(hornId) {
      const kept = await store.ofHorn(hornId);
      note([...kept.horns, ...kept.setups, ...kept.visits]);
    },
    watch(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

function whyNotRead(
  { horns }: KeptRecords,
  issues: readonly DocumentIssue[],
  visitId: string | undefined,
): string {
  if (horns.length === 0) return NO_SUCH_HORN;
  const why = issues.length === 0 ? '' : `: ${issues[0].message}`;
  return visitId === undefined ? damagedHorn(why) : damagedVisit(why);
}

/** A failure of the browser as a sentence; what it did not take stays where it was. */
async function attempt(work: () => Promise<SaveOutcome>): Promise<SaveOutcome> {
  try {
    return await work();
  } catch (error) {
    return { kind: 'refused', message: whyNotWritten(error) };
  }
}
