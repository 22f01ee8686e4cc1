import type { ReadingKind } from '../../acoustics/index.ts';
import type { LengthUnit } from '../../documents/length-format.ts';
import type { BudgetReport, NextReport, ReadingReport } from '../../documents/uncertainty-report.ts';
import type { LengthId } from '../state/fields.ts';
import { unbroken } from './note-names.ts';
import { other, plusMinusBoth, sign } from './plus-minus-words.ts';

/** One part of a ±. */
export interface SurenessPart {
  readonly label: string;
  /** how well that reading is known: `known to ± 0.2 mm (0.008 in)`; empty where it is no reading */
  readonly known: string;
  /** what it does to the answer, with its unit */
  readonly size: string;
  /** length of its bar, 0…1 */
  readonly share: number;
  readonly kind: 'reading' | 'model';
}

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
  readonly parts: readonly SurenessPart[];
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

/** So many parts are named; the others stand together. */
const NAMED_PARTS = 5;
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
    told: unbroken(`${manner.what}: ± ${amount(budget.plusMinus, manner)}.`),
    parts: makeParts(budget, manner),
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
  return count < 2 ? '' : `${count === 2 ? 'Both' : 'All three'}: ± ${amount(last.together, manner)}.`;
}

function makeParts(budget: BudgetReport, manner: SurenessManner): SurenessPart[] {
  const { plusMinus, padModel, wholeHorn, calibration } = budget;
  const models = [
    ['pad model', padModel],
    ['model of the whole horn', wholeHorn],
    ['what calibrating leaves open', calibration],
  ] as const;
  const all = [
    ...budget.readings.map((reading) => ({
      label: reading.label,
      known: `known to ± ${readingAmount(reading, manner.unit)}`,
      size: Math.abs(reading.effect),
      kind: 'reading' as const,
    })),
    ...models
      .filter(([, size]) => size !== 0)
      .map(([label, size]) => ({ label, known: '', size: Math.abs(size), kind: 'model' as const })),
  ].sort((a, b) => b.size - a.size);
  const named = all.slice(0, NAMED_PARTS);
  const rest = Math.sqrt(Math.max(0, plusMinus ** 2 - Math.hypot(...named.map(({ size }) => size)) ** 2));
  const listed = rest > 0.05 * plusMinus ? [...named, { ...REST, size: rest }] : named;
  const most = Math.max(...listed.map(({ size }) => size));
  return listed.map(({ label, known, size, kind }) => ({
    label,
    known: unbroken(known),
    size: unbroken(amount(size, manner)),
    share: most === 0 ? 0 : size / most,
    kind,
  }));
}

const REST = { label: 'all the rest', known: '', kind: 'reading' } as const;

function makeNext(next: NextReport, plusMinus: number, manner: SurenessManner): SurenessNext {
  const field = FIELDS[next.kind];
  const { tool, label, pad } = next;
  return {
    text: unbroken(
      `Measure the ${label} with a ${tool}, ± ${readingAmount({ ...next, plusMinus: next.becomes }, manner.unit)}: ` +
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
    `Play and log about ten notes: calibrating on them puts what the fit leaves open in place of ± ${amount(gone, manner)} ` +
    `of whole horn, air and mouthpiece; readings and pads keep ± ${amount(kept, manner)}.`;
  return [{ text: unbroken(text), target: null, link: { href: '#played', label: 'to the played notes' } }];
}

/** `0.6 to 0.2 mm (0.024 to 0.008 in)`, with as many digits as tell the two apart. */
function fall(from: number, to: number, { of, unit }: Pick<SurenessManner, 'of' | 'unit'>): string {
  if (of === 'cents') return `${apart(from, to, from < SMALL_CENTS ? 2 : 1)} cents`;
  const inUnit = (as: LengthUnit): string =>
    as === 'mm' ? `${apart(from, to, 1)} mm` : `${apart(from / 25.4, to / 25.4, 3)} in`;
  return `${inUnit(unit)} (${inUnit(other(unit))})`;
}

function apart(from: number, to: number, digits: number): string {
  const enough = from.toFixed(digits) === to.toFixed(digits) ? digits + 1 : digits;
  return `${from.toFixed(enough)} to ${to.toFixed(enough)}`;
}

/** Below this a ± in cents has two digits after the point. */
const SMALL_CENTS = 1;

/** A ± of the answer: hundredths of a millimetre in both units, or tenths of a cent, hundredths where it is small. */
function amount(size: number, { of, unit }: Pick<SurenessManner, 'of' | 'unit'>): string {
  if (of === 'cents') return `${size.toFixed(size < SMALL_CENTS ? 2 : 1)} cents`;
  const inUnit = (as: LengthUnit): string =>
    `${as === 'mm' ? size.toFixed(2) : (size / 25.4).toFixed(3)} ${sign(as)}`;
  return `${inUnit(unit)} (${inUnit(other(unit))})`;
}

function readingAmount({ plusMinus, unit: own }: ReadingReport, unit: LengthUnit): string {
  if (own === 'mm') return plusMinusBoth(plusMinus, unit);
  return `${Number(plusMinus.toPrecision(2))}${own === '' ? '' : ` ${own}`}`;
}
