import { holeOf, type Horn, type Setup } from '../horn.ts';
import { ownPose } from '../holes/pad-over-hole.ts';
import type { LinkScrews } from '../keywork/closing.ts';
import { screwLeft } from '../keywork/closing.ts';
import { linkGroups, type LinkGroup } from '../keywork/link-groups.ts';
import type { Link } from '../keywork/linkage.ts';

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

/** A horn on the bench: what was read, or what is wanted. Metres. */
export interface BenchState {
  readonly setup: Setup;
  readonly screws: LinkScrews;
  /** by pad: the gap left anywhere round the seat; a pad left out seals */
  readonly seats: ReadonlyMap<string, number>;
}

/** Tolerances, m. */
export interface RegulationTolerances {
  /** of a seat: a fine feeler */
  readonly seat: number;
  /** of a link: one paper */
  readonly link: number;
  /** of an opening: what a wedge repeats to */
  readonly height: number;
}

/** **Source:** common practice, no source. */
export const USUAL_TOLERANCES: RegulationTolerances = Object.freeze({
  seat: 0.013e-3,
  link: 0.025e-3,
  height: 0.2e-3,
});

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
}

/** A move that was made, and the value read after it, m. */
export interface DoneMove {
  readonly id: string;
  readonly value: number;
}

/** A done move and whether it came within its tolerance. */
export interface CheckedMove extends DoneMove {
  readonly within: boolean;
}

/** The list: what is done, what is next. */
export interface RegulationPlan {
  readonly done: readonly CheckedMove[];
  readonly moves: readonly Move[];
  /** openings that were asked for and that their links will not allow */
  readonly warnings: readonly string[];
}

/** What is known of the horn as the work goes on. */
interface Known {
  readonly seats: Map<string, number>;
  readonly heights: Map<string, number>;
  /** null where a pad of the link was reseated or its height moved since */
  readonly links: Map<string, number | null>;
  /** links that wait for the heights to be done, because a height has moved */
  readonly waiting: Set<string>;
}

/** What a plan is made from as the work stands. */
interface Work {
  readonly now: Known;
  readonly wanted: Known;
  readonly tolerances: RegulationTolerances;
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
  const checked = done.map((move) => ({ ...move, within: make(horn, work, move) }));
  const groups = benchGroups(horn);
  return {
    done: checked,
    moves: groups.flatMap((group) => groupMoves(group, work)),
    warnings: heldDown(horn, wanted, tolerances),
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

const linkId = ({ driver, driven }: Pick<Link, 'driver' | 'driven'>): string => `link ${driver} > ${driven}`;

function knownFrom(horn: Horn, { setup, screws, seats }: BenchState): Known {
  const keyed = horn.holes.filter((hole) => hole.hinge !== null);
  return {
    seats: new Map(horn.holes.map(({ id }) => [id, seats.get(id) ?? 0])),
    heights: new Map(keyed.map(({ id }) => [id, ownPose(horn, setup, id).front])),
    links: new Map(horn.keywork.links.map((link) => [linkId(link), screwLeft(link, screws)])),
    waiting: new Set(),
  };
}

/** Enters a done move into what is known; whether it came within its tolerance. */
function make(horn: Horn, { now, wanted, tolerances }: Work, { id, value }: DoneMove): boolean {
  const [kind, ...words] = id.split(' ');
  const name = words.join(' ');
  const ofPad = horn.keywork.links.filter((l) => l.driver === name || l.driven === name).map(linkId);
  if (kind === 'seat' && now.seats.has(name)) {
    now.seats.set(name, value);
    for (const link of ofPad) {
      now.links.set(link, null);
      now.waiting.delete(link);
    }
    return value <= wanted.seats.get(name)! + tolerances.seat;
  }
  if (kind === 'height' && now.heights.has(name)) {
    now.heights.set(name, value);
    for (const link of ofPad) {
      now.links.set(link, null);
      now.waiting.add(link);
    }
    return Math.abs(value - wanted.heights.get(name)!) <= tolerances.height;
  }
  if (now.links.has(id)) {
    now.links.set(id, value);
    now.waiting.delete(id);
    return Math.abs(value - wanted.links.get(id)!) <= tolerances.link;
  }
  throw new RangeError(`invalid move: "${id}"; expected a seat, link or height of this horn`);
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
        : linkMove(m, touches(reseated, m) ? null : now.links.get(linkId(m))!, false, work),
    ),
    ...resized.map((pad) => heightMove(pad, work)),
    ...after.map((l) => linkMove(l, null, true, work)),
  ];
}

function seatMove(pad: string, driven: boolean, { now, wanted, tolerances }: Work): Move {
  return {
    ...{ id: `seat ${pad}`, kind: 'seat', pad, driver: null, again: false },
    ...{ from: now.seats.get(pad)!, to: wanted.seats.get(pad)!, tolerance: tolerances.seat },
    test: driven ? 'light all round, its drivers’ arms backed off' : 'light all round, alone',
  };
}

function linkMove(link: Link, from: number | null, again: boolean, { wanted, tolerances }: Work): Move {
  return {
    ...{ id: linkId(link), kind: 'link', pad: link.driven, driver: link.driver, again },
    ...{ from, to: wanted.links.get(linkId(link))!, tolerance: tolerances.link },
    test: 'papers under both',
  };
}

function heightMove(pad: string, { now, wanted, tolerances }: Work): Move {
  return {
    ...{ id: `height ${pad}`, kind: 'height', pad, driver: null, again: false },
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
function heldDown(horn: Horn, wanted: Known, tolerances: RegulationTolerances): string[] {
  const nameOf = (id: string): string => holeOf(horn, id).name;
  const standsOf = (pad: string): number | undefined => {
    const asked = wanted.heights.get(pad);
    const ruler = rulerOf(pad);
    return asked === undefined || ruler === null ? asked : Math.min(asked, ruler.allows);
  };
  const rulerOf = (pad: string): { driver: string; front: number; allows: number } | null =>
    horn.keywork.links.reduce<ReturnType<typeof rulerOf>>((tightest, { driver, driven, ratio }) => {
      if (driven !== pad || ratio === undefined) return tightest;
      const front = standsOf(driver);
      if (front === undefined || (tightest !== null && tightest.allows <= ratio * front)) return tightest;
      return { driver, front, allows: ratio * front };
    }, null);
  return [...new Set(horn.keywork.links.map((link) => link.driven))].flatMap((pad) => {
    const asked = wanted.heights.get(pad);
    const ruler = rulerOf(pad);
    if (asked === undefined || ruler === null || ruler.allows >= asked - tolerances.height) return [];
    return [
      `${nameOf(pad)} is to open ${mm(asked)} mm, but ${nameOf(ruler.driver)} at ${mm(ruler.front)} mm allows ${mm(ruler.allows)} mm.`,
    ];
  });
}

function mm(metres: number): string {
  return (metres * 1000).toFixed(1);
}
