import type { KeyMeasurements } from './key-edits.ts';

/** A length the technician can type over, and what to call it. */
export interface LengthFieldPlan {
  readonly id: Exclude<keyof KeyMeasurements, 'measuredAt'>;
  /** as the label says it */
  readonly label: string;
  /** as a sentence says it */
  readonly name: string;
  readonly hint: string;
  /** below the rim plane counts as minus */
  readonly signed?: true;
}

/** The measurements of one key, in the order a bench takes them. */
export const LENGTH_FIELDS: readonly LengthFieldPlan[] = [
  { id: 'openingMm', label: 'Opening as found', name: 'opening as found', hint: 'rim to pad, key at rest' },
  { id: 'hingeMm', label: 'Rod to pad centre', name: 'hinge distance', hint: 'along the rim plane' },
  {
    id: 'hingeHeightMm',
    label: 'Rod above rim',
    name: 'rod height above the rim',
    hint: 'minus if below',
    signed: true,
  },
  { id: 'padDiameterMm', label: 'Pad across', name: 'pad diameter', hint: 'edge to edge' },
  {
    id: 'padThicknessMm',
    label: 'Pad thickness',
    name: 'pad thickness',
    hint: 'opening held; at the same stop a thicker pad sits lower',
  },
  { id: 'diameterMm', label: 'Hole across', name: 'hole diameter', hint: 'inside the rim' },
  { id: 'chimneyMm', label: 'Chimney', name: 'chimney height', hint: 'bore crown to rim' },
  { id: 'rimMm', label: 'Rim thickness', name: 'rim thickness', hint: 'wall at the top' },
];

/** A number of the day, typed with or without its unit. */
export interface DayFieldPlan {
  readonly id: 'airC' | 'a4Hz';
  readonly label: string;
  readonly name: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly hint: string;
}

export const DAY_FIELDS: readonly DayFieldPlan[] = [
  {
    id: 'airC',
    label: 'Air in the horn',
    name: 'air temperature',
    unit: '°C',
    low: 0,
    high: 45,
    hint: '°C, or °F if you write it',
  },
  { id: 'a4Hz', label: 'A4 sounds', name: 'A4', unit: 'Hz', low: 390, high: 470, hint: 'concert pitch' },
];

/** The proposed opening has its own place in the list of typed texts. */
export type FieldId = LengthFieldPlan['id'] | 'proposed';

export type DayFieldId = DayFieldPlan['id'];
