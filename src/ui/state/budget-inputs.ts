import { DEFAULT_PAD_MODEL, type ReadingKind } from '../../acoustics/index.ts';
import type { BenchContents } from '../../documents/bench-contents.ts';
import { budgetParts, NAMED_PARTS } from '../../documents/budget-parts.ts';
import type { HornField } from '../../documents/horn-document.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import { knownRatio } from '../../documents/link-ratios.ts';
import type { SetupField } from '../../documents/setup-document.ts';
import { knownHornLength, knownSetupLength, type KnownLength } from '../../documents/sheet-edits.ts';
import type { BudgetReport, ReadingReport } from '../../documents/uncertainty-report.ts';
import { FROM, lengthInput, OPENED } from './reason-inputs.ts';
import type { ReasonInput } from './reasons.ts';

/** Where the horn’s document keeps a reading, and where a setup does. */
const BUILT: Readonly<Partial<Record<ReadingKind, HornField>>> = {
  hingeDistance: 'hingeMm',
  hingeHeight: 'hingeHeightMm',
  rimThickness: 'rimMm',
  holeRadius: 'diameterMm',
  chimney: 'chimneyMm',
  place: 'positionMm',
};
const SET: Readonly<Partial<Record<ReadingKind, SetupField>>> = {
  padThickness: 'padThicknessMm',
  padRadius: 'padDiameterMm',
};

/** Two routes to one reading, mm. */
const SAME_MM = 1e-6;

/**
 * What a note’s cents were worked out from and matters: the parts of their ± that are told by name, each as it was
 * read and where it comes from. What calibrating found is told by its part alone.
 */
export function budgetInputs(
  contents: BenchContents,
  budget: BudgetReport | null,
  unit: LengthUnit,
): ReasonInput[] {
  if (budget === null) return [];
  const named = budgetParts(budget, NAMED_PARTS).flatMap(({ label, reading, size }): ReasonInput[] => {
    if (reading !== null) return [readingInput(contents, reading, unit)];
    switch (label) {
      case 'pad model': {
        const percent = Math.round(100 * DEFAULT_PAD_MODEL.relativeError);
        const value = `± ${percent} % of what a pad adds to its hole`;
        return [{ label, value, from: 'our solved flow under a pad' }];
      }
      case 'model of the whole horn':
        return [{ label, value: `± ${size.toFixed(0)} cents`, from: 'Lefebvre 2010' }];
      default:
        return [];
    }
  });
  return [...named, boreInput(contents)];
}

/** Nothing of a bore’s widths is read with a ±; the model’s own stands for them. */
function boreInput({ horn }: BenchContents): ReasonInput {
  const count = horn.document.bore.reduce((sum, { points }) => sum + points.length, 0);
  return { label: 'bore', value: `${count} diameters`, from: 'from the bore’s table, taken as exact' };
}

function readingInput(contents: BenchContents, reading: ReadingReport, unit: LengthUnit): ReasonInput {
  const { label, value, plusMinus, unit: own } = reading;
  const known = knownOf(contents, reading);
  if (known !== null && value !== null) {
    const length = { ...known.length, mm: value, plusMinusMm: plusMinus };
    return lengthInput(`${label}${known.at}`, length, unit);
  }
  const half = `± ${Number(plusMinus.toPrecision(2))}${own === '' ? '' : ` ${own}`}`;
  const told =
    value === null ? 'as described' : `${Number(value.toPrecision(3))}${own === '' ? '' : ` ${own}`}`;
  return { label, value: `${told} ${half}`, from: otherOrigin(contents, reading) };
}

/** What the documents know of a length that was read, and of an opening when and where it was. */
function knownOf(
  { horn, asFound, asSet }: BenchContents,
  { kind, pad, value }: ReadingReport,
): { readonly length: KnownLength; readonly at: string } | null {
  if (pad === null) return null;
  const [built, set] = [BUILT[kind], SET[kind]];
  const plain = (length: KnownLength | null) => (length === null ? null : { length, at: '' });
  if (built !== undefined) return plain(knownHornLength(horn.document, pad, built));
  if (set !== undefined) return plain(knownSetupLength(asFound.document, pad, set));
  const roles = [
    ['asSet', asSet],
    ['asFound', asFound],
  ] as const;
  for (const [role, { document }] of roles) {
    const length = knownSetupLength(document, pad, 'openingMm');
    if (length === null || Math.abs(length.mm - (value ?? NaN)) > SAME_MM) continue;
    const point = document.keys.find((key) => key.pad === pad)?.measuredAt;
    return { length, at: `, ${OPENED[role]}${point === undefined ? '' : ` at the ${point}`}` };
  }
  return null;
}

/** Where air, mouthpiece or a link’s ratio comes from. */
function otherOrigin({ horn: { document: horn }, asFound }: BenchContents, reading: ReadingReport): string {
  if (reading.kind === 'temperature') return 'of this visit';
  if (reading.link === null) return FROM[horn.origin];
  const { driver, driven } = reading.link;
  const link = horn.links.find((each) => each.driver === driver && each.driven === driven);
  if (link === undefined) return '';
  const known = knownRatio(horn, asFound.document, link);
  if (known?.from === 'arms') return 'worked out from its arms';
  const wasRead = asFound.document.links?.some((each) => each.driver === driver && each.driven === driven);
  return wasRead === true ? '' : FROM[link.ratioOrigin ?? horn.origin];
}
