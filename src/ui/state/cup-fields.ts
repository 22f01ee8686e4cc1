import type { HornField } from '../../documents/horn-document.ts';
import type { SetupField } from '../../documents/setup-document.ts';
import type { StockField } from '../../documents/stock-document.ts';

/** What is typed of one cup: it may all be missing. */
export type CupFieldId =
  Extract<HornField, 'cupFloorMm' | 'cupDiameterMm'> | Extract<SetupField, 'seatMm' | 'adhesiveBedMm'>;

/** A length of a cup, and what to call it. */
export interface CupFieldPlan {
  readonly id: CupFieldId;
  /** over its column */
  readonly label: string;
  /** as a sentence says it */
  readonly name: string;
  readonly of: 'horn' | 'setup';
  readonly lowMm: number;
  readonly highMm: number;
}

/** In the order a bench takes them; the first is what the answer needs. */
export const CUP_FIELDS: readonly CupFieldPlan[] = [
  { id: 'cupFloorMm', label: 'Cup floor', name: 'cup floor', of: 'horn', lowMm: 0.5, highMm: 30 },
  { id: 'cupDiameterMm', label: 'Cup inside', name: 'cup inner diameter', of: 'horn', lowMm: 2, highMm: 130 },
  { id: 'seatMm', label: 'Seat', name: 'seat depth', of: 'setup', lowMm: 0, highMm: 3 },
];

/** A length of the stock, and what to call it. */
export interface StockFieldPlan {
  readonly id: StockField;
  readonly label: string;
  readonly name: string;
  readonly hint: string;
}

export const STOCK_PLANS: readonly StockFieldPlan[] = [
  { id: 'toleranceMm', label: 'A batch is within ±', name: '± of a batch', hint: 'of its thickness' },
  { id: 'leastBedMm', label: 'Bed, least', name: 'least bed of adhesive', hint: 'that still holds' },
  { id: 'mostBedMm', label: 'Bed, most', name: 'greatest bed of adhesive', hint: 'you will float a pad on' },
  {
    id: 'seatMm',
    label: 'Seat depth',
    name: 'seat depth',
    hint: 'rim into the shut pad, unless typed by key',
  },
  { id: 'diameterStepMm', label: 'Sizes every', name: 'step between pad diameters', hint: 'across' },
  {
    id: 'clearanceMm',
    label: 'Smaller than the cup by',
    name: 'clearance in the cup',
    hint: 'where its inside is measured',
  },
];
