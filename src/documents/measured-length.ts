import { parseLength, type LengthOutcome } from './length.ts';
import type { LengthUnit } from './length-format.ts';

/** A typed length with its ± where one was typed, or a sentence on why not. */
export type MeasuredLengthOutcome =
  | { readonly ok: true; readonly mm: number; readonly plusMinusMm: number | null }
  | Extract<LengthOutcome, { readonly ok: false }>;

/** No reading is less sure than this, mm: what a document keeps. */
const MOST_PLUS_MINUS_MM = 100;

const WITH_PLUS_MINUS = /^(?<length>.*?)\s*(?:±|\+\s*\/?\s*[-−])\s*(?<half>.*)$/;
const UNIT = /[a-z"″”']+\.?$/i;
const NUMBER_AND_UNIT = /^[\d.,\s/]+(?<unit>[a-z"″”']+\.?)$/i;

/**
 * Reads a length as the bench writes it, with how far it may be off: `1.0 ± 0.1`, `0.310 in +/- 0.004`. A unit
 * written once is that of both.
 *
 * @param typed   what was typed
 * @param field   the field's name, for the sentence
 * @param assumed the unit of a plain number
 */
export function parseMeasuredLength(
  typed: string,
  field: string,
  assumed: LengthUnit,
): MeasuredLengthOutcome {
  const groups = WITH_PLUS_MINUS.exec(typed.trim())?.groups;
  if (groups === undefined) {
    const read = parseLength(typed, field, assumed);
    return read.ok ? { ...read, plusMinusMm: null } : read;
  }
  const [length, half] = [groups.length, groups.half];
  const unit = UNIT.exec(length)?.[0] ?? NUMBER_AND_UNIT.exec(half)?.groups?.unit ?? '';
  const written = (text: string): string => (UNIT.test(text) ? text : `${text} ${unit}`.trim());
  const read = parseLength(written(length), field, assumed);
  if (!read.ok) return read;
  const off = parseLength(written(half), `± of the ${field}`, assumed);
  if (!off.ok) return off;
  if (!(off.mm <= MOST_PLUS_MINUS_MM)) {
    return {
      ok: false,
      message: `invalid ± of the ${field}: ${off.mm} mm; expected 0 to ${MOST_PLUS_MINUS_MM} mm`,
    };
  }
  return { ok: true, mm: read.mm, plusMinusMm: off.mm };
}
