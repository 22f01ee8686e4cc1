import Papa from 'papaparse';
import { findFingering } from '../acoustics/index.ts';
import {
  FARTHEST_CENTS,
  HEARD,
  MOST_TAKES,
  PLAYED_SETUPS,
  type PlayedSetup,
  type Take,
} from './pitch-log.ts';
import { harmlessText } from './sheet-csv-cells.ts';

/** The longest text read as a log, in characters: two thousand takes need a thirtieth of it. */
export const LONGEST_LOG = 4_000_000;

/** One row that could not be read. */
export interface LogIssue {
  /** as a spreadsheet counts them, the header first; null of the whole table */
  readonly row: number | null;
  readonly message: string;
}

/** What a table of played notes held. */
export interface LogReading {
  readonly takes: readonly Take[];
  readonly issues: readonly LogIssue[];
}

const HEADERS = ['fingering', 'cents', 'setup', 'heard', 'spreadCents', 'leftOut'] as const;
type Header = (typeof HEADERS)[number];

/** Writes takes as a table for spreadsheets, with byte-order mark and CRLF. */
export function writePitchCsv(takes: readonly Take[], decimalComma = false): string {
  const number = (value: number | undefined): string => {
    const plain = value === undefined ? '' : String(value);
    return decimalComma ? plain.replace('.', ',') : plain;
  };
  const rows = takes.map((each) => [
    harmlessText(each.fingering),
    number(each.cents),
    each.setup,
    each.heard,
    number(each.spreadCents),
    each.leftOut === true ? 'yes' : '',
  ]);
  return `\uFEFF${Papa.unparse([HEADERS, ...rows], { delimiter: decimalComma ? ';' : ',', newline: '\r\n' })}\r\n`;
}

/**
 * Reads a table of played notes: `fingering` and `cents`, and where they are there `setup`, `heard`, `spreadCents`
 * and `leftOut`, in any order. Without a header the first two columns are fingering and cents. Every row is a take
 * or a sentence on why it is none; the others are read all the same.
 *
 * @param setup of rows that do not say which was played
 */
export function readPitchCsv(text: string, setup: PlayedSetup): LogReading {
  const refuse = (message: string): LogReading => ({ takes: [], issues: [{ row: null, message }] });
  if (text.length > LONGEST_LOG) {
    return refuse(
      `the table is too long: ${(text.length / 1e6).toFixed(1)} million characters; expected at most ${LONGEST_LOG / 1e6} million`,
    );
  }
  const body = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const { data, errors } = Papa.parse<string[]>(body, {
    delimiter: delimiterOf(body),
    newline: '\n',
    preview: MOST_TAKES + 2,
  });
  const broken = errors.find(({ type }) => type === 'Quotes');
  if (broken !== undefined) {
    return {
      takes: [],
      issues: [{ row: (broken.row ?? 0) + 1, message: 'the quotes in this row do not close' }],
    };
  }
  if (data.length > MOST_TAKES + 1)
    return refuse(`the table has more than ${MOST_TAKES} rows; expected one a take`);
  const start = data.findIndex((row) => row.some((cell) => cell.trim() !== '') && !/^sep=/i.test(row[0]));
  if (start < 0) return refuse('the table is empty; expected rows of fingering and cents');
  const columns = columnsOf(data[start]);
  if (typeof columns === 'string') return refuse(columns);
  const takes: Take[] = [];
  const issues: LogIssue[] = [];
  data.slice(columns.hasHeader ? start + 1 : start).forEach((row, i) => {
    if (row.every((cell) => cell.trim() === '')) return;
    const read = takeOf((header) => row[columns.at[header] ?? -1]?.trim() ?? '', setup);
    if (typeof read === 'string') {
      issues.push({ row: start + i + (columns.hasHeader ? 2 : 1), message: read });
    } else takes.push(read);
  });
  return { takes, issues };
}

interface Columns {
  readonly hasHeader: boolean;
  readonly at: Readonly<Partial<Record<Header, number>>>;
}

/** Which column is which, or a sentence. */
function columnsOf(first: readonly string[]): Columns | string {
  const names = first.map((cell) => cell.trim().toLowerCase());
  const at = Object.fromEntries(
    HEADERS.flatMap((header) => {
      const index = names.indexOf(header.toLowerCase());
      return index < 0 ? [] : [[header, index]];
    }),
  ) as Columns['at'];
  if (at.fingering !== undefined && at.cents !== undefined) return { hasHeader: true, at };
  if (findFingering(ascii(first[0] ?? '')) !== undefined)
    return { hasHeader: false, at: { fingering: 0, cents: 1 } };
  return `the table has the columns ${names.map((n) => `"${n}"`).join(', ')}; expected "fingering" and "cents"`;
}

/** A note's name as it may be typed: `f♯4`, `B♭4 bis`. */
function ascii(name: string): string {
  const plain = name.trim().replaceAll('♭', 'b').replaceAll('♯', '#');
  return plain === '' ? plain : plain[0].toUpperCase() + plain.slice(1);
}

/** A row as a take, or why it is none. */
function takeOf(cell: (header: Header) => string, otherwise: PlayedSetup): Take | string {
  const name = cell('fingering');
  const fingering = findFingering(ascii(name));
  if (fingering === undefined) return `invalid fingering: "${name}"; expected one such as F4 or Bb4 bis`;
  const cents = numberOf(cell('cents'));
  if (!(Math.abs(cents) <= FARTHEST_CENTS)) {
    return `invalid cents of ${fingering.id}: "${cell('cents')}"; expected −${FARTHEST_CENTS} to ${FARTHEST_CENTS} cents`;
  }
  const setup = wordOf(cell('setup'), PLAYED_SETUPS, otherwise);
  if (setup === null)
    return `invalid setup of ${fingering.id}: "${cell('setup')}"; expected as found or as set`;
  const heard = wordOf(cell('heard'), HEARD, 'table');
  if (heard === null)
    return `invalid heard of ${fingering.id}: "${cell('heard')}"; expected ${HEARD.join(', ')}`;
  const spread = cell('spreadCents') === '' ? null : numberOf(cell('spreadCents'));
  if (spread !== null && !(spread >= 0 && spread <= 100)) {
    return `invalid spread of ${fingering.id}: "${cell('spreadCents')}"; expected 0 to 100 cents`;
  }
  return {
    fingering: fingering.id,
    cents,
    setup,
    heard,
    ...(spread === null ? {} : { spreadCents: spread }),
    ...(/^(yes|true|1)$/i.test(cell('leftOut')) ? { leftOut: true } : {}),
  };
}

function wordOf<T extends string>(typed: string, words: readonly T[], otherwise: T): T | null {
  if (typed === '') return otherwise;
  return words.find((word) => word === typed.toLowerCase()) ?? null;
}

/** A number with a point or a comma, and any of the signs for minus; NaN where it is none. */
function numberOf(typed: string): number {
  const plain = typed
    .replace(',', '.')
    .replace(/^[−–]/, '-')
    .replace(/\s*(cents?|¢|ct)$/i, '');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : NaN;
}

/** Semicolons and tabs stand between cells wherever they stand at all: a comma may be a decimal one. */
function delimiterOf(body: string): string {
  const said = /^"?sep=(.)"?\n/i.exec(body)?.[1];
  if (said !== undefined) return said;
  const first = /[^\s][^\n]*/.exec(body)?.[0] ?? '';
  return first.includes('\t') ? '\t' : first.includes(';') ? ';' : ',';
}
