import { contradictionSentence } from '../../../documents/contradicting-readings.ts';
import { keyedHoles } from '../../../documents/horn-document.ts';
import type { MeasuringPoint } from '../../../acoustics/index.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import type { ProposedMark } from '../../parts/chart/chart.model.ts';
import { makeKeyStrip, ventWords, type StripPad } from '../../parts/key-strip.model.ts';
import { listed, noteLabel, unbroken } from '../../parts/note-names.ts';
import { makePadDrawing, type PadDrawing } from '../../parts/pad-drawing.model.ts';
import { documentsInHand, hornInHand, type BenchState, type Measure } from '../../state/bench-state.ts';
import { isCurrent, proposedMmOf } from '../../state/study-in-hand.ts';
import { calibratedWords } from '../../state/calibration-source.ts';
import { changedSince } from '../../state/horn-on-bench.ts';
import type { StudyReport } from '../../state/study-report.ts';
import { makeAnswerSentences, type AnswerSentences } from './answer-sentences.ts';
import { makeLinkSentences, type LinkSentence } from './link-sentences.ts';
import { makeMeasuredFields, type MeasuredFields } from './measured-fields.model.ts';
import { makeProposal, proposedPoint, type ProposalView } from './proposal.model.ts';
import { makeProposedMark, makeStudyChart, type StudyChart } from './study-chart.model.ts';
import { makeStudyLinks } from './study-links.model.ts';
import { answerReasons, type AnswerReasons } from './study-reasons.model.ts';
import { makeStudySureness, type StudySureness } from './study-sureness.model.ts';

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
  /** whether a link drives the key, or the key drives others */
  readonly linked: boolean;
  readonly study: StudyView | null;
}

/** The part that needs a finished study. */
export interface StudyView extends StudyChart {
  readonly answer: AnswerSentences;
  /** what else moves: links this key would hold down or is held by, and what it leaves behind in them */
  readonly links: readonly LinkSentence[];
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
  'Absolute pitch is good to ±10 cents at best, differences far better; a player repeats a note to ±3–5 cents.';

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
    linked: documents.horn.links.some(({ driver, driven }) => driver === horn.keyId || driven === horn.keyId),
    ...makeMeasuredFields(state),
    study: report === null ? null : makeStudyView(state, report),
  };
}

function makeStudyView(state: BenchState, report: StudyReport): StudyView {
  const { unit, readAt } = state;
  const frontMm = Math.min(proposedMmOf(state, report), report.reachMm);
  const point = proposedPoint(state, report, frontMm);
  const { contents, keyId } = hornInHand(state);
  const links = makeStudyLinks(contents, keyId, frontMm);
  const drawing = makePadDrawing(
    report.geometry,
    { frontMm, foundFrontMm: report.present.frontMm, reachMm: report.reachMm },
    unit,
  );
  return {
    answer: makeAnswerSentences(report, { unit, readAt }),
    links: makeLinkSentences(report, links, { unit }, frontMm),
    warnings: [
      ...links.contradicting.map((found) => unbroken(contradictionSentence(found, unit))),
      ...report.warnings,
    ],
    ...makeStudyChart(report, unit, state.measure),
    proposed: makeProposedMark(report, unit, state.measure, frontMm, point),
    proposal: makeProposal(state, report, { frontMm, readMm: drawing.openMm[readAt] }, point),
    drawing,
    report,
    sureness: makeStudySureness(report, unit, hornInHand(state).contents),
    reasons: answerReasons({ report, contents, manner: { unit, readAt } }),
  };
}
