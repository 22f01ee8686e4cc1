import type { BenchContents, SetupRole } from './bench-contents.ts';
import type { HornField } from './horn-document.ts';
import type { Reading } from './readings.ts';
import type { KeySetupDocument, SetupField } from './setup-document.ts';
import {
  knownHornLength,
  knownSetupLength,
  withHornLength,
  withOpeningReading,
  withSetupLength,
  type KnownLength,
} from './sheet-edits.ts';

export type MeasuredAt = NonNullable<KeySetupDocument['measuredAt']>;

/** A column of lengths: its header carries the unit, and it belongs to the horn or to one of a visit’s setups. */
export type LengthColumn =
  | { readonly header: string; readonly words: string; readonly of: 'horn'; readonly field: HornField }
  | { readonly header: string; readonly words: string; readonly of: SetupRole; readonly field: SetupField };

/** A column that says where an opening column was read. */
export interface PointColumn {
  readonly header: string;
  readonly words: string;
  readonly pointOf: SetupRole;
}

export type SheetColumn = LengthColumn | PointColumn;

const horn = (header: string, words: string, field: HornField): LengthColumn => ({
  header,
  words,
  of: 'horn',
  field,
});

const found = (header: string, words: string, field: SetupField): LengthColumn => ({
  header,
  words,
  of: 'asFound',
  field,
});

const opening = (role: SetupRole, words: string): readonly [LengthColumn, PointColumn] => [
  { header: `${role}OpeningMm`, words: `opening ${words}`, of: role, field: 'openingMm' },
  { header: `${role}MeasuredAt`, words: `measuring point ${words}`, pointOf: role },
];

/** What the bench may change of a pad besides its opening, as found. */
const PAD_COLUMNS: readonly LengthColumn[] = [
  found('padThicknessMm', 'pad thickness', 'padThicknessMm'),
  found('adhesiveBedMm', 'adhesive bed', 'adhesiveBedMm'),
  found('seatMm', 'seat depth', 'seatMm'),
  found('footCorkMm', 'foot cork thickness', 'footCorkMm'),
];

const PAD_DIAMETER = found('padDiameterMm', 'pad diameter', 'padDiameterMm');

/** Every column of lengths and measuring points that is always written: what matters most first. */
export const STANDING_COLUMNS: readonly SheetColumn[] = [
  horn('holeDiameterMm', 'hole diameter', 'diameterMm'),
  PAD_DIAMETER,
  horn('hingeMm', 'hinge distance', 'hingeMm'),
  ...opening('asFound', 'as found'),
  ...opening('proposed', 'proposed'),
  ...opening('asSet', 'as set'),
  ...PAD_COLUMNS,
  horn('hingeHeightMm', 'rod height', 'hingeHeightMm'),
  horn('holePositionMm', 'hole position', 'positionMm'),
  horn('chimneyMm', 'chimney height', 'chimneyMm'),
  horn('rimMm', 'rim thickness', 'rimMm'),
  horn('cupFloorMm', 'cup floor to rim', 'cupFloorMm'),
  horn('cupDiameterMm', 'cup inner diameter', 'cupDiameterMm'),
];

const forRole = (column: LengthColumn, role: 'proposed' | 'asSet', words: string): LengthColumn => ({
  header: `${role}${column.header[0].toUpperCase()}${column.header.slice(1)}`,
  words: `${column.words} ${words}`,
  of: role,
  field: column.field as SetupField,
});

/** Pads proposed and set: written only where some key has one. */
export const SPARSE_COLUMNS: readonly LengthColumn[] = [PAD_DIAMETER, ...PAD_COLUMNS].flatMap((column) => [
  forRole(column, 'proposed', 'proposed'),
  forRole(column, 'asSet', 'as set'),
]);

/** Every column a sheet may have, apart from those that name the pad and those that tell origins. */
export const SHEET_COLUMNS: readonly SheetColumn[] = [...STANDING_COLUMNS, ...SPARSE_COLUMNS];

export const LENGTH_COLUMNS: readonly LengthColumn[] = SHEET_COLUMNS.filter((c) => 'of' in c);

/** The header of the column that tells where a column’s numbers come from: `holeDiameterOrigin`. */
export function originHeader(column: LengthColumn): string {
  return column.header.replace(/Mm$/, 'Origin');
}

/** A length as its own document has it; null where that document leaves it out. */
export function lengthIn(contents: BenchContents, pad: string, column: LengthColumn): KnownLength | null {
  return column.of === 'horn'
    ? knownHornLength(contents.horn.document, pad, column.field)
    : knownSetupLength(contents[column.of].document, pad, column.field);
}

/** Where a setup’s own opening was read; null where it has none. */
export function pointIn(contents: BenchContents, pad: string, role: SetupRole): MeasuredAt | null {
  return contents[role].document.keys.find((k) => k.pad === pad)?.measuredAt ?? null;
}

/**
 * The contents with one length otherwise.
 *
 * @param at where it was read; counts for openings alone
 */
export function withLength(
  contents: BenchContents,
  pad: string,
  column: LengthColumn,
  { mm, at, reading }: { readonly mm: number; readonly at: MeasuredAt; readonly reading: Reading },
): BenchContents {
  if (column.of === 'horn') {
    const document = withHornLength(contents.horn.document, pad, column.field, mm, reading);
    return { ...contents, horn: { ...contents.horn, document } };
  }
  const { of: role, field } = column;
  const before = contents[role].document;
  const document =
    field === 'openingMm'
      ? withOpeningReading(before, pad, { mm, at }, reading)
      : withSetupLength(before, pad, field, mm, reading);
  return { ...contents, [role]: { ...contents[role], document } };
}
