import type { BenchContents } from '../../../documents/bench-contents.ts';
import { formatBoth, formatLength } from '../../../documents/length-format.ts';
import { noteLabel, signedCents, unbroken } from '../../parts/note-names.ts';
import {
  barePlusMinus,
  centsWithPlusMinus,
  lengthWithPlusMinus,
  sign,
} from '../../parts/plus-minus-words.ts';
import type { Measure } from '../../state/bench-state.ts';
import { budgetInputs } from '../../state/budget-inputs.ts';
import { openingInput, ventingInputs } from '../../state/reason-inputs.ts';
import { columnReason, type Reason, type ReasonInput, type ReasonKind } from '../../state/reasons.ts';
import type { PointReport, StudyReport } from '../../state/study-report.ts';
import type { BudgetReport } from '../../../documents/uncertainty-report.ts';
import { openingFigure, percent, shareWithPlusMinus, type Manner } from './opening-words.ts';

/** What a key's reasons are drawn from. */
export interface ReasonedStudy {
  readonly report: StudyReport;
  readonly contents: BenchContents;
  readonly manner: Manner;
}

/**
 * Reasons of the figures in the answer's sentences; a sentence opens those whose figures stand in it. A figure is told
 * in one unit, so that it keeps to its line.
 */
export interface AnswerReasons {
  /** of where height stops helping */
  readonly point: readonly Reason[];
  /** of how the key stands as found */
  readonly present: readonly Reason[];
}

export function answerReasons(study: ReasonedStudy): AnswerReasons {
  return { point: pointReasons(study), present: presentReasons(study) };
}

/** The answer and its ±, or the arm that stops it. */
function pointReasons({ report, contents, manner }: ReasonedStudy): Reason[] {
  const { answer, budgets, keyId, keyName } = report;
  const { unit } = manner;
  if (answer.kind === 'none in reach') return [];
  const { point } = answer;
  const base = {
    of: `${keyName} key`,
    inputs: [...pointInputs(point, unit), ...ventingInputs(contents, keyId, unit)],
    budget: budgets.answerMm === null ? null : ({ parts: budgets.answerMm, in: 'mm' } as const),
    remarks: [decided(report)],
  };
  const reached: Reason = {
    ...base,
    kind: 'diminishing-return',
    figure: unbroken(openingFigure(point, manner, budgets.answerMm?.plusMinus ?? null)),
  };
  const sure: Reason[] =
    budgets.answerMm === null
      ? []
      : [
          {
            ...base,
            kind: 'plus-minus',
            figure: unbroken(`± ${barePlusMinus(budgets.answerMm.plusMinus, unit)} ${sign(unit)}`),
            inputs: [],
            remarks: [],
          },
        ];
  if (answer.kind === 'reached') return [reached, ...sure];
  const limit: Reason = {
    kind: 'link-limit',
    figure: unbroken(
      report.ruledBy === null
        ? formatLength(answer.linkFrontMm, unit)
        : lengthWithPlusMinus(answer.linkFrontMm, budgets.presentMm.plusMinus, unit),
    ),
    of: `${answer.driverName} key’s arm on the ${keyName} key`,
    inputs: [{ label: 'height would help up to', value: formatBoth(point.frontMm, unit), from: '' }],
    budget: report.ruledBy === null ? null : { parts: budgets.presentMm, in: 'mm' },
    remarks: [],
  };
  return [limit, reached, ...sure];
}

/** How the key stands as found: where, what that is worth parallel, how it vents. */
function presentReasons({ report, contents, manner }: ReasonedStudy): Reason[] {
  const { present, presentParallel, budgets, keyId, keyName } = report;
  const { unit } = manner;
  const of = `${keyName} key as found`;
  const read = openingInput(contents, keyId, 'asFound', unit);
  const key = [...read, ...ventingInputs(contents, keyId, unit)];
  return [
    {
      kind: 'opening',
      figure: unbroken(openingFigure(present, manner, budgets.presentMm.plusMinus)),
      of,
      inputs: [...read, ...pointInputs(present, unit)],
      budget: { parts: budgets.presentMm, in: 'mm' },
      remarks:
        report.ruledBy === null
          ? []
          : [`The ${report.ruledBy.driverName} key’s arm holds it below its own stop.`],
    },
    {
      kind: 'vent-share',
      figure: unbroken(shareWithPlusMinus(present.ventShare, budgets.ventShare.plusMinus)),
      of,
      inputs: key,
      budget: { parts: budgets.ventShare, in: 'share' },
      remarks: [],
    },
    {
      kind: 'equivalent-opening',
      figure: unbroken(formatLength(present.equivalentParallelMm, unit)),
      of,
      inputs: [
        ...pointInputs(present, unit),
        { label: 'vent share, swung', value: percent(present.ventShare), from: '' },
        {
          label: 'vent share, parallel at the same front',
          value: percent(presentParallel.ventShare),
          from: '',
        },
        ...ventingInputs(contents, keyId, unit).slice(0, 4),
      ],
      budget: null,
      remarks: [],
    },
  ];
}

/** Why a governed note lies where it does as found; null where its ± is not known. @param index among the governed */
export function pitchReason(
  { present, governed, budgets }: StudyReport,
  index: number,
  { contents, unit }: Pick<MovedTo, 'contents' | 'unit'>,
): Reason | null {
  const [note, budget] = [present.notes[index], budgets.pitchCents[index]];
  if (note === null || budget === null) return null;
  return {
    kind: 'pitch',
    figure: centsWithPlusMinus(note.pitchCents, budget.plusMinus),
    of: `${noteLabel(governed[index].id)} as found`,
    inputs: [
      { label: 'sounds at', value: `${note.hz.toFixed(2)} Hz`, from: '' },
      ...budgetInputs(contents, budget, unit),
    ],
    budget: { parts: budget, in: 'cents' },
    remarks: [],
  };
}

/** A move of the key, and what of it is shown. */
interface MovedTo extends Pick<Manner, 'unit'> {
  readonly contents: BenchContents;
  readonly point: PointReport;
  /** of the governed notes’ changes; null while the hand moves */
  readonly changes: readonly (BudgetReport | null)[] | null;
  readonly figure: string;
}

/** Why a governed note moves so much. @param index among the governed */
export function changeReason(
  { present, governed, keyName }: StudyReport,
  index: number,
  { point, changes, figure, unit, contents }: MovedTo,
): Reason | null {
  const [now, there] = [present.notes[index], point.notes[index]];
  if (now === null || there === null) return null;
  const budget = changes?.[index] ?? null;
  return {
    kind: 'change',
    figure,
    of: `${noteLabel(governed[index].id)}, ${keyName} key`,
    inputs: [
      { label: 'pitch as found', value: `${signedCents(now.pitchCents)} cents`, from: '' },
      { label: 'pitch there', value: `${signedCents(there.pitchCents)} cents`, from: '' },
      { label: 'front as found', value: formatBoth(present.frontMm, unit), from: '' },
      { label: 'front there', value: formatBoth(point.frontMm, unit), from: '' },
      ...budgetInputs(contents, budget, unit),
    ],
    budget: budget === null ? null : { parts: budget, in: 'cents' },
    remarks: changes === null ? ['How sure it is is worked out once the hand rests.'] : [],
  };
}

const CURVE_KINDS: Readonly<Record<Measure, ReasonKind>> = {
  pitch: 'change',
  strength: 'strength',
  'rise time': 'rise-time',
};

/** What a column of the curve's numbers is. @param figure as its head says it */
export function curveReason(measure: Measure, figure: string, { keyName }: StudyReport): Reason {
  return columnReason(CURVE_KINDS[measure], figure, `${keyName} key at every opening`);
}

function pointInputs({ frontMm, centreMm, backMm }: PointReport, unit: Manner['unit']): ReasonInput[] {
  return (
    [
      ['at the front', frontMm],
      ['at the centre', centreMm],
      ['at the back', backMm],
    ] as const
  ).map(([label, mm]) => ({ label, value: formatBoth(mm, unit), from: '' }));
}

function decided({ answer }: StudyReport): string {
  if (answer.kind === 'none in reach') return '';
  switch (answer.decidedBy.by) {
    case 'pitch':
      return `${noteLabel(answer.decidedBy.fingering)} is the last note to stop moving.`;
    case 'vent share':
      return 'Vent share is the last to stop growing.';
    case 'least opening':
      return 'Nothing grows even from the least opening.';
  }
}
