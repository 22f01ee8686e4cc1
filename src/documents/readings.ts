import * as z from 'zod';
import { choice, day, quantity } from './schema-parts.ts';

/**
 * Where a number comes from, and how far it may be off.
 *
 *   measured   read on this horn
 *   template   taken from an example of this kind of horn
 *   derived    worked out from other numbers
 */
export const ORIGINS = ['measured', 'template', 'derived'] as const;
export type Origin = (typeof ORIGINS)[number];

/** What a length was read with. */
export const TOOLS = ['wedge', 'rule', 'caliper', 'step gauge', 'feeler'] as const;
export type Tool = (typeof TOOLS)[number];

const readingSchema = z.strictObject({
  origin: choice('origin', ORIGINS),
  plusMinusMm: quantity('plus-minus', 0, 100, 'mm').optional(),
  tool: choice('measuring tool', TOOLS).optional(),
  readOn: day('day of the reading')
    .optional()
    .describe('day it was read, where that was on a visit before; left out, it is of this visit'),
});

/** One number's origin, and its ± where it is not the usual one. */
export type Reading = z.infer<typeof readingSchema>;

/** Readings of some of these fields. */
export function readingsOf<const Field extends string>(fields: readonly Field[]) {
  const shape = Object.fromEntries(fields.map((field) => [field, readingSchema.optional()]));
  return z.strictObject(shape as Record<Field, z.ZodOptional<typeof readingSchema>>);
}

/** Everything about a key that has a length. */
export type LengthField =
  | 'positionMm'
  | 'diameterMm'
  | 'chimneyMm'
  | 'rimMm'
  | 'hingeMm'
  | 'hingeHeightMm'
  | 'cupFloorMm'
  | 'cupDiameterMm'
  | 'openingMm'
  | 'padDiameterMm'
  | 'padThicknessMm'
  | 'adhesiveBedMm'
  | 'seatMm'
  | 'footCorkMm';

/**
 * The usual ±, mm: as read at the bench, and as an example of its kind may differ from the horn at hand.
 *
 * **Source:** from memory, within common practice; a wedge repeats to 0.1–0.2 mm.
 */
const USUAL_MM: Readonly<Record<LengthField, readonly [measured: number, template: number]>> = {
  positionMm: [0.5, 8],
  diameterMm: [0.1, 2],
  chimneyMm: [0.3, 1],
  rimMm: [0.2, 0.4],
  hingeMm: [0.5, 4],
  hingeHeightMm: [0.5, 3],
  cupFloorMm: [0.2, 1],
  cupDiameterMm: [0.2, 2],
  openingMm: [0.2, 1.5],
  padDiameterMm: [0.2, 2],
  padThicknessMm: [0.1, 0.4],
  adhesiveBedMm: [0.2, 0.4],
  seatMm: [0.1, 0.2],
  footCorkMm: [0.1, 0.5],
};

/** ± of a tool, mm. **Source:** from memory, within common practice. */
const TOOL_MM: Readonly<Record<Tool, number>> = {
  wedge: 0.2,
  rule: 0.4,
  caliper: 0.1,
  'step gauge': 0.1,
  feeler: 0.02,
};

/** A reading with nothing left open. */
export interface KnownReading {
  readonly origin: Origin;
  readonly plusMinusMm: number;
  readonly tool: Tool | null;
  /** day of the visit before on which it was read; null where it was read on this one */
  readonly readOn: string | null;
}

/**
 * What is known of a number: its own reading, else the document's origin with the usual ±.
 *
 * A derived number without a ± of its own is held no better than an example's.
 */
export function knownReading(
  field: LengthField,
  reading: Reading | undefined,
  otherwise: Origin,
): KnownReading {
  const origin = reading?.origin ?? otherwise;
  const tool = reading?.tool ?? null;
  const [measured, template] = USUAL_MM[field];
  const usual = origin !== 'measured' ? template : tool === null ? measured : TOOL_MM[tool];
  return { origin, plusMinusMm: reading?.plusMinusMm ?? usual, tool, readOn: reading?.readOn ?? null };
}
