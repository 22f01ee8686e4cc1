import { layered } from './complete-setup.ts';
import {
  latestVisit,
  presentSetup,
  type HornRecord,
  type LibraryRecords,
  type SetupRecord,
  type VisitRecord,
} from './library-file.ts';
import { openingsReadOn } from './carried-readings.ts';
import { SETUP_VERSION, type SetupDocument } from './setup-document.ts';
import { VISIT_VERSION, type VisitDocument } from './visit-document.ts';

/** A horn on the bench: the horn, this visit, and the three setups the visit is told by. */
export interface BenchContents {
  readonly horn: HornRecord;
  readonly visit: VisitRecord;
  /** whole */
  readonly asFound: SetupRecord;
  /** sparse, read over as found */
  readonly proposed: SetupRecord;
  /** sparse, read over as found */
  readonly asSet: SetupRecord;
}

/** The setups of a visit. */
export type SetupRole = 'asFound' | 'proposed' | 'asSet';

export const SETUP_ROLES: readonly SetupRole[] = ['asFound', 'proposed', 'asSet'];

/** What a new visit needs to be told. */
export interface VisitPlan {
  /** such as 2026-05-31 */
  readonly date: string;
  /** when it was begun, which orders visits of one day */
  readonly startedMs?: number;
  readonly airC: number;
  readonly a4Hz: number;
  readonly player?: string;
  readonly measuredBy?: string;
}

/**
 * A new visit of a horn that stands as a setup says: found as it was left.
 *
 * @param present whole
 * @param makeId  gives the new records their ids
 */
export function makeVisit(
  horn: HornRecord,
  present: SetupDocument,
  { date, startedMs, airC, a4Hz, player, measuredBy }: VisitPlan,
  makeId: () => string,
): BenchContents {
  const sparse = (name: string): SetupRecord => ({
    id: makeId(),
    hornId: horn.id,
    document: {
      kind: 'ventwright setup',
      version: SETUP_VERSION,
      name: `${name}, ${date}`,
      origin: 'measured',
      keys: [],
    },
  });
  const asFound = {
    id: makeId(),
    hornId: horn.id,
    document: { ...present, name: `As found, ${date}` },
  };
  const proposed = sparse('Proposed');
  const asSet = sparse('As set');
  const document: VisitDocument = {
    kind: 'ventwright visit',
    version: VISIT_VERSION,
    date,
    ...(startedMs === undefined ? {} : { startedMs }),
    airC,
    a4Hz,
    ...(player === undefined ? {} : { player }),
    ...(measuredBy === undefined ? {} : { measuredBy }),
    asFound: asFound.id,
    proposed: proposed.id,
    asSet: asSet.id,
  };
  return { horn, visit: { id: makeId(), hornId: horn.id, document }, asFound, proposed, asSet };
}

/** The next visit of a horn: found as it was left, each opening with the day on which it was read. */
export function nextVisit(before: BenchContents, plan: VisitPlan, makeId: () => string): BenchContents {
  const left = openingsReadOn(setupIn(before, 'asSet'), before.visit.document.date);
  return makeVisit(before.horn, left, plan, makeId);
}

/**
 * Puts a horn's records on the bench: a visit of it by id, or its latest.
 *
 * @returns null where the records hold no such visit with all its setups
 */
export function contentsOf(records: LibraryRecords, hornId: string, visitId?: string): BenchContents | null {
  const horn = records.horns.find((h) => h.id === hornId);
  const visits = records.visits.filter((v) => v.hornId === hornId);
  const visit = visitId === undefined ? latestVisit(visits) : visits.find((v) => v.id === visitId);
  if (horn === undefined || visit === undefined || visit === null) return null;
  const [asFound, proposed, asSet] = SETUP_ROLES.map((role) =>
    records.setups.find((s) => s.id === visit.document[role] && s.hornId === hornId),
  );
  if (asFound === undefined || proposed === undefined || asSet === undefined) return null;
  return { horn, visit, asFound, proposed, asSet };
}

/** A horn's latest visit, or a first one over the setup it came with. @returns null for an unknown horn */
export function contentsOrFirstVisit(
  records: LibraryRecords,
  hornId: string,
  plan: VisitPlan,
  makeId: () => string,
): BenchContents | null {
  const horn = records.horns.find((h) => h.id === hornId);
  if (horn === undefined) return null;
  return contentsOf(records, hornId) ?? makeVisit(horn, presentSetup(records, horn), plan, makeId);
}

/** A visit's setup, read over as found where it is sparse. */
export function setupIn(contents: BenchContents, role: SetupRole): SetupDocument {
  const { asFound } = contents;
  return role === 'asFound' ? asFound.document : layered(contents[role].document, asFound.document);
}

/** The five records as a library would hold them. */
export function recordsOf({ horn, visit, asFound, proposed, asSet }: BenchContents): LibraryRecords {
  return { horns: [horn], setups: [asFound, proposed, asSet], visits: [visit] };
}
