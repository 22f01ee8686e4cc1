import type { ReadingKind } from '../../acoustics/index.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import type { BudgetReport, NextReport } from '../../documents/uncertainty-report.ts';
import type { LengthId } from '../state/fields.ts';
import { unbroken } from './note-names.ts';
import { makePartViews, readingWords, sizeWords, SMALL, type PartView } from './plus-minus-parts.model.ts';
import { other } from './plus-minus-words.ts';

/** Where a measurement is typed. */
export interface MeasureTarget {
  readonly pad: string;
  readonly field: LengthId;
}

/** Something to measure or to do next. */
export interface SurenessNext {
  readonly text: string;
  /** where it is typed; null where the screen has no field for it */
  readonly target: MeasureTarget | null;
  /** a place in the page it leads to instead */
  readonly link: { readonly href: string; readonly label: string } | null;
}

/** How sure an answer is, and what would make it surer. */
export interface Sureness {
  /** `± 0.3 mm (0.011 in) on …` */
  readonly told: string;
  readonly parts: readonly PartView[];
  /** the best first */
  readonly next: readonly SurenessNext[];
  /** said after the list, or instead of an empty one; empty for nothing */
  readonly closing: string;
}

/** What the panel is made for. */
export interface SurenessManner {
  /** of the answer */
  readonly of: 'mm' | 'cents';
  /** in which lengths are told first */
  readonly unit: LengthUnit;
  /** `The ± on the opening that is enough` */
  readonly what: string;
  /** pads whose lengths can be typed: those with a key, of the horn in hand */
  readonly keys: ReadonlySet<string>;
  /** whether played notes can tell more of it than any ruler */
  readonly byPlaying?: boolean;
}

/** So many measurements are proposed. */
const TOLD_NEXT = 3;

export const NOTHING_NARROWS = 'No single reading would narrow this by more than 2 %.';

/** The fields of the key view, by what is read. */
const FIELDS: Readonly<Partial<Record<ReadingKind, LengthId>>> = {
  opening: 'openingMm',
  padThickness: 'padThicknessMm',
  padRadius: 'padDiameterMm',
  hingeDistance: 'hingeMm',
  hingeHeight: 'hingeHeightMm',
  rimThickness: 'rimMm',
  holeRadius: 'diameterMm',
  chimney: 'chimneyMm',
};

/** The panel of one answer. @param next what to measure, the best first */
export function makeSureness(
  budget: BudgetReport,
  next: readonly NextReport[],
  manner: SurenessManner,
): Sureness {
  const shown = next.slice(0, TOLD_NEXT);
  const last = shown[shown.length - 1];
  return {
    told: unbroken(`${manner.what}: ± ${sizeWords(budget.plusMinus, manner.of, manner.unit)}.`),
    parts: makePartViews(budget, manner.of, manner.unit),
    next: [
      ...(manner.byPlaying === true ? byPlaying(budget, manner) : []),
      ...shown.map((each) => makeNext(each, budget.plusMinus, manner)),
    ],
    closing: unbroken(closing(budget, shown.length, last, manner)),
  };
}

function closing(
  { plusMinus, padModel }: BudgetReport,
  count: number,
  last: NextReport | undefined,
  manner: SurenessManner,
): string {
  if (last === undefined) {
    if (plusMinus === 0) return '';
    const model = Math.abs(padModel) > 0.7 * plusMinus ? ' Most of it is the pad model’s own.' : '';
    return `${NOTHING_NARROWS}${model}`;
  }
  return count < 2
    ? ''
    : `${count === 2 ? 'Both' : 'All three'}: ± ${sizeWords(last.together, manner.of, manner.unit)}.`;
}

function makeNext(next: NextReport, plusMinus: number, manner: SurenessManner): SurenessNext {
  const field = FIELDS[next.kind];
  const { tool, label, pad } = next;
  return {
    text: unbroken(
      `Measure the ${label} with a ${tool}, ± ${readingWords({ ...next, plusMinus: next.becomes }, manner.unit)}: ` +
        `the ± falls from ${fall(plusMinus, next.alone, manner)}.`,
    ),
    target: field === undefined || pad === null || !manner.keys.has(pad) ? null : { pad, field },
    link: next.kind === 'linkRatio' ? { href: '#links', label: 'to the links' } : null,
  };
}

/** Read once for the whole horn: what calibrating on played notes fits. */
const FITTED: readonly ReadingKind[] = ['temperature', 'mouthpieceVolume', 'mouthpiecePlace'];

/** What playing tells, where that is most of it: no length that can be measured does. */
function byPlaying(budget: BudgetReport, manner: SurenessManner): SurenessNext[] {
  const { plusMinus, wholeHorn, readings, calibration } = budget;
  // Notes were played already, and this is what they left.
  if (calibration > 0) return [];
  const day = readings.filter(({ kind }) => FITTED.includes(kind)).map(({ effect }) => effect);
  const gone = Math.hypot(wholeHorn, ...day);
  if (!(gone > 0.5 * plusMinus)) return [];
  const kept = Math.sqrt(Math.max(0, plusMinus ** 2 - gone ** 2));
  const text =
    `Play and log about ten notes: calibrating on them puts what the fit leaves open in place of ± ${sizeWords(gone, manner.of, manner.unit)} ` +
    `of whole horn, air and mouthpiece; readings and pads keep ± ${sizeWords(kept, manner.of, manner.unit)}.`;
  return [{ text: unbroken(text), target: null, link: { href: '#played', label: 'to the played notes' } }];
}

/** `0.6 to 0.2 mm (0.024 to 0.008 in)`, with as many digits as tell the two apart. */
function fall(from: number, to: number, { of, unit }: Pick<SurenessManner, 'of' | 'unit'>): string {
  if (of === 'cents') return `${apart(from, to, from < SMALL ? 2 : 1)} cents`;
  const inUnit = (as: LengthUnit): string =>
    as === 'mm' ? `${apart(from, to, 1)} mm` : `${apart(from / 25.4, to / 25.4, 3)} in`;
  return `${inUnit(unit)} (${inUnit(other(unit))})`;
}

function apart(from: number, to: number, digits: number): string {
  const enough = from.toFixed(digits) === to.toFixed(digits) ? digits + 1 : digits;
  return `${from.toFixed(enough)} to ${to.toFixed(enough)}`;
}
