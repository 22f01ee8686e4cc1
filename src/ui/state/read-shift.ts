import { formatBoth, type LengthUnit } from '../../documents/length-format.ts';
import { parseLength } from '../../documents/length.ts';
import type { FieldOutcome } from './read-field.ts';

/** As far as keys are moved all at once, mm. */
export const MOST_SHIFT_MM = 20;

/** `−1 mm`, `+ 0.5`, `1 mm lower`, `0.02 in higher`. */
const SHAPE = /^(?<sign>[-−–+])?\s*(?<length>[^-−–+]*?)\s*(?<way>lower|down|higher|up)?$/i;

const LOWER = ['-', '−', '–', 'lower', 'down'];

/** Reads how much higher or lower keys are to stand; a plain number is in the unit chosen and needs its way. */
export function readShift(text: string, name: string, unit: LengthUnit): FieldOutcome {
  const { sign, length = '', way } = SHAPE.exec(text.trim())?.groups ?? {};
  const read = parseLength(length, name, unit);
  const told = sign ?? way?.toLowerCase();
  const isTwice = sign !== undefined && way !== undefined;
  if (!read.ok || isTwice || (told === undefined && read.mm !== 0)) {
    return {
      ok: false,
      message: `invalid ${name}: “${text.trim()}”; expected a length and which way, such as 1 mm lower, +0.5 mm or −0.020 in`,
    };
  }
  if (!(read.mm <= MOST_SHIFT_MM)) {
    return {
      ok: false,
      message: `invalid ${name}: ${formatBoth(read.mm, unit)}; expected at most ${formatBoth(MOST_SHIFT_MM, unit)} either way`,
    };
  }
  return { ok: true, value: read.mm !== 0 && LOWER.includes(told!) ? -read.mm : read.mm };
}
