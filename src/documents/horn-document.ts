import * as z from 'zod';
import { ORIGINS, readingsOf } from './readings.ts';
import { choice, documentVersion, quantity, text } from './schema-parts.ts';

/** Version of the horn document this program writes. */
export const HORN_VERSION = 2;

/** What was built of one key and its hole. */
export const HORN_FIELDS = [
  'positionMm',
  'diameterMm',
  'chimneyMm',
  'rimMm',
  'hingeMm',
  'hingeHeightMm',
  'cupFloorMm',
  'cupDiameterMm',
] as const;
export type HornField = (typeof HORN_FIELDS)[number];

/** The four instruments, from the smallest. */
export const INSTRUMENTS = ['soprano', 'alto', 'tenor', 'baritone'] as const;
export type Instrument = (typeof INSTRUMENTS)[number];

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
  points: z
    .array(borePoint)
    .min(2, 'expected at least two points in each bore section')
    .max(2000, 'expected at most 2000 points in each bore section'),
});

const key = z.strictObject({
  hingeMm: quantity('hinge distance, rod to pad centre along the rim plane', 1, 200, 'mm'),
  hingeHeightMm: quantity('rod height above the rim plane', -60, 60, 'mm'),
  cupFloorMm: quantity('cup floor to rim with the cup parallel to it', 0, 30, 'mm').optional(),
  cupDiameterMm: quantity('cup inner diameter', 2, 130, 'mm').optional(),
  footArmMm: quantity('rod to foot cork', 1, 200, 'mm').optional(),
  touchArmMm: quantity('rod to touch', 1, 300, 'mm').optional(),
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
  aroundDeg: quantity(
    'place round the bore from the line of the stacks, plus to the player’s right; for drawing only',
    -180,
    180,
    '°',
  ).optional(),
  key: key.nullable().describe('the key’s hinge; null for a vent, a narrow tube whose pad never limits it'),
  readings: readingsOf(HORN_FIELDS).optional(),
});

const touch = z.strictObject({
  id: text('touch id'),
  closes: z.array(text('pad id')).max(60, 'expected at most 60 pads'),
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
  ratioOrigin: choice('origin of the travel ratio', ORIGINS).optional(),
  driverArmMm: quantity('driver’s rod to the link’s contact', 1, 200, 'mm').optional(),
  drivenArmMm: quantity('driven key’s rod to the link’s contact', 1, 200, 'mm').optional(),
});

/** What was built. */
export const hornSchema = z.strictObject({
  $schema: z.string().optional(),
  kind: z.literal('ventwright horn', { error: 'invalid kind; expected "ventwright horn"' }),
  version: documentVersion('horn', HORN_VERSION),
  name: text('horn name'),
  maker: text('maker'),
  serial: text('serial number').optional(),
  owner: text('owner').optional(),
  remark: z.string().max(2000).optional(),
  origin: choice('origin of numbers without a reading of their own', ORIGINS),
  instrument: choice('instrument', INSTRUMENTS),
  transpositionSemitones: quantity('transposition, written to sounding', -48, 24, 'semitones').int(),
  mouthpiece: z.strictObject({
    pieces: z
      .array(mouthpiecePiece)
      .min(1, 'expected at least one mouthpiece piece')
      .max(40, 'expected at most 40 mouthpiece pieces'),
    reedVolumeMm3: quantity('reed compliance as a volume of air', 0, 20000, 'mm³'),
  }),
  bore: z
    .array(boreSection)
    .min(1, 'expected at least one bore section')
    .max(40, 'expected at most 40 bore sections'),
  bellCorrectionMm: quantity('bell correction', -100, 100, 'mm'),
  holes: z
    .array(hole)
    .refine((holes) => holes.some((h) => h.key !== null), 'expected at least one pad with a hinge')
    .max(60, 'expected at most 60 holes'),
  touches: z.array(touch).max(100, 'expected at most 100 touches'),
  links: z.array(link).max(100, 'expected at most 100 links'),
});

export type HornDocument = z.infer<typeof hornSchema>;
export type HoleDocument = HornDocument['holes'][number];
export type LinkDocument = HornDocument['links'][number];

/** A hole with a key on it: vents have none. */
export type KeyedHole = HoleDocument & { readonly key: NonNullable<HoleDocument['key']> };

/** Every pad with a hinge, from the bell up, as they are numbered. */
export function keyedHoles(horn: HornDocument): KeyedHole[] {
  return horn.holes
    .filter((hole): hole is KeyedHole => hole.key !== null)
    .sort((a, b) => a.number - b.number);
}
