import {
  recordsOf,
  SETUP_ROLES,
  type BenchContents,
  type SetupRole,
} from '../../documents/bench-contents.ts';
import { layered, missingKeys, saysNothing } from '../../documents/complete-setup.ts';
import {
  type HornRecord,
  type LibraryRecords,
  type SetupRecord,
  type VisitRecord,
} from '../../documents/library-file.ts';
import type { SetupDocument } from '../../documents/setup-document.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import { usualSetup } from './side-by-side-offers.ts';
import type { Column, SideBySideState } from './side-by-side-state.ts';
import { toldOver } from './stands-now.ts';

/** What columns are looked up in: the bench first, then what the library gave. */
export interface ColumnSources {
  readonly bench: BenchContents;
  /** every horn that was opened, by id */
  readonly opened: Readonly<Record<string, { readonly contents: BenchContents }>>;
  readonly fetched: SideBySideState['fetched'];
}

/** The visit on the bench: as found beside what was set, and what is proposed beyond that. */
export function benchColumns(contents: BenchContents): Column[] {
  const { horn, asFound, proposed, asSet } = contents;
  const isSet = !saysNothing(asSet.document);
  const isProposed = toldOver(contents).told === 'as proposed' || !isSet;
  return [asFound, ...(isProposed ? [proposed] : []), ...(isSet ? [asSet] : [])].map(({ id }) => ({
    hornId: horn.id,
    setupId: id,
  }));
}

/** What stands side by side. A horn of which no setup was chosen stands as it was left. */
export function columnsOf(chosen: SideBySideState['chosen'], sources: ColumnSources): readonly Column[] {
  if (chosen === null) return benchColumns(sources.bench);
  return chosen.map((column) => {
    if (column.setupId !== null) return column;
    const records = recordsOfHorn(sources, column.hornId);
    return records === null ? column : { ...column, setupId: usualSetup(records, column.hornId) };
  });
}

/** A horn's records as they are now; null where they have not been fetched. What is on the bench is newer. */
export function recordsOfHorn(sources: ColumnSources, hornId: string): LibraryRecords | null {
  const onBench = sources.opened[hornId]?.contents;
  const fetched = sources.fetched[hornId];
  const stored = fetched?.kind === 'fetched' ? fetched.records : null;
  if (onBench === undefined) return stored;
  const own = recordsOf(onBench);
  if (stored === null) return own;
  return {
    horns: own.horns,
    setups: newest(own.setups, stored.setups),
    visits: newest(own.visits, stored.visits),
  };
}

function newest<R extends { readonly id: string }>(own: readonly R[], stored: readonly R[]): R[] {
  return [...stored.filter(({ id }) => !own.some((o) => o.id === id)), ...own];
}

/** A column found in the records: what it is worked out from. */
export interface ColumnSource {
  readonly horn: HornRecord;
  readonly setup: SetupRecord;
  /** what the setup is read over where it is sparse */
  readonly under: SetupDocument | null;
  readonly visit: VisitRecord | null;
  readonly role: SetupRole | null;
}

/** @returns null where the records have no such horn or setup */
export function sourceOf(records: LibraryRecords, { hornId, setupId }: Column): ColumnSource | null {
  const horn = records.horns.find(({ id }) => id === hornId);
  const setup = records.setups.find((s) => s.id === setupId && s.hornId === hornId);
  if (horn === undefined || setup === undefined) return null;
  const visits = records.visits.filter((v) => v.hornId === hornId);
  const visit = visits.find(({ document }) => SETUP_ROLES.some((role) => document[role] === setupId)) ?? null;
  const role = SETUP_ROLES.find((r) => visit?.document[r] === setupId) ?? null;
  return { horn, setup, under: underOf(records, horn, setup, visit), visit, role };
}

/** As found of its visit; of a sparse setup that belongs to none, the horn's first whole one. */
function underOf(
  { setups }: LibraryRecords,
  horn: HornRecord,
  setup: SetupRecord,
  visit: VisitRecord | null,
): SetupDocument | null {
  if (visit !== null) {
    const found = setups.find(({ id }) => id === visit.document.asFound);
    return found === undefined || found === setup ? null : found.document;
  }
  const isWhole = ({ document }: SetupRecord): boolean => missingKeys(horn.document, document).length === 0;
  if (isWhole(setup)) return null;
  return setups.find((s) => s.hornId === horn.id && isWhole(s))?.document ?? null;
}

/** A column as the physics takes it. */
export function documentsOf({ horn, setup, under }: ColumnSource): HornAndSetup {
  return {
    horn: horn.document,
    setup: under === null ? setup.document : layered(setup.document, under),
  };
}

/** What stands in a column: its documents, or a sentence on why there are none yet. */
export type ColumnStanding =
  | { readonly kind: 'there'; readonly source: ColumnSource }
  | { readonly kind: 'on its way' }
  | { readonly kind: 'missing'; readonly message: string };

export function standingOf(sources: ColumnSources, column: Column): ColumnStanding {
  const fetched = sources.fetched[column.hornId];
  const records = recordsOfHorn(sources, column.hornId);
  const source = records === null ? null : sourceOf(records, column);
  if (source !== null) return { kind: 'there', source };
  if (fetched === undefined) return { kind: 'on its way' };
  if (fetched.kind === 'failed') return { kind: 'missing', message: fetched.message };
  return {
    kind: 'missing',
    message:
      fetched.records.horns.length === 0
        ? 'This horn is no longer in the library; choose another.'
        : 'This setup is no longer in the library; choose another.',
  };
}
