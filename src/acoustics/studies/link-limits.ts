import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { Link } from '../keywork/linkage.ts';
import type { AskedOpening } from './link-study.ts';
import { readLinks, type LinkedHorn } from './linked-horn.ts';
import { linkName, type Slopes } from './readings.ts';
import { budgetOf, differenceBudget, frontSlopes, type Budget } from './uncertainty.ts';

// Where arms begin to rule, how sure that is, and where that cannot be squared with what was read (linked-horn.ts).

/** An opening that was read, and an arm that does not let the pad open so far. Metres at the front. */
export interface Contradiction {
  readonly driver: string;
  readonly driven: string;
  /** what was read of the driven pad, by itself */
  readonly read: number;
  /** what was read of the driver */
  readonly driverFront: number;
  /** what it lets the driven pad open */
  readonly allows: number;
  /** of each, and of what they are apart */
  readonly budgets: Readonly<Record<'read' | 'driverFront' | 'allows' | 'apart', Budget>>;
}

/**
 * Pads that were read to open further than the arm that rules them lets them, however little. Where the driver is
 * itself held below what was read of it, that is the contradiction, and what follows from it is left out.
 */
export function findContradictions(on: LinkedHorn): Contradiction[] {
  const there = readLinks(on);
  const free = readLinks(withoutArms(on, on.horn.keywork.links));
  const sure = (slopes: Slopes): Budget => budgetOf(there.readings, slopes, DEFAULT_PAD_MODEL);
  return on.horn.keywork.links.flatMap((link) => {
    const { driver, driven } = link;
    const { ownFront, ruledBy } = there.standing(driven);
    const arm = there.linkOf(link);
    if (arm === null || ruledBy !== driver || there.standing(driver).ruledBy !== null) return [];
    const own = frontSlopes(driven);
    return [
      {
        ...{ driver, driven, read: ownFront, driverFront: arm.driverFront, allows: arm.allows },
        budgets: {
          read: budgetOf(free.readings, own, DEFAULT_PAD_MODEL),
          driverFront: sure(frontSlopes(driver)),
          allows: sure(arm.allowsSlopes),
          apart: differenceBudget(there.with(arm.allowsSlopes), free.with(own), 'same horn'),
        },
      },
    ];
  });
}

/** A pad that a key's arm holds down once the key stands low enough. */
export interface HoldingFrom {
  readonly driven: string;
  /** m at the key's front: below it the arm rules the driven pad */
  readonly below: number;
  readonly budget: Budget;
  /** another driver that holds the pad down anyway; null where its own stop rules */
  readonly heldBy: string | null;
}

/** Which pads a key's arms hold down, and from where: (h_v − c)/k − e, with the driven pad as it stands without that arm. */
export function holdsDownFrom(on: LinkedHorn, driver: string): HoldingFrom[] {
  const there = readLinks(on);
  return on.horn.keywork.links.flatMap((link) => {
    const { driven, ratio: k } = link;
    const arm = there.linkOf(link);
    if (link.driver !== driver || k === undefined || arm === null) return [];
    const free = readLinks(withoutArms(on, [link]));
    const { standsFront, ruledBy } = free.standing(driven);
    const below = Math.max(0, (standsFront - arm.late) / k - arm.early);
    const slopes: Slopes = {
      keys: new Map([[driven, { front: 1 / k }]]),
      links: new Map([[linkName(driver, driven), -(standsFront - arm.late) / k ** 2]]),
    };
    // The arm's own ratio is among what was read, though it does not rule here.
    const readings = { list: there.readings.list, pads: free.readings.pads };
    return [{ driven, below, budget: budgetOf(readings, slopes, DEFAULT_PAD_MODEL), heldBy: ruledBy }];
  });
}

/** How sure it is what a link allows and loses, and how far its driven pad's own stop lies above what it allows. */
export type LinkBudgets = Readonly<Record<'allows' | 'lost' | 'below', Budget>>;

/** Of each link with a known ratio, m; null where that is not known. */
export function linkBudgets(on: LinkedHorn): (link: Link) => LinkBudgets | null {
  const there = readLinks(on);
  const free = readLinks(withoutArms(on, on.horn.keywork.links));
  const sure = (slopes: Slopes): Budget => budgetOf(there.readings, slopes, DEFAULT_PAD_MODEL);
  return (link) => {
    const arm = there.linkOf(link);
    if (arm === null) return null;
    const own = free.with(frontSlopes(link.driven));
    return {
      allows: sure(arm.allowsSlopes),
      lost: sure(arm.lostSlopes),
      below: differenceBudget(there.with(arm.allowsSlopes), own, 'same horn'),
    };
  };
}

/** How sure it is what an asked opening needs: of its stops and ratios, in their order. */
export interface AskedBudgets {
  /** m; of a stop that gives enough already, `raise` is that of what it has to spare */
  readonly stops: readonly Readonly<Record<'needed' | 'raise', Budget>>[];
  /** no unit */
  readonly ratios: readonly Budget[];
}

/** An opening that is asked is meant and has no ±; arms and stops were read. */
export function askedBudgets(on: LinkedHorn, { stops, ratios }: AskedOpening): AskedBudgets {
  const there = readLinks(on);
  const free = readLinks(withoutArms(on, on.horn.keywork.links));
  // Stops as if no arm ruled, and the ratios of all arms among what was read.
  const own = { list: there.readings.list, pads: free.readings.pads };
  const sure = (slopes: Slopes): Budget => budgetOf(own, slopes, DEFAULT_PAD_MODEL);
  return {
    stops: stops.map(({ pad, byRatio: links }) => ({
      needed: sure({ keys: new Map(), links }),
      raise: sure({ keys: new Map([[pad, { front: -1 }]]), links }),
    })),
    ratios: ratios.map(({ driver, byDriverFront: front }) =>
      budgetOf(there.readings, { keys: new Map([[driver, { front }]]) }, DEFAULT_PAD_MODEL),
    ),
  };
}

/** The same horn with some arms that do not rule, so that what is left tells of itself. */
function withoutArms({ horn, plusMinus, ...rest }: LinkedHorn, arms: readonly Link[]): LinkedHorn {
  const isArm = (link: Link): boolean => arms.some((arm) => arm === link);
  const links = horn.keywork.links.map((link) => {
    const { driver, driven, effect } = link;
    return isArm(link) ? { driver, driven, effect } : link;
  });
  const names = new Set(arms.map(({ driver, driven }) => linkName(driver, driven)));
  const known = [...(plusMinus.links ?? [])].filter(([name]) => !names.has(name));
  return {
    ...rest,
    horn: { ...horn, keywork: { ...horn.keywork, links } },
    plusMinus: { ...plusMinus, links: new Map(known) },
  };
}
