import { openDB, type DBSchema, type IDBPDatabase, type IDBPTransaction } from 'idb';

/** A record as it is kept. The document is whatever was written: it is read with care, like a file. */
export interface Kept {
  readonly id: string;
  readonly hornId: string;
  readonly document: unknown;
  /** counts the writes, so that two tabs notice each other */
  readonly revision: number;
}

/** The kinds of record. */
export type KeptKind = 'horns' | 'setups' | 'visits';
export const KEPT_KINDS: readonly KeptKind[] = ['horns', 'setups', 'visits'];

/** What the list of the library shows of one horn, written together with its records. */
export interface ShelfEntry {
  readonly id: string;
  readonly name: string;
  readonly maker: string;
  readonly instrument: string;
  readonly serial: string;
  readonly owner: string;
  readonly players: readonly string[];
  /** such as 2026-05-31; empty where there was no visit */
  readonly lastVisit: string;
  readonly visitCount: number;
  readonly setupNames: readonly string[];
  readonly changedMs: number;
}

/** Reads and writes inside one transaction. */
export interface KeptWriter {
  get(kind: KeptKind, id: string): Promise<Kept | undefined>;
  ofHorn(kind: KeptKind, hornId: string): Promise<readonly Kept[]>;
  put(kind: KeptKind, record: Kept): Promise<void>;
  remove(kind: KeptKind, id: string): Promise<void>;
  shelve(entry: ShelfEntry): Promise<void>;
  unshelve(hornId: string): Promise<void>;
}

/** Where records are kept: the browser's database, or memory where it refuses. */
export interface KeptStore {
  list(): Promise<readonly ShelfEntry[]>;
  ofHorn(hornId: string): Promise<Readonly<Record<KeptKind, readonly Kept[]>>>;
  all(): Promise<Readonly<Record<KeptKind, readonly Kept[]>>>;
  /** All of it or nothing: it counts only when the promise is kept. */
  write<T>(work: (writer: KeptWriter) => Promise<T>): Promise<T>;
  close(): void;
}

interface Shape extends DBSchema {
  horns: { key: string; value: Kept; indexes: { hornId: string } };
  setups: { key: string; value: Kept; indexes: { hornId: string } };
  visits: { key: string; value: Kept; indexes: { hornId: string } };
  shelf: { key: string; value: ShelfEntry };
}

const DATABASE = 'ventwright';
const DATABASE_VERSION = 1;
const STORES = ['horns', 'setups', 'visits', 'shelf'] as const;

/**
 * Opens the browser's database.
 *
 * @param onGone called when another tab needs a newer shape, or the browser closed it
 * @throws whatever the browser says where it refuses
 */
export async function openKeptStore(onGone: (sentence: string) => void): Promise<KeptStore> {
  const database = await openDB<Shape>(DATABASE, DATABASE_VERSION, {
    upgrade(db) {
      for (const kind of KEPT_KINDS) {
        db.createObjectStore(kind, { keyPath: 'id' }).createIndex('hornId', 'hornId');
      }
      db.createObjectStore('shelf', { keyPath: 'id' });
    },
    blocking: () => {
      database.close();
      onGone('Another tab has a newer Ventwright. Reload this one before you go on.');
    },
    terminated: () => onGone('The browser closed the library. Reload the page before you go on.'),
  });
  return {
    list: () => database.getAll('shelf'),
    ofHorn: (hornId) => gather((kind) => database.getAllFromIndex(kind, 'hornId', hornId)),
    all: () => gather((kind) => database.getAll(kind)),
    write: (work) => written(database, work),
    close: () => database.close(),
  };
}

async function gather(
  read: (kind: KeptKind) => Promise<readonly Kept[]>,
): Promise<Readonly<Record<KeptKind, readonly Kept[]>>> {
  const [horns, setups, visits] = await Promise.all(KEPT_KINDS.map(read));
  return { horns, setups, visits };
}

/** Runs the work in one transaction that is on the disk before the promise is kept. */
async function written<T>(
  database: IDBPDatabase<Shape>,
  work: (writer: KeptWriter) => Promise<T>,
): Promise<T> {
  const transaction = database.transaction(STORES, 'readwrite', { durability: 'strict' });
  // The transaction's own end is waited for below; an abort must not count as unheard meanwhile.
  const ended = transaction.done.then(
    () => null,
    (error: unknown) => ({ error }),
  );
  let result: T;
  try {
    result = await work(writerOf(transaction));
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // It had ended already, by the same fault.
    }
    await ended;
    throw error;
  }
  const fault = await ended;
  if (fault !== null) throw fault.error;
  return result;
}

type Writing = IDBPTransaction<Shape, typeof STORES, 'readwrite'>;

function writerOf(transaction: Writing): KeptWriter {
  return {
    get: (kind, id) => transaction.objectStore(kind).get(id),
    ofHorn: (kind, hornId) => transaction.objectStore(kind).index('hornId').getAll(hornId),
    put: async (kind, record) => void (await transaction.objectStore(kind).put(record)),
    remove: (kind, id) => transaction.objectStore(kind).delete(id),
    shelve: async (entry) => void (await transaction.objectStore('shelf').put(entry)),
    unshelve: (hornId) => transaction.objectStore('shelf').delete(hornId),
  };
}
