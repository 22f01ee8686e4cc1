import type { CalibratedNoteReport, CalibrationReport } from '../../../documents/calibration-report.ts';
import type { ScaleChartModel } from '../../parts/chart/scale-chart.model.ts';
import { signedCents } from '../../parts/note-names.ts';
import { memoLast } from '../../state/memo-last.ts';
import type { ScaleReport } from '../../state/scale-report.ts';
import type { Namer } from './scale-words.ts';

/** Notes as played against the horn as fitted to them. */
export interface PlayedNotes {
  readonly title: string;
  /** what is left of all, and who fitted it */
  readonly told: string;
  readonly rows: readonly PlayedNoteRow[];
}

/** One note as played. */
export interface PlayedNoteRow {
  readonly id: string;
  readonly label: string;
  /** `−12 ± 3` */
  readonly played: string;
  /** `−7 ± 4`; empty where the model hears no such note */
  readonly left: string;
  /** where the bar of what is left begins and how long it is, shares of its place; null where there is none */
  readonly bar: { readonly from: number; readonly length: number } | null;
  /** whether it is more than its ± */
  readonly outside: boolean;
  /** which keys could explain it, or why it does not count */
  readonly words: string;
}

/** The chart with every note as it was played as found. */
export const withPlayed = memoLast(
  (chart: ScaleChartModel, calibration: CalibrationReport | null): ScaleChartModel => {
    const asFound = calibration?.notes.filter(({ setup }) => setup === 'as found') ?? [];
    if (asFound.length === 0) return chart;
    const cents = new Map(asFound.map(({ fingering, playedCents }) => [fingering, playedCents]));
    const played = chart.marks.map(({ id }) => cents.get(id) ?? null);
    const { pitch } = chart.panels;
    const range = widened(
      pitch.range,
      played.filter((value) => value !== null),
    );
    return {
      ...chart,
      panels: { ...chart.panels, pitch: { ...pitch, range } },
      played,
      summary: `${chart.summary} As played: ${playedWords(chart, played)}.`,
    };
  },
);

function playedWords({ marks }: ScaleChartModel, played: readonly (number | null)[]): string {
  return marks
    .flatMap(({ label }, i) => (played[i] === null ? [] : [`${label} ${signedCents(played[i])}`]))
    .join(', ');
}

/** The pitches' row goes on in tens of cents. */
const STEP_CENTS = 10;

/** A row that shows these too: what was played is never beyond its edge. */
function widened([low, high]: readonly [number, number], cents: readonly number[]): [number, number] {
  const stepped = (round: (value: number) => number, value: number): number =>
    STEP_CENTS * round(value / STEP_CENTS);
  return [
    Math.min(low, ...cents.map((value) => stepped(Math.floor, value - 1))),
    Math.max(high, ...cents.map((value) => stepped(Math.ceil, value + 1))),
  ];
}

/** The bars' place reaches so far either way at least, cents. */
const LEAST_REACH_CENTS = 15;

export const makePlayedNotes = memoLast(
  (
    calibration: CalibrationReport,
    report: ScaleReport,
    nameOf: Namer,
    inUse: boolean,
  ): PlayedNotes | null => {
    const { notes, leftCents } = calibration;
    if (notes.length === 0 || leftCents === null) return null;
    const sizes = notes.map(({ residualCents, standing }) =>
      standing === 'fitted' ? Math.abs(residualCents ?? 0) : 0,
    );
    const reach = Math.max(LEAST_REACH_CENTS, ...sizes);
    const outside = notes.filter(isOutside).length;
    const fit = inUse ? '' : ' The pitches above are as written; the fit is not in use.';
    return {
      title: 'As played, against the horn fitted to the notes',
      told: `${countWords(outside, notes.length)} What is left is ±${leftCents.toFixed(1)} cents.${fit}`,
      rows: worstFirst(notes).map((note) => rowOf(note, report, nameOf, reach)),
    };
  },
);

/** Notes off by more than their ±, the farthest first; then the others as the scale goes. */
function worstFirst(notes: readonly CalibratedNoteReport[]): CalibratedNoteReport[] {
  const size = ({ residualCents }: CalibratedNoteReport): number => Math.abs(residualCents ?? 0);
  const outside = notes.filter(isOutside).sort((a, b) => size(b) - size(a));
  return [...outside, ...notes.filter((note) => !isOutside(note))];
}

function countWords(outside: number, all: number): string {
  if (outside === 0) return `All ${all} notes are within their ±.`;
  return `${outside} of ${all} notes ${outside === 1 ? 'is' : 'are'} off by more than ${outside === 1 ? 'its' : 'their'} ±.`;
}

function isOutside({ residualCents, residualPlusMinusCents }: CalibratedNoteReport): boolean {
  return residualCents !== null && Math.abs(residualCents) > residualPlusMinusCents!;
}

function rowOf(
  note: CalibratedNoteReport,
  { fingerings }: ScaleReport,
  nameOf: Namer,
  reach: number,
): PlayedNoteRow {
  const { playedCents, plusMinusCents, residualCents, residualPlusMinusCents, setup } = note;
  const fingering = fingerings.find(({ id }) => id === note.fingering)!;
  const left = residualCents === null ? null : Math.max(-reach, Math.min(reach, residualCents)) / (2 * reach);
  return {
    id: note.fingering,
    label: `${nameOf(fingering)}${setup === 'as set' ? ', as set' : ''}`,
    played: `${signedCents(playedCents)} ± ${plusMinusCents.toFixed(0)}`,
    left:
      residualCents === null ? '' : `${signedCents(residualCents)} ± ${residualPlusMinusCents!.toFixed(0)}`,
    bar: left === null ? null : { from: 0.5 + Math.min(0, left), length: Math.abs(left) },
    outside: isOutside(note),
    words: wordsOf(note),
  };
}

function wordsOf(note: CalibratedNoteReport): string {
  if (note.standing === 'not heard by the model') return 'the model finds no resonance for it';
  const causes = note.causes.map(({ sentence }) => sentence);
  if (note.standing === 'left out') return ['left out of the fit', ...causes].join('; ');
  if (causes.length > 0) return causes.join('; or ');
  return isOutside(note) ? 'no key’s venting explains it' : '';
}
