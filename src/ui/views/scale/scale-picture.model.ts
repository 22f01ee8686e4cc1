import { noteNumber, usualFingerings } from '../../../acoustics/index.ts';
import {
  steppedRange,
  type ScaleChartModel,
  type ScaleLive,
  type ScaleMark,
  type ScalePanel,
  type ScalePanelId,
} from '../../parts/chart/scale-chart.model.ts';
import { signedCents } from '../../parts/note-names.ts';
import type { NoteSpan } from '../../state/bench-state.ts';
import type { ScaleNumbers, ScaleReport } from '../../state/scale-report.ts';
import type { ScaleSureness } from '../../state/scale-sureness.ts';
import { centsPerMmOf } from './note-keys.model.ts';
import type { Namer } from './scale-words.ts';

/** How far right of its note another way of fingering it stands, semitones. */
const OTHER_WAY_STEP = 0.27;
/** A key lights up the notes it moves by at least so much, cents per mm. */
const LEAST_LIT_CENTS_PER_MM = 0.1;

type ListedPanel = Exclude<ScalePanelId, 'move'>;

/** The moves' row is never narrower, cents either way, and doubles where that is not enough. */
const LEAST_MOVE_CENTS = 3;
/** A bar leaves room for its number. */
const ROOM_FOR_NUMBER = 1.3;

const PANELS: Readonly<
  Record<ListedPanel, { list: 'cents' | 'heights' | 'cutoffHz'; title: string; step: number; least: number }>
> = {
  pitch: { list: 'cents', title: 'cents', step: 10, least: 10 },
  strength: { list: 'heights', title: 'strength', step: 10, least: 20 },
  cutoff: { list: 'cutoffHz', title: 'cutoff, Hz', step: 500, least: 1000 },
};

/** Low and high ends of the rows: pitch, strength, cutoff; and how far the moves' row goes both ways. */
export type ScaleRanges = readonly [number, number, number, number, number, number, number];

const inSpan = (span: NoteSpan, register: number): boolean =>
  span === 'all' || (span === 'low' ? register === 1 : register > 1);

/**
 * The rows' ranges around all that is shown, in steps, the moves' in doublings. Front fingerings may lie far off: they do not press the
 * rest flat, and are drawn at the edge.
 */
export function scaleRanges(
  report: ScaleReport,
  shown: readonly ScaleNumbers[],
  span: NoteSpan,
): ScaleRanges {
  const rangeOf = (id: ListedPanel): [number, number] => {
    const { list, step, least } = PANELS[id];
    const values = report.fingerings.flatMap(({ register }, i) =>
      register < 3 && inSpan(span, register)
        ? [report.found, ...shown].map((numbers) => numbers[list][i]).filter(Number.isFinite)
        : [],
    );
    return steppedRange(values, step, least);
  };
  let move = LEAST_MOVE_CENTS;
  report.fingerings.forEach(({ register }, i) => {
    if (register === 3 || !inSpan(span, register)) return;
    for (const numbers of shown) {
      const moved = Math.abs(numbers.cents[i] - report.found.cents[i]) * ROOM_FOR_NUMBER;
      while (moved > move) move *= 2;
    }
  });
  return [...rangeOf('pitch'), ...rangeOf('strength'), ...rangeOf('cutoff'), move];
}

/** The picture of the horn as found, whatever its rows' ranges. */
export type ScalePicture = Omit<ScaleChartModel, 'panels'> & {
  readonly found: Readonly<Record<ScalePanelId, ScalePanel['found']>>;
};

export function makeScalePicture(report: ScaleReport, nameOf: Namer, span: NoteSpan): ScalePicture {
  const usual = usualFingerings(report.fingerings);
  const ways = new Map<string, number>();
  const placed = report.fingerings.flatMap((fingering, i) => {
    const others = ways.get(fingering.note) ?? 0;
    ways.set(fingering.note, others + 1);
    if (!inSpan(span, fingering.register)) return [];
    const x = noteNumber(fingering.note) + OTHER_WAY_STEP * others;
    return [
      { i, mark: { id: fingering.id, label: nameOf(fingering), usual: usual[i], x } satisfies ScaleMark },
    ];
  });
  placed.sort((a, b) => a.mark.x - b.mark.x);
  const marks = placed.map(({ mark }) => mark);
  const found = (id: ListedPanel): (number | null)[] =>
    placed.map(({ i }) => known(report.found[PANELS[id].list][i]));
  return {
    marks,
    ticks: marks
      .filter((mark) => mark.usual)
      .map(({ x, label }) => ({ x, label: label.split(' ')[0], natural: !/[♯♭]/.test(label) })),
    xRange: [marks[0].x - 0.7, marks[marks.length - 1].x + 0.7],
    found: {
      pitch: found('pitch'),
      move: placed.map(({ i }) => (Number.isNaN(report.found.cents[i]) ? null : 0)),
      strength: found('strength'),
      cutoff: found('cutoff'),
    },
    played: null,
    summary:
      'Cents from equal temperament as found: ' +
      placed
        .map(({ i, mark }) => `${mark.label} ${signedCents(report.found.cents[i])}`)
        .join(', ')
        .replaceAll('NaN', 'lost') +
      '.',
  };
}

/** The picture with its rows' ranges. */
export function makeScaleChart({ found, ...picture }: ScalePicture, ...ranges: ScaleRanges): ScaleChartModel {
  const panel = (id: ListedPanel, low: number, high: number): ScalePanel => ({
    title: PANELS[id].title,
    range: [low, high],
    found: found[id],
  });
  return {
    ...picture,
    panels: {
      pitch: panel('pitch', ranges[0], ranges[1]),
      move: { title: 'moves by', range: [-ranges[6], ranges[6]], found: found.move },
      strength: panel('strength', ranges[2], ranges[3]),
      cutoff: panel('cutoff', ranges[4], ranges[5]),
    },
  };
}

/** What moves over it. */
export function makeScaleLive(
  report: ScaleReport,
  chart: ScaleChartModel,
  now: {
    readonly proposed: ScaleNumbers;
    readonly rested: ScaleNumbers;
    readonly keyId: string;
    readonly noteId: string;
    readonly moved: boolean;
    /** null where that is not known yet; its moves are of what is shown */
    readonly sure: ScaleSureness | null;
  },
): ScaleLive {
  const indexOf = new Map(report.fingerings.map(({ id }, i) => [id, i]));
  const order = chart.marks.map(({ id }) => indexOf.get(id)!);
  const pad = report.pads.findIndex(({ id }) => id === now.keyId);
  const answers = order.map((i) => Math.abs(centsPerMmOf(report, now.rested, i, pad) ?? 0));
  const most = Math.max(...answers, LEAST_LIT_CENTS_PER_MM);
  return {
    values: {
      pitch: order.map((i) => known(now.proposed.cents[i])),
      move: order.map((i) => known(now.proposed.cents[i] - report.found.cents[i])),
      strength: order.map((i) => known(now.proposed.heights[i])),
      cutoff: order.map((i) => known(now.proposed.cutoffHz[i])),
    },
    plusMinus: {
      pitch: order.map((i) => now.sure?.found[i]?.budget.plusMinus ?? null),
      move: order.map((i) => now.sure?.moves[i]?.budget.plusMinus ?? null),
    },
    picked: chart.marks.findIndex(({ id }) => id === now.noteId),
    lit: answers.map((size) => (size < LEAST_LIT_CENTS_PER_MM ? 0 : Math.sqrt(size / most))),
    moved: now.moved,
  };
}

const known = (value: number): number | null => (Number.isNaN(value) ? null : value);
