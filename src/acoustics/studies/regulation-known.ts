import { ownPose } from '../holes/pad-over-hole.ts';
import type { Horn, Setup } from '../horn.ts';
import { screwLeft, type LinkScrews } from '../keywork/closing.ts';
import type { Link } from '../keywork/linkage.ts';

// What is known of a horn on the bench as the work on it goes on (regulation-order.ts).

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

/** A move that was made, and the value read after it, m. */
export interface DoneMove {
  readonly id: string;
  readonly value: number;
}

/** A pad whose height moves. */
export interface MovedHeight {
  readonly pad: string;
  readonly raised: boolean;
}

/** What is known of the horn as the work goes on. */
export interface Known {
  readonly seats: Map<string, number>;
  readonly heights: Map<string, number>;
  /** links that somebody read or set */
  readonly tested: Set<string>;
  /** null where a pad of the link was reseated or its height moved since */
  readonly links: Map<string, number | null>;
  /** links that wait for the heights to be done, by the heights that have moved */
  readonly waiting: Map<string, readonly MovedHeight[]>;
}

/** What a plan is made from as the work stands. */
export interface Work {
  readonly now: Known;
  readonly wanted: Known;
  readonly tolerances: RegulationTolerances;
}

/** A link’s move. */
export const linkId = ({ driver, driven }: Pick<Link, 'driver' | 'driven'>): string =>
  `link ${driver} > ${driven}`;

/** A horn as read, or as wanted. */
export function knownFrom(horn: Horn, { setup, screws, seats }: BenchState): Known {
  const keyed = horn.holes.filter((hole) => hole.hinge !== null);
  return {
    seats: new Map(horn.holes.map(({ id }) => [id, seats.get(id) ?? 0])),
    heights: new Map(keyed.map(({ id }) => [id, ownPose(horn, setup, id).front])),
    tested: new Set(screws.map(linkId)),
    links: new Map(horn.keywork.links.map((link) => [linkId(link), screwLeft(link, screws)])),
    waiting: new Map(),
  };
}

/** Enters a done move into what is known; whether it came within its tolerance. */
export function enter(horn: Horn, { now, wanted, tolerances }: Work, { id, value }: DoneMove): boolean {
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
    const moved = { pad: name, raised: value > now.heights.get(name)! };
    now.heights.set(name, value);
    for (const link of ofPad) {
      now.links.set(link, null);
      now.waiting.set(link, [...(now.waiting.get(link) ?? []).filter(({ pad }) => pad !== name), moved]);
    }
    return Math.abs(value - wanted.heights.get(name)!) <= tolerances.height;
  }
  if (now.links.has(id)) {
    now.links.set(id, value);
    now.tested.add(id);
    now.waiting.delete(id);
    return Math.abs(value - wanted.links.get(id)!) <= tolerances.link;
  }
  throw new RangeError(`invalid move: "${id}"; expected a seat, link or height of this horn`);
}
