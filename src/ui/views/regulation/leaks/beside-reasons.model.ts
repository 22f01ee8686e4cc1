import { formatBoth, type LengthUnit } from '../../../../documents/length-format.ts';
import type {
  GapCostReport,
  HeightEffectReport,
  HeightOrLeakReport,
  PadLeakReport,
} from '../../../../documents/height-or-leak-report.ts';
import type { BudgetReport } from '../../../../documents/uncertainty-report.ts';
import { noteLabel } from '../../../parts/note-names.ts';
import { lengthBothWithPlusMinus } from '../../../parts/plus-minus-words.ts';
import type { Reason, ReasonInput } from '../../../state/reasons.ts';
import { gapWords } from '../gap-words.ts';

/** The figure as it stands on the page, and the unit of lengths. */
interface Shown {
  readonly figure: string;
  readonly unit: LengthUnit;
}

const NO_BUDGET = 'Its ± is not known: the note cannot be followed there.';

/** Why a key’s height brings what it does. */
export function gainReason(
  height: HeightEffectReport,
  { fingering, heightRatio }: HeightOrLeakReport,
  { figure, unit }: Shown,
): Reason {
  const { name, foundMm, foundMmBudget, enoughMm, enoughMmBudget, kind, heldBy, gainDb } = height;
  const gainShare = gainDb === null ? 1 : 10 ** (gainDb / 20);
  const remarks = [
    ...(kind === 'none in reach'
      ? ['More height still helps as far as the study looks; it is played there.']
      : []),
    ...(heldBy === null ? [] : [`The arm of the ${heldBy} key lets it no higher as they stand.`]),
  ];
  return {
    kind: 'height-gain',
    figure,
    of: `${noteLabel(fingering)}, the ${name} key`,
    inputs: [
      {
        label: 'opening as it stands',
        value: lengthBothWithPlusMinus(foundMm, foundMmBudget.plusMinus, unit),
        from: '',
      },
      {
        label: kind === 'none in reach' ? 'as far as it opens' : 'enough',
        value:
          enoughMmBudget === null
            ? formatBoth(enoughMm, unit)
            : lengthBothWithPlusMinus(enoughMm, enoughMmBudget.plusMinus, unit),
        from: '',
      },
      ...heights(heightRatio, 'height as it stands', gainShare, 'height there'),
    ],
    ...sureness(height.gainDbBudget, remarks),
  };
}

/** Why a leak would cost what it does. */
export function costReason(
  { name, shutBy }: PadLeakReport,
  { gapMm, lostDb, lostDbBudget }: GapCostReport,
  { fingering, heightRatio }: HeightOrLeakReport,
  { figure, unit }: Shown,
): Reason {
  return {
    kind: 'leak-loss',
    figure,
    of: `${noteLabel(fingering)}, ${name}`,
    inputs: [
      { label: `gap all round under ${name}`, value: gapWords(gapMm, unit), from: '' },
      { label: 'shut by', value: shutBy === 'spring' ? 'its spring' : 'the fingers', from: '' },
      ...heights(
        heightRatio,
        'height, sealed',
        lostDb === null ? 1 : 10 ** (-lostDb / 20),
        'height, leaking',
      ),
    ],
    ...sureness(lostDbBudget, [
      'The gap is meant, not read: it has no ± of its own.',
      'A leak answers more to one side than to the other: the wider side of each part is listed.',
    ]),
  };
}

function heights(ratio: number | null, before: string, share: number, after: string): ReasonInput[] {
  if (ratio === null) return [];
  return [
    { label: before, value: ratio.toFixed(2), from: '' },
    { label: after, value: (ratio * share).toFixed(2), from: '' },
  ];
}

function sureness(
  parts: BudgetReport | null,
  remarks: readonly string[],
): Pick<Reason, 'budget' | 'remarks'> {
  return parts === null
    ? { budget: null, remarks: [...remarks, NO_BUDGET] }
    : { budget: { parts, in: 'dB' }, remarks };
}
