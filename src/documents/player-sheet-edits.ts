import * as z from 'zod';
import { text } from './schema-parts.ts';
import type { VisitDocument } from './visit-document.ts';

/** As many sentences as can be written otherwise, and as long as one can be. */
export const MOST_REWRITTEN = 80;
export const LONGEST_SENTENCE = 1000;

const sentence = (field: string): z.ZodString => {
  const error = `invalid ${field}: too long; expected at most ${LONGEST_SENTENCE} letters`;
  return z.string().max(LONGEST_SENTENCE, { error }).describe(field);
};

const rewritten = z.strictObject({
  id: text('sentence of the player’s sheet'),
  text: sentence('sentence as a person wrote it, empty where it is left out'),
  written: sentence('sentence as the program wrote it then'),
});

/** Sentences written otherwise, each once. */
export const sheetWords = z
  .array(rewritten)
  .max(MOST_REWRITTEN, `expected at most ${MOST_REWRITTEN} rewritten sentences`)
  .refine((words) => new Set(words.map(({ id }) => id)).size === words.length, {
    error: 'invalid sentences of the player’s sheet: one is rewritten twice; expected each once',
  });

/** One sentence of the player’s sheet, as it is printed. */
export interface SheetSentence {
  /** what it is about: `decided e`, `limits` */
  readonly id: string;
  /** as printed; empty where a person left it out */
  readonly text: string;
  /** as the numbers of today have it */
  readonly written: string;
  readonly isRewritten: boolean;
  /** rewritten when the numbers still told something else */
  readonly isOutdated: boolean;
}

/** A sentence as a person rewrote it, or else as it was written. */
export function sentenceOf(
  { sheetWords: words = [] }: VisitDocument,
  id: string,
  written: string,
): SheetSentence {
  const own = words.find((entry) => entry.id === id);
  return {
    id,
    text: own?.text ?? written,
    written,
    isRewritten: own !== undefined,
    isOutdated: own !== undefined && own.written !== written,
  };
}

/**
 * A visit with a sentence of its player’s sheet otherwise; null, or the words the program has for it, gives it
 * back to the program. The same visit where it says so already.
 */
export function withSheetWords(
  visit: VisitDocument,
  { id, written }: Pick<SheetSentence, 'id' | 'written'>,
  words: string | null,
): VisitDocument {
  const { sheetWords: before = [], ...rest } = visit;
  const trimmed = words?.trim().slice(0, LONGEST_SENTENCE) ?? null;
  const now = before.find((entry) => entry.id === id);
  const own = trimmed === null || trimmed === written ? null : { id, text: trimmed, written };
  if (own?.text === now?.text && own?.written === now?.written) return visit;
  const others = before.filter((entry) => entry.id !== id);
  const after = own === null ? others : [...others, own];
  return after.length === 0 ? rest : { ...rest, sheetWords: after };
}

/** A visit with the key its wish is about, and how far open that is wished at the front, mm; null for neither. */
export function withWish(visit: VisitDocument, key: string | null, openingMm: number | null): VisitDocument {
  const rest = withoutWish(visit);
  if (key === null) return rest;
  return { ...rest, wishKey: key, ...(openingMm === null ? {} : { wishOpeningMm: openingMm }) };
}

/** A visit whose wish is about all keys at once, mm higher at the front; 0 where it was not said how far. */
export function withWishForAll(visit: VisitDocument, shiftMm: number): VisitDocument {
  return visit.wishShiftMm === shiftMm ? visit : { ...withoutWish(visit), wishShiftMm: shiftMm };
}

function withoutWish(visit: VisitDocument): VisitDocument {
  const { wishKey: _key, wishOpeningMm: _opening, wishShiftMm: _shift, ...rest } = visit;
  return rest;
}
