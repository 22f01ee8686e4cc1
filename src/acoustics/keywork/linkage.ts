/**
 * From fingers to pads: touches move pads, pads move other pads through links, springs do the rest.
 *
 *   touch ──closes/opens──▶ pad ──closes──▶ pad          (arms that press)
 *                           pad ──holds shut──▶ pad      (arms that only stop a spring from opening)
 *
 * Links differ between makers, so they are data of the horn and nothing here knows one by name.
 */

/** What one finger touch does to pads. Ids are those of the horn's holes. */
export interface Touch {
  readonly id: string;
  readonly closes: readonly string[];
  readonly opens: readonly TouchOpening[];
}

/** A pad a touch opens, on what condition, and how far if not fully. */
export interface TouchOpening {
  readonly pad: string;
  /** only while this other touch is down */
  readonly whileDown?: string;
  /** only while this other touch is up */
  readonly whileUp?: string;
  /** m at the front, where the touch opens the pad only a little */
  readonly front?: number;
}

/** An arm from one pad to another. */
export interface Link {
  readonly driver: string;
  readonly driven: string;
  readonly effect: 'closes' | 'holds shut';
  /** front travel of the driven pad per front travel of the driver, where known */
  readonly ratio?: number;
}

/** What the resting position of a pad is without a finger. */
export type Rest = 'open' | 'closed';

/** The part of a horn that decides which pads stand open. */
export interface Keywork {
  readonly rests: ReadonlyMap<string, Rest>;
  readonly touches: readonly Touch[];
  readonly links: readonly Link[];
}

/** State of one pad under a fingering; `front` is set where a touch opens it only so far. */
export type PadState = { readonly open: false } | { readonly open: true; readonly front?: number };

/**
 * State of every pad under a set of touches, through the links.
 *
 * A pad at rest open is shut by a touch, or by a link from a pad that is itself being pressed shut. A pad at
 * rest closed opens by its touch unless a link from a pressed pad holds it shut.
 *
 * @param down ids of the touches held down
 * @returns one entry per pad of the keywork
 * @throws RangeError for a touch the keywork does not have
 */
export function padStates(keywork: Keywork, down: ReadonlySet<string>): Map<string, PadState> {
  const pressed = pressedPads(keywork, down);
  const opened = openedPads(keywork, down);
  const states = new Map<string, PadState>();
  for (const [pad, rest] of keywork.rests) {
    if (rest === 'open') {
      states.set(pad, { open: !pressed.has(pad) });
    } else {
      const held = keywork.links.some(
        (link) => link.driven === pad && link.effect === 'holds shut' && pressed.has(link.driver),
      );
      const by = opened.get(pad);
      states.set(
        pad,
        by && !held
          ? by.front === undefined
            ? { open: true }
            : { open: true, front: by.front }
          : { open: false },
      );
    }
  }
  return states;
}

/** Pads pressed shut by fingers, directly or through closing links. @param down ids of the touches held down */
export function pressedPads(keywork: Keywork, down: ReadonlySet<string>): Set<string> {
  return pressedFrom(keywork, fingeredPads(keywork, down));
}

/** Pads that fingers press directly. @param down ids of the touches held down */
export function fingeredPads(keywork: Keywork, down: ReadonlySet<string>): string[] {
  return [...down].flatMap((id) => touchOf(keywork, id).closes);
}

/** Pads that go down with these: themselves and all that closing links drive from them. */
export function pressedFrom(keywork: Keywork, pads: readonly string[]): Set<string> {
  const pressed = new Set<string>();
  const queue = [...pads];
  while (queue.length > 0) {
    const pad = queue.pop()!;
    if (pressed.has(pad)) continue;
    pressed.add(pad);
    for (const link of keywork.links) {
      if (link.driver === pad && link.effect === 'closes') queue.push(link.driven);
    }
  }
  return pressed;
}

/** Pads that a touch would open; where several do, the one that opens fully wins. */
export function openedPads(keywork: Keywork, down: ReadonlySet<string>): Map<string, TouchOpening> {
  const opened = new Map<string, TouchOpening>();
  for (const id of down) {
    for (const opening of touchOf(keywork, id).opens) {
      if (opening.whileDown !== undefined && !down.has(opening.whileDown)) continue;
      if (opening.whileUp !== undefined && down.has(opening.whileUp)) continue;
      const before = opened.get(opening.pad);
      if (before === undefined || before.front !== undefined) opened.set(opening.pad, opening);
    }
  }
  return opened;
}

function touchOf(keywork: Keywork, id: string): Touch {
  const touch = keywork.touches.find((t) => t.id === id);
  if (touch === undefined) {
    const known = keywork.touches.map((t) => t.id).join(', ');
    throw new RangeError(`invalid touch: "${id}"; expected one of ${known}`);
  }
  return touch;
}

/** How far links let a driven pad open, given how far its drivers stand open. */
export interface LinkLimit {
  /** m at the driven pad's front */
  readonly front: number;
  /** the driver that rules */
  readonly driver: string;
}

/**
 * The tightest limit that links put on a pad: an arm that shuts driver and driven together lets the driven
 * pad rise no further than ratio × the driver's front opening.
 *
 * @param frontOf front opening of a driver at rest, m
 * @returns null where no link with a known ratio drives the pad
 *
 * **Source:** plain lever geometry.
 */
export function linkLimit(
  keywork: Keywork,
  pad: string,
  frontOf: (driver: string) => number,
): LinkLimit | null {
  let tightest: LinkLimit | null = null;
  for (const link of keywork.links) {
    if (link.driven !== pad || link.ratio === undefined) continue;
    const front = link.ratio * frontOf(link.driver);
    if (tightest === null || front < tightest.front) tightest = { front, driver: link.driver };
  }
  return tightest;
}
