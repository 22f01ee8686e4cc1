import type { Kept, ShelfEntry } from './library-store.ts';

type Words = Readonly<Record<string, unknown>>;

/** One horn's line in the list, from records that may be damaged. */
export function shelfEntry(
  horn: Kept,
  setups: readonly Kept[],
  visits: readonly Kept[],
  changedMs: number,
): ShelfEntry {
  const built = wordsOf(horn.document);
  const told = visits.map((v) => wordsOf(v.document));
  return {
    id: horn.id,
    name: textOf(built, 'name') || 'A horn without a name',
    maker: textOf(built, 'maker'),
    instrument: textOf(built, 'instrument'),
    serial: textOf(built, 'serial'),
    owner: textOf(built, 'owner'),
    players: [...new Set(told.map((v) => textOf(v, 'player')).filter((p) => p !== ''))],
    lastVisit: told.map((v) => textOf(v, 'date')).reduce((a, b) => (b > a ? b : a), ''),
    visitCount: visits.length,
    setupNames: setups.map((s) => textOf(wordsOf(s.document), 'name')).filter((n) => n !== ''),
    changedMs,
  };
}

function wordsOf(document: unknown): Words {
  return typeof document === 'object' && document !== null ? (document as Words) : {};
}

function textOf(words: Words, field: string): string {
  const value = words[field];
  return typeof value === 'string' ? value : '';
}
