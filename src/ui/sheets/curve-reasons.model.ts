import type { BenchContents } from '../../documents/bench-contents.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import type { CurveMark, MarkedOpening, SheetCurve } from '../../documents/player-sheet-curve.ts';
import { mainNote } from '../../documents/player-sheet-decisions.ts';
import type { PlayerSheetFacts, WishedKey } from '../../documents/player-sheet-facts.ts';
import { bothWithPlusMinus, signed } from '../../documents/player-sheet-lengths.ts';
import { openingInput, ventingInputs } from '../state/reason-inputs.ts';
import type { Reason, ReasonInput } from '../state/reasons.ts';

/** The reasons of the figures beside the curve, by mark; null where there is no such figure. */
export type MarkReasons = Readonly<
  Partial<
    Record<CurveMark, { readonly opening: Reason; readonly vented: Reason; readonly cents: Reason | null }>
  >
>;

export function makeCurveReasons(
  contents: BenchContents,
  { wished, wishedShift, comparison, isProposal }: PlayerSheetFacts,
  curve: SheetCurve | null,
  unit: LengthUnit,
): MarkReasons {
  if (wished === null || curve === null) return {};
  const wishBudget = wishedShift ?? wished;
  const note = mainNote(wished.study);
  const atWish =
    wishBudget.cost?.notes.find(({ fingering }) => fingering === note?.id)?.differences[0] ?? null;
  const sinceFound = comparison.notes.find(({ fingering }) => fingering === note?.id)?.differences[0] ?? null;
  const changes: Readonly<Partial<Record<CurveMark, NonNullable<Reason['budget']>['parts'] | null>>> = {
    'as found': sinceFound?.budget ?? null,
    wish: atWish?.budget ?? null,
    enough: note === null ? null : (wished.study.notesBudgets[note.index]?.changeCents ?? null),
  };
  return Object.fromEntries(
    curve.marks.map((mark) => {
      const inputs = openingsOf(mark, contents, wished.pad, unit);
      const key = `${curve.keyName} key, ${mark.label}`;
      const parts = changes[mark.mark] ?? null;
      return [
        mark.mark,
        {
          opening: openingReason(mark, key, wished, { contents, inputs, unit }),
          vented: {
            kind: 'vent-share',
            figure: `${mark.ventPercent.toFixed(0)} %`,
            of: key,
            inputs: [...inputs, ...ventingInputs(contents, wished.pad, unit)],
            budget: leaves(mark) ? { parts: wished.study.presentBudgets.ventShare, in: 'share' } : null,
            remarks: [],
          },
          cents:
            mark.cents === null || leaves(mark)
              ? null
              : {
                  kind: 'change',
                  figure: `${signed(mark.cents)} cents`,
                  of: `${curve.noteName}, ${mark.label} beside ${isProposal ? 'as proposed' : 'as it leaves'}`,
                  inputs,
                  budget: parts === null ? null : { parts, in: 'cents' },
                  remarks: [],
                },
        },
      ];
    }),
  );
}

/** Whether an opening is the one the others are told beside. */
function leaves({ mark }: MarkedOpening): boolean {
  return mark === 'as set' || mark === 'as proposed';
}

function openingReason(
  { mark, frontMm, plusMinusMm }: MarkedOpening,
  of: string,
  { pad, study }: WishedKey,
  {
    contents,
    inputs,
    unit,
  }: { readonly contents: BenchContents; readonly inputs: readonly ReasonInput[]; readonly unit: LengthUnit },
): Reason {
  const figure = bothWithPlusMinus(frontMm, plusMinusMm, unit);
  if (mark !== 'enough') return { kind: 'opening', figure, of, inputs, budget: null, remarks: [] };
  const parts = study.diminishingReturn.frontMmBudget;
  return {
    kind: 'diminishing-return',
    figure,
    of,
    inputs: ventingInputs(contents, pad, unit),
    budget: parts === null ? null : { parts, in: 'mm' },
    remarks: [],
  };
}

/** What an opening on the curve rests on. */
function openingsOf(
  { mark, frontMm }: MarkedOpening,
  contents: BenchContents,
  pad: string,
  unit: LengthUnit,
): ReasonInput[] {
  if (mark === 'as found') return openingInput(contents, pad, 'asFound', unit);
  if (mark === 'as set') return openingInput(contents, pad, 'asSet', unit);
  if (mark === 'as proposed') return openingInput(contents, pad, 'proposed', unit);
  const value = bothWithPlusMinus(frontMm, null, unit);
  return [{ label: 'at the front', value, from: mark === 'wish' ? 'as wished' : 'worked out' }];
}
