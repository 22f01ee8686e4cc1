import { holeOf, type Horn, type Setup } from '../horn.ts';
import { linkGroups, type LinkGroup } from '../keywork/link-groups.ts';
import type { Link } from '../keywork/linkage.ts';
import { standingFronts } from './link-study.ts';
import {
  enter,
  knownFrom,
  linkId,
  USUAL_TOLERANCES,
  type BenchState,
  type DoneMove,
  type MovedHeight,
  type RegulationTolerances,
  type Work,
} from './regulation-known.ts';

export { USUAL_TOLERANCES, type BenchState, type DoneMove, type MovedHeight, type RegulationTolerances };

/**
 * The order of work from as found to as set, with as few repeats as can be: within each group of linked pads,
 * the greatest first,
 *
 *   seats → links → heights → links again
 *
 * Seats first, since every link is set to a seat; links before heights, since a link that holds a pad down
 * hides its stop; and after heights every link whose pads were moved once more. Nothing is on the list that is
 * within its tolerance already. The order of links comes from the link graph (link-groups.ts).
 *
 * **Source:** common practice, no source, for the four passes and the tolerances.
 */

/** What a move works on. */
export type MoveKind = 'seat' | 'link' | 'height';

/** How it is tested. */
export type MoveTest =
  | 'light all round, alone'
  | 'light all round, its drivers’ arms backed off'
  | 'papers under both'
  | 'wedge at the front';

/** One move. Metres. */
export interface Move {
  /** the same for the same work in every plan: `seat e`, `link e > bis`, `height e` */
  readonly id: string;
  readonly kind: MoveKind;
  readonly pad: string;
  /** of a link, the pad that drives */
  readonly driver: string | null;
  /** as last read; null where a seat or height has moved since and it must be read again */
  readonly from: number | null;
  readonly to: number;
  readonly tolerance: number;
  readonly test: MoveTest;
  /** whether it is the pass after the heights */
  readonly again: boolean;
  /** of that pass: the linked pads whose heights move, or have moved, since the link was set */
  readonly after: readonly MovedHeight[];
}

/** A done move and whether it came within its tolerance. */
export interface CheckedMove extends DoneMove {
  readonly within: boolean;
}

/** The list: what is done, what is next. */
export interface RegulationPlan {
  readonly done: readonly CheckedMove[];
  readonly moves: readonly Move[];
  /** links that nothing above sets and nobody read: each counts as shutting both at once until it is tested */
  readonly untested: readonly Move[];
  /** openings that were asked for and that their links will not allow */
  readonly warnings: readonly string[];
}

/**
 * Plans the work that is left.
 *
 * @param done moves made, in the order they were made; a value outside its tolerance brings the move back
 * @throws RangeError for a done move the horn does not have
 */
export function planRegulation(
  horn: Horn,
  asFound: BenchState,
  asSet: BenchState,
  done: readonly DoneMove[] = [],
  tolerances: RegulationTolerances = USUAL_TOLERANCES,
): RegulationPlan {
  const wanted = knownFrom(horn, asSet);
  const work: Work = { now: knownFrom(horn, asFound), wanted, tolerances };
  const checked = done.map((move) => ({ ...move, within: enter(horn, work, move) }));
  const groups = benchGroups(horn);
  const moves = groups.flatMap((group) => groupMoves(group, work));
  const isTested = (link: Link): boolean =>
    work.now.tested.has(linkId(link)) || moves.some(({ id }) => id === linkId(link));
  return {
    done: checked,
    moves,
    untested: groups.flatMap(({ links }) =>
      links.filter((link) => !isTested(link)).map((link) => linkMove(link, null, null, work)),
    ),
    warnings: heldDown(horn, asSet.setup, tolerances),
  };
}

/** Groups in bench order: linked ones first, then pads that rest open, then those that rest closed, vents last. */
function benchGroups(horn: Horn): LinkGroup[] {
  const rank = (group: LinkGroup): number => {
    if (group.links.length > 0) return 0;
    const [pad] = group.pads;
    if (holeOf(horn, pad).hinge === null) return 3;
    return horn.keywork.rests.get(pad) === 'open' ? 1 : 2;
  };
  return linkGroups(horn.keywork, horn.holes).sort((a, b) => rank(a) - rank(b));
}

function groupMoves({ pads, links }: LinkGroup, work: Work): Move[] {
  const { now, wanted, tolerances } = work;
  const reseated = pads.filter((id) => now.seats.get(id)! > wanted.seats.get(id)! + tolerances.seat);
  const resized = heightOrder(pads, links).filter((id) => {
    const height = now.heights.get(id);
    return height !== undefined && Math.abs(height - wanted.heights.get(id)!) > tolerances.height;
  });
  const isOut = (l: Link): boolean => {
    const left = now.links.get(linkId(l))!;
    return left === null || Math.abs(left - wanted.links.get(linkId(l))!) > tolerances.link;
  };
  const touches = (some: readonly string[], { driver, driven }: Link): boolean =>
    some.includes(driver) || some.includes(driven);
  const waits = (l: Link): boolean => now.waiting.has(linkId(l));
  const before = links.filter((l) => touches(reseated, l) || (isOut(l) && !waits(l)));
  const after = links.filter((l) => touches(resized, l) || (waits(l) && !touches(reseated, l)));
  const drives = (pad: string): boolean => links.some((l) => l.driven === pad);
  return [
    ...seatsAndLinks(reseated, before).map((m) =>
      typeof m === 'string'
        ? seatMove(m, drives(m), work)
        : linkMove(m, touches(reseated, m) ? null : now.links.get(linkId(m))!, null, work),
    ),
    ...resized.map((pad) => heightMove(pad, work)),
    ...after.map((l) => linkMove(l, null, movedHeights(l, resized, work), work)),
  ];
}

/** Heights at either end of a link that have moved since it was set, or are still to move. */
function movedHeights(link: Link, resized: readonly string[], { now, wanted }: Work): MovedHeight[] {
  const toMove = [link.driver, link.driven]
    .filter((pad) => resized.includes(pad))
    .map((pad) => ({ pad, raised: wanted.heights.get(pad)! > now.heights.get(pad)! }));
  const moved = now.waiting.get(linkId(link)) ?? [];
  return [...moved.filter(({ pad }) => !resized.includes(pad)), ...toMove];
}

function seatMove(pad: string, driven: boolean, { now, wanted, tolerances }: Work): Move {
  return {
    ...{ id: `seat ${pad}`, kind: 'seat', pad, driver: null, again: false, after: [] },
    ...{ from: now.seats.get(pad)!, to: wanted.seats.get(pad)!, tolerance: tolerances.seat },
    test: driven ? 'light all round, its drivers’ arms backed off' : 'light all round, alone',
  };
}

/** @param after null before the heights */
function linkMove(
  link: Link,
  from: number | null,
  after: readonly MovedHeight[] | null,
  { wanted, tolerances }: Work,
): Move {
  return {
    ...{ id: linkId(link), kind: 'link', pad: link.driven, driver: link.driver },
    ...{ again: after !== null, after: after ?? [] },
    ...{ from, to: wanted.links.get(linkId(link))!, tolerance: tolerances.link },
    test: 'papers under both',
  };
}

function heightMove(pad: string, { now, wanted, tolerances }: Work): Move {
  return {
    ...{ id: `height ${pad}`, kind: 'height', pad, driver: null, again: false, after: [] },
    ...{ from: now.heights.get(pad)!, to: wanted.heights.get(pad)!, tolerance: tolerances.height },
    test: 'wedge at the front',
  };
}

/** Seats of pads that nothing drives, then each driven pad's seat just before the first link that meets it. */
function seatsAndLinks(reseated: readonly string[], links: readonly Link[]): (string | Link)[] {
  const isDriven = (pad: string): boolean => links.some((l) => l.driven === pad);
  const list: (string | Link)[] = reseated.filter((pad) => !isDriven(pad));
  for (const link of links) {
    for (const pad of [link.driver, link.driven]) {
      if (reseated.includes(pad) && !list.includes(pad)) list.push(pad);
    }
    list.push(link);
  }
  return list;
}

/** Drivers before what they drive, from the bell up: a driver set lower takes its driven pads with it. */
function heightOrder(pads: readonly string[], links: readonly Link[]): string[] {
  const order: string[] = [];
  const put = (pad: string): void => {
    if (order.includes(pad)) return;
    for (const l of links) if (l.driven === pad) put(l.driver);
    order.push(pad);
  };
  pads.forEach(put);
  return order;
}

/**
 * Openings that were asked for and that links will not allow, with all links shutting both at once: one sentence a
 * pad, by the arm that rules it, down the whole chain.
 */
function heldDown(horn: Horn, asSet: Setup, tolerances: RegulationTolerances): string[] {
  const nameOf = (id: string): string => holeOf(horn, id).name;
  const standing = standingFronts(horn, asSet, []);
  return [...new Set(horn.keywork.links.map((link) => link.driven))].flatMap((pad) => {
    if (holeOf(horn, pad).hinge === null) return [];
    const { ownFront, standsFront, ruledBy } = standing(pad);
    if (ruledBy === null || standsFront >= ownFront - tolerances.height) return [];
    const driverFront = standing(ruledBy).standsFront;
    return [
      `${nameOf(pad)} is to open ${mm(ownFront)} mm, but ${nameOf(ruledBy)} at ${mm(driverFront)} mm allows ${mm(standsFront)} mm.`,
    ];
  });
}

function mm(metres: number): string {
  return (metres * 1000).toFixed(1);
}
