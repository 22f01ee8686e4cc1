import { openDB, type DBSchema, type IDBPDatabase, type IDBPTransaction } from 'idb';
import { KEPT_KINDS, type Kept, type KeptKind, type KeptRecords } from '../state/library-records.ts';
import { readShelfEntry, shelfEntry, type ShelfEntry } from '../state/library-state.ts';
import { CLOSED_BY_BROWSER, HELD_BY_OLDER, TAKEN_BY_NEWER } from './library-sentences.ts';

/** Reads and writes inside one transaction. */
export interface KeptWriter {
  get(kind: KeptKind, id: string): Promise<Kept | undefined>;
  has(kind: KeptKind, id: string): Promise<boolean>;
  ofHorn(kind: KeptKind, hornId: string): Promise<readonly Kept[]>;
  put(kind: KeptKind, record: Kept): Promise<void>;
  remove(kind: KeptKind, id: string): Promise<void>;
  shelve(entry: ShelfEntry): Promise<void>;
  unshelve(hornId: string): Promise<void>;
}

/** Where records are kept: the browser's database, or memory where it refuses. */
export interface KeptStore {
  /** laid out by a newer program: looked at, never written */
  readonly isReadOnly: boolean;
  list(): Promise<readonly ShelfEntry[]>;
  ofHorn(hornId: string): Promise<KeptRecords>;
  all(): Promise<KeptRecords>;
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
 * Opens the browser's database. One laid out by a newer program is opened too, and only read.
 *
 * @param onGone called with a sentence when another tab needs a newer layout, or the browser closed the database
 * @throws whatever the browser says where it refuses
 */
export async function openKeptStore(onGone: (sentence: string) => void): Promise<KeptStore> {
  const { database, isNewer } = await openOwnOrNewer(onGone);
  return {
    isReadOnly: isNewer,
    list: () => listed(database),
    ofHorn: (hornId) => ofHorn(database, hornId),
    all: () => all(database),
    write: (work) =>
      isNewer
        ? Promise.reject(new DOMException('laid out by a newer program', 'ReadOnlyError'))
        : written(database, work),
    close: () => database.close(),
  };
}

async function openOwnOrNewer(
  onGone: (sentence: string) => void,
): Promise<{ readonly database: IDBPDatabase<Shape>; readonly isNewer: boolean }> {
  try {
    return { database: await openLayout(DATABASE_VERSION, onGone), isNewer: false };
  } catch (error) {
    if (!(error instanceof DOMException && error.name === 'VersionError')) throw error;
    const database = await openLayout(undefined, onGone);
    if (STORES.every((name) => database.objectStoreNames.contains(name))) return { database, isNewer: true };
    database.close();
    throw error;
  }
}

function openLayout(
  version: number | undefined,
  onGone: (sentence: string) => void,
): Promise<IDBPDatabase<Shape>> {
  return openDB<Shape>(DATABASE, version, {
    upgrade(db) {
      for (const kind of KEPT_KINDS) {
        db.createObjectStore(kind, { keyPath: 'id' }).createIndex('hornId', 'hornId');
      }
      db.createObjectStore('shelf', { keyPath: 'id' });
    },
    blocked: () => onGone(HELD_BY_OLDER),
    blocking: (_current, _wanted, event) => {
      (event.target as IDBDatabase).close();
      onGone(TAKEN_BY_NEWER);
    },
    terminated: () => onGone(CLOSED_BY_BROWSER),
  });
}

/** Every horn has its line; one whose line was lost gets it from its records. */
async function listed(database: IDBPDatabase<Shape>): Promise<readonly ShelfEntry[]> {
  const transaction = database.transaction(['shelf', 'horns']);
  const [lines, hornIds] = await Promise.all([
    transaction.objectStore('shelf').getAll(),
    transaction.objectStore('horns').getAllKeys(),
  ]);
  const there = new Set(hornIds);
  const entries = lines.map(readShelfEntry).filter(({ id }) => there.delete(id));
  const lost = [...there].map(async (hornId) => {
    const { horns, setups, visits } = await ofHorn(database, hornId);
    return horns.map((horn) => shelfEntry(horn, setups, visits, 0));
  });
  return [...entries, ...(await Promise.all(lost)).flat()];
}

/** All of one moment, whatever another tab writes meanwhile. */
async function ofHorn(database: IDBPDatabase<Shape>, hornId: string): Promise<KeptRecords> {
  const transaction = database.transaction(KEPT_KINDS);
  // A horn is found by its own id, whatever else of its record is damaged.
  const [horn, setups, visits] = await Promise.all([
    transaction.objectStore('horns').get(hornId),
    transaction.objectStore('setups').index('hornId').getAll(hornId),
    transaction.objectStore('visits').index('hornId').getAll(hornId),
  ]);
  return { horns: horn === undefined ? [] : [horn], setups, visits };
}

async function all(database: IDBPDatabase<Shape>): Promise<KeptRecords> {
  const transaction = database.transaction(KEPT_KINDS);
  const [horns, setups, visits] = await Promise.all(
    KEPT_KINDS.map((kind) => transaction.objectStore(kind).getAll()),
  );
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
    // A browser out of room says so of the transaction, and of its requests only that they were given up.
    const fault = await ended;
    throw isAbort(error) && fault !== null && !isAbort(fault.error) ? fault.error : error;
  }
  const fault = await ended;
  if (fault !== null) throw fault.error ?? new DOMException('the transaction ended unwritten', 'AbortError');
  return result;
}

const isAbort = (error: unknown): boolean => error instanceof DOMException && error.name === 'AbortError';

type Writing = IDBPTransaction<Shape, typeof STORES, 'readwrite'>;

function writerOf(transaction: Writing): KeptWriter {
  return {
    get: (kind, id) => transaction.objectStore(kind).get(id),
    has: async (kind, id) => (await transaction.objectStore(kind).getKey(id)) !== undefined,
    ofHorn: async (kind, hornId) => {
      if (kind !== 'horns') return transaction.objectStore(kind).index('hornId').getAll(hornId);
      const horn = await transaction.objectStore('horns').get(hornId);
      return horn === undefined ? [] : [horn];
    },
    put: async (kind, record) => void (await transaction.objectStore(kind).put(record)),
    remove: (kind, id) => transaction.objectStore(kind).delete(id),
    shelve: async (entry) => void (await transaction.objectStore('shelf').put(entry)),
    unshelve: (hornId) => transaction.objectStore('shelf').delete(hornId),
  };
}
