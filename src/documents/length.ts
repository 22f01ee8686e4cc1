import { create, unitDependencies } from 'mathjs';
import type { LengthUnit } from './length-format.ts';

/** The unit library, made when the first length is read: nobody waits for it before. */
let library: ReturnType<typeof makeUnits> | null = null;
const makeUnits = () => create({ unitDependencies });

/** A typed length understood, or a sentence on why not. */
export type LengthOutcome =
  { readonly ok: true; readonly mm: number } | { readonly ok: false; readonly message: string };

/** What the trade writes, and the unit library's word for it. */
const UNIT_WORDS: Readonly<Record<string, string>> = {
  mm: 'mm',
  millimetre: 'mm',
  millimetres: 'mm',
  cm: 'cm',
  in: 'inch',
  inch: 'inch',
  inches: 'inch',
  '"': 'inch',
  '″': 'inch',
  '”': 'inch',
  "''": 'inch',
  thou: 'mil',
  thousandths: 'mil',
  mil: 'mil',
};

/** More than any rule reads, fewer than rounding spoils. */
const DIGITS = 14;

const SHAPE =
  /^(?:(?<whole>\d+)\s+)?(?:(?<top>\d+)\s*\/\s*(?<bottom>\d+)|(?<decimal>\d+(?:[.,]\d*)?|[.,]\d+))\s*(?<word>[a-z"″”']*)\.?$/;

/**
 * Reads a length as the bench writes it: `7,9 mm`, `0.310 in`, `.160"`, `5/16`, `1 1/8 in`, `310 thou`.
 *
 * A fraction without a unit is inches, as a rule is read; a plain number without a unit is in `assumed`.
 *
 * @param typed   what was typed
 * @param field   the field's name, for the sentence
 * @param assumed the unit of a plain number
 */
export function parseLength(typed: string, field: string, assumed: LengthUnit): LengthOutcome {
  const refuse = (): LengthOutcome => ({
    ok: false,
    message: `invalid ${field}: “${typed.trim()}”; expected a length such as 7.9 mm, 0.310 in, 5/16 or 310 thou`,
  });
  const groups = SHAPE.exec(typed.trim().toLowerCase())?.groups;
  if (groups === undefined) return refuse();
  const { whole, top, bottom, decimal, word } = groups;
  if (whole !== undefined && top === undefined) return refuse();
  const number =
    top === undefined ? Number(decimal.replace(',', '.')) : Number(whole ?? 0) + Number(top) / Number(bottom);
  const written = word === '' ? (top === undefined ? assumed : 'in') : word;
  if (!Object.hasOwn(UNIT_WORDS, written) || !Number.isFinite(number)) return refuse();
  // A typed 3.964 mm is 3.964, not 3.9639999999999995.
  library ??= makeUnits();
  const mm = library.unit(number, UNIT_WORDS[written]).toNumber('mm');
  return { ok: true, mm: Number(mm.toPrecision(DIGITS)) };
}
