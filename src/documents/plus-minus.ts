import { linkName, type KeyPlusMinus, type PlusMinus } from '../acoustics/index.ts';
import { knownRatio } from './link-ratios.ts';
import { knownReading, type LengthField } from './readings.ts';
import type { LoadedHorn } from './to-acoustics.ts';

const MM = 1e-3;
const CM3 = 1e-6;

/**
 * The usual ± of what has no reading of its own, as read or set on the day and as an example of its kind may
 * differ from the horn at hand.
 *
 *   travelRatio          a share of the ratio: two travels, each read to a few per cent
 *   airC                 °C, of the air in a played horn
 *   mouthpieceCm3        cm³, of the mouthpiece's volume
 *   mouthpiecePlaceMm    mm, how far out it sits on the cork
 *
 * **Source:** from memory, within common practice.
 */
const USUAL = {
  travelRatio: { measured: 0.05, template: 0.15 },
  airC: 2,
  mouthpieceCm3: { measured: 0.2, template: 0.8 },
  mouthpiecePlaceMm: { measured: 1, template: 4 },
} as const;

/** How far everything read of a horn and its setup may be off; radii by half their diameters' ±. */
export function plusMinusOf({ documents }: LoadedHorn): PlusMinus {
  const { horn, setup } = documents;
  const usual = horn.origin === 'measured' ? 'measured' : 'template';
  const links = horn.links.flatMap((link) => {
    const known = knownRatio(horn, setup, link);
    if (known === null) return [];
    const read = setup.links?.some(
      ({ driver, driven, travelRatio }) =>
        driver === link.driver && driven === link.driven && travelRatio !== undefined,
    );
    const origin =
      read === true || (link.ratioOrigin ?? horn.origin) === 'measured' ? 'measured' : 'template';
    return [[linkName(link.driver, link.driven), known.ratio * USUAL.travelRatio[origin]] as const];
  });
  return {
    keys: new Map(horn.holes.map((hole) => [hole.id, plusMinusOfKey(documents, hole)])),
    links: new Map(links),
    temperature: USUAL.airC,
    mouthpieceVolume: USUAL.mouthpieceCm3[usual] * CM3,
    mouthpiecePlace: USUAL.mouthpiecePlaceMm[usual] * MM,
  };
}

/** The same once air and mouthpiece were fitted to played notes: what is left of them is the fit's to say. */
export function withoutTheDay({ keys, links }: PlusMinus): PlusMinus {
  return { keys, ...(links === undefined ? {} : { links }) };
}

function plusMinusOfKey(
  { horn, setup }: LoadedHorn['documents'],
  hole: LoadedHorn['documents']['horn']['holes'][number],
): KeyPlusMinus {
  const key = setup.keys.find(({ pad }) => pad === hole.id);
  const built = (field: keyof NonNullable<typeof hole.readings> & LengthField): number =>
    knownReading(field, hole.readings?.[field], horn.origin).plusMinusMm * MM;
  const ofHole = {
    holeRadius: built('diameterMm') / 2,
    chimney: built('chimneyMm'),
    place: built('positionMm'),
  };
  if (hole.key === null) return ofHole;
  const set = (field: 'openingMm' | 'padThicknessMm' | 'padDiameterMm'): number =>
    knownReading(field, key?.readings?.[field], setup.origin).plusMinusMm * MM;
  return {
    ...ofHole,
    opening: set('openingMm'),
    padThickness: set('padThicknessMm'),
    padRadius: set('padDiameterMm') / 2,
    hingeDistance: built('hingeMm'),
    hingeHeight: built('hingeHeightMm'),
    rimThickness: built('rimMm'),
  };
}
