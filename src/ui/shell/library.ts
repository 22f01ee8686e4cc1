import {
  contentsOf,
  contentsOrFirstVisit,
  type BenchContents,
  type VisitPlan,
} from '../../documents/bench-contents.ts';
import { readLibrary, type LibraryReading, type LibraryRecords } from '../../documents/library-file.ts';
import type { DocumentIssue } from '../../documents/schema-parts.ts';
import { makeMemoryStore } from './library-memory.ts';
import {
  openKeptStore,
  type Kept,
  type KeptKind,
  type KeptStore,
  type KeptWriter,
  type ShelfEntry,
} from './library-store.ts';
import { shelfEntry } from './library-shelf.ts';

/** What became of a save. */
export type SaveOutcome =
  | { readonly kind: 'saved' }
  | {
      /** another tab wrote meanwhile; nothing of this save was written */
      readonly kind: 'conflict';
      readonly hornId: string;
    }
  | { readonly kind: 'refused'; readonly message: string };

/** A horn taken from the library, with everything about it that could not be read. */
export type OpenOutcome =
  | { readonly ok: true; readonly contents: BenchContents; readonly issues: readonly DocumentIssue[] }
  | { readonly ok: false; readonly message: string; readonly issues: readonly DocumentIssue[] };

/** Whether what is saved stays: for good, until the browser needs room, or only while the page is open. */
export type Standing = 'kept' | 'may be cleared' | 'only while open';

/** The horns of this browser. Nothing is written silently over what another tab wrote. */
export interface Library {
  /** why the library is kept in memory only, or null */
  readonly refusal: string | null;
  standing(): Promise<Standing>;
  /** Asks the browser to keep the library when space runs short; best on a person's act. */
  askToKeep(): Promise<Standing>;
  list(): Promise<readonly ShelfEntry[]>;
  open(hornId: string, visitId?: string): Promise<OpenOutcome>;
  /** Writes records of one horn, all or none. */
  save(changed: LibraryRecords): Promise<SaveOutcome>;
  /** Takes away some records of one horn, or all of them. Saving them again brings them back. */
  remove(records: { readonly hornId: string; readonly ids: readonly string[] | 'all' }): Promise<SaveOutcome>;
  /** Every record of some horns, read with care. */
  read(hornIds: readonly string[] | 'all'): Promise<LibraryReading>;
  /** The same as it is kept, unread, so that what is damaged can be carried away too. */
  raw(hornIds: readonly string[] | 'all'): Promise<unknown>;
  /** Forgets what this tab knew of a horn: its next save writes over what another tab wrote, on a person's word. */
  yieldTo(hornId: string): Promise<void>;
  /** Calls back when another tab changed a horn; returns how to stop. */
  watch(listener: (hornId: string) => void): () => void;
}

/** What the library needs of the day and of chance. */
export interface LibraryMeans {
  readonly now: () => number;
  readonly makeId: () => string;
  readonly plan: () => VisitPlan;
  /** told when the browser takes the library away */
  readonly onGone: (sentence: string) => void;
}

const CHANNEL = 'ventwright library';

/** Opens the library, or one in memory where the browser refuses to keep anything. */
export async function openLibrary(means: LibraryMeans): Promise<Library> {
  try {
    return makeLibrary(await openKeptStore(means.onGone), means, null);
  } catch (error) {
    return makeLibrary(makeMemoryStore(), means, reasonOf(error));
  }
}

/** A library over a store. */
export function makeLibrary(store: KeptStore, means: LibraryMeans, refusal: string | null): Library {
  /** revisions this tab has seen, by record id */
  const seen = new Map<string, number>();
  const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(CHANNEL);

  const note = (records: Iterable<Kept>): void => {
    for (const { id, revision } of records) seen.set(id, revision);
  };
  const keptOf = async (hornIds: readonly string[] | 'all'): Promise<Record<KeptKind, readonly Kept[]>> => {
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

  return {
    refusal,
    standing,
    async askToKeep() {
      if (refusal === null) await navigator.storage?.persist?.();
      return standing();
    },
    list: () => store.list(),
    async open(hornId, visitId) {
      const kept = await store.ofHorn(hornId);
      note([...kept.horns, ...kept.setups, ...kept.visits]);
      const { records, issues } = readLibrary(fileOf(kept), means.makeId);
      const contents =
        visitId === undefined
          ? contentsOrFirstVisit(records, hornId, means.plan(), means.makeId)
          : contentsOf(records, hornId, visitId);
      if (contents !== null) return { ok: true, contents, issues };
      const message =
        kept.horns.length === 0
          ? 'The library has no such horn; it may have been removed in another tab.'
          : visitId === undefined
            ? 'This horn’s record cannot be read. It is kept as it is, and can be exported.'
            : 'This visit cannot be read. It is kept as it is, and can be exported with its horn.';
      return { ok: false, message, issues };
    },
    save: (changed) =>
      attempt(async () => {
        const hornId = hornIdOf(changed);
        const writes = keptList(changed);
        const outcome = await store.write(async (writer) => {
          for (const [kind, { id }] of writes) {
            const there = await writer.get(kind, id);
            if (there?.revision !== seen.get(id)) return null;
          }
          const put: Kept[] = [];
          for (const [kind, record] of writes) {
            const next = { ...record, revision: (seen.get(record.id) ?? 0) + 1 };
            await writer.put(kind, next);
            put.push(next);
          }
          await reshelve(writer, hornId, means.now());
          return put;
        });
        if (outcome === null) return { kind: 'conflict', hornId };
        note(outcome);
        channel?.postMessage(hornId);
        return { kind: 'saved' };
      }),
    remove: ({ hornId, ids }) =>
      attempt(async () => {
        const gone = await store.write(async (writer) => {
          const removed: string[] = [];
          for (const kind of ['horns', 'setups', 'visits'] as const) {
            for (const { id } of await writer.ofHorn(kind, hornId)) {
              if (ids !== 'all' && !ids.includes(id)) continue;
              await writer.remove(kind, id);
              removed.push(id);
            }
          }
          await reshelve(writer, hornId, means.now());
          return removed;
        });
        for (const id of gone) seen.delete(id);
        channel?.postMessage(hornId);
        return { kind: 'saved' };
      }),
    async read(hornIds) {
      const kept = await keptOf(hornIds);
      note([...kept.horns, ...kept.setups, ...kept.visits]);
      return readLibrary(fileOf(kept), means.makeId);
    },
    async raw(hornIds) {
      return fileOf(await keptOf(hornIds));
    },
    async yieldTo(hornId) {
      const kept = await store.ofHorn(hornId);
      note([...kept.horns, ...kept.setups, ...kept.visits]);
    },
    watch(listener) {
      const heard = ({ data }: MessageEvent<unknown>): void => {
        if (typeof data === 'string') listener(data);
      };
      channel?.addEventListener('message', heard);
      return () => channel?.removeEventListener('message', heard);
    },
  };
}

/** A failure of the browser as a sentence; what it did not take stays where it was. */
async function attempt(work: () => Promise<SaveOutcome>): Promise<SaveOutcome> {
  try {
    return await work();
  } catch (error) {
    return { kind: 'refused', message: reasonOf(error) };
  }
}

function reasonOf(error: unknown): string {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') {
    return 'The browser has no more room for the library. Export it, then free some space.';
  }
  if (name === 'SecurityError' || name === 'InvalidStateError' || name === 'UnknownError') {
    return 'The browser refuses to keep a library here (a private window, or blocked storage).';
  }
  return `The browser’s storage failed: ${error instanceof Error ? error.message : String(error)}`;
}

/** Kept records in the shape of a library file. */
function fileOf({ horns, setups, visits }: Readonly<Record<KeptKind, readonly Kept[]>>): unknown {
  return {
    kind: 'ventwright library',
    version: 1,
    horns: horns.map(({ id, document }) => ({ id, document })),
    setups: setups.map(({ id, hornId, document }) => ({ id, hornId, document })),
    visits: visits.map(({ id, hornId, document }) => ({ id, hornId, document })),
  };
}

function keptList({
  horns,
  setups,
  visits,
}: LibraryRecords): (readonly [KeptKind, Omit<Kept, 'revision'>])[] {
  return [
    ...horns.map((r) => ['horns', { id: r.id, hornId: r.id, document: r.document }] as const),
    ...setups.map((r) => ['setups', { id: r.id, hornId: r.hornId, document: r.document }] as const),
    ...visits.map((r) => ['visits', { id: r.id, hornId: r.hornId, document: r.document }] as const),
  ];
}

/** @throws RangeError where the records are not of one horn */
function hornIdOf({ horns, setups, visits }: LibraryRecords): string {
  const ids = new Set([...horns.map((h) => h.id), ...[...setups, ...visits].map((r) => r.hornId)]);
  if (ids.size !== 1) throw new RangeError(`invalid records: of ${ids.size} horns; expected one`);
  return [...ids][0];
}

/** Writes the horn's line in the list anew, or takes it out with the horn. */
async function reshelve(writer: KeptWriter, hornId: string, nowMs: number): Promise<void> {
  const horn = await writer.get('horns', hornId);
  if (horn === undefined) return writer.unshelve(hornId);
  const [setups, visits] = [await writer.ofHorn('setups', hornId), await writer.ofHorn('visits', hornId)];
  return writer.shelve(shelfEntry(horn, setups, visits, nowMs));
}
