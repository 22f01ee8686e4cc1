import type { MeasuringPoint } from '../../../acoustics/index.ts';
import type {
  ComparedKeyReport,
  ComparisonReport,
  KeyInSetupReport,
} from '../../../documents/comparison-report.ts';
import { formatLength, type LengthUnit } from '../../../documents/length-format.ts';
import { tenths } from '../../../documents/tenths.ts';
import { signedCents } from '../../parts/note-names.ts';
import { barePlusMinus } from '../../parts/plus-minus-words.ts';
import type { SideOrder } from '../../state/side-by-side-state.ts';
import {
  group,
  headsOf,
  NOTHING,
  SAME,
  type Cell,
  type ComparisonRow,
  type ComparisonTable,
} from './comparison-tables.model.ts';
import { letterOf } from './letters.ts';

/** Every key as it stands: openings, and what they are worth. */
export function makeKeysTable(
  report: ComparisonReport,
  columns: readonly number[],
  order: SideOrder,
  { unit, at }: { readonly unit: LengthUnit; readonly at: MeasuringPoint },
): ComparisonTable {
  const { states, differences } = headsOf(report, columns);
  const reference = letterOf(columns[0]);
  const inUnit = unit === 'mm' ? 'mm' : 'in';
  const oneHorn = report.setups.every(({ sameHornAsFirst }) => sameHornAsFirst);
  const keys = order === 'pitch' ? [...report.keys].sort((a, b) => a.number - b.number) : report.keys;
  const names = new Map(report.keys.map(({ id, name }) => [id, name]));
  return {
    first: 'Key',
    groups: [
      group(`Opening beside ${reference}, ${inUnit}`, differences, 'difference', 'difference'),
      group(`Vent share beside ${reference}, %`, differences, 'difference aside', 'vent-share'),
      group(`Opening at the ${at}, ${inUnit}`, states, 'state', 'opening'),
      group('Opening as % of hole across', states, 'state', 'opening'),
      group(`Worth a parallel opening of, ${inUnit}`, states, 'state', 'equivalent-opening'),
      group('Vent share, %', states, 'state', 'vent-share'),
      ...(oneHorn ? [] : [group(`Hole across, ${inUnit}`, states, 'state', null)]),
    ],
    rows: keys.map((key) => keyRow(key, unit, at, oneHorn, names)),
  };
}

function keyRow(
  { id, name, number, setups, differences }: ComparedKeyReport,
  unit: LengthUnit,
  at: MeasuringPoint,
  oneHorn: boolean,
  names: ReadonlyMap<string, string>,
): ComparisonRow {
  const each = (show: (key: KeyInSetupReport) => Cell): Cell[] =>
    setups.map((key) => (key === null ? NOTHING : show(key)));
  const [first] = setups;
  return {
    id,
    label: `${number} ${name}`,
    cells: [
      differences.map((d, i) => {
        const key = setups[i + 1];
        if (d === null || key === null || first === null) return NOTHING;
        if (d.frontMm === 0 && d.frontPlusMinusMm === 0) return SAME;
        const away = openingMm(key, at) - openingMm(first, at);
        if (at !== 'front') return { text: signed(away, unit) };
        return told(
          `${signed(d.frontMm, unit)}\u00a0±\u00a0${barePlusMinus(d.frontPlusMinusMm, unit)}`,
          Math.abs(d.frontMm) > d.frontPlusMinusMm,
        );
      }),
      differences.map((d) => {
        if (d === null) return NOTHING;
        if (d.ventShare === 0 && d.ventSharePlusMinus === 0) return SAME;
        return told(
          `${signedCents(100 * d.ventShare)}\u00a0±\u00a0${tenths(100 * d.ventSharePlusMinus)}`,
          Math.abs(d.ventShare) > d.ventSharePlusMinus,
        );
      }),
      each((key) => ({
        text: bare(openingMm(key, at), unit),
        ...(at === 'front' ? { plusMinus: barePlusMinus(key.frontPlusMinusMm, unit) } : {}),
        ...(key.ruledBy === null ? {} : { under: `held by ${names.get(key.ruledBy) ?? key.ruledBy}` }),
      })),
      each((key) => ({ text: percent(ofDiameter(key, at)) })),
      each((key) => ({ text: bare(key.equivalentParallelMm, unit) })),
      each((key) => ({
        text: percent(key.ventShare),
        plusMinus: `${Math.max(1, Math.round(100 * key.ventSharePlusMinus))}`,
      })),
      ...(oneHorn ? [] : [each((key) => ({ text: bare(key.holeDiameterMm, unit) }))]),
    ],
  };
}

/** A difference of a key; inside its ± it says so. */
function told(text: string, shown: boolean): Cell {
  return shown ? { text, shown } : { text, shown, under: 'cannot be shown' };
}

function openingMm(key: KeyInSetupReport, at: MeasuringPoint): number {
  return { front: key.frontMm, centre: key.centreMm, back: key.backMm }[at];
}

function ofDiameter(key: KeyInSetupReport, at: MeasuringPoint): number {
  return { front: key.frontOfDiameter, centre: key.centreOfDiameter, back: key.backOfDiameter }[at];
}

/** A length whose unit the heading says. */
function bare(mm: number, unit: LengthUnit): string {
  return formatLength(mm, unit).replace(/ (mm|in)$/, '');
}

function signed(mm: number, unit: LengthUnit): string {
  const text = bare(mm, unit);
  return text.startsWith('−') || Number(text) === 0 ? text : `+${text}`;
}

function percent(share: number): string {
  return (100 * share).toFixed(0);
}
