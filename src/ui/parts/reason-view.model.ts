import type { LengthUnit } from '../../documents/length-format.ts';
import { headingId, noteHref } from '../state/note-places.ts';
import { REASON_GROUNDS, type Reason, type ReasonInput } from '../state/reasons.ts';
import { listed, unbroken } from './note-names.ts';
import { makePartViews, type PartView } from './plus-minus-parts.model.ts';

/** A word and what it means. */
export interface MeaningView {
  readonly word: string;
  readonly meaning: string;
}

/** What the panel of a reason says. */
export interface ReasonView {
  readonly title: string;
  readonly of: string;
  readonly figure: string;
  readonly meanings: readonly MeaningView[];
  readonly formula: string;
  readonly inputs: readonly ReasonInput[];
  /** of its ±, the greatest first; empty where it has none */
  readonly parts: readonly PartView[];
  readonly remarks: readonly string[];
  readonly holdsFor: string;
  /** `ours; Keefe 1984 and Pierce` */
  readonly sources: string;
  readonly noteHref: string;
}

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
    parts: reason.budget === null ? [] : makePartViews(reason.budget.parts, reason.budget.in, unit),
    remarks: reason.remarks.map(unbroken),
    holdsFor: unbroken(holdsFor),
    sources: !isOurs ? named : named === '' ? 'ours' : `ours; ${named}`,
    noteHref: noteHref({ note: note.name, heading: headingId(note.heading) }),
  };
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
