import { parseLength, type LengthOutcome } from './length.ts';

/** What a spreadsheet might take for a formula, apostrophes of earlier care included. */
const FORMULA_LIKE = /^'*[=+\-@\t\r]/;
const CARED_FOR = /^'+[=+\-@\t\r]/;

/** A text as a cell that no spreadsheet runs as a formula; {@link plainText} gives the text back. */
export function harmlessText(text: string): string {
  return FORMULA_LIKE.test(text) ? `'${text}` : text;
}

/** A text cell without the apostrophe that made it harmless. */
export function plainText(cell: string): string {
  return CARED_FOR.test(cell) ? cell.slice(1) : cell;
}

const PLAIN = /^(?<sign>[+\-−]?)\s*(?<digits>\d+(?:[.,]\d*)?|[.,]\d+)(?<power>e[+-]?\d+)?$/i;
const SIGNED = /^(?<sign>[+\-−]?)\s*(?<rest>.*)$/s;

/**
 * Reads a cell of lengths: `7.9`, `7,9`, `-3.2`, `0.310 in`, `5/16 in`; a plain number is mm, as the header says,
 * and is read exactly as it was written.
 *
 * @param cell  not blank
 * @param field what it is of, for the sentence
 */
export function readLengthCell(cell: string, field: string): LengthOutcome {
  const typed = cell.trim();
  if (/^'*[=@]/.test(typed)) {
    return {
      ok: false,
      message: `invalid ${field}: “${short(typed)}”; expected a length such as 7.9 or 0.310 in, not a formula`,
    };
  }
  const plain = PLAIN.exec(typed)?.groups;
  if (plain !== undefined) {
    const size = Number(`${plain.digits.replace(',', '.')}${plain.power ?? ''}`);
    return finite(plain.sign, size, typed, field);
  }
  const { sign, rest } = SIGNED.exec(typed)!.groups!;
  const read = parseLength(short(rest), field, 'mm');
  return read.ok ? finite(sign, read.mm, typed, field) : read;
}

function finite(sign: string, size: number, typed: string, field: string): LengthOutcome {
  if (!Number.isFinite(size)) {
    return { ok: false, message: `invalid ${field}: “${short(typed)}”; expected a length within reach` };
  }
  return { ok: true, mm: sign === '' || sign === '+' || size === 0 ? size : -size };
}

/** A cell in a sentence, cut short. */
export function short(cell: string): string {
  return cell.length > 60 ? `${cell.slice(0, 57)}…` : cell;
}
