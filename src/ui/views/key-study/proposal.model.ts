import type { BenchContents } from '../../../documents/bench-contents.ts';
import { formatBoth, formatLength, type LengthUnit } from '../../../documents/length-format.ts';
import { tenths } from '../../../documents/tenths.ts';
import { noteLabel, signedCents, unbroken } from '../../parts/note-names.ts';
import { hornInHand, type BenchState } from '../../state/bench-state.ts';
import type { Reason } from '../../state/reasons.ts';
import { isProposed } from '../../state/study-in-hand.ts';
import type { StudyReport, SurePointReport } from '../../state/study-report.ts';
import { proposableMm, startMmOf } from '../../state/study-state.ts';
import { textInField } from '../../state/text-in-field.ts';
import { sentence, type FieldView } from './measured-fields.model.ts';
import { openingMm, percent } from './opening-words.ts';
import { changeReason } from './study-reasons.model.ts';

/** What the proposed opening does to one note. */
export interface NoteChange {
  readonly label: string;
  readonly change: string;
  /** `0.3`; an ellipsis while the hand moves, empty where it is not known */
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

/** What the physics said of the proposed opening, or last said on the way there; null where it never did. */
export function proposedPoint(
  state: BenchState,
  report: StudyReport,
  frontMm: number,
): SurePointReport | null {
  const { answer, present, budgets } = report;
  if (state.point !== null && state.point.changeCents !== null) return state.point;
  // The study itself says how sure the changes to its answer are.
  const isAnswer = answer.kind !== 'none in reach' && frontMm === answer.point.frontMm;
  if (isAnswer) return { ...answer.point, changeCents: budgets.changeCents };
  if (state.point !== null) return state.point;
  return frontMm === present.frontMm ? { ...present, changeCents: null } : null;
}

/** @param proposed mm: at the front, and where openings are read */
export function makeProposal(
  state: BenchState,
  report: StudyReport,
  proposed: { readonly frontMm: number; readonly readMm: number },
  point: SurePointReport | null,
): ProposalView {
  const { unit, readAt } = state;
  const { frontMm, readMm: valueMm } = proposed;
  const typed = hornInHand(state).typed[report.keyId]?.proposed;
  const answered = report.answer.kind === 'reached';
  const manner = { unit, contents: hornInHand(state).contents };
  const changes = report.governed.map((_, i) => noteChange(report, i, point, manner));
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
      hint: isProposed(state) ? 'proposed' : answered ? 'enough, not proposed yet' : 'as found',
      text: textInField(typed, frontMm, formatLength(valueMm, unit)),
      echo: `${formatBoth(valueMm, unit)} at the ${readAt}`,
      problem:
        (typed?.problem ?? null) === null
          ? null
          : `${sentence(typed!.problem!)} Still in use: ${formatBoth(valueMm, unit)} at the ${readAt}.`,
    },
    takes: answered ? startMmOf(report) : null,
    taken: answered ? isProposed(state) && frontMm === startMmOf(report) : !isProposed(state),
  };
}

/** @param index among the governed */
function noteChange(
  report: StudyReport,
  index: number,
  point: SurePointReport | null,
  manner: { readonly unit: LengthUnit; readonly contents: BenchContents },
): NoteChange {
  const label = noteLabel(report.governed[index].id);
  if (point === null) return { label, change: '…', plusMinus: '', reason: null };
  const there = point.notes[index];
  if (there === null) return { label, change: 'lost', plusMinus: '', reason: null };
  const change = signedCents(there.fromPresentCents);
  const half = point.changeCents?.[index]?.plusMinus ?? null;
  return {
    label,
    change,
    plusMinus: half !== null ? tenths(half) : point.changeCents === null ? '…' : '',
    reason: changeReason(report, index, { point, changes: point.changeCents, figure: change, ...manner }),
  };
}
