import type { Keywork, Link } from './linkage.ts';

/** A pad's name and its place in the order of the bench, numbered from the bell up. */
export interface NumberedPad {
  readonly id: string;
  readonly number: number;
}

/** Pads that links join, in the order in which they are regulated. */
export interface LinkGroup {
  /** from the bell up */
  readonly pads: readonly string[];
  /** as {@link linkGroups} orders them */
  readonly links: readonly Link[];
}

/**
 * Pads joined by links, the greatest group first, then from the bell up; a pad without links is a group of its
 * own.
 *
 * Within a group links come in an order that no later link undoes: all links onto a pad before any link from
 * it, so that a pad which others are set to is finished first. Among pads that are ready the one nearest the
 * bell goes first; onto one pad the nearest driver goes first; and a pad once finished hands on to the pads it
 * drives before other drivers reach them.
 *
 * @throws RangeError where links run in a circle
 *
 * **Source:** derived from the link graph; on the usual links it gives the order of common practice.
 */
export function linkGroups(keywork: Keywork, pads: readonly NumberedPad[]): LinkGroup[] {
  const order = [...pads].sort((a, b) => a.number - b.number).map((p) => p.id);
  const left = new Set(order);
  const groups: LinkGroup[] = [];
  for (const first of order) {
    if (!left.has(first)) continue;
    const joined = joinedWith(keywork, first);
    joined.forEach((id) => left.delete(id));
    const members = order.filter((id) => joined.has(id));
    groups.push({
      pads: members,
      links: orderedLinks(
        keywork.links.filter((l) => joined.has(l.driver)),
        members,
      ),
    });
  }
  // Sorting is stable: groups of one size stay from the bell up.
  return groups.sort((a, b) => b.links.length - a.links.length);
}

function joinedWith(keywork: Keywork, first: string): Set<string> {
  const joined = new Set<string>();
  const queue = [first];
  while (queue.length > 0) {
    const pad = queue.pop()!;
    if (joined.has(pad)) continue;
    joined.add(pad);
    for (const { driver, driven } of keywork.links) {
      if (driver === pad) queue.push(driven);
      if (driven === pad) queue.push(driver);
    }
  }
  return joined;
}

/** @param members from the bell up */
function orderedLinks(links: readonly Link[], members: readonly string[]): Link[] {
  const rank = new Map(members.map((id, i) => [id, i]));
  const distance = ({ driver, driven }: Link): number => Math.abs(rank.get(driver)! - rank.get(driven)!);
  const done: Link[] = [];
  const finished = (pad: string): boolean => links.every((l) => l.driven !== pad || done.includes(l));
  const put = (some: readonly Link[]): void => {
    done.push(...some.filter((l) => !done.includes(l)).sort((a, b) => distance(a) - distance(b)));
  };
  const driven = members.filter((id) => links.some((l) => l.driven === id));
  while (done.length < links.length) {
    const ready = driven.find(
      (id) => !finished(id) && links.every((l) => l.driven !== id || finished(l.driver)),
    );
    if (ready === undefined) {
      const rest = links.filter((l) => !done.includes(l)).map((l) => `${l.driver} to ${l.driven}`);
      throw new RangeError(`invalid links: ${rest.join(', ')}; expected no link that drives its own driver`);
    }
    put(links.filter((l) => l.driven === ready));
    put(links.filter((l) => l.driver === ready));
  }
  return done;
}
