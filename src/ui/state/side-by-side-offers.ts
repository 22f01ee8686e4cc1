import { SETUP_ROLES, type SetupRole } from '../../documents/bench-contents.ts';
import { saysNothing } from '../../documents/complete-setup.ts';
import type { LibraryRecords, VisitRecord } from '../../documents/library-file.ts';
import type { Column, ListedHorn } from './side-by-side-state.ts';

/** The setup a horn was left with: as set in its latest visit, or as found where nothing was set. */
export function usualSetup({ setups, visits }: LibraryRecords, hornId: string): string | null {
  const own = setups.filter((s) => s.hornId === hornId);
  const last = newestVisits(visits, hornId)[0];
  if (last === undefined) return own[0]?.id ?? null;
  const set = own.find(({ id }) => id === last.document.asSet);
  return set === undefined || saysNothing(set.document) ? last.document.asFound : set.id;
}

/** A horn's visits, the latest first. */
export function newestVisits(visits: readonly VisitRecord[], hornId: string): VisitRecord[] {
  return visits
    .filter((v) => v.hornId === hornId)
    .reverse()
    .sort((a, b) => (a.document.date < b.document.date ? 1 : a.document.date > b.document.date ? -1 : 0));
}

/** A setup that can be chosen. */
export interface SetupOffer {
  readonly id: string;
  readonly label: string;
}

/** Setups under one heading: a visit's three, or the rest. */
export interface SetupOffers {
  readonly title: string;
  readonly offers: readonly SetupOffer[];
}

const ROLE_WORDS: Readonly<Record<SetupRole, string>> = {
  asFound: 'as found',
  proposed: 'proposed',
  asSet: 'as set',
};

/** The setups of a horn, visit by visit, the latest first. */
export function setupOffers(records: LibraryRecords, hornId: string): SetupOffers[] {
  const own = records.setups.filter((s) => s.hornId === hornId);
  const byId = new Map(own.map((s) => [s.id, s]));
  const visits = newestVisits(records.visits, hornId).map(({ document }) => ({
    title: `Visit of ${document.date}${document.player === undefined ? '' : `, ${document.player}`}`,
    offers: SETUP_ROLES.flatMap((role): SetupOffer[] => {
      const setup = byId.get(document[role]);
      if (setup === undefined) return [];
      byId.delete(document[role]);
      const empty = role !== 'asFound' && saysNothing(setup.document) ? ' (nothing yet)' : '';
      return [{ id: setup.id, label: `${ROLE_WORDS[role]}${empty}, ${document.date}` }];
    }),
  }));
  const rest = own.filter(({ id }) => byId.has(id)).map(({ id, document }) => ({ id, label: document.name }));
  return [...visits, { title: 'Other setups', offers: rest }].filter(({ offers }) => offers.length > 0);
}

/**
 * What a new column begins with: a horn that is in none yet, else another setup of the first one's horn.
 *
 * @param records of the first one's horn, as far as they are known
 */
export function nextColumn(
  columns: readonly Column[],
  records: LibraryRecords | null,
  horns: readonly ListedHorn[],
): Column {
  const [{ hornId }] = columns;
  const taken = new Set(columns.map(({ setupId }) => setupId));
  const offers = records === null ? [] : setupOffers(records, hornId).flatMap(({ offers: list }) => list);
  const isTold = (id: string): boolean => !saysNothing(records!.setups.find((s) => s.id === id)!.document);
  const other = horns.find(({ id }) => !columns.some((c) => c.hornId === id));
  if (other !== undefined) return { hornId: other.id, setupId: null };
  const own = offers.find(({ id }) => !taken.has(id) && isTold(id));
  if (own !== undefined) return { hornId, setupId: own.id };
  return { hornId, setupId: (offers.find(({ id }) => !taken.has(id)) ?? offers[0])?.id ?? null };
}
