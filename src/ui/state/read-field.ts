import { LEAST_OPENING, largestOpening, makePadPose, type MeasuringPoint } from '../../acoustics/index.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import { formatBoth, type LengthUnit } from '../../documents/length-format.ts';
import { parseLength } from '../../documents/length.ts';
import { parseMeasuredLength } from '../../documents/measured-length.ts';
import { loadHorn } from '../../documents/to-acoustics.ts';
import type { DayFieldPlan, LengthFieldPlan } from './fields.ts';
import { measurementsOf, withKeyLengths, type KeyLengths } from './key-lengths.ts';

/** What became of a typed text: a value in the field's own unit, or a sentence on why not. */
export type FieldOutcome =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly message: string };

/** The same of something measured, with its ± where that was typed. */
export type MeasuredOutcome =
  | { readonly ok: true; readonly value: number; readonly plusMinusMm: number | null }
  | Extract<FieldOutcome, { readonly ok: false }>;

/** A horn as found, and the key in hand. */
export interface KeyInHand {
  readonly documents: HornAndSetup;
  readonly keyId: string;
}

/** Reads one of a key's lengths and holds the whole horn against the checks with it. */
export function readKeyLength(
  inHand: KeyInHand,
  plan: LengthFieldPlan,
  typed: string,
  assumed: LengthUnit,
): MeasuredOutcome {
  const bare = typed.trim();
  const minus = plan.signed === true && /^[-−]/.test(bare);
  const read = parseMeasuredLength(minus ? bare.slice(1) : bare, plan.name, assumed);
  if (!read.ok) {
    return plan.signed === true
      ? { ok: false, message: `${read.message}, with a minus if the rod lies below the rim` }
      : read;
  }
  const value = minus ? -read.mm : read.mm;
  const problem = problemWith(inHand, { [plan.id]: value });
  return problem === null
    ? { ok: true, value, plusMinusMm: read.plusMinusMm }
    : { ok: false, message: problem };
}

/** Why the horn cannot be with these changes on the key in hand, or null if it can. */
export function problemWith({ documents, keyId }: KeyInHand, change: KeyLengths): string | null {
  const read = loadHorn(withKeyLengths(documents, keyId, change));
  return read.ok ? null : read.issues[0].message;
}

/**
 * Reads a proposed opening, typed at a measuring point.
 *
 * @param reachMm how far the study looks, at the front
 * @returns mm at the front
 */
export function readProposed(
  inHand: KeyInHand,
  at: MeasuringPoint,
  reachMm: number,
  typed: string,
  assumed: LengthUnit,
): FieldOutcome {
  const read = parseLength(typed, `proposed opening at the ${at}`, assumed);
  if (!read.ok) return read;
  const key = measurementsOf(inHand.documents, inHand.keyId);
  const hinge = { distance: key.hingeMm / 1000, height: key.hingeHeightMm / 1000 };
  const radius = key.padDiameterMm / 2000;
  const pointOf = (frontMm: number): number =>
    makePadPose(hinge, radius, { at: 'front', height: frontMm / 1000 })[at] * 1000;
  const low = pointOf(LEAST_OPENING * 1000);
  const high = pointOf(reachMm);
  const outside: FieldOutcome = {
    ok: false,
    message:
      `invalid proposed opening: ${formatBoth(read.mm, assumed)} at the ${at}; expected ` +
      `${formatBoth(low, assumed)} to ${formatBoth(high, assumed)}, as far as this study looks`,
  };
  if (read.mm / 1000 > largestOpening(hinge, radius, at)) return outside;
  const value = makePadPose(hinge, radius, { at, height: read.mm / 1000 }).front * 1000;
  // What is typed is rounded to the bench's digits, so the ends count as within.
  const slack = 0.05;
  if (!(read.mm >= low - slack && read.mm <= high + slack)) return outside;
  return { ok: true, value: Math.min(Math.max(value, LEAST_OPENING * 1000), reachMm) };
}

/** Reads a temperature or a frequency: `27`, `26,9 °C`, `80 F`, `442 Hz`. */
export function readDayNumber(plan: DayFieldPlan, typed: string): FieldOutcome {
  const match = /^([-−]?\d+(?:[.,]\d*)?|[-−]?[.,]\d+)\s*(°?\s*[cf]|hz)?$/i.exec(typed.trim());
  const unit = (match?.[2] ?? plan.unit).replace(/[°\s]/g, '').toLowerCase();
  const fits = plan.id === 'airC' ? unit === 'c' || unit === 'f' : unit === 'hz';
  if (match === null || !fits) {
    const example = plan.id === 'airC' ? '27, 26,9 °C or 80 °F' : '440 or 442 Hz';
    return {
      ok: false,
      message: `invalid ${plan.name}: “${typed.trim()}”; expected a number such as ${example}`,
    };
  }
  const number = Number(match[1].replace(',', '.').replace('−', '-'));
  const value = unit === 'f' ? (number - 32) / 1.8 : number;
  if (!(value >= plan.low && value <= plan.high)) {
    const shown = unit === 'f' ? `${number} °F` : `${number} ${plan.unit}`;
    return {
      ok: false,
      message: `invalid ${plan.name}: ${shown}; expected ${plan.low} to ${plan.high} ${plan.unit}`,
    };
  }
  return { ok: true, value };
}
