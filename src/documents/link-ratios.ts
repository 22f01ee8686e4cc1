import { ratioFromArms } from '../acoustics/index.ts';
import { keyedHoles, type HornDocument, type LinkDocument } from './horn-document.ts';
import type { KeySetupDocument, SetupDocument } from './setup-document.ts';

/** A link's travel ratio, and whether it was read or follows from the arms. */
export interface KnownRatio {
  readonly ratio: number;
  readonly from: 'reading' | 'arms';
}

/** What ratios need of a setup. */
export interface SetupOfLinks {
  readonly keys: readonly KeySetupDocument[];
  readonly links?: SetupDocument['links'];
}

const MM = 1e-3;

/**
 * A link's travel ratio: the setup's reading before the horn's, and a reading before the arms; null where
 * neither is known. From arms it needs the pads' diameters, which the setup has.
 */
export function knownRatio(
  horn: HornDocument,
  setup: SetupOfLinks | undefined,
  { driver, driven, travelRatio, driverArmMm, drivenArmMm }: LinkDocument,
): KnownRatio | null {
  const read = setup?.links?.find((l) => l.driver === driver && l.driven === driven)?.travelRatio;
  const ratio = read ?? travelRatio;
  if (ratio !== undefined) return { ratio, from: 'reading' };
  const [driverFrontMm, drivenFrontMm] = [driver, driven].map((id) => frontArmMm(horn, setup, id));
  if (driverArmMm === undefined || drivenArmMm === undefined) return null;
  if (driverFrontMm === null || drivenFrontMm === null) return null;
  return {
    ratio: ratioFromArms({
      driverArm: driverArmMm * MM,
      driverFront: driverFrontMm * MM,
      drivenArm: drivenArmMm * MM,
      drivenFront: drivenFrontMm * MM,
    }),
    from: 'arms',
  };
}

/** Rod to the front edge of the pad along the rim plane, mm; null where pad or hinge is not known. */
export function frontArmMm(horn: HornDocument, setup: SetupOfLinks | undefined, pad: string): number | null {
  const hole = keyedHoles(horn).find((h) => h.id === pad);
  const diameterMm = setup?.keys.find((k) => k.pad === pad)?.padDiameterMm;
  return hole === undefined || diameterMm === undefined ? null : hole.key.hingeMm + diameterMm / 2;
}
