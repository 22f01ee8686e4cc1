import { canBeShown } from '../../../acoustics/index.ts';
import type { BenchContents } from '../../../documents/bench-contents.ts';
import { keyedHoles, type HornDocument } from '../../../documents/horn-document.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import type { BudgetReport } from '../../../documents/uncertainty-report.ts';
import { noteLabel } from '../../parts/note-names.ts';
import { centsWithPlusMinus } from '../../parts/plus-minus-words.ts';
import { makeSureness, type Sureness } from '../../parts/sureness.model.ts';
import { memoLast } from '../../state/memo-last.ts';
import type { Reason } from '../../state/reasons.ts';
import type { NoteReport, StudyReport } from '../../state/study-report.ts';
import { changeReason, pitchReason } from './study-reasons.model.ts';

/** One governed note: where it lies as found, and what it does to the answer, each with its ±. */
export interface NoteSureness {
  readonly id: string;
  readonly label: string;
  /** cents from equal temperament */
  readonly pitch: string;
  /** cents from as found to the answer; a dash where there is none */
  readonly change: string;
  /** whether the change is more than its ± */
  readonly shown: boolean;
  readonly reasons: { readonly pitch: Reason | null; readonly change: Reason | null };
}

/** How sure a study is. */
export interface StudySureness {
  /** of the answer; of the key as it stands where there is no answer with a ± */
  readonly panel: Sureness;
  readonly notes: readonly NoteSureness[];
}

export const makeStudySureness = memoLast(
  (report: StudyReport, unit: LengthUnit, contents: BenchContents): StudySureness => ({
    panel: makePanel(report, unit, contents.horn.document),
    notes: makeNotes(report, { unit, contents }),
  }),
);

function makePanel({ budgets, next }: StudyReport, unit: LengthUnit, horn: HornDocument): Sureness {
  const manner = { of: 'mm', unit, keys: new Set(keyedHoles(horn).map(({ id }) => id)) } as const;
  return budgets.answerMm === null
    ? makeSureness(budgets.presentMm, [], { ...manner, what: 'The opening as it stands, at the front' })
    : makeSureness(budgets.answerMm, next, { ...manner, what: 'The opening that is enough, at the front' });
}

function makeNotes(
  report: StudyReport,
  manner: { readonly unit: LengthUnit; readonly contents: BenchContents },
): NoteSureness[] {
  const { governed, present, answer, budgets } = report;
  return governed.map(({ id }, i) => {
    const there = answer.kind === 'none in reach' ? null : (answer.point.notes[i] ?? null);
    const change = budgets.changeCents[i] ?? null;
    const figure =
      there === null || change === null ? '–' : centsWithPlusMinus(there.fromPresentCents, change.plusMinus);
    return {
      id,
      label: noteLabel(id),
      pitch: pitchWords(present.notes[i], budgets.pitchCents[i]),
      change: figure,
      reasons: {
        pitch: pitchReason(report, i, manner),
        change:
          there === null || answer.kind === 'none in reach'
            ? null
            : changeReason(report, i, {
                point: answer.point,
                changes: budgets.changeCents,
                figure,
                ...manner,
              }),
      },
      shown:
        there !== null &&
        change !== null &&
        canBeShown({ value: there.fromPresentCents, plusMinus: change.plusMinus }),
    };
  });
}

function pitchWords(note: NoteReport | null, budget: BudgetReport | null): string {
  if (note === null) return 'lost';
  return budget === null ? '–' : centsWithPlusMinus(note.pitchCents, budget.plusMinus);
}
