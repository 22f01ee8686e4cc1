import type { MeasuringPoint } from '../../../acoustics/index.ts';
import type {
  ComparedKeyReport,
  ComparedNoteReport,
  ComparisonReport,
  KeyInSetupReport,
  NoteDifferenceReport,
} from '../../../documents/comparison-report.ts';
import { formatLength, type LengthUnit } from '../../../documents/length-format.ts';
import { signedCents } from '../../parts/note-names.ts';
import { barePlusMinus } from '../../parts/plus-minus-words.ts';
import { columnReason, type Reason, type ReasonInput, type ReasonKind } from '../../state/reasons.ts';
import type { SideOrder } from '../../state/side-by-side-state.ts';
import { pitchOrder } from './difference-chart.model.ts';
import { letterOf } from './letters.ts';

/** One cell of a table. */
export interface Cell {
  readonly text: string;
  /** its ±, which stands back on paper with many columns; left out where the text has it */
  readonly plusMinus?: string;
  /** a second, smaller line */
  readonly under?: string;
  /** a difference: whether it is greater than its ±; left out where the cell is none */
  readonly shown?: boolean;
  /** why it is what it is */
  readonly reason?: Reason;
}

/** Cells under one heading, one a column. */
export interface CellGroup {
  readonly title: string;
  readonly letters: readonly string[];
  /** `difference`, `state` or `words`: how wide and how strong */
  readonly kind: 'difference' | 'difference aside' | 'state' | 'words';
  /** what its figures are; null for words */
  readonly reason: Reason | null;
}

export interface ComparisonRow {
  readonly id: string;
  readonly label: string;
  /** in the groups' order */
  readonly cells: readonly (readonly Cell[])[];
}

/** A table of what was compared: groups of columns, and rows. */
export interface ComparisonTable {
  readonly first: string;
  readonly groups: readonly CellGroup[];
  readonly rows: readonly ComparisonRow[];
}

export const NOT_SHOWN = 'no difference that can be shown';

const NOTHING: Cell = { text: '–', shown: false };
const SAME: Cell = { text: 'same', shown: false };

/** Every note: what differs, who would notice, and what each column plays. */
export function makeNotesTable(
  report: ComparisonReport,
  columns: readonly number[],
  order: SideOrder,
): ComparisonTable {
  const letters = columns.map(letterOf);
  const others = letters.slice(1);
  const notes = order === 'pitch' ? [...report.notes].sort(pitchOrder) : report.notes;
  const [reference] = letters;
  return {
    first: 'Note',
    groups: [
      group(`Cents beside ${reference}`, others, 'difference', 'difference'),
      group(`Strength beside ${reference}, dB`, others, 'difference', 'strength'),
      group('Who would notice', others, 'words', null),
      group('Cents from equal temperament', letters, 'state', 'pitch'),
      group('Cutoff, Hz', letters, 'state', 'cutoff'),
    ],
    rows: notes.map((note) => noteRow(note, letters)),
  };
}

function group(
  title: string,
  letters: readonly string[],
  kind: CellGroup['kind'],
  of: ReasonKind | null,
): CellGroup {
  return { title, letters, kind, reason: of === null ? null : columnReason(of, title, 'every row') };
}

function noteRow(note: ComparedNoteReport, letters: readonly string[]): ComparisonRow {
  const { fingering, label, setups, differences } = note;
  return {
    id: fingering,
    label,
    cells: [
      differences.map((d, i) => {
        if (d === null) return NOTHING;
        const cell = differenceCell(d.cents, d.centsPlusMinus);
        return cell === SAME ? cell : { ...cell, reason: differenceReason(note, i, d, cell.text, letters) };
      }),
      differences.map((d) =>
        d === null || d.strengthDb === null || d.strengthDbPlusMinus === null
          ? NOTHING
          : differenceCell(d.strengthDb, d.strengthDbPlusMinus),
      ),
      differences.map((d, i) => ({
        text: noticeWords(d, setups[i + 1].reason ?? setups[0].reason, differences.length === 1),
      })),
      setups.map(({ cents }) => (cents === null ? { text: 'lost' } : { text: signedCents(cents) })),
      setups.map(({ cutoffHz }) => (cutoffHz === null ? NOTHING : { text: cutoffHz.toFixed(0) })),
    ],
  };
}

/** Why a note differs so much. @param index of the setup, after the first */
function differenceReason(
  { label, setups }: ComparedNoteReport,
  index: number,
  { budget }: NoteDifferenceReport,
  figure: string,
  letters: readonly string[],
): Reason {
  const [first, other] = [0, index + 1];
  const input = (i: number): ReasonInput[] =>
    setups[i].cents === null
      ? []
      : [{ label: `${label} on ${letters[i]}`, value: `${signedCents(setups[i].cents)} cents`, from: '' }];
  return {
    kind: 'difference',
    figure: `${figure} cents`,
    of: `${label}, ${letters[other]} beside ${letters[first]}`,
    inputs: [...input(first), ...input(other)],
    budget: { parts: budget, in: 'cents' },
    remarks: [],
  };
}

/** A difference in tenths with its ±; one that is nothing at that size is not claimed to be there. */
function differenceCell(value: number, plusMinus: number): Cell {
  if (value === 0 && plusMinus === 0) return SAME;
  const text = signedCents(value);
  return {
    text: `${text}${plusMinusText(plusMinus)}`,
    shown: Math.abs(value) > plusMinus && text !== '0.0',
  };
}

function plusMinusText(plusMinus: number): string {
  const text = plusMinus.toFixed(1);
  return Number(text) === 0 ? '' : `\u00a0±\u00a0${text}`;
}

/** @param room for the whole sentence */
function noticeWords(difference: NoteDifferenceReport | null, reason: string | null, room: boolean): string {
  if (difference === null) return reason === null ? 'lost' : `lost: ${reason}`;
  const { cents, centsPlusMinus, strengthDb, noticedBy } = difference;
  if (noticedBy !== 'cannot be shown') return noticedBy;
  if (cents === 0 && centsPlusMinus === 0 && (strengthDb ?? 0) === 0) return 'no difference';
  return room ? NOT_SHOWN : noticedBy;
}

/** Every key as it stands: openings, and what they are worth. */
export function makeKeysTable(
  report: ComparisonReport,
  columns: readonly number[],
  order: SideOrder,
  { unit, at }: { readonly unit: LengthUnit; readonly at: MeasuringPoint },
): ComparisonTable {
  const letters = columns.map(letterOf);
  const others = letters.slice(1);
  const [reference] = letters;
  const inUnit = unit === 'mm' ? 'mm' : 'in';
  const oneHorn = report.setups.every(({ sameHornAsFirst }) => sameHornAsFirst);
  const keys = order === 'pitch' ? [...report.keys].sort((a, b) => a.number - b.number) : report.keys;
  const names = new Map(report.keys.map(({ id, name }) => [id, name]));
  return {
    first: 'Key',
    groups: [
      group(`Opening beside ${reference}, ${inUnit}`, others, 'difference', 'difference'),
      group(`Vent share beside ${reference}, %`, others, 'difference aside', 'vent-share'),
      group(`Opening at the ${at}, ${inUnit}`, letters, 'state', 'opening'),
      group('Opening as % of hole across', letters, 'state', 'opening'),
      group(`Worth a parallel opening of, ${inUnit}`, letters, 'state', 'equivalent-opening'),
      group('Vent share, %', letters, 'state', 'vent-share'),
      ...(oneHorn ? [] : [group(`Hole across, ${inUnit}`, letters, 'state', null)]),
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
          `${signedCents(100 * d.ventShare)}\u00a0±\u00a0${(100 * d.ventSharePlusMinus).toFixed(1)}`,
          Math.abs(d.ventShare) > d.ventSharePlusMinus,
        );
      }),
      each((key) => ({
        text: bare(openingMm(key, at), unit),
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
