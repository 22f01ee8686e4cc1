import type {
  ComparedNoteReport,
  ComparisonReport,
  NoteDifferenceReport,
} from '../../../documents/comparison-report.ts';
import { signedCents } from '../../parts/note-names.ts';
import type { Reason, ReasonInput } from '../../state/reasons.ts';
import type { SideOrder } from '../../state/side-by-side-state.ts';
import {
  group,
  headsOf,
  NOT_SHOWN,
  NOTHING,
  SAME,
  type Cell,
  type ComparisonRow,
  type ComparisonTable,
} from './comparison-tables.model.ts';
import { pitchOrder } from './difference-chart.model.ts';
import { letterOf } from './letters.ts';

/** Every note: what differs, who would notice, and what each column plays. */
export function makeNotesTable(
  report: ComparisonReport,
  columns: readonly number[],
  order: SideOrder,
): ComparisonTable {
  const letters = columns.map(letterOf);
  const { states, differences } = headsOf(report, columns);
  const notes = order === 'pitch' ? [...report.notes].sort(pitchOrder) : report.notes;
  const [reference] = letters;
  return {
    first: 'Note',
    groups: [
      group(`Cents beside ${reference}`, differences, 'difference', 'difference'),
      group(`Strength beside ${reference}, dB`, differences, 'difference', 'strength'),
      group('Who would notice', differences, 'words', null),
      group('Cents from equal temperament', states, 'state', 'pitch'),
      group('Cutoff, Hz', states, 'state', 'cutoff'),
    ],
    rows: notes.map((note) => noteRow(note, letters)),
  };
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
      setups.map(({ cents, centsPlusMinus }) =>
        cents === null
          ? { text: 'lost' }
          : {
              text: signedCents(cents),
              ...(centsPlusMinus === null ? {} : { plusMinus: centsPlusMinus.toFixed(0) }),
            },
      ),
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
