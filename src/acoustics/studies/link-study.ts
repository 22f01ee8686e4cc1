import { ownPose } from '../holes/pad-over-hole.ts';
import { holeOf, keySetupOf, type Horn, type Setup } from '../horn.ts';
import { closingHeightsUnderPad, contactOffset, screwLeft, type LinkScrews } from '../keywork/closing.ts';
import { largestOpening } from '../keywork/hinge.ts';
import type { Link } from '../keywork/linkage.ts';
import { linkName } from './readings.ts';

/**
 * The link study: what each pad's own stop would give, what its links allow, which of them rules, how much
 * motion is lost at the driver before a driven pad stirs, and what shuts together.
 *
 *   allowed    k·h_d + c            h_d the driver's front as it stands, c what the link's screw leaves (closing.ts)
 *   lost       (k·h_d + c − h_v)/k  at the driver's front, h_v the driven pad's front as it stands
 *
 * **Source:** plain lever geometry.
 */
export interface LinkStudyOptions {
  readonly screws?: LinkScrews;
  /** by driver: travel of its touch per travel of its pad's front, where known */
  readonly touchPerFront?: ReadonlyMap<string, number>;
}

/** One link as it stands. Metres. */
export interface LinkState {
  readonly link: Link;
  /** how its driver stands, at its front */
  readonly driverFront: number;
  /** what it lets the driven pad open, at its front; null where the ratio is not known */
  readonly allows: number | null;
  /** whether it is what holds the driven pad down */
  readonly rules: boolean;
  /** motion of the driver's front before the driven pad stirs; null where the ratio is not known */
  readonly lostAtFront: number | null;
  /** the same at the driver's touch; null where that travel is not known */
  readonly lostAtTouch: number | null;
}

/** One pad as its stop and links let it stand, m at the front. */
export interface LinkedPad {
  readonly pad: string;
  readonly ownFront: number;
  readonly standsFront: number;
  /** the driver whose arm holds it down; null where its own stop rules */
  readonly ruledBy: string | null;
}

/** What is left open when one driver is pressed home by itself, m at each front. */
export interface ShutTogether {
  readonly driver: string;
  /** the driver's own front: more than 0 where a driven pad is home first */
  readonly driverLeft: number;
  readonly driven: readonly { readonly pad: string; readonly left: number }[];
}

/** Everything links do in a setup. */
export interface LinkStudy {
  /** every pad that a link drives, from the bell up */
  readonly pads: readonly LinkedPad[];
  readonly links: readonly LinkState[];
  readonly together: readonly ShutTogether[];
}

/** Studies the links of a horn as set up. */
export function studyLinks(horn: Horn, setup: Setup, options: LinkStudyOptions = {}): LinkStudy {
  const { screws = [], touchPerFront } = options;
  const standing = standingFronts(horn, setup, screws);
  const driven = new Set(horn.keywork.links.map((l) => l.driven));
  return {
    pads: fromTheBellUp(horn, [...driven]).map((pad) => standing(pad)),
    links: horn.keywork.links.map((link) => linkState(link, standing, screws, touchPerFront)),
    together: fromTheBellUp(horn, [...new Set(horn.keywork.links.map((l) => l.driver))]).map((driver) =>
      shutTogether(horn, driver, screws),
    ),
  };
}

/** How every pad stands, link screws included: a late link lets its driven pad open a little further. */
export function standingFronts(horn: Horn, setup: Setup, screws: LinkScrews): (pad: string) => LinkedPad {
  const known = new Map<string, LinkedPad>();
  const standing = (pad: string): LinkedPad => {
    const before = known.get(pad);
    if (before !== undefined) return before;
    const ownFront = ownPose(horn, setup, pad).front;
    let standsFront = ownFront;
    let ruledBy: string | null = null;
    for (const link of horn.keywork.links) {
      if (link.driven !== pad || link.ratio === undefined) continue;
      const allows = allowed(link, link.ratio, standing(link.driver).standsFront, screws);
      if (allows < standsFront) {
        standsFront = allows;
        ruledBy = link.driver;
      }
    }
    const result = { pad, ownFront, standsFront, ruledBy };
    known.set(pad, result);
    return result;
  };
  return standing;
}

function allowed(link: Link, ratio: number, driverFront: number, screws: LinkScrews): number {
  return Math.max(0, ratio * driverFront + contactOffset(link, screws));
}

function linkState(
  link: Link,
  standing: (pad: string) => LinkedPad,
  screws: LinkScrews,
  touchPerFront: ReadonlyMap<string, number> | undefined,
): LinkState {
  const { ratio } = link;
  const driverFront = standing(link.driver).standsFront;
  if (ratio === undefined) {
    return { link, driverFront, allows: null, rules: false, lostAtFront: null, lostAtTouch: null };
  }
  const driven = standing(link.driven);
  const allows = allowed(link, ratio, driverFront, screws);
  const lostAtFront = Math.max(0, (allows - driven.standsFront) / ratio);
  const touch = touchPerFront?.get(link.driver);
  return {
    link,
    driverFront,
    allows,
    rules: driven.ruledBy === link.driver,
    lostAtFront,
    lostAtTouch: touch === undefined ? null : lostAtFront * touch,
  };
}

function shutTogether(horn: Horn, driver: string, screws: LinkScrews): ShutTogether {
  const heights = closingHeightsUnderPad(horn.keywork, driver, screws);
  const driven = [...heights].flatMap(([pad, left]) =>
    pad !== driver && reaches(horn, driver, pad) ? [{ pad, left }] : [],
  );
  return { driver, driverLeft: heights.get(driver) ?? 0, driven };
}

/** Whether pressing the driver acts on the pad, through any number of links. */
function reaches(horn: Horn, driver: string, pad: string): boolean {
  return horn.keywork.links.some(
    (l) =>
      l.driver === driver && (l.driven === pad || (l.effect === 'closes' && reaches(horn, l.driven, pad))),
  );
}

function fromTheBellUp(horn: Horn, pads: readonly string[]): string[] {
  return [...pads].sort((a, b) => holeOf(horn, a).number - holeOf(horn, b).number);
}

/** A stop that must give so much for an asked opening to be had. Metres at the front. */
export interface NeededStop {
  readonly pad: string;
  readonly needed: number;
  /** how that goes with the ratio of each link on the way, m per unit, by name */
  readonly byRatio: ReadonlyMap<string, number>;
  readonly ownFront: number;
  /** how much the stop must rise; 0 where it gives enough already */
  readonly raise: number;
  /** the most its hinge can give */
  readonly largest: number;
}

/** A ratio that would do instead, the driver left as it stands. */
export interface NeededRatio {
  readonly driver: string;
  readonly driven: string;
  readonly present: number;
  readonly needed: number;
  /** how that goes with the driver's front as it stands, per m */
  readonly byDriverFront: number;
}

/** What an asked opening needs. */
export interface AskedOpening {
  /** the asked pad first, then its drivers, theirs, and so on */
  readonly stops: readonly NeededStop[];
  /** for each arm straight onto the asked pad that allows too little: the ratio it would need */
  readonly ratios: readonly NeededRatio[];
}

/**
 * The other way round: a least opening is asked of a driven pad; which stops must rise for it, or which ratio
 * must change.
 *
 * @param front m at the pad's front, > 0
 */
export function askOpening(
  horn: Horn,
  setup: Setup,
  pad: string,
  front: number,
  screws: LinkScrews = [],
): AskedOpening {
  if (!(front > 0)) throw new RangeError(`invalid opening: ${front * 1000} mm; expected more than 0 mm`);
  const needed = new Map<string, Pick<NeededStop, 'needed' | 'byRatio'>>();
  const ask = (id: string, least: number, byRatio: NeededStop['byRatio']): void => {
    if (least >= (needed.get(id)?.needed ?? 0)) needed.set(id, { needed: least, byRatio });
    for (const link of horn.keywork.links) {
      const { driver, driven, ratio: k } = link;
      if (driven !== id || k === undefined) continue;
      const above = least - Math.max(0, screwLeft(link, screws));
      const own = [linkName(driver, driven), -above / k ** 2] as const;
      const along = [...byRatio].map(([name, slope]) => [name, slope / k] as const);
      const asked = (least - contactOffset(link, screws)) / k;
      ask(driver, Math.max(0, asked), new Map(asked > 0 ? [...along, own] : []));
    }
  };
  ask(pad, front, new Map());
  const standing = standingFronts(horn, setup, screws);
  const stops = [...needed].map(([id, { needed: least, byRatio }]): NeededStop => {
    const { ownFront } = standing(id);
    const { hinge } = holeOf(horn, id);
    const largest = largestOpening(hinge!, keySetupOf(setup, id).padRadius, 'front');
    return { pad: id, needed: least, byRatio, ownFront, raise: Math.max(0, least - ownFront), largest };
  });
  const ratios = horn.keywork.links.flatMap((link): NeededRatio[] => {
    const { driver, driven, ratio } = link;
    if (driven !== pad || ratio === undefined) return [];
    const { standsFront } = standing(driver);
    const least = (front - contactOffset(link, screws)) / standsFront;
    const byDriverFront = -(front - Math.max(0, screwLeft(link, screws))) / standsFront ** 2;
    return least > ratio ? [{ driver, driven, present: ratio, needed: least, byDriverFront }] : [];
  });
  return { stops, ratios };
}
