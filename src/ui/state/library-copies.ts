import { contentsOf, SETUP_ROLES } from '../../documents/bench-contents.ts';
import { missingKeys } from '../../documents/complete-setup.ts';
import type { LibraryRecords, SetupRecord, VisitRecord } from '../../documents/library-file.ts';
import type { UnreadRecords } from './library-records.ts';

/** The longest name a document takes, letters. */
const LONGEST_NAME = 200;

/** A name with an ending, cut so that both fit. */
export function nameWith(name: string, ending: string): string {
  const room = LONGEST_NAME - ending.length - 1;
  return `${name.length > room ? name.slice(0, room) : name} ${ending}`;
}

/** The first of “name copy”, “name copy 2” … that is not taken. */
export function copyName(name: string, taken: readonly string[]): string {
  const plain = name.replace(/ copy( \d+)?$/, '');
  for (let i = 1; ; i++) {
    const next = nameWith(plain, i === 1 ? 'copy' : `copy ${i}`);
    if (!taken.includes(next)) return next;
  }
}

/** Whether something is a group of fields. */
const isFields = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Records under new ids, each visit with its own setups again. */
export function withNewIds(records: UnreadRecords, makeId: () => string): UnreadRecords {
  const ids = new Map<string, string>();
  for (const { id } of [...records.horns, ...records.setups, ...records.visits]) ids.set(id, makeId());
  const next = (id: string): string => ids.get(id) ?? id;
  return {
    horns: records.horns.map((r) => ({ ...r, id: next(r.id) })),
    setups: records.setups.map((r) => ({ ...r, id: next(r.id), hornId: next(r.hornId) })),
    visits: records.visits.map((r) => ({
      id: next(r.id),
      hornId: next(r.hornId),
      document: pointedAt(r.document, next),
    })),
  };
}

function pointedAt(document: unknown, next: (id: string) => string): unknown {
  if (!isFields(document)) return document;
  const roles = SETUP_ROLES.flatMap((role) =>
    typeof document[role] === 'string' ? [[role, next(document[role])]] : [],
  );
  return { ...document, ...Object.fromEntries(roles) };
}

/** Horns with their names changed; one that has lost its name keeps what it has. */
export function withNames(records: UnreadRecords, rename: (name: string) => string): UnreadRecords {
  const horns = records.horns.map(({ id, document }) => {
    const name = isFields(document) ? document['name'] : undefined;
    return {
      id,
      document: typeof name === 'string' ? { ...(document as object), name: rename(name) } : document,
    };
  });
  return { ...records, horns };
}

/** A horn with all its setups and visits once more, under another name. What is damaged goes along. */
export function copyOfHorn(
  records: UnreadRecords,
  taken: readonly string[],
  makeId: () => string,
): UnreadRecords {
  return withNewIds(
    withNames(records, (name) => copyName(name, taken)),
    makeId,
  );
}

/** A setup once more, under another name. */
export function copyOfSetup(
  setup: SetupRecord,
  setups: readonly SetupRecord[],
  makeId: () => string,
): SetupRecord {
  const taken = setups.map((s) => s.document.name);
  return {
    ...setup,
    id: makeId(),
    document: { ...setup.document, name: copyName(setup.document.name, taken) },
  };
}

/** A visit once more, with setups of its own. @returns null where one of its setups is missing */
export function copyOfVisit(
  records: LibraryRecords,
  visit: VisitRecord,
  makeId: () => string,
): LibraryRecords | null {
  const contents = contentsOf(records, visit.hornId, visit.id);
  if (contents === null) return null;
  const setups = SETUP_ROLES.reduce<readonly SetupRecord[]>(
    (copies, role) => [...copies, copyOfSetup(contents[role], [...records.setups, ...copies], makeId)],
    [],
  );
  const [asFound, proposed, asSet] = setups.map((s) => s.id);
  const document = { ...visit.document, asFound, proposed, asSet };
  return { horns: [], setups, visits: [{ id: makeId(), hornId: visit.hornId, document }] };
}

/** What goes when something is removed, or why it has to stay. */
export type Removal =
  { readonly ok: true; readonly ids: readonly string[] } | { readonly ok: false; readonly message: string };

/** A setup goes if no visit is told by it and the horn can still be read without it. */
export function removalOfSetup(records: LibraryRecords, setup: SetupRecord): Removal {
  const visit = records.visits.find(({ document }) =>
    SETUP_ROLES.some((role) => document[role] === setup.id),
  );
  if (visit !== undefined) {
    return {
      ok: false,
      message: `“${setup.document.name}” belongs to the visit of ${visit.document.date}: remove that visit instead.`,
    };
  }
  if (!isReadableWithout(records, [setup.id])) {
    return {
      ok: false,
      message: `“${setup.document.name}” is the only setup that says how every key stands: the horn needs one.`,
    };
  }
  return { ok: true, ids: [setup.id] };
}

/** A visit goes with its setups; where it is the last, what was found stays so that the horn can be read. */
export function removalOfVisit(records: LibraryRecords, visit: VisitRecord): Removal {
  const others = records.visits.filter((v) => v.id !== visit.id);
  const own = SETUP_ROLES.map((role) => visit.document[role]).filter(
    (id) => !others.some(({ document }) => SETUP_ROLES.some((role) => document[role] === id)),
  );
  const ids = [visit.id, ...own];
  return {
    ok: true,
    ids: isReadableWithout(records, ids) ? ids : ids.filter((id) => id !== visit.document.asFound),
  };
}

function isReadableWithout({ horns: [horn], setups }: LibraryRecords, ids: readonly string[]): boolean {
  return setups.some((s) => !ids.includes(s.id) && missingKeys(horn.document, s.document).length === 0);
}
