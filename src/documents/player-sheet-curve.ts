import type { LengthUnit } from './length-format.ts';
import { mainNote } from './player-sheet-decisions.ts';
import type { PlayerSheetFacts, WishedKey } from './player-sheet-facts.ts';
import { bothWithPlusMinus } from './player-sheet-lengths.ts';
import type { VentingPointReport } from './venting-report.ts';

/** What an opening on the curve is. */
export const CURVE_MARKS = ['as found', 'as set', 'as proposed', 'wish', 'enough'] as const;
export type CurveMark = (typeof CURVE_MARKS)[number];

/** One opening told on the curve and in the table beside it. */
export interface MarkedOpening {
  readonly mark: CurveMark;
  /** `as found`, `your wish` */
  readonly label: string;
  readonly frontMm: number;
  /** of the opening, where it is worked out; null else */
  readonly plusMinusMm: number | null;
  readonly ventPercent: number;
  /** of the key’s main note from how it leaves; null where no note follows the key, or it is lost */
  readonly cents: number | null;
}

/** The key of the wish at every opening, everything else as it leaves. */
export interface SheetCurve {
  readonly keyName: string;
  /** as players say it, `low E`; null where no note follows the key */
  readonly noteName: string | null;
  readonly points: readonly { readonly frontMm: number; readonly ventPercent: number }[];
  readonly marks: readonly MarkedOpening[];
  /** how far the point of diminishing return may be off, mm; null where there is none */
  readonly enoughPlusMinusMm: number | null;
  /** the curve in a sentence, for who cannot see it */
  readonly told: string;
}

const LABELS: Readonly<Record<CurveMark, string>> = {
  'as found': 'as found',
  'as set': 'as set',
  'as proposed': 'as proposed',
  wish: 'your wish',
  enough: 'enough',
};

/** The curve of one key: the one the wish is about, or, where that is about all, the one it changes most. */
export function makeSheetCurve(
  { wishedShift, isProposal }: Pick<PlayerSheetFacts, 'wishedShift' | 'isProposal'>,
  { study, asFound, wish }: WishedKey,
  unit: LengthUnit,
): SheetCurve {
  const note = mainNote(study);
  const forAll =
    wishedShift?.cost.notes.find(({ fingering }) => fingering === note?.id)?.differences[0] ?? null;
  const { diminishingReturn: enough, key, curve, present } = study;
  const half = enough.frontMmBudget?.plusMinus ?? null;
  const at = (mark: CurveMark, point: VentingPointReport | null): MarkedOpening[] =>
    point === null
      ? []
      : [
          {
            mark,
            label: LABELS[mark],
            frontMm: point.frontMm,
            plusMinusMm: mark === 'enough' ? half : null,
            ventPercent: 100 * point.ventShare,
            cents: note === null ? null : (point.notes[note.index]?.fromPresentCents ?? null),
          },
        ];
  const marks = [
    ...at('as found', asFound),
    ...at(isProposal ? 'as proposed' : 'as set', present),
    // With every key moved the note goes further than with this one alone.
    ...at('wish', wish).map((mark) =>
      wishedShift === null
        ? mark
        : { ...mark, label: 'as wished', cents: forAll === null ? null : forAll.cents },
    ),
    ...at('enough', enough.point),
  ];
  const noteName = note?.name ?? null;
  return {
    keyName: key.name,
    noteName,
    points: curve.map(({ frontMm, ventShare }) => ({ frontMm, ventPercent: 100 * ventShare })),
    marks,
    enoughPlusMinusMm: half,
    told: toldCurve(key.name, marks, unit),
  };
}

function toldCurve(name: string, marks: readonly MarkedOpening[], unit: LengthUnit): string {
  const each = marks.map(
    ({ mark, frontMm, plusMinusMm, ventPercent }) =>
      `${mark} ${bothWithPlusMinus(frontMm, plusMinusMm, unit)} at the front, ${ventPercent.toFixed(0)} % vented`,
  );
  return `How far the ${name} key’s hole is vented at every opening: ${each.join('; ')}. It rises fast at first and hardly at all near the end.`;
}
