import type { MeasuringPoint } from '../../../acoustics/index.ts';
import type { BenchContents } from '../../../documents/bench-contents.ts';
import { dayBefore } from '../../../documents/carried-readings.ts';
import { formatBoth, formatLength, type LengthUnit } from '../../../documents/length-format.ts';
import type { Origin } from '../../../documents/readings.ts';
import { knownHornLength, knownSetupLength, type KnownLength } from '../../../documents/sheet-edits.ts';
import { unbroken } from '../../parts/note-names.ts';
import { barePlusMinus, sign } from '../../parts/plus-minus-words.ts';
import type { SheetColumns } from '../../state/bench-state.ts';
import { lengthPlan, type FieldId, type LengthId } from '../../state/fields.ts';
import type { KeyTexts } from '../../state/horn-on-bench.ts';
import { foundDocuments, openingAt } from '../../state/key-lengths.ts';
import { proposedFronts } from '../../state/proposed-fronts.ts';
import { textInField } from '../../state/text-in-field.ts';
import { sentence } from '../key-study/measured-fields.model.ts';

/** One cell of the sheet to type into. */
export interface CellView {
  readonly cell: FieldId;
  /** as the column’s head says it, for screens without one */
  readonly label: string;
  readonly text: string;
  /** the value in the other unit; empty where there is none */
  readonly second: string;
  /** `±0.2`, in the unit chosen, as the text is; empty where there is nothing to be off */
  readonly plusMinus: string;
  readonly origin: Origin | null;
  /** the day of a visit before on which it was read; null where it was read on this one, or never */
  readonly readOn: string | null;
  /** `c` or `b` where the opening was read elsewhere than the sheet reads */
  readonly readAt: string;
  readonly problem: string | null;
  /** what a screen reader says */
  readonly said: string;
}

/** The columns of how keys stand. */
export const OPENING_CELLS: readonly FieldId[] = ['openingMm', 'proposed', 'asSet'];

/** The columns of what is measured once, those that matter most first. */
export const MEASURE_CELLS: readonly LengthId[] = [
  'diameterMm',
  'padDiameterMm',
  'hingeMm',
  'openingMm',
  'hingeHeightMm',
  'chimneyMm',
  'rimMm',
  'padThicknessMm',
  'adhesiveBedMm',
];

/** What vent share needs: with these four measured the answer is this horn’s. */
export const MAIN_CELLS: readonly LengthId[] = MEASURE_CELLS.slice(0, 4) as LengthId[];

export const ORIGIN_WORDS: Readonly<Record<Origin, string>> = {
  measured: 'measured',
  template: 'from the example',
  derived: 'derived',
};

/** Short heads of columns. */
export const CELL_LABELS: Readonly<Record<FieldId, string>> = {
  openingMm: 'as found',
  proposed: 'proposed',
  asSet: 'as set',
  diameterMm: 'hole ⌀',
  padDiameterMm: 'pad ⌀',
  hingeMm: 'rod to pad centre',
  hingeHeightMm: 'rod above rim',
  chimneyMm: 'chimney',
  rimMm: 'rim',
  padThicknessMm: 'pad thickness',
  adhesiveBedMm: 'adhesive bed',
};

/** The head of a column among its neighbours. */
export function labelOf(cell: FieldId, columns: SheetColumns): string {
  return columns === 'measures' && cell === 'openingMm' ? 'opening found' : CELL_LABELS[cell];
}

/** What cells depend on besides the horn. */
export interface CellManner {
  readonly columns: SheetColumns;
  readonly unit: LengthUnit;
  readonly readAt: MeasuringPoint;
}

/** A length in use, where it was read, and what is known of it; null where there is none. */
interface InUse extends KnownLength {
  readonly at: MeasuringPoint | null;
}

/** A cell’s length as it is shown: proposals at the sheet’s measuring point, readings where they were read. */
function inUse(contents: BenchContents, pad: string, cell: FieldId, readAt: MeasuringPoint): InUse | null {
  const without = (known: KnownLength | null): InUse | null =>
    known === null ? null : { ...known, at: null };
  switch (cell) {
    case 'openingMm':
    case 'asSet': {
      const { document } = cell === 'asSet' ? contents.asSet : contents.asFound;
      const known = knownSetupLength(document, pad, 'openingMm');
      const at = document.keys.find((k) => k.pad === pad)?.measuredAt ?? null;
      return known === null ? null : { ...known, at };
    }
    case 'proposed': {
      const mm = proposedFronts(contents)[pad];
      if (mm === undefined) return null;
      const shown = openingAt(foundDocuments(contents), pad, { mm, at: 'front' }, readAt);
      return { mm: shown, at: readAt, origin: 'derived', plusMinusMm: 0, tool: null, readOn: null };
    }
    case 'padDiameterMm':
    case 'padThicknessMm':
    case 'adhesiveBedMm':
      return without(knownSetupLength(contents.asFound.document, pad, cell));
    default:
      return without(knownHornLength(contents.horn.document, pad, cell));
  }
}

/** @param name how the key is said, `Pad 7, E key` */
export function makeCell(
  contents: BenchContents,
  { pad, name }: { readonly pad: string; readonly name: string },
  cell: FieldId,
  texts: KeyTexts | undefined,
  { unit, readAt, columns }: CellManner,
): CellView {
  const known = inUse(contents, pad, cell, readAt);
  const typed = texts?.[cell];
  const written = known === null ? '' : bare(formatLength(known.mm, unit));
  const isReading = known !== null && cell !== 'proposed';
  const elsewhere = known !== null && known.at !== null && known.at !== readAt ? known.at : null;
  const problem = typed?.problem ?? null;
  const before = isReading ? dayBefore(known, contents.visit.document) : null;
  const where = known === null || known.at === null ? '' : ` at the ${known.at}`;
  return {
    cell,
    label: labelOf(cell, columns),
    text: known === null ? (problem === null ? '' : typed!.text) : textInField(typed, known.mm, written),
    second: known === null ? '' : unbroken(formatLength(known.mm, unit === 'mm' ? 'thou' : 'mm')),
    plusMinus: isReading ? `±${barePlusMinus(known.plusMinusMm, unit)}` : '',
    origin: isReading ? known.origin : null,
    readOn: before,
    readAt: elsewhere === null ? '' : elsewhere,
    problem:
      problem === null
        ? null
        : unbroken(
            sentence(problem) +
              (known === null ? '' : ` Still in use: ${formatBoth(known.mm, unit)}${where}.`),
          ),
    said: [
      `${name}, ${spokenName(cell)}`,
      ...(known === null ? ['nothing yet'] : []),
      ...(elsewhere === null ? [] : [`read at the ${elsewhere}`]),
      ...(isReading
        ? [
            `${ORIGIN_WORDS[known.origin]}${before === null ? '' : ` on ${before}`}, plus or minus ${barePlusMinus(known.plusMinusMm, unit)} ${sign(unit)}`,
          ]
        : []),
    ].join(', '),
  };
}

function spokenName(cell: FieldId): string {
  return cell === 'proposed' || cell === 'asSet' ? `opening ${CELL_LABELS[cell]}` : lengthPlan(cell).name;
}

/** The number without its unit: the column says it once. */
function bare(text: string): string {
  return text.replace(/ (?:mm|in)$/, '');
}
