import {
  askOpening,
  canBeShown,
  compareLostMotion,
  type Link,
  type LinkedHorn,
  type LostMotion,
} from '../acoustics/index.ts';
import { plusMinusOf } from './plus-minus.ts';
import { regulationFacts, type RegulationFacts } from './regulation-facts.ts';
import type { LoadedHorn } from './to-acoustics.ts';

/** A pad that must stand higher for lost motion to be taken up, bench units. */
export interface TakingUpReport {
  readonly pad: string;
  readonly name: string;
  /** at its front */
  readonly toMm: number;
  /** how much thinner its foot cork must be; null where the leverage is not known */
  readonly thinnerCorkMm: number | null;
}

/** Motion that a link loses once heights are changed, bench units. */
export interface LostMotionReport {
  readonly driver: string;
  readonly driven: string;
  readonly driverName: string;
  readonly drivenName: string;
  /** how the driver then stands, at its front */
  readonly driverFrontMm: number;
  /** how far it then goes at its front before the driven pad stirs */
  readonly lostMm: number;
  readonly lostPlusMinusMm: number;
  /** the same at its touch; null where the touch’s arm is not known */
  readonly lostAtTouchMm: number | null;
  readonly asFoundMm: number;
  /** how much more that is than as found */
  readonly moreMm: number;
  readonly morePlusMinusMm: number;
  /** whether that is more than its ± */
  readonly shown: boolean;
  /** what must rise for no more to be lost than as found: the driven pad first, then what else holds it */
  readonly takenUpBy: readonly TakingUpReport[];
}

const MM = 1e-3;

/** Lost motion is felt from about this much, mm at the touch. **Source:** from memory. */
export const FELT_MM = 0.3;

/** More than as found by less than this is not told, mm. */
const LEAST_MORE_MM = 0.1;

/** A pad that would have to rise by less is left where it is, mm. */
const LEAST_RAISE_MM = 0.05;

/**
 * Links that lose motion which a player can feel, and more of it than as found, the most first.
 *
 * @param found the horn as found @param then the same horn with some heights otherwise
 */
export function lostMotionOf(found: LoadedHorn, then: LoadedHorn): LostMotionReport[] {
  const facts = regulationFacts(then);
  const isTold = ({ driver }: Link, before: number, after: number): boolean =>
    after - before >= LEAST_MORE_MM * MM && after * (facts.touchPerFront.get(driver) ?? 1) >= FELT_MM * MM;
  return compareLostMotion(linkedHorn(found, regulationFacts(found)), linkedHorn(then, facts), isTold)
    .map((motion) => report(motion, then, facts))
    .sort((a, b) => b.moreMm - a.moreMm);
}

/** What the acoustics needs of a loaded horn to tell its links. */
export function linkedHorn(loaded: LoadedHorn, { horn, screws }: RegulationFacts): LinkedHorn {
  return { horn, setup: loaded.setup, screws, plusMinus: plusMinusOf(loaded) };
}

function report(motion: LostMotion, then: LoadedHorn, facts: RegulationFacts): LostMotionReport {
  const { link, driverFront, before, after: lost, budgets } = motion;
  const nameOf = (id: string): string => facts.horn.holes.find((hole) => hole.id === id)?.name ?? id;
  const touch = facts.touchPerFront.get(link.driver);
  return {
    driver: link.driver,
    driven: link.driven,
    driverName: nameOf(link.driver),
    drivenName: nameOf(link.driven),
    driverFrontMm: driverFront / MM,
    lostMm: lost / MM,
    lostPlusMinusMm: budgets.after.plusMinus / MM,
    lostAtTouchMm: touch === undefined ? null : (lost * touch) / MM,
    asFoundMm: before / MM,
    moreMm: (lost - before) / MM,
    morePlusMinusMm: budgets.more.plusMinus / MM,
    shown: canBeShown({ value: lost - before, plusMinus: budgets.more.plusMinus }),
    takenUpBy: takenUpBy(motion, then, facts, nameOf),
  };
}

function takenUpBy(
  { link, allows, before }: LostMotion,
  then: LoadedHorn,
  { horn, screws, footPerFront }: RegulationFacts,
  nameOf: (id: string) => string,
): TakingUpReport[] {
  const front = allows - (link.ratio ?? 0) * before;
  return askOpening(horn, then.setup, link.driven, front, screws)
    .stops.filter(({ raise }) => raise >= LEAST_RAISE_MM * MM)
    .map(({ pad, needed, raise }) => {
      const foot = footPerFront.get(pad);
      return {
        ...{ pad, name: nameOf(pad), toMm: needed / MM },
        thinnerCorkMm: foot === undefined ? null : (raise * foot) / MM,
      };
    });
}
