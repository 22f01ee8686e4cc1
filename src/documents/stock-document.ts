import * as z from 'zod';
import { USUAL_STOCK, type PadStock } from '../acoustics/index.ts';
import { documentVersion, quantity, readWith, type DocumentIssue, type ReadOutcome } from './schema-parts.ts';

/** Version of the stock document this program writes. */
export const STOCK_VERSION = 1;

/** Single lengths of a stock. */
export const STOCK_FIELDS = [
  'toleranceMm',
  'leastBedMm',
  'mostBedMm',
  'seatMm',
  'diameterStepMm',
  'clearanceMm',
] as const;
export type StockField = (typeof STOCK_FIELDS)[number];

/** Thicknesses that differ by less are one class, mm. */
const SAME_CLASS_MM = 0.005;

/** The pads and the adhesive a shop has: what cups are fitted from. It belongs to the shop and to no horn. */
export const stockSchema = z.strictObject({
  $schema: z.string().optional(),
  kind: z.literal('ventwright stock', { error: 'invalid kind; expected "ventwright stock"' }),
  version: documentVersion('stock', STOCK_VERSION),
  thicknessesMm: z
    .array(quantity('pad thickness', 0.5, 12, 'mm'))
    .min(1, 'expected at least one thickness of pads')
    .max(20, 'expected at most 20 thicknesses of pads'),
  toleranceMm: quantity('± of a batch’s thickness', 0, 1, 'mm'),
  diameterStepMm: quantity('step between pad diameters', 0.05, 5, 'mm'),
  clearanceMm: quantity('how much smaller than its cup a pad is chosen', 0, 5, 'mm'),
  leastBedMm: quantity('least bed of adhesive', 0, 6, 'mm'),
  mostBedMm: quantity('greatest bed of adhesive', 0, 6, 'mm'),
  seatMm: quantity('seat depth, rim into the closed pad', 0, 3, 'mm'),
});

export type StockDocument = z.infer<typeof stockSchema>;

/** Reads a stock document: every issue at once. */
export function readStock(input: unknown): ReadOutcome<StockDocument> {
  const read = readWith(stockSchema, input);
  if (!read.ok) return read;
  const issues = contradictions(read.value);
  return issues.length > 0 ? { ok: false, issues } : read;
}

function contradictions({ thicknessesMm, leastBedMm, mostBedMm }: StockDocument): DocumentIssue[] {
  const issues: DocumentIssue[] = [];
  if (!(mostBedMm >= leastBedMm)) {
    issues.push({
      path: 'mostBedMm',
      code: 'range',
      message: `invalid greatest bed of adhesive: ${mostBedMm} mm; expected at least the least, ${leastBedMm} mm`,
    });
  }
  thicknessesMm.forEach((mm, i) => {
    if (!thicknessesMm.slice(0, i).some((other) => Math.abs(other - mm) < SAME_CLASS_MM)) return;
    issues.push({
      path: `thicknessesMm[${i}]`,
      code: 'duplicate',
      message: `invalid pad thickness: ${mm} mm; expected one the stock has not yet`,
    });
  });
  return issues;
}

const MM = 1e-3;

/** Metres as millimetres, without the rounding of SI. */
const inMm = (metres: number): number => Number((metres / MM).toFixed(6));

/**
 * A stock to begin with.
 *
 * **Source:** common practice, no source; thicknesses and tolerance from memory.
 */
export function usualStock(): StockDocument {
  const { thicknesses, tolerance, diameterStep, clearance, bed, seat } = USUAL_STOCK;
  return {
    kind: 'ventwright stock',
    version: STOCK_VERSION,
    thicknessesMm: thicknesses.map(inMm),
    toleranceMm: inMm(tolerance),
    diameterStepMm: inMm(diameterStep),
    clearanceMm: inMm(clearance),
    leastBedMm: inMm(bed.least),
    mostBedMm: inMm(bed.most),
    seatMm: inMm(seat),
  };
}

/** Bench units to SI, for a document already checked. */
export function stockFromDocument(document: StockDocument): PadStock {
  return {
    thicknesses: document.thicknessesMm.map((mm) => mm * MM),
    tolerance: document.toleranceMm * MM,
    diameterStep: document.diameterStepMm * MM,
    clearance: document.clearanceMm * MM,
    bed: { least: document.leastBedMm * MM, most: document.mostBedMm * MM },
    seat: document.seatMm * MM,
  };
}
