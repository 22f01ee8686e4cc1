import * as z from 'zod';
import { choice, quantity, text } from './schema-parts.ts';

/** Versions of the stored shapes this program reads and writes. */
export const HORN_VERSION = 1;

const mouthpiecePiece = z.strictObject({
  lengthMm: quantity('mouthpiece piece length', 0.1, 200, 'mm'),
  startDiameterMm: quantity('mouthpiece piece start diameter', 1, 60, 'mm'),
  endDiameterMm: quantity('mouthpiece piece end diameter', 1, 60, 'mm'),
});

const borePoint = z.strictObject({
  positionMm: quantity('position from the neck’s small end along the bore', 0, 6000, 'mm'),
  diameterMm: quantity('bore diameter', 4, 500, 'mm'),
});

const boreSection = z.strictObject({
  section: choice('bore section', ['neck', 'body', 'bow', 'bell']),
  points: z.array(borePoint).min(2, 'expected at least two points in each bore section'),
});

const key = z.strictObject({
  hingeMm: quantity('hinge distance, rod to pad centre along the rim plane', 1, 200, 'mm'),
  hingeHeightMm: quantity('rod height above the rim plane', -60, 60, 'mm'),
});

const hole = z.strictObject({
  number: quantity('pad number', 1, 40, '').int(),
  id: text('pad id'),
  name: text('pad name'),
  rests: choice('rest position', ['open', 'closed']),
  positionMm: quantity('position from the neck’s small end along the bore', 0, 6000, 'mm'),
  diameterMm: quantity('hole diameter', 0.5, 100, 'mm'),
  chimneyMm: quantity('chimney height, bore crown to rim', 0.2, 40, 'mm'),
  rimMm: quantity('rim thickness', 0.1, 10, 'mm'),
  key: key.nullable().describe('the key’s hinge; null for a vent, a narrow tube whose pad never limits it'),
});

const touch = z.strictObject({
  id: text('touch id'),
  closes: z.array(text('pad id')),
  opens: z.array(
    z.strictObject({
      pad: text('pad id'),
      whileDown: text('touch id').optional(),
      whileUp: text('touch id').optional(),
      frontMm: quantity('partial opening at the front', 0.1, 30, 'mm').optional(),
    }),
  ),
});

const link = z.strictObject({
  driver: text('driving pad id'),
  driven: text('driven pad id'),
  effect: choice('link effect', ['closes', 'holds shut']),
  travelRatio: quantity('travel ratio, driven front per driver front', 0.05, 20, 'mm/mm').optional(),
});

export const keySetupSchema = z.strictObject({
  pad: text('pad id'),
  openingMm: quantity('opening', 0, 60, 'mm'),
  measuredAt: choice('measuring point', ['front', 'centre', 'back']),
  padDiameterMm: quantity('pad diameter', 2, 120, 'mm'),
  padThicknessMm: quantity('pad thickness', 0.5, 12, 'mm'),
});

/** What the bench can change. */
export const setupSchema = z.strictObject({
  $schema: z.string().optional(),
  kind: z.literal('ventwright setup', { error: 'invalid kind; expected "ventwright setup"' }),
  version: z.literal(HORN_VERSION, {
    error: `invalid setup version; this program reads version ${HORN_VERSION}`,
  }),
  name: text('setup name'),
  airC: quantity('air temperature', 0, 45, '°C').optional(),
  keys: z.array(keySetupSchema),
});

/** What was built, and the setup it came with. */
export const hornSchema = z.strictObject({
  $schema: z.string().optional(),
  kind: z.literal('ventwright horn', { error: 'invalid kind; expected "ventwright horn"' }),
  version: z.literal(HORN_VERSION, {
    error: `invalid horn version; this program reads version ${HORN_VERSION}`,
  }),
  name: text('horn name'),
  maker: text('maker'),
  remark: z.string().max(2000).optional(),
  instrument: choice('instrument', ['soprano', 'alto', 'tenor', 'baritone']),
  transpositionSemitones: quantity('transposition, written to sounding', -48, 24, 'semitones').int(),
  mouthpiece: z.strictObject({
    pieces: z.array(mouthpiecePiece).min(1, 'expected at least one mouthpiece piece'),
    reedVolumeMm3: quantity('reed compliance as a volume of air', 0, 20000, 'mm³'),
  }),
  bore: z.array(boreSection).min(1, 'expected at least one bore section'),
  bellCorrectionMm: quantity('bell correction', -100, 100, 'mm'),
  holes: z.array(hole).max(60, 'expected at most 60 holes'),
  touches: z.array(touch),
  links: z.array(link),
  setup: setupSchema,
});

export type HornDocument = z.infer<typeof hornSchema>;
export type SetupDocument = z.infer<typeof setupSchema>;
export type KeySetupDocument = z.infer<typeof keySetupSchema>;

/** The published JSON Schemas, by file name. */
export function publishedSchemas(): Record<string, unknown> {
  return {
    'horn-1.schema.json': z.toJSONSchema(hornSchema),
    'setup-1.schema.json': z.toJSONSchema(setupSchema),
  };
}
