import type { BenchContents } from '../../../documents/bench-contents.ts';
import type { LengthUnit } from '../../../documents/length-format.ts';
import { signedCents, unbroken } from '../../parts/note-names.ts';
import { centsWithPlusMinus } from '../../parts/plus-minus-words.ts';
import { budgetInputs } from '../../state/budget-inputs.ts';
import { columnReason, type Reason, type ReasonInput, type ReasonKind } from '../../state/reasons.ts';
import type { ScaleNumbers, ScaleReport } from '../../state/scale-report.ts';
import type { CentsSureness, ScaleSureness } from '../../state/scale-sureness.ts';
import { SCALE_HEAD } from './scale-tables.model.ts';
import { signedPercent } from './scale-words.ts';

/** The picked note, as found and as proposed. */
export interface ReasonedNote {
  readonly name: string;
  /** its place in the report */
  readonly index: number;
  /** null where no key is proposed otherwise than found */
  readonly proposed: ScaleNumbers | null;
  readonly sure: ScaleSureness | null;
}

/** The horn it is a note of, and how its lengths are told. */
export interface OnTheBench {
  readonly contents: BenchContents;
  readonly unit: LengthUnit;
}

/** Reasons of the figures in the line that tells of the picked note. */
export function noteReasons({ found }: ScaleReport, note: ReasonedNote, on: OnTheBench): Reason[] {
  const { index: i, proposed, sure } = note;
  if (Number.isNaN(found.cents[i])) return [];
  if (proposed === null) {
    return [
      centsReason(
        'pitch',
        note,
        within(found.cents[i], sure?.found[i], ' cents'),
        sure?.found[i] ?? null,
        budgetInputs(on.contents, sure?.found[i]?.budget ?? null, on.unit),
      ),
      ...strengthAndCutoff(note.name, found, i, null),
    ];
  }
  if (Number.isNaN(proposed.cents[i])) return [];
  const moves = proposed.cents[i] - found.cents[i];
  return [
    centsReason('change', note, `moves ${within(moves, sure?.moves[i], '')}`, sure?.moves[i] ?? null, [
      { label: 'pitch as found', value: `${signedCents(found.cents[i])} cents`, from: '' },
      { label: 'pitch as proposed', value: `${signedCents(proposed.cents[i])} cents`, from: '' },
      ...budgetInputs(on.contents, sure?.moves[i]?.budget ?? null, on.unit),
    ]),
    ...strengthAndCutoff(note.name, found, i, proposed),
  ];
}

/** What the columns of the table behind the chart are, in their order; null for names. */
export const HEAD_REASONS: readonly (Reason | null)[] = (
  [null, null, 'pitch', 'pitch', 'change', 'strength', 'strength', 'cutoff', 'cutoff'] as const
).map((kind, i) => (kind === null ? null : columnReason(kind, SCALE_HEAD[i], 'every note')));

function within(cents: number, known: CentsSureness | null | undefined, unit: string): string {
  const text =
    known === null || known === undefined
      ? signedCents(cents)
      : centsWithPlusMinus(cents, known.budget.plusMinus);
  return unbroken(`${text}${unit}`);
}

function centsReason(
  kind: ReasonKind,
  { name }: ReasonedNote,
  figure: string,
  known: CentsSureness | null,
  inputs: readonly ReasonInput[],
): Reason {
  return {
    kind,
    figure,
    of: name,
    inputs,
    budget: known === null ? null : { parts: known.budget, in: 'cents' },
    remarks: [],
  };
}

/** @param proposed null where only the horn as found is told of */
function strengthAndCutoff(
  name: string,
  found: ScaleNumbers,
  i: number,
  proposed: ScaleNumbers | null,
): Reason[] {
  const height = (label: string, of: ScaleNumbers): ReasonInput => ({
    label,
    value: of.heights[i].toFixed(1),
    from: '',
  });
  const strength: Reason = {
    kind: 'strength',
    figure: `strength ${proposed === null ? found.heights[i].toFixed(1) : signedPercent(proposed.heights[i] / found.heights[i] - 1)}`,
    of: name,
    inputs: [
      height('height as found', found),
      ...(proposed === null ? [] : [height('height as proposed', proposed)]),
    ],
    budget: null,
    remarks: [],
  };
  const hz = [found, ...(proposed === null ? [] : [proposed])].map(({ cutoffHz }) => cutoffHz[i]);
  if (hz.some(Number.isNaN)) return [withFigure(strength)];
  const cutoff = columnReason('cutoff', `cutoff ${hz.map((f) => f.toFixed(0)).join(' → ')} Hz`, name);
  return [withFigure(strength), withFigure(cutoff)];
}

function withFigure(reason: Reason): Reason {
  return { ...reason, figure: unbroken(reason.figure) };
}
