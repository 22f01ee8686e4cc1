import type { Kept } from './library-records.ts';

/** What the list of the library shows of one horn; texts nobody told are empty. */
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

/** What a horn is called whose record names it no more. */
const NAMELESS = 'A horn without a name';

/** Letters that no taking apart turns into plain ones. */
const PLAIN: Readonly<Record<string, string>> = {
  '♭': 'b',
  '♯': '#',
  ß: 'ss',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  æ: 'ae',
  œ: 'oe',
  ı: 'i',
};

/** A text as a search sees it: small letters without accents. */
export function folded(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[♭♯ßøłđðþæœı]/g, (letter) => PLAIN[letter]);
}

const words = new WeakMap<ShelfEntry, string>();

/** Everything of an entry that a search looks at, folded once. */
function wordsOf(entry: ShelfEntry): string {
  let text = words.get(entry);
  if (text === undefined) {
    const { name, maker, instrument, serial, owner, players, lastVisit, setupNames } = entry;
    text = folded([name, maker, instrument, serial, owner, ...players, lastVisit, ...setupNames].join(' '));
    words.set(entry, text);
  }
  return text;
}

/** The entries that have every word of a search, in any order. */
export function searched(entries: readonly ShelfEntry[], search: string): readonly ShelfEntry[] {
  const wanted = folded(search).split(/\s+/).filter(Boolean);
  return wanted.length === 0
    ? entries
    : entries.filter((entry) => wanted.every((word) => wordsOf(entry).includes(word)));
}

/** Entries with the last changed first; of one time, by name. */
export function lastChangedFirst(entries: readonly ShelfEntry[]): readonly ShelfEntry[] {
  return [...entries].sort((a, b) => b.changedMs - a.changedMs || a.name.localeCompare(b.name));
}

type Fields = Readonly<Record<string, unknown>>;

/** One horn's line in the list, from records that may be damaged. */
export function shelfEntry(
  horn: Kept,
  setups: readonly Kept[],
  visits: readonly Kept[],
  changedMs: number,
): ShelfEntry {
  const built = fieldsOf(horn.document);
  const told = visits
    .map((v) => fieldsOf(v.document))
    .sort((a, b) => textIn(b, 'date').localeCompare(textIn(a, 'date')));
  return {
    id: horn.id,
    name: nameIn(horn.document),
    maker: textIn(built, 'maker'),
    instrument: textIn(built, 'instrument'),
    serial: textIn(built, 'serial'),
    owner: textIn(built, 'owner'),
    players: [...new Set(told.map((v) => textIn(v, 'player')).filter((p) => p !== ''))],
    lastVisit: told.map((v) => textIn(v, 'date')).reduce((a, b) => (b > a ? b : a), ''),
    visitCount: visits.length,
    setupNames: setups.map((s) => textIn(fieldsOf(s.document), 'name')).filter((n) => n !== ''),
    changedMs,
  };
}

function fieldsOf(document: unknown): Fields {
  return typeof document === 'object' && document !== null ? (document as Fields) : {};
}

function textIn(fields: Fields, field: string): string {
  const value = fields[field];
  return typeof value === 'string' ? value.trim() : '';
}

/** The name a document bears, read or not. */
export function nameIn(document: unknown): string {
  return textIn(fieldsOf(document), 'name') || NAMELESS;
}

/** An entry as it lies in the library. One that is damaged itself still names its horn. */
export function readShelfEntry(raw: unknown): ShelfEntry {
  const fields = fieldsOf(raw);
  const text = (field: string): string => textIn(fields, field);
  const number = (field: string): number => {
    const value = fields[field];
    return typeof value === 'number' && Number.isFinite(value) ? value : 0;
  };
  const texts = (field: string): string[] => {
    const list = fields[field];
    return Array.isArray(list) ? list.filter((item): item is string => typeof item === 'string') : [];
  };
  return {
    id: text('id'),
    name: text('name') || NAMELESS,
    maker: text('maker'),
    instrument: text('instrument'),
    serial: text('serial'),
    owner: text('owner'),
    players: texts('players'),
    lastVisit: text('lastVisit'),
    visitCount: number('visitCount'),
    setupNames: texts('setupNames'),
    changedMs: number('changedMs'),
  };
}
