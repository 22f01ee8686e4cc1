import { SETUP_ROLES, setupIn, type BenchContents, type SetupRole } from './bench-contents.ts';
import type { HoleDocument } from './horn-document.ts';
import { ORIGINS, type Origin } from './readings.ts';
import type { DocumentIssue } from './schema-parts.ts';
import { plainText, readLengthCell, short } from './sheet-csv-cells.ts';
import {
  LENGTH_COLUMNS,
  lengthIn,
  originHeader,
  pointIn,
  withLength,
  type LengthColumn,
  type MeasuredAt,
} from './sheet-csv-columns.ts';
import { readHornDocument, readSetupDocument } from './to-acoustics.ts';

/** One thing wrong with a sheet. */
export interface SheetIssue {
  /** as spreadsheets count, the first row is 1; null for the file as a whole */
  readonly row: number | null;
  /** the column’s header, or empty for the row as a whole */
  readonly field: string;
  readonly message: string;
}

/** A cell that says something else than the bench did. */
export interface ChangedCell {
  readonly row: number;
  readonly field: string;
  readonly pad: string;
}

/** What came of a sheet: the contents with every good row, every issue, and what changed. */
export interface SheetReading {
  readonly contents: BenchContents;
  readonly issues: readonly SheetIssue[];
  readonly changedCells: readonly ChangedCell[];
}

/** One row by its headers in lower case: cells that are not blank, trimmed. */
export type Cells = ReadonlyMap<string, string>;

/** Reads one key's row; with any issue, nothing of it is to be taken. */
export function readKeyCells(
  cells: Cells,
  row: number,
  hole: HoleDocument,
  contents: BenchContents,
): SheetReading {
  const issues: SheetIssue[] = [];
  const changedCells: ChangedCell[] = [];
  let now = contents;
  const cell = cells.get('padname');
  const name = cell === undefined ? null : plainText(cell);
  // Line ends in a name come back as one kind.
  if (name !== null && name !== hole.name.replace(/\r\n?/g, '\n')) {
    now = withName(now, hole.id, name);
    changedCells.push({ row, field: 'padName', pad: hole.id });
  }
  const wrong = (field: string, message: string): void => void issues.push({ row, field, message });
  const points = readPoints(cells, hole, now, wrong);
  for (const column of LENGTH_COLUMNS) {
    const point = column.field === 'openingMm' ? points.get(column.of as SetupRole) : undefined;
    const read = readColumn(cells, column, hole, { contents: now, point, wrong });
    now = read.contents;
    changedCells.push(...read.changed.map((field) => ({ row, field, pad: hole.id })));
  }
  if (issues.length === 0 && changedCells.length > 0) issues.push(...contradictions(contents, now, row));
  return { contents: now, issues, changedCells };
}

interface ColumnReading {
  readonly contents: BenchContents;
  /** headers of the cells that say something else */
  readonly changed: readonly string[];
}

/** One column of a key: the number, where it comes from and, of an opening, where it was read. */
function readColumn(
  cells: Cells,
  column: LengthColumn,
  hole: HoleDocument,
  on: { readonly contents: BenchContents; readonly point: Point | undefined; readonly wrong: Complain },
): ColumnReading {
  const { contents, point, wrong } = on;
  const same: ColumnReading = { contents, changed: [] };
  const words = `${column.words} of pad ${hole.number}`;
  const cell = cells.get(column.header.toLowerCase());
  const before = lengthIn(contents, hole.id, column);
  const read = cell === undefined ? null : readLengthCell(cell, words);
  if (read?.ok === false) wrong(column.header, read.message);
  const origin = readOrigin(cells.get(originHeader(column).toLowerCase()));
  if (origin === null) {
    wrong(originHeader(column), `invalid origin of the ${words}; expected ${ORIGINS.join(', ')}`);
  }
  if (read?.ok === false || origin === null) return same;
  const mm = read?.mm ?? before?.mm;
  if (mm === undefined) {
    if (origin !== undefined) wrong(originHeader(column), `the ${words} has an origin but no number`);
    if (point?.isTold) wrong(point.header, `the ${words} has a measuring point but no number`);
    return same;
  }
  const moves = point !== undefined && point.at !== pointIn(contents, hole.id, column.of as SetupRole);
  const turns = origin !== undefined && origin !== before?.origin;
  if (mm === before?.mm && !moves && !turns) return same;
  return {
    contents: withLength(contents, hole.id, column, {
      mm,
      at: point?.at ?? 'front',
      reading: { origin: origin ?? 'measured' },
    }),
    changed: [
      ...(mm === before?.mm ? [] : [column.header]),
      ...(moves && point.isTold ? [point.header] : []),
      ...(turns ? [originHeader(column)] : []),
    ],
  };
}

type Complain = (field: string, message: string) => void;

interface Point {
  readonly header: string;
  readonly at: MeasuredAt;
  /** whether the sheet says it, rather than the bench */
  readonly isTold: boolean;
}

/** Where each opening was read: as the sheet says, else as the setup has it, else as found has it. */
function readPoints(
  cells: Cells,
  hole: HoleDocument,
  contents: BenchContents,
  wrong: Complain,
): ReadonlyMap<SetupRole, Point> {
  const points = new Map<SetupRole, Point>();
  for (const role of SETUP_ROLES) {
    const header = `${role}MeasuredAt`;
    const told = cells.get(header.toLowerCase());
    const before =
      pointIn(contents, hole.id, role) ?? points.get('asFound')?.at ?? pointIn(contents, hole.id, 'asFound');
    const at = told === undefined ? (before ?? 'front') : pointOf(told);
    if (at !== null) points.set(role, { header, at, isTold: told !== undefined });
    else {
      wrong(
        header,
        `invalid measuring point of pad ${hole.number}: “${short(told!)}”; expected front, centre or back`,
      );
    }
  }
  return points;
}

function pointOf(word: string): MeasuredAt | null {
  const at = word.toLowerCase().replace('center', 'centre');
  return at === 'front' || at === 'centre' || at === 'back' ? at : null;
}

/** The origin a cell tells: undefined where it is blank, null where it is none. */
function readOrigin(cell: string | undefined): Origin | undefined | null {
  if (cell === undefined) return undefined;
  return ORIGINS.find((o) => o === cell.toLowerCase()) ?? null;
}

function withName(contents: BenchContents, pad: string, name: string): BenchContents {
  const { document } = contents.horn;
  const holes = document.holes.map((hole) => (hole.id === pad ? { ...hole, name } : hole));
  return { ...contents, horn: { ...contents.horn, document: { ...document, holes } } };
}

/** What is wrong after a row that was not before it, each under its column. */
function contradictions(before: BenchContents, after: BenchContents, row: number): SheetIssue[] {
  const old = new Set(problemsOf(before).map((p) => p.message));
  const fresh = problemsOf(after).filter((p) => !old.has(p.message));
  return fresh
    .filter((p, i) => fresh.findIndex((q) => q.message === p.message) === i)
    .map(({ path, message, of }) => ({ row, field: headerFor(of, path), message }));
}

function problemsOf(contents: BenchContents): (DocumentIssue & { readonly of: LengthColumn['of'] })[] {
  const horn = readHornDocument(contents.horn.document);
  if (!horn.ok) return horn.issues.map((issue) => ({ ...issue, of: 'horn' as const }));
  return SETUP_ROLES.flatMap((role) => {
    const alone = readSetupDocument(contents[role].document, horn.value);
    const read = alone.ok ? readSetupDocument(setupIn(contents, role), horn.value) : alone;
    return read.ok ? [] : read.issues.map((issue) => ({ ...issue, of: role }));
  });
}

/** The column a path in a document stands in, or empty. */
function headerFor(of: LengthColumn['of'], path: string): string {
  const field = /(\w+)$/.exec(path)?.[1];
  if (field === 'name') return 'padName';
  return LENGTH_COLUMNS.find((c) => c.of === of && c.field === field)?.header ?? '';
}
