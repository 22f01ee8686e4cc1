import type { BenchContents } from './bench-contents.ts';
import { dayBefore } from './carried-readings.ts';
import type { HornDocument, KeyedHole } from './horn-document.ts';
import type { LengthUnit } from './length-format.ts';
import { fileEntries, type FileEntry } from './player-sheet-file-entries.ts';
import type { PlayerSheetFacts } from './player-sheet-facts.ts';
import { followersOf } from './player-sheet-followers.ts';
import { dayWords } from './player-sheet-lengths.ts';
import { PROGRAM_VERSION } from './program-version.ts';
import { knownReading, type LengthField, type Origin, type Reading } from './readings.ts';

/** One reading as the shop’s page prints it. */
export interface FileCell {
  /** mm to a hundredth; empty where nothing is known */
  readonly value: string;
  /** `e ±1.5`: its origin by its first letter, and its ±, `v` for a visit before; empty where nothing is known */
  readonly origin: string;
}

/** Everything read of one key or vent. */
export interface FileRow {
  readonly pad: string;
  readonly number: number;
  readonly name: string;
  readonly cells: readonly FileCell[];
}

/** The page for the shop’s file. */
export interface SheetFile {
  readonly head: string;
  /** how the table is read: units, origins, measuring points */
  readonly legend: string;
  readonly columns: readonly string[];
  readonly rows: readonly FileRow[];
  /** everything else, each under its name */
  readonly entries: readonly FileEntry[];
  /** the foot of both pages */
  readonly foot: { readonly horn: string; readonly date: string };
}

const LETTERS: Readonly<Record<Origin, string>> = { measured: 'm', template: 'e', derived: 'd' };
/** Of an opening that was read on a visit before. */
const BEFORE = 'v';

/** Built lengths, and what they are called in a narrow column. */
const BUILT = [
  ['positionMm', 'place'],
  ['diameterMm', 'hole'],
  ['chimneyMm', 'chim.'],
  ['rimMm', 'rim'],
  ['hingeMm', 'hinge'],
  ['hingeHeightMm', 'rod ht'],
  ['cupFloorMm', 'floor'],
  ['cupDiameterMm', 'cup'],
] as const;

/** What the bench changes, besides the opening. */
const SET = [
  ['padDiameterMm', 'pad ⌀'],
  ['padThicknessMm', 'thick'],
  ['adhesiveBedMm', 'bed'],
  ['seatMm', 'seat'],
  ['footCorkMm', 'foot'],
] as const;

const OPENINGS = [
  ['asFound', 'found'],
  ['proposed', 'prop.'],
  ['asSet', 'set'],
] as const;

/** All data of a visit, compact. */
export function makeSheetFile(
  contents: BenchContents,
  facts: PlayerSheetFacts,
  unit: LengthUnit = 'mm',
): SheetFile {
  const { horn, visit } = contents;
  const { name, maker, serial, owner } = horn.document;
  const { date } = visit.document;
  const whose = [
    maker,
    serial === undefined ? null : `no. ${serial}`,
    owner === undefined ? null : `of ${owner}`,
  ];
  const rows = [...horn.document.holes]
    .sort((a, b) => a.number - b.number)
    .map((hole) => ({
      pad: hole.id,
      number: hole.number,
      name: hole.name,
      cells: [
        ...openingCells(contents, facts, hole),
        ...setCells(contents, hole),
        ...builtCells(horn.document, hole),
      ],
    }));
  const hasBefore = rows.some(({ cells }) => cells.some(({ origin }) => origin.startsWith(BEFORE)));
  return {
    head: `${[name, ...whose.filter((words) => words !== null)].join(', ')}. Written by Ventwright ${PROGRAM_VERSION}.`,
    legend:
      `All lengths in mm; 1 mm = 0.0394 in. Under each its origin (m measured on this horn, ${hasBefore ? `${BEFORE} on a visit before, ` : ''}e from an example of its kind, d derived) and its ±. ` +
      'Openings at the front unless c (centre) or b (back) follows. Pad, bed, seat and foot cork as set where set, else as found.',
    columns: [
      ...OPENINGS.map(([, label]) => label),
      ...SET.map(([, label]) => label),
      ...BUILT.map(([, label]) => label),
    ],
    rows,
    entries: fileEntries(contents, facts, unit).filter(({ text }) => text !== ''),
    foot: { horn: name, date: dayWords(date) },
  };
}

type Hole = HornDocument['holes'][number];

const EMPTY: FileCell = { value: '', origin: '' };

function cell(
  field: LengthField,
  mm: number | undefined,
  reading: Reading | undefined,
  otherwise: Origin,
  { at = '', visit }: { readonly at?: string; readonly visit?: { readonly date: string } } = {},
): FileCell {
  if (mm === undefined) return EMPTY;
  const known = knownReading(field, reading, otherwise);
  const isBefore = visit !== undefined && dayBefore(known, visit) !== null;
  return {
    value: `${mm.toFixed(field === 'positionMm' ? 1 : 2)}${at}`.replace('-', '−'),
    origin: `${isBefore ? BEFORE : LETTERS[known.origin]} ±${Number(known.plusMinusMm.toFixed(2))}`,
  };
}

/** Openings as they were read; as it leaves, those that only follow a key that is set too, as they are reckoned. */
function openingCells(contents: BenchContents, facts: PlayerSheetFacts, { id }: Hole): FileCell[] {
  const visit = contents.visit.document;
  const leaving = facts.isProposal ? 'proposed' : 'asSet';
  const follower = followersOf(facts).find(({ key }) => key.id === id);
  return OPENINGS.map(([role]) => {
    if (role === leaving && follower !== undefined) {
      const { frontMm, frontPlusMinusMm } = follower.key.setups[1]!;
      const reckoned: Reading = { origin: 'derived', plusMinusMm: frontPlusMinusMm };
      return cell('openingMm', frontMm, reckoned, 'derived');
    }
    const { keys, origin } = contents[role].document;
    const key = keys.find(({ pad }) => pad === id);
    const at = key?.measuredAt === undefined || key.measuredAt === 'front' ? '' : ` ${key.measuredAt[0]}`;
    return cell('openingMm', key?.openingMm, key?.readings?.openingMm, origin, { at, visit });
  });
}

function setCells({ asFound, asSet }: BenchContents, { id }: Hole): FileCell[] {
  return SET.map(([field]) => {
    const from = [asSet.document, asFound.document].find(({ keys }) =>
      keys.some((key) => key.pad === id && key[field] !== undefined),
    );
    const key = from?.keys.find(({ pad }) => pad === id);
    return from === undefined ? EMPTY : cell(field, key?.[field], key?.readings?.[field], from.origin);
  });
}

function builtCells({ origin }: HornDocument, hole: Hole): FileCell[] {
  return BUILT.map(([field]) => {
    const lengths: Partial<Record<(typeof BUILT)[number][0], number | undefined>> = {
      ...hole,
      ...((hole as Partial<KeyedHole>).key ?? {}),
    };
    return cell(field, lengths[field], hole.readings?.[field], origin);
  });
}
