import * as z from 'zod';
import { ORIGINS, readingsOf } from './readings.ts';
import { choice, documentVersion, quantity, text } from './schema-parts.ts';

/** Version of the setup document this program writes. */
export const SETUP_VERSION = 2;

/** What the bench can change of one key. */
export const SETUP_FIELDS = [
  'openingMm',
  'padDiameterMm',
  'padThicknessMm',
  'adhesiveBedMm',
  'seatMm',
  'footCorkMm',
] as const;
export type SetupField = (typeof SETUP_FIELDS)[number];

const keySetupSchema = z.strictObject({
  pad: text('pad id'),
  openingMm: quantity('opening', 0, 60, 'mm').optional(),
  measuredAt: choice('measuring point', ['front', 'centre', 'back']).optional(),
  padDiameterMm: quantity('pad diameter', 2, 120, 'mm').optional(),
  padThicknessMm: quantity('pad thickness', 0.5, 12, 'mm').optional(),
  adhesiveBedMm: quantity('adhesive bed under the pad', 0, 6, 'mm').optional(),
  seatMm: quantity('seat depth, rim into the closed pad', 0, 3, 'mm').optional(),
  footCorkMm: quantity('foot cork thickness', 0, 15, 'mm').optional(),
  readings: readingsOf(SETUP_FIELDS).optional(),
  remark: z.string().max(500).optional(),
});

const linkSetupSchema = z.strictObject({
  driver: text('driving pad id'),
  driven: text('driven pad id'),
  travelRatio: quantity('travel ratio, driven front per driver front', 0.05, 20, 'mm/mm').optional(),
  drivenGapMm: quantity(
    'gap left at the driven pad’s front when the driver shuts, minus if it is the driver that is left open',
    -5,
    5,
    'mm',
  ).optional(),
});

/**
 * What the bench can change. A setup may be sparse: keys and fields it leaves out are as in the setup it is
 * read over, as a visit’s *as set* is over its *as found*.
 */
export const setupSchema = z.strictObject({
  $schema: z.string().optional(),
  kind: z.literal('ventwright setup', { error: 'invalid kind; expected "ventwright setup"' }),
  version: documentVersion('setup', SETUP_VERSION),
  name: text('setup name'),
  origin: choice('origin of numbers without a reading of their own', ORIGINS),
  airC: quantity('air temperature', 0, 45, '°C').optional(),
  keys: z.array(keySetupSchema).max(60, 'expected at most 60 keys'),
  links: z.array(linkSetupSchema).max(60, 'expected at most 60 links').optional(),
  remark: z.string().max(2000).optional(),
});

export type SetupDocument = z.infer<typeof setupSchema>;
export type KeySetupDocument = SetupDocument['keys'][number];
export type LinkSetupDocument = NonNullable<SetupDocument['links']>[number];

/** A key with everything sound needs. */
export type WholeKeySetup = KeySetupDocument & {
  readonly openingMm: number;
  readonly measuredAt: NonNullable<KeySetupDocument['measuredAt']>;
  readonly padDiameterMm: number;
  readonly padThicknessMm: number;
};
