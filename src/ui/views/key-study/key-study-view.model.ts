import { keyedHoles } from '../../../documents/horn-document.ts';
import type { MeasuringPoint } from '../../../acoustics/index.ts';
import { formatBoth, formatLength, type LengthUnit } from '../../../documents/length-format.ts';
import type { ProposedMark } from '../../parts/chart/chart.model.ts';
import { makeKeyStrip, ventWords, type StripPad } from '../../parts/key-strip.model.ts';
import { listed, noteLabel, signedCents, unbroken } from '../../parts/note-names.ts';
import { bareCents } from '../../parts/plus-minus-words.ts';
import { makePadDrawing, type PadDrawing } from '../../parts/pad-drawing.model.ts';
import { documentsInHand, hornInHand, type BenchState, type Measure } from '../../state/bench-state.ts';
import { isCurrent, isProposed, proposedMmOf } from '../../state/study-in-hand.ts';
import { proposableMm, suggestedMmOf } from '../../state/study-state.ts';
import { calibratedWords } from '../../state/calibration-source.ts';
import { changedSince } from '../../state/horn-on-bench.ts';
import type { PointReport, StudyReport } from '../../state/study-report.ts';
import type { Reason } from '../../state/reasons.ts';
import { textInField } from '../../state/text-in-field.ts';
import { makeAnswerSentences, openingMm, percent, type AnswerSentences } from './answer-sentences.ts';
import {
  makeMeasuredFields,
  sentence,
  type FieldView,
  type MeasuredFields,
} from './measured-fields.model.ts';
import { makeProposedMark, makeStudyChart, type StudyChart } from './study-chart.model.ts';
import { answerReasons, changeReason, type AnswerReasons } from './study-reasons.model.ts';
import { makeStudySureness, type StudySureness } from './study-sureness.model.ts';

/** What the proposed opening does to one note. */
export interface NoteChange {
  readonly label: string;
  readonly change: string;
  /** `0.3`; empty where it is not known */
  readonly plusMinus: string;
  /** null where there is no figure */
  readonly reason: Reason | null;
}

/** The slider and what it says. */
export interface ProposalView {
  readonly frontMm: number;
  readonly lowMm: number;
  readonly highMm: number;
  readonly foundMm: number;
  /** null where no answer lies within reach */
  readonly enoughMm: number | null;
  readonly valueText: string;
  /** `Cents from found, 9.0 mm front = 4.4 mm parallel` */
  readonly heading: string;
  readonly changes: readonly NoteChange[];
  readonly shareWords: string;
  readonly field: FieldView<'proposed'>;
  /** mm at the front: what its button proposes; null for as found */
  readonly takes: number | null;
  /** whether that is proposed already */
  readonly taken: boolean;
}

/** Everything the key-study page shows. */
export interface KeyStudyView extends MeasuredFields {
  readonly hornName: string;
  readonly unit: LengthUnit;
  readonly measure: Measure;
  readonly readAt: MeasuringPoint;
  /** mouthpiece first */
  readonly strip: readonly StripPad[];
  readonly keyId: string;
  readonly keyTitle: string;
  readonly keyDetail: string;
  /** a study newer than what is shown is on its way */
  readonly waiting: boolean;
  readonly problem: string | null;
  /** said where pitches are worked out with a calibration; else null */
  readonly calibrated: string | null;
  readonly study: StudyView | null;
}

/** The part that needs a finished study. */
export interface StudyView extends StudyChart {
  readonly answer: AnswerSentences;
  readonly warnings: readonly string[];
  readonly proposed: ProposedMark;
  readonly proposal: ProposalView;
  readonly drawing: PadDrawing;
  readonly report: StudyReport;
  readonly sureness: StudySureness;
  /** of the figures in the answer's sentences */
  readonly reasons: AnswerReasons;
}

/** What the screen says about how far to trust it; the thesis and the player's spread are in the notes. */
export const HONESTY =
  'Absolute pitch is good to about ±10 cents, differences far better; a player repeats a note to ±3–5 cents.';

/** The whole page from the state. */
export function makeKeyStudyView(state: BenchState): KeyStudyView {
  const horn = hornInHand(state);
  const { report } = state.study;
  const documents = documentsInHand(state);
  const hole = keyedHoles(documents.horn).find((k) => k.id === horn.keyId)!;
  const vents = ventWords(report?.vents ?? null, horn.keyId);
  return {
    hornName: documents.horn.name,
    unit: state.unit,
    measure: state.measure,
    readAt: state.readAt,
    strip: makeKeyStrip(documents, changedSince(horn), report?.vents ?? null),
    keyId: horn.keyId,
    keyTitle: `Pad ${hole.number} · ${hole.name} key`,
    keyDetail: [
      vents === '' ? '' : `vents ${vents}`,
      report?.keyId === horn.keyId && report.governed.length > 0
        ? `moves ${listed(report.governed.map((g) => noteLabel(g.id)))}`
        : '',
    ]
      .filter((part) => part !== '')
      .join('; '),
    waiting: !isCurrent(state) && state.study.asked !== state.study.answered,
    problem: state.study.problem,
    calibrated: calibratedWords(hornInHand(state).contents),
    ...makeMeasuredFields(state),
    study: report === null ? null : makeStudyView(state, report),
  };
}

function makeStudyView(state: BenchState, report: StudyReport): StudyView {
  const { unit, readAt } = state;
  const frontMm = Math.min(proposedMmOf(state, report), report.reachMm);
  const point = proposedPoint(state, report, frontMm);
  const drawing = makePadDrawing(
    report.geometry,
    { frontMm, foundFrontMm: report.present.frontMm, reachMm: report.reachMm },
    unit,
  );
  return {
    answer: makeAnswerSentences(report, { unit, readAt }, frontMm),
    warnings: report.warnings,
    ...makeStudyChart(report, unit, state.measure),
    proposed: makeProposedMark(report, unit, state.measure, frontMm, point),
    proposal: makeProposal(state, report, { frontMm, readMm: drawing.openMm[readAt] }, point),
    drawing,
    report,
    sureness: makeStudySureness(report, unit, documentsInHand(state).horn),
    reasons: answerReasons({ report, contents: hornInHand(state).contents, manner: { unit, readAt } }),
  };
}

/** What the physics said of the proposed opening, or last said on the way there; null where it never did. */
function proposedPoint(state: BenchState, report: StudyReport, frontMm: number): PointReport | null {
  if (state.point !== null) return state.point;
  if (report.answer.kind !== 'none in reach' && frontMm === report.answer.point.frontMm)
    return report.answer.point;
  return frontMm === report.present.frontMm ? report.present : null;
}

function makeProposal(
  state: BenchState,
  report: StudyReport,
  proposed: { readonly frontMm: number; readonly readMm: number },
  point: PointReport | null,
): ProposalView {
  const { unit, readAt } = state;
  const { frontMm, readMm: valueMm } = proposed;
  const typed = hornInHand(state).typed[report.keyId]?.proposed;
  const answered = report.answer.kind === 'reached';
  // How sure a change is was worked out to the answer; on the way there it is not known.
  const isAnswer = report.answer.kind !== 'none in reach' && point?.frontMm === report.answer.point.frontMm;
  const changes = report.governed.map((note, i): NoteChange => {
    const there = point?.notes[i] ?? null;
    const half = isAnswer ? (report.budgets.changeCents[i]?.plusMinus ?? null) : null;
    return {
      label: noteLabel(note.id),
      change: point === null ? '…' : there === null ? 'lost' : signedCents(there.fromPresentCents),
      plusMinus: there === null || half === null ? '' : bareCents(half),
      reason:
        point === null || there === null
          ? null
          : changeReason(report, i, { point, figure: signedCents(there.fromPresentCents), unit }),
    };
  });
  return {
    frontMm,
    ...proposableMm(report),
    foundMm: report.present.frontMm,
    enoughMm: report.answer.kind === 'none in reach' ? null : report.answer.point.frontMm,
    valueText: `${formatBoth(valueMm, unit)} at the ${readAt}`,
    heading: unbroken(
      `Cents from found, ${formatLength(point === null ? valueMm : openingMm(point, readAt), unit)} ${readAt}` +
        (point === null ? '' : ` = ${formatLength(point.equivalentParallelMm, unit)} parallel`),
    ),
    changes,
    shareWords: point === null ? '…' : `${percent(report.present.ventShare)} → ${percent(point.ventShare)}`,
    field: {
      id: 'proposed',
      label: 'Proposed opening',
      hint: isProposed(state) ? 'proposed' : answered ? 'suggested, not yet proposed' : 'as found',
      text: textInField(typed, frontMm, formatLength(valueMm, unit)),
      echo: `${formatBoth(valueMm, unit)} at the ${readAt}`,
      problem:
        (typed?.problem ?? null) === null
          ? null
          : `${sentence(typed!.problem!)} Still in use: ${formatBoth(valueMm, unit)} at the ${readAt}.`,
    },
    takes: answered ? suggestedMmOf(report) : null,
    taken: answered ? isProposed(state) && frontMm === suggestedMmOf(report) : !isProposed(state),
  };
}
