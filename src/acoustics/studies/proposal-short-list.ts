import {
  playLook,
  worthOf,
  type Look,
  type PlayedLook,
  type ProposalNote,
  type Worth,
} from './proposal-objective.ts';
import type { ProposalProblem } from './proposal-problem.ts';
import { foresee, solveStandIn, standIn, withinLimits, type Asked } from './proposal-solve.ts';

/**
 * Few keys for most of the gain: the key that alone brings most, then the one that with it brings most, and so
 * on, each time solving again for all that are chosen with the rest as found. Chosen by what a quadratic program
 * foresees, solved on a stand-in for the horn whose slopes are the mean of those as found and as proposed; what
 * each choice brings is then played.
 *
 * The gain leaves out the pull towards as found: that is a preference, not a merit.
 */
export interface ShortListed {
  readonly id: string;
  /** share of the whole proposal's gain that the list brings up to and with this key, 0…1 */
  readonly share: number;
  /** m at the front, by pad id: where this key and those before it stand when only they move */
  readonly fronts: ReadonlyMap<string, number>;
}

/** The list, and where its stops stand together. */
export interface ShortList {
  readonly keys: readonly ShortListed[];
  /** m at the front, by key of the problem: as found, but for those on the list */
  readonly stops: Float64Array;
}

/** What the list is made from. */
export interface ShortListOf {
  readonly problem: ProposalProblem;
  readonly notes: readonly ProposalNote[];
  /** m at the front, by key */
  readonly enough: Float64Array;
  readonly found: PlayedLook;
  readonly foundWorth: Worth;
  readonly look: PlayedLook;
  readonly worth: Worth;
  /** pads it is chosen among; undefined for all */
  readonly among: ReadonlySet<string> | undefined;
}

/** m: a stop that moves less has not moved. */
const MOVED = 1e-5;

/** @param enoughShare the share of the gain at which the list ends, 0…1 */
export function shortListOf(of: ShortListOf, enoughShare: number): ShortList {
  const { problem, notes, found, foundWorth, worth, look, among } = of;
  const { keys } = problem;
  const whole = merit(foundWorth) - merit(worth);
  const candidates = keys
    .flatMap(({ id, found: was }, k) =>
      Math.abs(look.stops[k] - was) > MOVED && among?.has(id) !== false ? [k] : [],
    )
    .sort((a, b) => keys[a].hole.number - keys[b].hole.number);
  const at = standIn(problem, found, meanSlopes(of));
  const chosen: number[] = [];
  const listed: ShortListed[] = [];
  let { stops, near } = found;
  let share = 0;
  while (whole > 0 && share < enoughShare && chosen.length < candidates.length) {
    const best = bestNext(of, at(stops), chosen, candidates);
    if (best === null) break;
    const asked = askedFor(of, [...chosen, best]);
    const solved = solveStandIn(asked, startOf(asked, at, stops), at);
    const played = playLook(problem, notes, solved.look.stops, near, false);
    if (played === null) break;
    chosen.push(best);
    ({ stops, near } = played);
    share = (merit(foundWorth) - merit(worthOf(problem, notes, played, of.enough))) / whole;
    listed.push({ id: keys[best].id, share, fronts: new Map(chosen.map((k) => [keys[k].id, stops[k]])) });
  }
  return { keys: listed, stops };
}

/** The candidate that is foreseen to bring most with those chosen; null where none brings anything. */
function bestNext(
  of: ShortListOf,
  look: Look,
  chosen: readonly number[],
  candidates: readonly number[],
): number | null {
  const { problem, notes, enough } = of;
  const worth = worthOf(problem, notes, look, enough);
  let best: number | null = null;
  let most = 0;
  for (const k of candidates) {
    if (chosen.includes(k)) continue;
    const seen = foresee(askedFor(of, [...chosen, k]), look, worth);
    if (seen === null || Math.abs(seen.by[k]) < problem.keys[k].plusMinus || seen.saves <= most) continue;
    most = seen.saves;
    best = k;
  }
  return best;
}

function askedFor({ problem, notes, enough }: ShortListOf, free: readonly number[]): Asked {
  return { problem, notes, enough, free: problem.keys.map((_, k) => free.includes(k)) };
}

function startOf(asked: Asked, at: (stops: Float64Array) => Look, stops: Float64Array): Look {
  return at(withinLimits(asked, stops));
}

/** Cents per m at the opening as found, their mean per end length as found and as proposed. */
function meanSlopes({ problem, found, look }: ShortListOf): Float64Array[] {
  const slopeAt = ({ standing }: Look): Float64Array =>
    Float64Array.from(problem.keys, ({ curve }, k) => curve.at(standing.fronts[k]).lengthSlope);
  const [was, is] = [slopeAt(found), slopeAt(look)];
  return found.centsSlopes.map((row, n) =>
    row.map((slope, k) => (is[k] === 0 ? slope : 0.5 * (slope + (look.centsSlopes[n][k] * was[k]) / is[k]))),
  );
}

const merit = ({ total, terms }: Worth): number => total - terms.stay;
