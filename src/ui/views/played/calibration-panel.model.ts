import { USUAL_UNKNOWNS } from '../../../documents/calibrated.ts';
import type { CalibrationReport, UnknownReport } from '../../../documents/calibration-report.ts';
import { UNKNOWN_UNITS } from '../../../documents/calibration-report.ts';
import { CALIBRATION_UNKNOWNS, type CalibrationUnknown } from '../../../documents/pitch-log.ts';
import { unbroken } from '../../parts/note-names.ts';
import { isWaiting } from '../../state/asked-answer.ts';
import { dayInHand, hornInHand, type BenchState } from '../../state/bench-state.ts';
import { calibrationSource } from '../../state/calibration-source.ts';
import type { Reason } from '../../state/reasons.ts';
import { calibrationReport } from '../../state/calibration-state.ts';

/** What the notes say, as plain text. */
export interface CalibrationPanel {
  readonly answer: string;
  readonly waiting: boolean;
  readonly problem: string | null;
  readonly rows: readonly UnknownRow[];
  /** whether pitches are worked out with it */
  readonly inUse: boolean;
  /** whether there is anything to use */
  readonly usable: boolean;
  /** notes left out, what cannot be told apart, what the scatter is: a sentence each */
  readonly sentences: readonly string[];
}

/** One unknown, fitted or not. */
export interface UnknownRow {
  readonly unknown: CalibrationUnknown;
  readonly label: string;
  readonly fitted: boolean;
  /** `2.1 ± 0.6 mm further out`; empty where it is not fitted */
  readonly value: string;
  /** why it is so; null where there is no value */
  readonly reason: Reason | null;
  /** how much of what was not known the notes took away, 0…1, for a bar; null where it is not fitted */
  readonly narrowed: number | null;
  readonly standing: string;
}

const LABELS: Readonly<Record<CalibrationUnknown, string>> = {
  'mouthpiece volume': 'Mouthpiece volume',
  'mouthpiece place': 'Mouthpiece on the cork',
  temperature: 'Air in the horn',
  'bell end': 'Bell’s end',
  'player’s trend': 'Player’s trend upwards',
};

const NONE_YET =
  'Calibration: log some notes, and they tell how far out the mouthpiece is and how warm the air.';

export function makeCalibrationPanel(state: BenchState): CalibrationPanel {
  const { contents } = hornInHand(state);
  const report = calibrationReport(state);
  const choice = contents.visit.document.calibration;
  const unknowns = choice?.unknowns ?? USUAL_UNKNOWNS;
  const usable = calibrationSource(contents) !== null;
  const { airC } = dayInHand(state);
  return {
    answer: unbroken(answerOf(report, usable)),
    waiting: usable && isWaiting(state.calibration, state.hornId),
    problem: usable ? (state.calibration.problem ?? report?.problem ?? null) : null,
    rows: CALIBRATION_UNKNOWNS.map((unknown) =>
      rowOf(
        unknown,
        unknowns.includes(unknown),
        report?.unknowns.find((u) => u.unknown === unknown),
        airC,
      ),
    ),
    inUse: choice?.inUse === true,
    usable,
    sentences: report === null ? [] : [...report.leftOut, ...report.alike, report.scatter].map(unbroken),
  };
}

function answerOf(report: CalibrationReport | null, usable: boolean): string {
  if (!usable) return NONE_YET;
  return report?.answer ?? 'Fitting the horn to the notes played…';
}

function rowOf(
  unknown: CalibrationUnknown,
  fitted: boolean,
  report: UnknownReport | undefined,
  airC: number,
): UnknownRow {
  const { unit } = UNKNOWN_UNITS[unknown];
  const row = { unknown, label: LABELS[unknown], fitted };
  if (!fitted) return { ...row, value: '', reason: null, narrowed: null, standing: 'as written' };
  if (report === undefined) return { ...row, value: '', reason: null, narrowed: null, standing: '' };
  const { amount, plusMinus, beforehand, standing } = report;
  const narrowed = 1 - Math.min(1, plusMinus / beforehand);
  if (standing === 'not told') {
    const value = `± ${digits(plusMinus)} ${unit}`;
    return {
      ...row,
      value,
      reason: fitReason(row.label, report, value),
      narrowed,
      standing: 'not told by these notes',
    };
  }
  const value = valueWords(unknown, amount, plusMinus, airC);
  return {
    ...row,
    value,
    reason: fitReason(row.label, report, value),
    narrowed,
    standing: standing === 'told' ? 'told' : 'told only together with another',
  };
}

function fitReason(
  label: string,
  { unit, amount, plusMinus, beforehand }: UnknownReport,
  figure: string,
): Reason {
  const input = (name: string, value: string) => ({ label: name, value, from: '' });
  return {
    kind: 'calibration',
    figure,
    of: label.toLowerCase(),
    inputs: [
      input('± before anything was played', `± ${digits(beforehand)} ${unit}`),
      input('the notes move it by', `${amount < 0 ? '−' : '+'}${digits(Math.abs(amount))} ${unit}`),
      input('± the notes leave', `± ${digits(plusMinus)} ${unit}`),
    ],
    budget: null,
    remarks: [],
  };
}

function valueWords(unknown: CalibrationUnknown, amount: number, plusMinus: number, airC: number): string {
  const by = `${digits(Math.abs(amount))} ± ${digits(plusMinus)}`;
  const more = amount >= 0;
  switch (unknown) {
    case 'mouthpiece volume':
      return `${by} cm³ ${more ? 'larger' : 'smaller'}`;
    case 'mouthpiece place':
      return `${by} mm further ${more ? 'out' : 'in'}`;
    case 'temperature':
      return `${digits(airC + amount)} ± ${digits(plusMinus)} °C`;
    case 'bell end':
      return `${by} mm ${more ? 'longer' : 'shorter'}`;
    case 'player’s trend':
      return `${by} cents an octave ${more ? 'sharper' : 'flatter'}`;
  }
}

const digits = (value: number): string => value.toFixed(1);
