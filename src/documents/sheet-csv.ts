import Papa from 'papaparse';
import type { BenchContents } from './bench-contents.ts';
import { keyedHoles } from './horn-document.ts';
import { harmlessText } from './sheet-csv-cells.ts';
import {
  LENGTH_COLUMNS,
  lengthIn,
  originHeader,
  pointIn,
  SHEET_COLUMNS,
  SPARSE_COLUMNS,
  type SheetColumn,
} from './sheet-csv-columns.ts';
import type { SheetIssue, SheetReading } from './sheet-csv-key.ts';
import { readSheetRows } from './sheet-csv-rows.ts';

export type { ChangedCell, SheetIssue, SheetReading } from './sheet-csv-key.ts';

/** The longest text read as a sheet, in characters: sixty keys with every column need a hundredth of it. */
export const LONGEST_SHEET = 4_000_000;

/** The most rows read: far more than a horn has keys. */
export const MOST_ROWS = 500;

/** The most cells in a row read: several times the columns there are. */
export const MOST_CELLS = 300;

/** How a sheet is written. */
export interface SheetCsvOptions {
  /** semicolons between cells and commas in numbers, as much of Europe’s spreadsheets want them */
  readonly decimalComma?: boolean;
  /** a column beside each column of lengths that tells where its numbers come from */
  readonly origins?: boolean;
}

/**
 * Writes what is on the bench as a sheet for spreadsheets: one row a key in the order of the pad numbers, lengths
 * in mm as exactly as they are held; what a document leaves out is blank.
 *
 * @returns with byte-order mark and CRLF, so that ♭ and ♯ and the rows come out right
 */
export function writeSheetCsv(contents: BenchContents, options: SheetCsvOptions = {}): string {
  const { decimalComma = false, origins = false } = options;
  const holes = keyedHoles(contents.horn.document);
  const inUse = (column: SheetColumn): boolean =>
    !SPARSE_COLUMNS.some((c) => c === column) ||
    holes.some((hole) => 'of' in column && lengthIn(contents, hole.id, column) !== null);
  const columns = SHEET_COLUMNS.filter(inUse);
  const withOrigin = origins ? LENGTH_COLUMNS.filter(inUse) : [];
  const cellOf = (pad: string, column: SheetColumn): string => {
    if ('pointOf' in column) return pointIn(contents, pad, column.pointOf) ?? '';
    const mm = lengthIn(contents, pad, column)?.mm;
    if (mm === undefined) return '';
    return decimalComma ? String(mm).replace('.', ',') : String(mm);
  };
  const rows = holes.map((hole) => [
    String(hole.number),
    harmlessText(hole.id),
    harmlessText(hole.name),
    ...columns.map((column) => cellOf(hole.id, column)),
    ...withOrigin.map((column) => lengthIn(contents, hole.id, column)?.origin ?? ''),
  ]);
  const header = [
    'padNumber',
    'padId',
    'padName',
    ...columns.map((c) => c.header),
    ...withOrigin.map(originHeader),
  ];
  return `\uFEFF${Papa.unparse([header, ...rows], { delimiter: decimalComma ? ';' : ',', newline: '\r\n' })}\r\n`;
}

/**
 * Reads a sheet over what is on the bench. Columns may stand in any order and be fewer; a blank cell leaves its
 * number as it is; a cell may carry its own unit. A row is taken whole or not at all: where any of its cells
 * cannot be read, or together they cannot be, the key stays as it was and every reason is told.
 *
 * A number that differs counts as measured unless the sheet has a column that tells its origin.
 *
 * @param text with semicolons, commas or tabs between cells; with or without a byte-order mark
 */
export function readSheetCsv(text: string, contents: BenchContents): SheetReading {
  const refuse = (message: string): SheetReading => ({
    contents,
    issues: [{ row: null, field: '', message }],
    changedCells: [],
  });
  if (text.length > LONGEST_SHEET) {
    return refuse(
      `the sheet is too long: ${(text.length / 1e6).toFixed(1)} million characters; expected at most ${LONGEST_SHEET / 1e6} million`,
    );
  }
  // Line ends of every kind, mixed by hand too, become one.
  const body = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const { data, errors } = Papa.parse<string[]>(body, {
    delimiter: delimiterOf(body),
    newline: '\n',
    preview: MOST_ROWS + 2,
  });
  const broken = errors.flatMap(({ row, message, type }): SheetIssue[] =>
    type === 'Quotes'
      ? [{ row: (row ?? 0) + 1, field: '', message: `the quotes in this row do not close: ${message}` }]
      : [],
  );
  // A quote that never closes swallows all that follows: nothing of such a file can be trusted.
  if (broken.length > 0) return { contents, issues: broken, changedCells: [] };
  if (data.length > MOST_ROWS + 1)
    return refuse(`the sheet has more than ${MOST_ROWS} rows; expected one a key`);
  if (data.some((row) => row.length > MOST_CELLS)) {
    return refuse(`the sheet has more than ${MOST_CELLS} cells in a row; expected a column a measurement`);
  }
  return readSheetRows(data, contents);
}

const DELIMITERS = [',', ';', '\t'] as const;

/** What stands between cells: said by a `sep=` line, else what splits the first line with words into most cells. */
function delimiterOf(body: string): string {
  const said = /^"?sep=(.)"?\n/i.exec(body)?.[1];
  if (said !== undefined) return DELIMITERS.find((d) => d === said) ?? ',';
  const first = /[^\s,;][^\n]*/.exec(body)?.[0] ?? '';
  const outside = first.replace(/"[^"]*"/g, '');
  const count = (delimiter: string): number => outside.split(delimiter).length;
  return DELIMITERS.reduce((best, d) => (count(d) > count(best) ? d : best));
}
