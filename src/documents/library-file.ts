import * as z from 'zod';
import { layered, missingKeys } from './complete-setup.ts';
import { hornSchema, type HornDocument } from './horn-document.ts';
import { isHorn1, migrateHorn1, migrateSetup } from './migrations.ts';
import { documentVersion, readWith, text, type DocumentIssue, type ReadOutcome } from './schema-parts.ts';
import { setupSchema, type SetupDocument } from './setup-document.ts';
import { readHornDocument, readSetupDocument, type HornAndSetup } from './to-acoustics.ts';
import { visitSchema, type VisitDocument } from './visit-document.ts';

/** Version of the library file this program writes. */
export const LIBRARY_VERSION = 1;

export interface HornRecord {
  readonly id: string;
  readonly document: HornDocument;
}

export interface SetupRecord {
  readonly id: string;
  readonly hornId: string;
  readonly document: SetupDocument;
}

export interface VisitRecord {
  readonly id: string;
  readonly hornId: string;
  readonly document: VisitDocument;
}

/** Horns with their setups and visits: one horn, some, or all. */
export interface LibraryRecords {
  readonly horns: readonly HornRecord[];
  readonly setups: readonly SetupRecord[];
  readonly visits: readonly VisitRecord[];
}

export const NO_RECORDS: LibraryRecords = { horns: [], setups: [], visits: [] };

const id = text('id');
const hornId = text('id of the horn');

/** The file that horns travel in. */
export const librarySchema = z.strictObject({
  $schema: z.string().optional(),
  kind: z.literal('ventwright library', { error: 'invalid kind; expected "ventwright library"' }),
  version: documentVersion('library', LIBRARY_VERSION),
  horns: z.array(z.strictObject({ id, document: hornSchema })),
  setups: z.array(z.strictObject({ id, hornId, document: setupSchema })),
  visits: z.array(z.strictObject({ id, hornId, document: visitSchema })),
});

/** The same with the documents left unread: each is read by itself, so that one bad one does not lose the rest. */
const openLibrarySchema = librarySchema.extend({
  horns: z.array(z.strictObject({ id, document: z.unknown() })),
  setups: z.array(z.strictObject({ id, hornId, document: z.unknown() })),
  visits: z.array(z.strictObject({ id, hornId, document: z.unknown() })),
});

/** What could be read, and everything that could not. */
export interface LibraryReading {
  readonly records: LibraryRecords;
  readonly issues: readonly DocumentIssue[];
}

/** Writes records as one file. */
export function libraryFile(records: LibraryRecords): z.infer<typeof librarySchema> {
  const { horns, setups, visits } = records;
  return {
    kind: 'ventwright library',
    version: LIBRARY_VERSION,
    horns: horns.map(({ id, document }) => ({ id, document })),
    setups: setups.map(({ id, hornId, document }) => ({ id, hornId, document })),
    visits: visits.map(({ id, hornId, document }) => ({ id, hornId, document })),
  };
}

/**
 * Reads a library file, or a horn file of version 1. A horn that cannot be read is left out with what belongs
 * to it, and every issue is told; the rest is kept.
 *
 * @param makeId gives ids to what has none yet
 */
export function readLibrary(input: unknown, makeId: () => string): LibraryReading {
  if (isHorn1(input)) return readHorn1(migrateHorn1(input), makeId);
  const read = readWith(openLibrarySchema, input);
  if (!read.ok) return { records: NO_RECORDS, issues: read.issues };
  const issues: DocumentIssue[] = [];
  const take = <T>(path: string, outcome: ReadOutcome<T>): T[] => {
    if (outcome.ok) return [outcome.value];
    issues.push(...outcome.issues.map((i) => ({ ...i, path: i.path === '' ? path : `${path}.${i.path}` })));
    return [];
  };
  const { horns, setups, visits } = read.value;
  const goodHorns = horns.flatMap((r, i) =>
    take(`horns[${i}].document`, readHornDocument(r.document)).map((document) => ({ id: r.id, document })),
  );
  const goodSetups = setups.flatMap((r, i) =>
    take(`setups[${i}].document`, readSetupOf(goodHorns, r.hornId, r.document)).map((document) => ({
      id: r.id,
      hornId: r.hornId,
      document,
    })),
  );
  const goodVisits = visits.flatMap((r, i) =>
    take(`visits[${i}].document`, readVisitOf(goodHorns, goodSetups, r.hornId, r.document)).map(
      (document) => ({ id: r.id, hornId: r.hornId, document }),
    ),
  );
  return fit({ horns: goodHorns, setups: goodSetups, visits: goodVisits }, issues);
}

function readHorn1(
  { horn, setup }: { readonly horn: unknown; readonly setup: unknown },
  makeId: () => string,
): LibraryReading {
  const readHorn = readHornDocument(horn);
  if (!readHorn.ok) {
    const alone = readWith(setupSchema, setup);
    const ofSetup = alone.ok ? [] : alone.issues.map((i) => ({ ...i, path: `setup.${i.path}` }));
    return { records: NO_RECORDS, issues: [...readHorn.issues, ...ofSetup] };
  }
  const readSetup = readSetupDocument(setup, readHorn.value);
  if (!readSetup.ok) {
    return {
      records: NO_RECORDS,
      issues: readSetup.issues.map((i) => ({ ...i, path: `setup.${i.path}` })),
    };
  }
  const hornId = makeId();
  return fit(
    {
      horns: [{ id: hornId, document: readHorn.value }],
      setups: [{ id: makeId(), hornId, document: readSetup.value }],
      visits: [],
    },
    [],
  );
}

/** A setup read for its horn. */
function readSetupOf(
  horns: readonly HornRecord[],
  hornId: string,
  input: unknown,
): ReadOutcome<SetupDocument> {
  const horn = horns.find((h) => h.id === hornId);
  return horn === undefined ? noHorn(hornId) : readSetupDocument(migrateSetup(input), horn.document);
}

function readVisitOf(
  horns: readonly HornRecord[],
  setups: readonly SetupRecord[],
  hornId: string,
  input: unknown,
): ReadOutcome<VisitDocument> {
  const horn = horns.find((h) => h.id === hornId);
  if (horn === undefined) return noHorn(hornId);
  const read = readWith(visitSchema, input);
  if (!read.ok) return read;
  const own = (id: string): SetupRecord | undefined => setups.find((s) => s.id === id && s.hornId === hornId);
  const issues = (['asFound', 'proposed', 'asSet'] as const).flatMap((role): DocumentIssue[] =>
    own(read.value[role]) === undefined
      ? [{ path: role, code: 'reference', message: `the horn has no setup of the id "${read.value[role]}"` }]
      : [],
  );
  const found = own(read.value.asFound);
  if (found !== undefined) issues.push(...notWhole(horn, found, 'asFound'));
  return issues.length > 0 ? { ok: false, issues } : read;
}

function notWhole(horn: HornRecord, setup: SetupRecord, path: string): DocumentIssue[] {
  const missing = missingKeys(horn.document, setup.document);
  if (missing.length === 0) return [];
  return [
    {
      path,
      code: 'missing',
      message: `the setup “${setup.document.name}” says too little of ${missing.join(', ')}; expected opening, measuring point, pad diameter and thickness of every key`,
    },
  ];
}

function noHorn(hornId: string): ReadOutcome<never> {
  return {
    ok: false,
    issues: [
      { path: '', code: 'reference', message: `no horn of the id "${hornId}" could be read from this file` },
    ],
  };
}

/** Horns without one whole setup are left out, and ids used twice are told. */
function fit(records: LibraryRecords, issues: readonly DocumentIssue[]): LibraryReading {
  const more: DocumentIssue[] = [];
  const seen = new Set<string>();
  const once = <R extends { readonly id: string }>(r: R): boolean => {
    if (!seen.has(r.id)) return Boolean(seen.add(r.id));
    more.push({
      path: '',
      code: 'duplicate',
      message: `the id "${r.id}" is used twice; the second is left out`,
    });
    return false;
  };
  const setups = records.setups.filter(once);
  const horns = records.horns.filter(once).filter((horn) => {
    const own = setups.filter((s) => s.hornId === horn.id);
    if (own.some((s) => missingKeys(horn.document, s.document).length === 0)) return true;
    more.push({
      path: '',
      code: 'missing',
      message: `the horn “${horn.document.name}” has no whole setup; expected an opening, its measuring point, pad diameter and thickness of every key`,
    });
    return false;
  });
  const kept = new Set(horns.map((h) => h.id));
  return {
    records: {
      horns,
      setups: setups.filter((s) => kept.has(s.hornId)),
      visits: records.visits.filter(once).filter((v) => kept.has(v.hornId)),
    },
    issues: [...issues, ...more],
  };
}

/** The setup a visit's role means, read over as found; null where the records lack it. */
export function setupOfVisit(
  setups: readonly SetupRecord[],
  visit: VisitDocument,
  role: 'asFound' | 'proposed' | 'asSet',
): SetupDocument | null {
  const found = setups.find((s) => s.id === visit.asFound)?.document;
  const own = setups.find((s) => s.id === visit[role])?.document;
  if (found === undefined || own === undefined) return null;
  return role === 'asFound' ? found : layered(own, found);
}

/** The latest of some visits: by day, then by when they were begun, then the last in order. */
export function latestVisit(visits: readonly VisitRecord[]): VisitRecord | null {
  const isLater = (a: VisitDocument, b: VisitDocument): boolean =>
    a.date === b.date ? (a.startedMs ?? 0) >= (b.startedMs ?? 0) : a.date > b.date;
  return visits.reduce<VisitRecord | null>(
    (last, visit) => (last === null || isLater(visit.document, last.document) ? visit : last),
    null,
  );
}

/** How a horn stands now: the latest visit's as set, else its first whole setup. */
export function presentSetup(records: LibraryRecords, horn: HornRecord): SetupDocument {
  const last = latestVisit(records.visits.filter((v) => v.hornId === horn.id));
  const set = last === null ? null : setupOfVisit(records.setups, last.document, 'asSet');
  if (set !== null) return set;
  const whole = records.setups.find(
    (s) => s.hornId === horn.id && missingKeys(horn.document, s.document).length === 0,
  );
  if (whole === undefined) throw new RangeError(`invalid horn: “${horn.document.name}” has no whole setup`);
  return whole.document;
}

/** A horn of a file as it stands now. */
export function presentHorn(records: LibraryRecords, horn: HornRecord): HornAndSetup {
  return { horn: horn.document, setup: presentSetup(records, horn) };
}
