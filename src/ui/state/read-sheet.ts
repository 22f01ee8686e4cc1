import type { MeasuringPoint } from '../../acoustics/index.ts';
import { setupIn, SETUP_ROLES, type BenchContents } from '../../documents/bench-contents.ts';
import { parseMeasuredLength } from '../../documents/measured-length.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import { withSetupLength } from '../../documents/sheet-edits.ts';
import { loadHorn, readHornDocument } from '../../documents/to-acoustics.ts';
import { readWith } from '../../documents/schema-parts.ts';
import { visitSchema } from '../../documents/visit-document.ts';
import { lengthPlan, type FieldId, type HeadFieldId } from './fields.ts';
import type { TypedText } from './horn-on-bench.ts';
import {
  foundDocuments,
  openingAt,
  typedLength,
  withFoundLengths,
  withProposed,
  withSet,
} from './key-lengths.ts';

/** A text typed into one cell of the sheet. */
export interface CellText {
  readonly pad: string;
  readonly cell: FieldId;
  readonly text: string;
}

/** What cells are read with. */
export interface CellManner {
  /** of a plain number */
  readonly unit: LengthUnit;
  /** where an opening is read unless the text or the cell’s own choice says otherwise */
  readonly pointOf: (pad: string, cell: FieldId) => MeasuringPoint;
}

/** What became of typed cells. */
export interface SheetReading {
  readonly contents: BenchContents;
  /** what each cell keeps as typed; null where it shows what is in use */
  readonly kept: readonly {
    readonly pad: string;
    readonly cell: FieldId;
    readonly typed: TypedText | null;
  }[];
  /** the cells that were read at a point the text named */
  readonly named: readonly { readonly pad: string; readonly cell: FieldId; readonly at: MeasuringPoint }[];
  /** the last unit a text named; null where none did */
  readonly unit: LengthUnit | null;
}

const OPENINGS: readonly FieldId[] = ['openingMm', 'proposed', 'asSet'];
/** An empty text takes these away; the others must stay. */
const MAY_BE_EMPTY: readonly FieldId[] = ['proposed', 'asSet', 'adhesiveBedMm'];

const CELL_NAMES: Readonly<Partial<Record<FieldId, string>>> = {
  proposed: 'proposed opening',
  asSet: 'opening as set',
};

/**
 * Reads cells one after the other: what is understood is in use for the next, what is not is kept with why.
 *
 * @param waiting cells of the same keys that were refused before: a hole wider than the pad in use may be right once
 *                the pad is measured too, so they are read again, and what is still refused stays as it is
 */
export function readCells(
  contents: BenchContents,
  entries: readonly CellText[],
  manner: CellManner,
  waiting: readonly CellText[] = [],
): SheetReading {
  const read = entries.reduce<SheetReading>((reading, entry) => readCell(reading, entry, manner), {
    contents,
    kept: [],
    named: [],
    unit: null,
  });
  const refused = read.kept.filter(({ typed }) => typed !== null && typed.problem !== null);
  return readAgain(
    read,
    [...waiting, ...refused.map(({ pad, cell, typed }) => ({ pad, cell, text: typed!.text }))],
    manner,
  );
}

/** Takes what can be taken now of cells refused before, until none more can. */
function readAgain(reading: SheetReading, waiting: readonly CellText[], manner: CellManner): SheetReading {
  for (const entry of waiting) {
    const next = readCell(reading, entry, manner);
    if (next.contents === reading.contents) continue;
    const rest = waiting.filter((other) => other !== entry);
    return readAgain({ ...next, unit: reading.unit }, rest, manner);
  }
  return reading;
}

function readCell(reading: SheetReading, { pad, cell, text }: CellText, manner: CellManner): SheetReading {
  const keep = (typed: TypedText | null): SheetReading['kept'] => [...reading.kept, { pad, cell, typed }];
  const refuse = (problem: string): SheetReading => ({
    ...reading,
    kept: keep({ text, problem, value: null }),
  });
  const bare = text.trim();
  if (bare === '') {
    if (!MAY_BE_EMPTY.includes(cell)) return { ...reading, kept: keep(null) };
    return { ...reading, contents: withCell(reading.contents, pad, cell, null), kept: keep(null) };
  }
  const { length, at } = OPENINGS.includes(cell) ? splitPoint(bare) : { length: bare, at: null };
  const [plain, ...half] = length.split(/±|\+/);
  if (cell === 'proposed' && half.length > 0) {
    return refuse(
      `invalid proposed opening: “${length}”; expected no ± with it, since it is meant and not read`,
    );
  }
  if (isAmbiguous(cell, plain.trim(), manner.unit)) {
    return refuse(
      `“${length}” may be ${length} mm or ${length} thousandths of an inch; expected its unit with it`,
    );
  }
  const point = at ?? manner.pointOf(pad, cell);
  const read = readLength(cell, length, manner.unit);
  if (!read.ok) return refuse(read.message);
  let next: BenchContents;
  try {
    next = withCell(reading.contents, pad, cell, { ...read, at: point });
  } catch (error) {
    if (error instanceof RangeError) return refuse(error.message);
    throw error;
  }
  const problem = problemOf(next);
  if (problem !== null) return refuse(problem);
  return {
    contents: next,
    // The ± is shown below the number.
    kept: keep({ text: plain.trim(), problem: null, value: read.mm }),
    named: at === null ? reading.named : [...reading.named, { pad, cell, at }],
    unit: unitNamed(length) ?? reading.unit,
  };
}

function readLength(cell: FieldId, text: string, unit: LengthUnit): ReturnType<typeof parseMeasuredLength> {
  const plan = cell === 'proposed' || cell === 'asSet' ? null : lengthPlan(cell);
  const minus = plan?.signed === true && /^[-−]/.test(text);
  const name = plan?.name ?? CELL_NAMES[cell]!;
  const read = parseMeasuredLength(minus ? text.slice(1) : text, name, unit);
  return read.ok && minus ? { ...read, mm: -read.mm } : read;
}

/** Lengths of which nobody has less than a tenth of an inch. */
const NEVER_SMALL: readonly FieldId[] = [...OPENINGS, 'diameterMm', 'padDiameterMm', 'hingeMm'];
const SMALL_THOU = 100;

/** A plain small number while thousandths are in use: an 8 is then far more likely to mean millimetres. */
function isAmbiguous(cell: FieldId, text: string, unit: LengthUnit): boolean {
  if (unit !== 'thou' || !NEVER_SMALL.includes(cell)) return false;
  return /^\d+(?:[.,]\d*)?$/.test(text) && Number(text.replace(',', '.')) < SMALL_THOU && Number(text) !== 0;
}

/** `4.0 c`, `4,0 mm centre`: a length with its own measuring point. */
function splitPoint(text: string): { readonly length: string; readonly at: MeasuringPoint | null } {
  const match = /^(.*?[\d.,"″”a-z])\s*(?:at\s+the\s+)?\b(front|centre|center|back|[fcb])$/i.exec(text);
  const tight = match ?? /^(.*\d[.,]?)([fcb])$/i.exec(text);
  if (tight === null) return { length: text, at: null };
  const letter = tight[2].charAt(0).toLowerCase();
  const at = letter === 'f' ? 'front' : letter === 'c' ? 'centre' : 'back';
  return { length: tight[1].trim(), at };
}

function unitNamed(text: string): LengthUnit | null {
  if (/mm\.?$/i.test(text)) return 'mm';
  return /(?:in|inch|inches|"|″|”|''|thou|thousandths|mil)\.?$/i.test(text) ? 'thou' : null;
}

function withCell(
  contents: BenchContents,
  pad: string,
  cell: FieldId,
  opening: { readonly mm: number; readonly at: MeasuringPoint; readonly plusMinusMm: number | null } | null,
): BenchContents {
  switch (cell) {
    case 'proposed':
      return withProposed(
        contents,
        pad,
        opening === null ? null : openingAt(foundDocuments(contents), pad, opening, 'front'),
      );
    case 'asSet':
      return withSet(contents, pad, opening);
    case 'openingMm':
      return withFoundLengths(contents, pad, {
        ...typedLength(cell, opening!.mm, opening!.plusMinusMm),
        measuredAt: opening!.at,
      });
    default:
      return opening === null
        ? withoutLength(contents, pad)
        : withFoundLengths(contents, pad, typedLength(cell, opening.mm, opening.plusMinusMm));
  }
}

function withoutLength(contents: BenchContents, pad: string): BenchContents {
  const { asFound } = contents;
  const document = withSetupLength(asFound.document, pad, 'adhesiveBedMm', null);
  return { ...contents, asFound: { ...asFound, document } };
}

/** Why the horn cannot be so, in any of its setups; null if it can. */
function problemOf(contents: BenchContents): string | null {
  for (const role of SETUP_ROLES) {
    if (role !== 'asFound' && contents[role].document.keys.length === 0) continue;
    const read = loadHorn({ horn: contents.horn.document, setup: setupIn(contents, role) });
    if (!read.ok) return read.issues[0].message;
  }
  return null;
}

/** What became of a text of the sheet’s head. */
export type HeadOutcome =
  { readonly ok: true; readonly contents: BenchContents } | { readonly ok: false; readonly message: string };

const OF_THE_HORN: readonly HeadFieldId[] = ['name', 'maker', 'owner', 'serial'];
/** What must be said. */
const NEVER_EMPTY: readonly HeadFieldId[] = ['name', 'maker', 'date'];

/** Writes a text of the head into the horn or the visit; an empty one takes it away where it may be missing. */
export function readHead(contents: BenchContents, field: HeadFieldId, text: string): HeadOutcome {
  const value = text.trim();
  const isHorn = OF_THE_HORN.includes(field);
  const record = isHorn ? contents.horn : contents.visit;
  const changed: Partial<Record<string, unknown>> = { ...record.document, [field]: value };
  if (value === '' && !NEVER_EMPTY.includes(field)) delete changed[field];
  if (isHorn) {
    const read = readHornDocument(changed);
    if (!read.ok) return { ok: false, message: read.issues[0].message };
    return { ok: true, contents: { ...contents, horn: { ...contents.horn, document: read.value } } };
  }
  const read = readWith(visitSchema, changed);
  if (!read.ok) return { ok: false, message: read.issues[0].message };
  return { ok: true, contents: { ...contents, visit: { ...contents.visit, document: read.value } } };
}
