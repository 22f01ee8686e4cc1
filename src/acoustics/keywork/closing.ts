import { fingeredPads, openedPads, pressedFrom, type Keywork, type Link } from './linkage.ts';

/**
 * How far pads stay off their rims when fingers shut them through links that are out of regulation.
 *
 *   h_v ≤ k·h_d + c       driven front, driver front; the arm between them does not bend
 *
 *      c > 0   the driven pad hangs by c when the driver is home        (late)
 *      c < 0   the driven pad is home first and keeps the driver off by −c/k   (early)
 *
 * A finger drives its pad down until it is home or its arm meets a driven pad that is home already. A pad
 * that links alone drive goes as low as its best driver takes it. A spring shuts a pad by itself; an arm that
 * only holds it shut counts while a touch would open it. Arms and pads are taken as stiff: a soft pad gives
 * way and hides a part of what is found here.
 *
 * **Source:** plain lever geometry.
 */

/**
 * What a link's screw leaves when the link shuts, m: positive, at the driven pad's front when the driver is
 * home; negative, at the driver's front when the driven pad is home; 0 both at once.
 */
export interface LinkScrew {
  readonly driver: string;
  readonly driven: string;
  readonly left: number;
}

/** A screw per link that is not at 0. */
export type LinkScrews = readonly LinkScrew[];

/** c of a link, m at the driven pad's front. A link without a ratio counts as 1 here. */
export function contactOffset(link: Link, screws: LinkScrews): number {
  const left = screwLeft(link, screws);
  return left >= 0 ? left : left * (link.ratio ?? 1);
}

/** What the link's screw leaves, m, as {@link LinkScrew}; 0 where none is given. */
export function screwLeft(link: Pick<Link, 'driver' | 'driven'>, screws: LinkScrews): number {
  return screws.find((s) => s.driver === link.driver && s.driven === link.driven)?.left ?? 0;
}

/** The link between two pads. @throws RangeError where the horn has none */
export function linkBetween(keywork: Keywork, driver: string, driven: string): Link {
  const link = keywork.links.find((l) => l.driver === driver && l.driven === driven);
  if (link === undefined) {
    const known = keywork.links.map((l) => `${l.driver} to ${l.driven}`).join(', ');
    throw new RangeError(`invalid link: "${driver} to ${driven}"; expected one of ${known}`);
  }
  return link;
}

/**
 * Front heights, m, of every pad that is shut or meant to be, under a set of touches. Pads that stand open
 * by right are left out.
 *
 * @param down ids of the touches held down
 * @throws RangeError for a touch the keywork does not have, or links that run in a circle
 */
export function closingHeights(
  keywork: Keywork,
  down: ReadonlySet<string>,
  screws: LinkScrews,
): Map<string, number> {
  const byFinger = new Set(fingeredPads(keywork, down));
  const opened = openedPads(keywork, down);
  return heightsUnder(keywork, screws, { pressed: pressedFrom(keywork, [...byFinger]), byFinger, opened });
}

/** The same when one pad is pressed by itself, as the bench tests it. */
export function closingHeightsUnderPad(
  keywork: Keywork,
  pad: string,
  screws: LinkScrews,
): Map<string, number> {
  const pressed = pressedFrom(keywork, [pad]);
  // Every pad that an arm only holds shut is tried as if its touch were down.
  const opened = new Map(keywork.links.filter((l) => l.effect === 'holds shut').map((l) => [l.driven, null]));
  return heightsUnder(keywork, screws, { pressed, byFinger: new Set([pad]), opened });
}

interface Pressing {
  readonly pressed: ReadonlySet<string>;
  readonly byFinger: ReadonlySet<string>;
  /** pads that a touch would open */
  readonly opened: ReadonlyMap<string, unknown>;
}

function heightsUnder(
  keywork: Keywork,
  screws: LinkScrews,
  { pressed, byFinger, opened }: Pressing,
): Map<string, number> {
  for (const { driver, driven } of screws) linkBetween(keywork, driver, driven);
  const lowest = lowestHeights(keywork, screws);
  const heights = new Map<string, number>();
  const heightOf = (pad: string): number => {
    const known = heights.get(pad);
    if (known !== undefined) return known;
    const least = lowest(pad);
    let height = byFinger.has(pad) ? least : Infinity;
    for (const link of keywork.links) {
      if (link.driven !== pad || !pressed.has(link.driver)) continue;
      height = Math.min(height, Math.max(least, follows(link, heightOf(link.driver), screws)));
    }
    heights.set(pad, height);
    return height;
  };
  for (const [pad, rest] of keywork.rests) {
    if (rest === 'open' ? pressed.has(pad) : opened.has(pad) && isHeld(keywork, pad, pressed)) heightOf(pad);
    else if (rest === 'closed' && !opened.has(pad)) heights.set(pad, 0);
  }
  return heights;
}

/** Where the arm of a pressed driver lets the driven pad stand. A link without a ratio passes on its screw alone. */
function follows(link: Link, driverHeight: number, screws: LinkScrews): number {
  return Math.max(0, (link.ratio ?? 0) * driverHeight + contactOffset(link, screws));
}

function isHeld(keywork: Keywork, pad: string, pressed: ReadonlySet<string>): boolean {
  return keywork.links.some((l) => l.driven === pad && l.effect === 'holds shut' && pressed.has(l.driver));
}

/** How low a finger can bring each pad: no lower than where its own arms meet driven pads at their lowest. */
function lowestHeights(keywork: Keywork, screws: LinkScrews): (pad: string) => number {
  const known = new Map<string, number>();
  const lowest = (pad: string, path: readonly string[]): number => {
    if (path.includes(pad)) {
      throw new RangeError(
        `invalid links: ${[...path, pad].join(' to ')}; expected no link that drives its own driver`,
      );
    }
    let height = known.get(pad);
    if (height !== undefined) return height;
    height = 0;
    for (const link of keywork.links) {
      if (link.driver !== pad) continue;
      const early = lowest(link.driven, [...path, pad]) - contactOffset(link, screws);
      height = Math.max(height, early / (link.ratio ?? 1));
    }
    known.set(pad, height);
    return height;
  };
  return (pad) => lowest(pad, []);
}
