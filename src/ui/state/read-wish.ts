import { formatBoth, type LengthUnit } from '../../documents/length-format.ts';
import { parseLength } from '../../documents/length.ts';
import type { FieldOutcome } from './read-field.ts';
import { readShift } from './read-shift.ts';

const NAME = 'opening wished for, at the front';

/** As far as a key opens, mm. */
const MOST_MM = 60;

/** Reads the opening a player wishes for; a plain number is in the unit chosen. */
export function readWish(text: string, unit: LengthUnit): FieldOutcome {
  const read = parseLength(text, NAME, unit);
  if (!read.ok) return read;
  return read.mm <= MOST_MM
    ? { ok: true, value: read.mm }
    : {
        ok: false,
        message: `invalid ${NAME}: ${formatBoth(read.mm, unit)}; expected 0 to ${formatBoth(MOST_MM, unit)}`,
      };
}

/** Reads how much higher or lower a player wishes all keys. */
export function readWishForAll(text: string, unit: LengthUnit): FieldOutcome {
  return readShift(text, 'wish for all keys', unit);
}
