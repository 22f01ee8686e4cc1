import { makeAirColumn } from '../air/air.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { Horn, Setup } from '../horn.ts';
import { screwLeft, type LinkScrews } from '../keywork/closing.ts';
import type { Link } from '../keywork/linkage.ts';
import { standingFronts, type LinkedPad } from './link-study.ts';
import { linkName, prepareReadings, type PlusMinus, type Slopes } from './readings.ts';
import type { AnswerThere } from './uncertainty.ts';

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

/** Levers do not hear the air. */
const ANY_AIR = makeAirColumn();

/** A link as it stands, and how what it allows and loses moves with what was read. */
export interface LinkAt {
  readonly driverFront: number;
  readonly allows: number;
  readonly lost: number;
  /** m, c and e */
  readonly late: number;
  readonly early: number;
  readonly allowsSlopes: Slopes;
  readonly lostSlopes: Slopes;
}

/** The links of a horn as read. */
export function readLinks({ horn, setup, screws, plusMinus }: LinkedHorn) {
  const standing = standingFronts(horn, setup, screws);
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
    ...{ driverFront: h_d, late: c, early: e },
    allows: Math.max(0, k * (h_d + e) + c),
    lost: Math.max(0, h_d + e + (c - h_v) / k),
    allowsSlopes: slopes(k, 0, h_d + e),
    lostSlopes: slopes(1, -1 / k, (h_v - c) / k ** 2),
  };
}
