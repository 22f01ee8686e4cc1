import type { BenchContents } from './bench-contents.ts';
import { keyedHoles, type HoleDocument } from './horn-document.ts';
import { plainText, short } from './sheet-csv-cells.ts';
import { LENGTH_COLUMNS, originHeader, SHEET_COLUMNS } from './sheet-csv-columns.ts';
import {
  readKeyCells,
  type Cells,
  type ChangedCell,
  type SheetIssue,
  type SheetReading,
} from './sheet-csv-key.ts';

const KNOWN_HEADERS: readonly string[] = [
  'padNumber',
  'padId',
  'padName',
  ...SHEET_COLUMNS.map((c) => c.header),
  ...LENGTH_COLUMNS.map(originHeader),
];

/** Reads rows of cells, the first with words in it being the header. */
export function readSheetRows(rows: readonly (readonly string[])[], contents: BenchContents): SheetReading {
  const isEmpty = (row: readonly string[]): boolean => row.every((cell) => cell.trim() === '');
  const isSaid = (row: readonly string[]): boolean => /^sep=.?$/i.test(row.join('').trim());
  const top = rows.findIndex((row) => !isEmpty(row) && !isSaid(row));
  const header = readHeader(rows[top] ?? [], top + 1);
  if (!header.ok) return { contents, issues: header.issues, changedCells: [] };
  const issues: SheetIssue[] = [...header.issues];
  const changedCells: ChangedCell[] = [];
  const seen = new Set<string>();
  let now = contents;
  rows.forEach((row, i) => {
    if (i <= top || isEmpty(row)) return;
    const read = readRow(row, i + 1, header.columns, now, seen);
    issues.push(...read.issues);
    if (read.issues.length > 0) return;
    now = read.contents;
    changedCells.push(...read.changedCells);
  });
  return { contents: now, issues, changedCells };
}

/** Headers in lower case by place; null where a column is left out. */
type Header =
  | {
      readonly ok: true;
      readonly columns: readonly (string | null)[];
      readonly issues: readonly SheetIssue[];
    }
  | { readonly ok: false; readonly issues: readonly SheetIssue[] };

function readHeader(row: readonly string[], number: number): Header {
  const known = new Map(KNOWN_HEADERS.map((header) => [header.toLowerCase(), header]));
  const issues: SheetIssue[] = [];
  const columns = row.map((cell, i) => {
    const name = cell.trim().toLowerCase();
    if (name === '') return null;
    if (!known.has(name)) {
      issues.push({
        row: number,
        field: short(cell.trim()),
        message: `unknown column “${short(cell.trim())}”; it is left out`,
      });
      return null;
    }
    if (row.findIndex((other) => other.trim().toLowerCase() === name) === i) return name;
    issues.push({
      row: number,
      field: known.get(name)!,
      message: `the column ${known.get(name)!} stands twice; the second is left out`,
    });
    return null;
  });
  if (columns.includes('padid') || columns.includes('padnumber')) return { ok: true, columns, issues };
  const message =
    'no row of headers with padNumber or padId was found; expected headers such as padNumber, holeDiameterMm, asFoundOpeningMm';
  return { ok: false, issues: [{ row: null, field: '', message }] };
}

function readRow(
  row: readonly string[],
  number: number,
  columns: readonly (string | null)[],
  contents: BenchContents,
  seen: Set<string>,
): SheetReading {
  const fail = (field: string, message: string): SheetReading => ({
    contents,
    issues: [{ row: number, field, message }],
    changedCells: [],
  });
  if (row.slice(columns.length).some((cell) => cell.trim() !== '')) {
    return fail(
      '',
      `the row has ${row.length} cells under ${columns.length} headers; a number with a decimal comma needs quotes where commas stand between cells`,
    );
  }
  const cells = new Map<string, string>();
  columns.forEach((name, i) => {
    const cell = row[i] ?? '';
    if (name !== null && cell.trim() !== '') cells.set(name, name === 'padname' ? cell : cell.trim());
  });
  const hole = holeOf(cells, contents);
  if (typeof hole === 'string') return fail(cells.has('padid') ? 'padId' : 'padNumber', hole);
  if (seen.has(hole.id)) return fail('padId', `pad ${hole.number} has a row already; this one is left out`);
  seen.add(hole.id);
  return readKeyCells(cells, number, hole, contents);
}

/** The key a row is of, or a sentence on why there is none. */
function holeOf(cells: Cells, contents: BenchContents): HoleDocument | string {
  const holes = keyedHoles(contents.horn.document);
  const id = cells.get('padid');
  const number = cells.get('padnumber');
  if (id === undefined && number === undefined) return 'the row names no pad; expected padNumber or padId';
  const matching = holes.filter(
    (h) =>
      (id === undefined || h.id === plainText(id) || h.id === id) &&
      (number === undefined || h.number === Number(number.replace(',', '.'))),
  );
  if (matching.length === 1) return matching[0];
  const named = [number, id]
    .flatMap((word) => (word === undefined ? [] : [`“${short(word)}”`]))
    .join(' with id ');
  return matching.length === 0
    ? `the horn has no key on a pad ${named}`
    : `the horn has ${matching.length} pads ${named}; expected padId as well`;
}
