import { makeAirColumn } from '../air/air.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { Horn, Setup } from '../horn.ts';
import { screwLeft, type LinkScrews } from '../keywork/closing.ts';
import type { Link } from '../keywork/linkage.ts';
import { standingFronts, type LinkedPad } from './link-study.ts';
import { linkName, prepareReadings, type PlusMinus, type Slopes } from './readings.ts';
import { budgetOf, differenceBudget, frontSlopes, type AnswerThere, type Budget } from './uncertainty.ts';

/**
 * What links allow and lose, how sure that is, and how it changes from one setup of a horn to another.
 *
 *   allowed    k·(h_d + e) + c        h_d, h_v fronts of driver and driven as they stand, k the travel ratio,
 *   lost       h_d + e + (c − h_v)/k  c ≥ 0 what a late screw leaves at the driven pad, e ≤ 0 an early one at the driver
 *
 * A driver raised by itself loses just what it was raised by, whatever the ratio: of a change, the ratio’s ± cancels.
 *
 * **Source:** plain lever geometry. **Holds for:** links that rule as they are read to; screws count as exact.
 */

/** A horn in a setup, and how well it was read. */
export interface LinkedHorn {
  readonly horn: Horn;
  readonly setup: Setup;
  readonly screws: LinkScrews;
  readonly plusMinus: PlusMinus;
}

/** Motion that a driver loses before its driven pad stirs, m at the driver's front, before a change and after. */
export interface LostMotion {
  readonly link: Link;
  /** m, how the driver stands after */
  readonly driverFront: number;
  /** m, what the driver then lets the driven pad open */
  readonly allows: number;
  readonly before: number;
  readonly after: number;
  /** of what is lost after, and of what that is more than before */
  readonly budgets: { readonly after: Budget; readonly more: Budget };
}

/** What every link with a known ratio loses in two setups of one horn. */
export function compareLostMotion(before: LinkedHorn, after: LinkedHorn): LostMotion[] {
  const [first, other] = [before, after].map(readAt);
  return after.horn.keywork.links.flatMap((link) => {
    const was = first.linkOf(link);
    const is = other.linkOf(link);
    if (was === null || is === null) return [];
    return [
      {
        link,
        driverFront: is.driverFront,
        allows: is.allows,
        before: was.lost,
        after: is.lost,
        budgets: {
          after: budgetOf(other.readings, is.lostSlopes, DEFAULT_PAD_MODEL),
          more: differenceBudget(first.with(was.lostSlopes), other.with(is.lostSlopes), 'same horn'),
        },
      },
    ];
  });
}

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
  const there = readAt(on);
  const free = readAt(withoutRatios(on));
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

/** Levers do not hear the air. */
const ANY_AIR = makeAirColumn();

interface LinkAt {
  readonly driverFront: number;
  readonly allows: number;
  readonly lost: number;
  readonly allowsSlopes: Slopes;
  readonly lostSlopes: Slopes;
}

function readAt({ horn, setup, screws, plusMinus: { keys, links } }: LinkedHorn) {
  const standing = standingFronts(horn, setup, screws);
  const plusMinus = { keys, ...(links === undefined ? {} : { links }) };
  const readings = prepareReadings(horn, setup, ANY_AIR, plusMinus);
  return {
    readings,
    standing,
    linkOf: (link: Link): LinkAt | null => linkAt(link, standing, screws),
    with: (slopes: Slopes): AnswerThere => ({ readings, slopes, padModel: DEFAULT_PAD_MODEL }),
  };
}

function linkAt(link: Link, standing: (pad: string) => LinkedPad, screws: LinkScrews): LinkAt | null {
  const { driver, driven, ratio: k } = link;
  if (k === undefined) return null;
  const left = screwLeft(link, screws);
  const [c, e] = [Math.max(left, 0), Math.min(left, 0)];
  const [h_d, h_v] = [standing(driver).standsFront, standing(driven).standsFront];
  const slopes = (byDriver: number, byDriven: number, byRatio: number): Slopes => ({
    keys: new Map([
      [driver, { front: byDriver }],
      [driven, { front: byDriven }],
    ]),
    links: new Map([[linkName(driver, driven), byRatio]]),
  });
  return {
    driverFront: h_d,
    allows: Math.max(0, k * (h_d + e) + c),
    lost: Math.max(0, h_d + e + (c - h_v) / k),
    allowsSlopes: slopes(k, 0, h_d + e),
    lostSlopes: slopes(1, -1 / k, (h_v - c) / k ** 2),
  };
}

/** The same horn with every pad at its own stop, so that what was read of each is told by itself. */
function withoutRatios({ horn, plusMinus, ...rest }: LinkedHorn): LinkedHorn {
  const links = horn.keywork.links.map(({ driver, driven, effect }) => ({ driver, driven, effect }));
  return {
    ...rest,
    horn: { ...horn, keywork: { ...horn.keywork, links } },
    plusMinus: { keys: plusMinus.keys },
  };
}
