import { keyedHoles } from '../../../documents/horn-document.ts';
import { formatBoth, type LengthUnit } from '../../../documents/length-format.ts';
import type { LoudChartModel } from '../../parts/chart/loud-figure.ts';
import type { ScaleChartModel, ScaleLive } from '../../parts/chart/scale-chart.model.ts';
import { makeKeyStrip, type StripPad } from '../../parts/key-strip.model.ts';
import type { NoteMap } from '../../parts/note-map.model.ts';
import {
  dayInHand,
  documentsInHand,
  hornInHand,
  isScaleCurrent,
  proposedInHand,
  type BenchState,
  type NoteNaming,
  type NoteSpan,
} from '../../state/bench-state.ts';
import { isOfKeyInHand, isProposed } from '../../state/study-in-hand.ts';
import { proposableMm, startMmOf } from '../../state/study-state.ts';
import { calibratedWords, calibrationInUse } from '../../state/calibration-source.ts';
import { calibrationReport } from '../../state/calibration-state.ts';
import { changedSince } from '../../state/horn-on-bench.ts';
import { memoLast } from '../../state/memo-last.ts';
import type { LoudReport, ScaleNumbers, ScaleReport } from '../../state/scale-report.ts';
import type { ScaleSureness } from '../../state/scale-sureness.ts';
import { TOLD_LEVEL_KPA } from '../../state/whole-scale.ts';
import type { Reason } from '../../state/reasons.ts';
import { noteReasons } from './note-reasons.model.ts';
import { makeNoteSureness, type NoteSureness } from './note-sureness.model.ts';
import { makePlayedNotes, withPlayed, type PlayedNotes } from './played-notes.model.ts';
import { makeAlternates, makeScaleRows, type AlternateRow, type ScaleRow } from './scale-tables.model.ts';
import { makeScaleChart, makeScaleLive, makeScalePicture, scaleRanges } from './scale-picture.model.ts';
import {
  governingSentence,
  keyDetail,
  makeGoverning,
  makeNoteMap,
  type GoverningKey,
} from './note-keys.model.ts';
import {
  loudSentence,
  makeNamer,
  makeNoteTold,
  makeScaleAnswer,
  makeScaleLimits,
  proposalOnPaper,
  proposalWords,
  type Namer,
  type ScaleAnswer,
  type ScaleLimits,
} from './scale-words.ts';

/** The slider of the key in hand; null until its study has told how far it can go. */
export interface KeySlider {
  readonly frontMm: number;
  readonly lowMm: number;
  readonly highMm: number;
  readonly foundMm: number;
  readonly enoughMm: number | null;
  readonly valueText: string;
  readonly proposed: boolean;
  /** whether the opening that is enough is proposed already, or there is none */
  readonly enoughTaken: boolean;
}

/** A key proposed otherwise than found. */
export interface ProposedKey {
  readonly id: string;
  readonly words: string;
  readonly onPaper: string;
}

/** Everything the scale page shows. */
export interface ScaleView {
  readonly unit: LengthUnit;
  readonly strip: readonly StripPad[];
  readonly keyId: string;
  readonly keyTitle: string;
  readonly keyDetail: string;
  readonly noteId: string;
  readonly naming: NoteNaming;
  readonly span: NoteSpan;
  readonly a4Hz: number;
  readonly a4Choices: readonly number[];
  readonly concertOf: string;
  readonly waiting: boolean;
  readonly problem: string | null;
  /** said where pitches are worked out with a calibration; else null */
  readonly calibrated: string | null;
  readonly slider: KeySlider | null;
  readonly scale: WholeScaleView | null;
}

/** The part that needs the played horn. */
export interface WholeScaleView {
  readonly answer: ScaleAnswer;
  /** the headline once the hand rests, for those who listen */
  readonly restedHeadline: string;
  readonly proposals: readonly ProposedKey[];
  readonly limits: ScaleLimits;
  readonly chart: ScaleChartModel;
  readonly live: ScaleLive;
  readonly tell: (index: number) => string;
  readonly note: NoteInHand;
  readonly map: NoteMap;
  readonly alternates: readonly AlternateRow[];
  readonly rows: readonly ScaleRow[];
  /** notes as played; null where none is logged, or until they are fitted */
  readonly played: PlayedNotes | null;
  readonly moved: boolean;
}

/** The picked note and what governs it. */
export interface NoteInHand {
  readonly label: string;
  readonly told: string;
  /** of the figures in that line */
  readonly reasons: readonly Reason[];
  readonly sentence: string;
  readonly keys: readonly GoverningKey[];
  readonly options: readonly {
    readonly register: string;
    readonly notes: readonly { readonly id: string; readonly label: string }[];
  }[];
  readonly loud: { readonly sentence: string; readonly chart: LoudChartModel } | null;
  /** null until it is worked out */
  readonly sure: NoteSureness | null;
  /** whether what is shown of it is of an earlier proposal */
  readonly sureWaits: boolean;
}

const LOWEST_A4_HZ = 438;
const A4_COUNT = 7;

/** The whole page from the state. */
export function makeScaleView(state: BenchState): ScaleView {
  const horn = hornInHand(state);
  const documents = documentsInHand(state);
  const hole = keyedHoles(documents.horn).find((k) => k.id === horn.keyId)!;
  const { report } = state.scale;
  const shown = report !== null && state.scale.hornId === state.hornId ? report : null;
  const usual = Array.from({ length: A4_COUNT }, (_, i) => LOWEST_A4_HZ + i);
  const { a4Hz } = dayInHand(state);
  return {
    unit: state.unit,
    strip: makeKeyStrip(documents, changedSince(horn), state.study.report?.vents ?? null),
    keyId: horn.keyId,
    keyTitle: `Pad ${hole.number} · ${hole.name} key`,
    keyDetail: shown === null ? '' : keyDetail(shown, state.scale.rested!, horn.keyId, namerOf(state, shown)),
    noteId: state.noteId,
    naming: state.naming,
    span: state.span,
    a4Hz,
    a4Choices: usual.includes(a4Hz) ? usual : [...usual, a4Hz].sort((a, b) => a - b),
    concertOf: documents.horn.instrument,
    waiting: !isScaleCurrent(state),
    problem: state.scale.problem,
    calibrated: calibratedWords(horn.contents),
    slider: makeSlider(state),
    scale: shown === null ? null : makeWholeScale(state, shown),
  };
}

const namerMemo = memoLast(makeNamer);
const namerOf = ({ naming }: BenchState, { transpositionSemitones }: ScaleReport): Namer =>
  namerMemo(naming, transpositionSemitones);

function makeSlider(state: BenchState): KeySlider | null {
  const { report } = state.study;
  if (report === null || !isOfKeyInHand(state)) return null;
  const frontMm = Math.min(
    proposedInHand(state)[hornInHand(state).keyId] ?? report.present.frontMm,
    report.reachMm,
  );
  const enoughMm = report.answer.kind === 'reached' ? startMmOf(report) : null;
  return {
    frontMm,
    ...proposableMm(report),
    foundMm: report.present.frontMm,
    enoughMm,
    valueText: `${formatBoth(frontMm, state.unit)} at the front`,
    proposed: isProposed(state),
    enoughTaken: enoughMm === null || (isProposed(state) && frontMm === enoughMm),
  };
}

/** Rounding, not a proposal, mm. */
const SAME_MM = 1e-6;

function proposalsOf(state: BenchState, { pads }: ScaleReport): ProposedKey[] {
  const proposedMm = proposedInHand(state);
  return pads.flatMap(({ id, name, foundFrontMm }) => {
    const mm = proposedMm[id];
    if (mm === undefined || Math.abs(mm - foundFrontMm) < SAME_MM) return [];
    return [
      {
        id,
        words: proposalWords(name, foundFrontMm, mm, state.unit),
        onPaper: proposalOnPaper(name, foundFrontMm, mm, state.unit),
      },
    ];
  });
}

// What a moving key does not change, and what waits until the hand rests, is made once for each of its causes.
const pictureMemo = memoLast(makeScalePicture);
const chartMemo = memoLast(makeScaleChart);
const mapMemo = memoLast(makeNoteMap);
const alternatesMemo = memoLast(makeAlternates);
const rowsMemo = memoLast(makeScaleRows);
const restedHeadlineMemo = memoLast(
  (report: ScaleReport, rested: ScaleNumbers | null, nameOf: Namer, sure: ScaleSureness | null): string =>
    makeScaleAnswer(report, rested, nameOf, sure).headline,
);
const limitsMemo = memoLast(makeScaleLimits);
const loudMemo = memoLast(
  (loud: LoudReport, label: string, moved: boolean): NonNullable<NoteInHand['loud']> => {
    const percent = (list: LoudReport['found']): (number | null)[] =>
      list.map((share) => (share === null ? null : 100 * share));
    const sentence = loudSentence(loud, label, moved);
    return {
      sentence,
      chart: {
        pressuresKpa: loud.pressuresKpa,
        found: percent(loud.found),
        proposed: moved ? percent(loud.proposed) : null,
        toldKpa: TOLD_LEVEL_KPA,
        summary: `Strength of ${label} from soft to loud, an estimate. ${sentence}`,
      },
    };
  },
);

/** How sure some numbers are: pitches from the last answer, moves only where it is of just these. */
function sureOf({ scale: { sure } }: BenchState, of: ScaleNumbers): ScaleSureness | null {
  if (sure === null) return null;
  return sure.of === of ? sure : onlyFoundMemo(sure);
}

const onlyFoundMemo = memoLast((sure: ScaleSureness): ScaleSureness => ({ found: sure.found, moves: [] }));

function makeWholeScale(state: BenchState, report: ScaleReport): WholeScaleView {
  const { naming, span, noteId } = state;
  const { keyId } = hornInHand(state);
  const nameOf = namerOf(state, report);
  const proposed = state.scale.proposed!;
  const rested = state.scale.rested!;
  const proposals = proposalsOf(state, report);
  const moved = proposals.length > 0;
  // While a hand moves, the rows' ranges only grow.
  const ranges = scaleRanges(report, state.scale.swept!, span);
  const drawn = chartMemo(pictureMemo(report, nameOf, span), ...ranges);
  const chart = withPlayed(drawn, calibrationReport(state));
  const sure = sureOf(state, proposed);
  const told = makeNoteTold(report, moved ? proposed : null, nameOf, sure);
  return {
    answer: makeScaleAnswer(report, moved ? proposed : null, nameOf, sure),
    restedHeadline: restedHeadlineMemo(report, moved ? rested : null, nameOf, sureOf(state, rested)),
    proposals,
    limits: limitsMemo(rested),
    chart,
    live: makeScaleLive(report, chart, { proposed, rested, keyId, noteId, moved, sure }),
    tell: (index) => told(report.fingerings.findIndex(({ id }) => id === chart.marks[index]?.id)),
    note: makeNoteInHand(state, report, nameOf, moved),
    map: mapMemo(report, rested, nameOf),
    alternates: alternatesMemo(report, rested, moved, nameOf),
    rows: rowsMemo(report, rested, moved, nameOf, naming, sureOf(state, rested)),
    played: playedOf(state, report, nameOf),
    moved,
  };
}

function playedOf(state: BenchState, report: ScaleReport, nameOf: Namer): PlayedNotes | null {
  const calibration = calibrationReport(state);
  if (calibration === null) return null;
  const inUse = calibrationInUse(hornInHand(state).contents) !== null;
  return makePlayedNotes(calibration, report, nameOf, inUse);
}

const REGISTERS = ['Low register', 'Octave register', 'Front fingerings'];

const optionsMemo = memoLast((report: ScaleReport, nameOf: Namer): NoteInHand['options'] =>
  REGISTERS.map((register, i) => ({
    register,
    notes: report.fingerings
      .filter((fingering) => fingering.register === i + 1)
      .map((fingering) => ({ id: fingering.id, label: nameOf(fingering) })),
  })),
);

function makeNoteInHand(state: BenchState, report: ScaleReport, nameOf: Namer, moved: boolean): NoteInHand {
  const { noteId, scale, unit } = state;
  const index = report.fingerings.findIndex(({ id }) => id === noteId);
  const label = nameOf(report.fingerings[index]);
  const keys = makeGoverning(report, scale.rested!, index);
  const { loud } = scale;
  const proposed = moved ? scale.proposed : null;
  const sure = sureOf(state, scale.proposed!);
  return {
    label,
    told: makeNoteTold(report, proposed, nameOf, sure)(index),
    reasons: noteReasons(
      report,
      { name: label, index, proposed, sure },
      { contents: hornInHand(state).contents, unit },
    ),
    sentence: governingSentence(label, keys),
    keys,
    options: optionsMemo(report, nameOf),
    loud: loud === null || loud.fingeringId !== noteId ? null : loudMemo(loud, label, moved),
    sure:
      scale.sure === null
        ? null
        : makeNoteSureness(scale.sure, index, label, unit, documentsInHand(state).horn),
    sureWaits: scale.sure?.of !== scale.proposed,
  };
}
