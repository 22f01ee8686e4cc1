import { noteNumber } from '../../../acoustics/index.ts';
import type {
  ComparedNoteReport,
  ComparisonReport,
  NoteDifferenceReport,
} from '../../../documents/comparison-report.ts';
import { tenths } from '../../../documents/tenths.ts';
import { steppedRange } from '../../parts/chart/scale-chart.model.ts';
import type {
  DifferenceMark,
  DifferencePanel,
  DifferencePanelId,
  DifferencePoint,
  DifferenceSeries,
  SideBySideChartModel,
} from '../../parts/chart/side-by-side-chart.model.ts';
import { signedCents } from '../../parts/note-names.ts';
import { letterOf, shortNames } from './letters.ts';

/** How far right of its note another way of fingering it stands, semitones. */
const OTHER_WAY_STEP = 0.4;
/** So many notes of each column carry their number. */
const NUMBERED = 3;
/** A difference smaller than this has no number, cents. */
const LEAST_NUMBERED_CENTS = 0.05;
/** So many notes of each column are told in words. */
const TOLD = 5;
/** The rows are never narrower, cents and dB from end to end. */
const LEAST_CENTS = 4;
const LEAST_DB = 0.4;

/** @param columns which column each of the report's setups is */
export function makeDifferenceChart(
  report: ComparisonReport,
  columns: readonly number[],
): SideBySideChartModel {
  const { marks, order } = placeMarks(report.notes);
  const names = shortNames(report);
  const series = names
    .slice(1)
    .map((name, i) => makeSeries(report, i, letterOf(columns[i + 1]), name, order));
  const panels = [
    makePanel('pitch', series, report.noticed.playerCents),
    makePanel('strength', series, report.noticed.playerStrengthDb),
  ].filter(({ id }) => series.some(({ points }) => points[id].some((p) => p !== null)) || id === 'pitch');
  return {
    marks,
    ticks: marks
      .filter(({ usual }) => usual)
      .map(({ x, label }) => ({ x, label: label.split(' ')[0], natural: !/[♯♭]/.test(label) })),
    xRange: [marks[0].x - 0.9, marks[marks.length - 1].x + 0.9],
    reference: { letter: letterOf(columns[0]), name: names[0] },
    panels,
    series,
    summary: summaryOf(
      report,
      report.setups.map(({ label }) => label),
      columns,
    ),
  };
}

/** Notes from low to high; `order` are their places in the report. */
function placeMarks(notes: readonly ComparedNoteReport[]): {
  readonly marks: DifferenceMark[];
  readonly order: number[];
} {
  const ways = new Map<string, number>();
  const placed = [...notes.keys()]
    .sort((a, b) => pitchOrder(notes[a], notes[b]))
    .map((index) => {
      const { fingering, label, note } = notes[index];
      const others = ways.get(note) ?? 0;
      ways.set(note, others + 1);
      const x = noteNumber(note) + OTHER_WAY_STEP * others;
      return { index, mark: { id: fingering, label, usual: others === 0, x } };
    })
    .sort((a, b) => a.mark.x - b.mark.x);
  return { marks: placed.map(({ mark }) => mark), order: placed.map(({ index }) => index) };
}

/** From low to high; of one note the plain fingering first, then the lower register. */
export function pitchOrder(a: ComparedNoteReport, b: ComparedNoteReport): number {
  return noteNumber(a.note) - noteNumber(b.note) || a.register - b.register || (a.way < b.way ? -1 : 1);
}

function makeSeries(
  report: ComparisonReport,
  index: number,
  letter: string,
  name: string,
  order: readonly number[],
): DifferenceSeries {
  const differences = order.map((i) => report.notes[i].differences[index]);
  const listOf = (id: DifferencePanelId): (DifferencePoint | null)[] =>
    differences.map((d) => (d === null ? null : pointOf(d, id)));
  const pitch = listOf('pitch');
  const widest = [...pitch.keys()]
    .filter((i) => pitch[i]?.shown === true && Math.abs(pitch[i].value) >= LEAST_NUMBERED_CENTS)
    .sort((a, b) => Math.abs(pitch[b]!.value) - Math.abs(pitch[a]!.value))
    .slice(0, NUMBERED);
  return { letter, name, points: { pitch, strength: listOf('strength') }, widest };
}

function pointOf(d: NoteDifferenceReport, id: DifferencePanelId): DifferencePoint | null {
  const [value, plusMinus] =
    id === 'pitch' ? [d.cents, d.centsPlusMinus] : [d.strengthDb, d.strengthDbPlusMinus];
  if (value === null || plusMinus === null) return null;
  return { value, plusMinus, shown: Math.abs(value) > plusMinus };
}

function makePanel(
  id: DifferencePanelId,
  series: readonly DifferenceSeries[],
  noticedFrom: number,
): DifferencePanel {
  const ends = series.flatMap(({ points }) =>
    points[id].flatMap((p) => (p === null ? [] : [p.value - p.plusMinus, p.value + p.plusMinus])),
  );
  const widest = Math.max(0, ...ends.map(Math.abs));
  const cents = id === 'pitch';
  const step = cents ? (widest > 20 ? 10 : widest > 4 ? 2 : 1) : widest > 2 ? 1 : widest > 0.4 ? 0.2 : 0.1;
  return {
    id,
    title: cents ? 'cents' : 'dB',
    unit: cents ? 'cents' : 'dB',
    range: steppedRange([...ends, 0], step, cents ? LEAST_CENTS : LEAST_DB),
    noticedFrom,
  };
}

function summaryOf(
  { notes }: ComparisonReport,
  names: readonly string[],
  columns: readonly number[],
): string {
  const sentences = names.slice(1).map((name, i) => {
    const told = notes
      .flatMap(({ label: note, differences }) => {
        const d = differences[i];
        return d === null ? [] : [{ note, d }];
      })
      .filter(({ d }) => Math.abs(d.cents) > d.centsPlusMinus)
      .sort((a, b) => Math.abs(b.d.cents) - Math.abs(a.d.cents));
    const words = told
      .slice(0, TOLD)
      .map(({ note, d }) => `${note} ${signedCents(d.cents)} ± ${tenths(d.centsPlusMinus)}`);
    const more = told.length > TOLD ? `, and ${told.length - TOLD} more` : '';
    return (
      `${letterOf(columns[i + 1])}, ${name}: ` +
      (told.length === 0 ? 'no difference of pitch that can be shown.' : `${words.join(', ')}${more}.`)
    );
  });
  return `Cents of every written note against ${letterOf(columns[0])}, ${names[0]}. ${sentences.join(' ')}`;
}
