import type { HornField } from '../../documents/horn-document.ts';
import type { SetupField } from '../../documents/setup-document.ts';

/** A length the technician can type over, and what to call it. */
export interface LengthFieldPlan {
  readonly id: LengthId;
  /** as the label says it */
  readonly label: string;
  /** as a sentence says it */
  readonly name: string;
  readonly hint: string;
  /** below the rim plane counts as minus */
  readonly signed?: true;
}

/** Every length of a key that the screen lets a person type. */
export type LengthId =
  | Extract<HornField, 'hingeMm' | 'hingeHeightMm' | 'diameterMm' | 'chimneyMm' | 'rimMm'>
  | Extract<SetupField, 'openingMm' | 'padDiameterMm' | 'padThicknessMm' | 'adhesiveBedMm'>;

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

/** Measured on the sheet only: what sound does not need. */
export const BED_FIELD: LengthFieldPlan = {
  id: 'adhesiveBedMm',
  label: 'Adhesive bed',
  name: 'adhesive bed',
  hint: 'under the pad',
};

/** What a length is called. @throws RangeError for one the screen does not know */
export function lengthPlan(id: LengthId): LengthFieldPlan {
  const plan = [...LENGTH_FIELDS, BED_FIELD].find((f) => f.id === id);
  if (plan === undefined) throw new RangeError(`invalid length: "${id}"; expected one that can be typed`);
  return plan;
}

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

/** The proposed opening and the one set have their own places in the list of typed texts. */
export type FieldId = LengthId | 'proposed' | 'asSet';

export type DayFieldId = DayFieldPlan['id'];

/** Texts about the horn and the visit. */
export type HeadFieldId =
  'name' | 'maker' | 'owner' | 'serial' | 'player' | 'date' | 'measuredBy' | 'wish' | 'notes';
