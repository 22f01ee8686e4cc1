import type { LengthUnit } from '../../documents/length-format.ts';
import type { BudgetReport, PartReport } from '../../documents/uncertainty-report.ts';
import { headingId, noteHref } from '../state/note-places.ts';
import { REASON_GROUNDS, type Reason, type ReasonInput, type ReasonUnit } from '../state/reasons.ts';
import { listed, unbroken } from './note-names.ts';
import { other, plusMinusBoth, sign } from './plus-minus-words.ts';

/** A word and what it means. */
export interface MeaningView {
  readonly word: string;
  readonly meaning: string;
}

/** A part of a ±. */
export interface ReasonPart {
  readonly label: string;
  /** what it does to the figure */
  readonly size: string;
  /** `known to ± 0.2 mm (0.008 in)`; empty where it is no reading */
  readonly known: string;
}

/** What the panel of a reason says. */
export interface ReasonView {
  readonly title: string;
  readonly of: string;
  readonly figure: string;
  readonly meanings: readonly MeaningView[];
  readonly formula: string;
  readonly inputs: readonly ReasonInput[];
  readonly parts: readonly ReasonPart[];
  readonly remarks: readonly string[];
  readonly holdsFor: string;
  /** `ours; Keefe 1984 and Pierce` */
  readonly sources: string;
  readonly noteHref: string;
}

/** So many parts of a ± are named; the others stand together. */
const NAMED_PARTS = 4;

/** @param glossary meanings by word @param unit which lengths are told first */
export function makeReasonView(
  reason: Reason,
  glossary: ReadonlyMap<string, string>,
  unit: LengthUnit,
): ReasonView {
  const { title, words, formula, sources, isOurs, holdsFor, note } = REASON_GROUNDS[reason.kind];
  const named = listed(sources);
  return {
    title,
    of: reason.of,
    figure: reason.figure,
    meanings: words.flatMap((word) => {
      const meaning = glossary.get(word);
      return meaning === undefined ? [] : [{ word, meaning: unbroken(meaning.replace(/ \(ours\)$/, '')) }];
    }),
    formula: unbroken(formula),
    inputs: reason.inputs.map((input) => ({ ...input, value: unbroken(input.value) })),
    parts: reason.budget === null ? [] : partsOf(reason.budget.parts, reason.budget.in, unit),
    remarks: reason.remarks.map(unbroken),
    holdsFor: unbroken(holdsFor),
    sources: !isOurs ? named : named === '' ? 'ours' : `ours; ${named}`,
    noteHref: noteHref({ note: note.name, heading: headingId(note.heading) }),
  };
}

function partsOf(budget: BudgetReport, as: ReasonUnit, unit: LengthUnit): ReasonPart[] {
  const models = [
    ['pad model', budget.padModel],
    ['model of the whole horn', budget.wholeHorn],
    ['what calibrating leaves open', budget.calibration],
  ] as const;
  const all = [
    ...budget.readings.map((reading) => ({
      label: reading.label,
      known: `known to ± ${readingWords(reading, unit)}`,
      size: Math.abs(reading.effect),
    })),
    ...models.map(([label, size]) => ({ label, known: '', size: Math.abs(size) })),
  ]
    .filter(({ size }) => size > 0)
    .sort((a, b) => b.size - a.size);
  const named = all.slice(0, NAMED_PARTS);
  const rest = Math.sqrt(
    Math.max(0, budget.plusMinus ** 2 - named.reduce((sum, { size }) => sum + size ** 2, 0)),
  );
  const shown =
    rest > 0.05 * budget.plusMinus ? [...named, { label: 'all the rest', known: '', size: rest }] : named;
  return shown.map(({ label, known, size }) => ({
    label,
    known: unbroken(known),
    size: unbroken(`± ${sizeWords(size, as, unit)}`),
  }));
}

function sizeWords(size: number, as: ReasonUnit, unit: LengthUnit): string {
  switch (as) {
    case 'mm': {
      const inUnit = (which: LengthUnit): string =>
        `${which === 'mm' ? size.toFixed(2) : (size / 25.4).toFixed(4)} ${sign(which)}`;
      return `${inUnit(unit)} (${inUnit(other(unit))})`;
    }
    case 'share':
      return `${(100 * size).toFixed(size < 0.01 ? 2 : 1)} points`;
    case 'cents':
    case 'dB':
      return `${size.toFixed(size < 0.1 ? 2 : 1)} ${as}`;
  }
}

function readingWords({ plusMinus, unit: own }: PartReport, unit: LengthUnit): string {
  if (own === 'mm') return plusMinusBoth(plusMinus, unit);
  return `${Number(plusMinus.toPrecision(2))}${own === '' ? '' : ` ${own}`}`;
}

/** A stretch of a sentence, or the reason whose figure stands there. */
export type ToldPiece = string | Reason;

/**
 * A sentence cut at the figures that have reasons, each where it first stands; where two say the same, at the first
 * and the second.
 */
export function cutAtFigures(text: string, reasons: readonly Reason[]): ToldPiece[] {
  const from = new Map<string, number>();
  const places = reasons
    .map((reason) => {
      const at = placeOf(text, reason.figure, from.get(reason.figure) ?? 0);
      from.set(reason.figure, at < 0 ? text.length : at + reason.figure.length);
      return { reason, at };
    })
    .filter(({ at }) => at >= 0)
    .sort((a, b) => a.at - b.at);
  const pieces: ToldPiece[] = [];
  let done = 0;
  for (const { reason, at } of places) {
    if (at < done) continue;
    if (at > done) pieces.push(text.slice(done, at));
    pieces.push(reason);
    done = at + reason.figure.length;
  }
  if (done < text.length) pieces.push(text.slice(done));
  return pieces;
}

/** Where a figure stands by itself, not as the end of a longer number; −1 where it does not. */
function placeOf(text: string, figure: string, from: number): number {
  if (figure === '') return -1;
  let at = text.indexOf(figure, from);
  while (at > 0 && /[\d.,−]/.test(text[at - 1])) at = text.indexOf(figure, at + 1);
  return at;
}
