import { canBeShown, findContradictions, type Contradiction } from '../acoustics/index.ts';
import { formatBoth, type LengthUnit } from './length-format.ts';
import { lengthWithPlusMinus } from './length-plus-minus.ts';
import { linkedHorn } from './lost-motion.ts';
import { regulationFacts } from './regulation-facts.ts';
import { knownSetupLength } from './sheet-edits.ts';
import type { LoadedHorn } from './to-acoustics.ts';

/** A length at the front and its ± , mm. */
interface FrontReading {
  readonly mm: number;
  readonly plusMinusMm: number;
}

/** Two openings that were read and that a link does not let both be, bench units. */
export interface ContradictingReadings {
  readonly driver: string;
  readonly driven: string;
  readonly driverName: string;
  readonly drivenName: string;
  /** what was read of the driven pad and of its driver, and what the driver’s arm lets the driven pad open */
  readonly read: FrontReading;
  readonly driverRead: FrontReading;
  readonly allows: FrontReading;
  readonly apart: FrontReading;
}

const MM = 1e-3;

/**
 * Openings that were read on this horn and cannot both hold: a pad read to open further than its driver’s arm lets
 * it, by more than both readings and the travel ratio may be off.
 */
export function contradictingReadings(loaded: LoadedHorn): ContradictingReadings[] {
  const { setup } = loaded.documents;
  const isRead = (pad: string): boolean =>
    knownSetupLength({ ...setup, keys: [...setup.keys] }, pad, 'openingMm')?.origin === 'measured';
  return findContradictions(linkedHorn(loaded, regulationFacts(loaded)))
    .filter(({ driver, driven, read, allows, budgets }) => {
      const apart = { value: read - allows, plusMinus: budgets.apart.plusMinus };
      return isRead(driver) && isRead(driven) && canBeShown(apart);
    })
    .map((found) => report(found, loaded));
}

function report(
  { driver, driven, read, driverFront, allows, budgets }: Contradiction,
  { horn }: LoadedHorn,
): ContradictingReadings {
  const nameOf = (id: string): string => horn.holes.find((hole) => hole.id === id)?.name ?? id;
  const front = (metres: number, of: keyof Contradiction['budgets']): FrontReading => ({
    mm: metres / MM,
    plusMinusMm: budgets[of].plusMinus / MM,
  });
  return {
    ...{ driver, driven, driverName: nameOf(driver), drivenName: nameOf(driven) },
    read: front(read, 'read'),
    driverRead: front(driverFront, 'driverFront'),
    allows: front(allows, 'allows'),
    apart: front(read - allows, 'apart'),
  };
}

/** Both readings, that they cannot both hold, and what to measure again. */
export function contradictionSentence(
  { driverName, drivenName, read, driverRead, allows }: ContradictingReadings,
  unit: LengthUnit,
): string {
  const told = ({ mm, plusMinusMm }: FrontReading): string => lengthWithPlusMinus(mm, plusMinusMm, unit);
  return (
    `Readings that cannot both hold: ${drivenName} ${told(read)} and ${driverName} ${told(driverRead)}, whose arm lets ` +
    `${drivenName} open to ${told(allows)} only. Measure both again at rest, then their travel ratio; ` +
    `${formatBoth(allows.mm, unit)} is reckoned with meanwhile.`
  );
}
