import { KEPT_KINDS } from '../state/library-records.ts';
import { shelfEntry } from '../state/library-state.ts';
import type { KeptWriter } from './library-store.ts';

/** Writes the horn's line in the list anew, or takes it out with the horn. */
export async function reshelve(writer: KeptWriter, hornId: string, nowMs: number): Promise<void> {
  const [horn] = await writer.ofHorn('horns', hornId);
  if (horn === undefined) return writer.unshelve(hornId);
  const [setups, visits] = [await writer.ofHorn('setups', hornId), await writer.ofHorn('visits', hornId)];
  return writer.shelve(shelfEntry(horn, setups, visits, nowMs));
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
