import { KEPT_KINDS, type Kept, type KeptKind } from '../state/library-records.ts';
import { shelfEntry } from '../state/library-state.ts';
import type { KeptWriter } from './library-store.ts';

/** Writes the horn's line in the list anew, or takes it out with the horn. */
export async function reshelve(writer: KeptWriter, hornId: string, nowMs: number): Promise<void> {
  const [horn] = await writer.ofHorn('horns', hornId);
  if (horn === undefined) return writer.unshelve(hornId);
  const [setups, visits] = [await writer.ofHorn('setups', hornId), await writer.ofHorn('visits', hornId)];
  return writer.shelve(shelfEntry(horn, setups, visits, nowMs));
}

/**
 * Writes records under ids that are not in use.
 *
 * @param hornIds every horn that has something among them
 * @returns whether they were written; an id in use, or a horn that is not there, and nothing is
 */
export async function addAll(
  writer: KeptWriter,
  records: readonly (readonly [KeptKind, Kept])[],
  hornIds: readonly string[],
  nowMs: number,
): Promise<boolean> {
  const of = (kind: KeptKind): Kept[] => records.flatMap(([k, record]) => (k === kind ? [record] : []));
  const horns = new Map(of('horns').map((horn) => [horn.id, horn]));
  const [setups, visits] = [byHorn(of('setups')), byHorn(of('visits'))];
  const older = hornIds.filter((id) => !horns.has(id));
  const there = await Promise.all([
    ...older.map(async (id) => (await writer.ofHorn('horns', id)).length > 0),
    ...records.map(async ([kind, { id }]) => !(await writer.has(kind, id))),
  ]);
  if (there.includes(false)) return false;
  await Promise.all([
    ...records.map(([kind, record]) => writer.put(kind, record)),
    // All of a new horn is in hand: its line needs no second look at the disk.
    ...[...horns.values()].map((horn) =>
      writer.shelve(shelfEntry(horn, setups.get(horn.id) ?? [], visits.get(horn.id) ?? [], nowMs)),
    ),
  ]);
  for (const hornId of older) await reshelve(writer, hornId, nowMs);
  return true;
}

function byHorn(records: readonly Kept[]): ReadonlyMap<string, readonly Kept[]> {
  const lists = new Map<string, Kept[]>();
  for (const record of records) {
    const list = lists.get(record.hornId);
    if (list === undefined) lists.set(record.hornId, [record]);
    else list.push(record);
  }
  return lists;
}

/** Takes away some records of a horn, or all. @returns the ids of what was there */
export async function takeAway(
  writer: KeptWriter,
  hornId: string,
  ids: readonly string[] | 'all',
): Promise<string[]> {
  const removed: string[] = [];
  for (const kind of KEPT_KINDS) {
    for (const { id } of await writer.ofHorn(kind, hornId)) {
      if (ids !== 'all' && !ids.includes(id)) continue;
      await writer.remove(kind, id);
      removed.push(id);
    }
  }
  return removed;
}
