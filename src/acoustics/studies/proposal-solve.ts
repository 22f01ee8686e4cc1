import { leastWithin, type LinearLimit } from '../numerics/quadratic-program.ts';
import {
  playLook,
  worthOf,
  type Look,
  type PlayedLook,
  type ProposalNote,
  type Worth,
} from './proposal-objective.ts';
import { standingFor, type ProposalProblem } from './proposal-problem.ts';

/**
 * Finds the least of the objective within stops, arms and reach.
 *
 * Playing the whole horn is what costs. So each round plays it once, exactly with slopes, and then minimises a
 * stand-in that agrees with it there in value and slope: every note's cents in proportion to the end lengths of
 * the holes, which bend with the opening as the pad model has it. The stand-in is minimised by successive
 * quadratic programs with the second slopes of Gauss and Newton. Where the rounds stand still, the stand-in's
 * slopes are the horn's own, and so are its conditions for a least value.
 *
 * **Source:** ours for the stand-in; Nocedal & Wright 2006 for successive quadratic programming and its line
 * search.
 */

/** What holds a solution where it is. Per step of a stop; ≥ 0. */
export interface Holds {
  /** by key: its lowest and its highest opening */
  readonly lowest: Float64Array;
  readonly highest: Float64Array;
  /** by arm */
  readonly arms: Float64Array;
}

/** A solution for the stops that were free. */
export interface Solved<L extends Look> {
  readonly look: L;
  readonly worth: Worth;
  readonly holds: Holds;
}

/** A question with what is fixed of it for a while. */
export interface Asked {
  readonly problem: ProposalProblem;
  readonly notes: readonly ProposalNote[];
  /** m at the front, by key */
  readonly enough: Float64Array;
  /** by key: whether its stop may move */
  readonly free: readonly boolean[];
}

const ROUNDS = 12;
/** m: stops that move less between rounds stand still. */
const STILL = 1e-6;
/** How far short of the best a quadratic program may be before it is worked again, of a step. */
const STEP_STILL = 1e-6;
const PROGRAMS = 40;

/**
 * Solves with the horn itself.
 *
 * @param start played with stops that keep every limit ({@link withinLimits})
 */
export function solvePlayed(
  asked: Asked,
  start: PlayedLook,
): Solved<PlayedLook> & { readonly plays: number } {
  let look = start;
  let worth = worthOf(asked.problem, asked.notes, look, asked.enough);
  let holds = noHolds(asked.problem);
  let plays = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const solved = solveStandIn(asked, look, standIn(asked.problem, look));
    holds = solved.holds;
    const target = solved.look.stops;
    if (furthest(target, look.stops) < STILL) break;
    let share = 1;
    for (; share > 1e-3; share /= 2) {
      const stops = look.stops.map((x, k) => x + share * (target[k] - x));
      const next = playLook(asked.problem, asked.notes, stops, look.near);
      plays += 1;
      if (next === null) continue;
      const better = worthOf(asked.problem, asked.notes, next, asked.enough);
      if (better.total > worth.total) continue;
      look = next;
      worth = better;
      break;
    }
    // Not even a thousandth of the way is better: rounding is all that is left.
    if (share <= 1e-3) break;
  }
  return { look, worth, holds, plays };
}

/**
 * A stand-in for the horn near a look: where every stop is, what the notes and pads would be.
 *
 * @param slopes by note and pad, cents per m; default the look's own
 */
export function standIn(
  problem: ProposalProblem,
  look: Look,
  slopes: readonly Float64Array[] = look.centsSlopes,
): (stops: Float64Array) => Look {
  const { keys } = problem;
  const here = keys.map(({ curve }, k) => curve.at(look.standing.fronts[k]));
  const perLength = slopes.map((row) =>
    row.map((slope, k) => (here[k].lengthSlope === 0 ? 0 : slope / here[k].lengthSlope)),
  );
  return (stops) => {
    const standing = standingFor(problem, stops);
    const there = keys.map(({ curve }, k) => curve.at(standing.fronts[k]));
    const cents = Float64Array.from(look.cents);
    const centsSlopes = perLength.map((row, n) => {
      for (let k = 0; k < row.length; k++) cents[n] += row[k] * (there[k].length - here[k].length);
      return row.map((each, k) => each * there[k].lengthSlope);
    });
    const pads = there.map((pad, k) => ({ ...pad, share: look.pads[k].share + pad.share - here[k].share }));
    return { stops, standing, cents, centsSlopes, pads };
  };
}

/** The least of a stand-in. @param start keeps every limit */
export function solveStandIn(asked: Asked, start: Look, at: (stops: Float64Array) => Look): Solved<Look> {
  const { problem, notes, enough } = asked;
  const limits = limitsOf(asked, start.stops);
  let look = at(start.stops);
  let worth = worthOf(problem, notes, look, enough);
  let multipliers: Float64Array = new Float64Array(limits.rows.length);
  for (let program = 0; program < PROGRAMS; program++) {
    const step = towards(asked, look, worth, limits);
    if (step === null) break;
    multipliers = step.multipliers;
    if (Math.max(0, ...step.by.map(Math.abs)) < STEP_STILL * problem.thresholds.step) break;
    const slope = limits.free.reduce(
      (sum, k) => sum + (worth.slope[k] * step.by[k]) / problem.thresholds.step,
      0,
    );
    let share = 1;
    let moved = false;
    for (; share > 1e-6 && !moved; share /= 2) {
      const next = at(look.stops.map((x, k) => x + share * step.by[k]));
      const better = worthOf(problem, notes, next, enough);
      if (better.total > worth.total + 1e-4 * share * slope) continue;
      look = next;
      worth = better;
      moved = true;
    }
    if (!moved) break;
  }
  return { look, worth, holds: limits.holdsFrom(multipliers) };
}

/**
 * What one quadratic program foresees from a look: how far every stop would go, m, and what that would save.
 *
 * @param worth weighed for all stops: one for many questions of what is free
 */
export function foresee(
  asked: Asked,
  look: Look,
  worth: Worth,
): { readonly by: Float64Array; readonly saves: number } | null {
  const step = towards(asked, look, worth, limitsOf(asked, look.stops));
  return step && { by: step.by, saves: step.saves };
}

/** One quadratic program: how far every stop goes, m. */
function towards(
  { problem }: Asked,
  { stops, standing }: Look,
  { slope, slopes, curvature }: Worth,
  limits: Limits,
): { readonly by: Float64Array; readonly multipliers: Float64Array; readonly saves: number } | null {
  const { free, rows } = limits;
  const { step } = problem.thresholds;
  const bends = free.map((k) => {
    const { lengthSlope, lengthBend } = problem.keys[k].curve.at(standing.fronts[k]);
    return standing.ruler[k] === k ? slopes.pitch[k] * step * (lengthBend / lengthSlope) : 0;
  });
  const gradient = Float64Array.from(free, (i) => slope[i]);
  const within = rows.map(({ terms, least }): LinearLimit => {
    const now = terms.reduce((sum, [v, factor]) => sum + factor * stops[free[v]], 0);
    // A limit that rounding has passed stays where it is.
    return { terms, least: Math.min(0, (least - now) / step) };
  });
  // Bends that open downwards may leave no valley; then they are left out, and the program is the safe one.
  for (const downwards of [0.5, 0]) {
    const hessian = free.map((i) => Float64Array.from(free, (j) => curvature[i][j]));
    // A trace keeps stops that nothing is asked of where they are.
    bends.forEach((bend, v) => (hessian[v][v] += Math.max(bend, -downwards * hessian[v][v]) + TRACE));
    const outcome = leastWithin(hessian, gradient, within);
    if (!outcome.found) continue;
    const by = new Float64Array(stops.length);
    free.forEach((k, v) => (by[k] = outcome.x[v] * step));
    const saves = free.reduce((sum, _, i) => {
      const bent = free.reduce((row, __, j) => row + hessian[i][j] * outcome.x[j], 0);
      return sum - outcome.x[i] * (gradient[i] + 0.5 * bent);
    }, 0);
    return { by, multipliers: outcome.multipliers, saves };
  }
  return null;
}

/** Of the second slopes, per step and step: far below anything asked for. */
const TRACE = 1e-9;

/** Limits in the stops that are free, m, and how to read what they hold. */
interface Limits {
  readonly free: readonly number[];
  readonly rows: readonly LinearLimit[];
  readonly holdsFrom: (multipliers: Float64Array) => Holds;
}

function limitsOf({ problem, free }: Asked, start: Float64Array): Limits {
  const { keys, arms } = problem;
  const places = keys.flatMap((_, k) => (free[k] ? [k] : []));
  const variable = new Map(places.map((k, v) => [k, v]));
  const rows: LinearLimit[] = [];
  for (const k of places) {
    const v = variable.get(k)!;
    rows.push({ terms: [[v, 1]], least: Math.min(keys[k].lowest, start[k]) });
    rows.push({ terms: [[v, -1]], least: -keys[k].highest });
  }
  const ofArm: number[] = [];
  arms.forEach(({ driver, driven, ratio }, a) => {
    const up = variable.get(driver);
    const down = variable.get(driven);
    if (up === undefined && down === undefined) return;
    ofArm.push(a);
    if (up === undefined) rows.push({ terms: [[down!, -1]], least: -ratio * start[driver] });
    // Under a driven stop that stays, the driver goes no lower than that, or than it stood.
    else if (down === undefined)
      rows.push({ terms: [[up, ratio]], least: Math.min(start[driven], ratio * start[driver]) });
    else
      rows.push({
        terms: [
          [up, ratio],
          [down, -1],
        ],
        least: 0,
      });
  });
  return {
    free: places,
    rows,
    holdsFrom: (multipliers) => {
      const holds = noHolds(problem);
      places.forEach((k, v) => {
        holds.lowest[k] = multipliers[2 * v];
        holds.highest[k] = multipliers[2 * v + 1];
      });
      ofArm.forEach((a, i) => (holds.arms[a] = multipliers[2 * places.length + i]));
      return holds;
    },
  };
}

function noHolds({ keys, arms }: ProposalProblem): Holds {
  return {
    lowest: new Float64Array(keys.length),
    highest: new Float64Array(keys.length),
    arms: new Float64Array(arms.length),
  };
}

/** Stops as near to these as keeps every limit of those that are free; the others as they are. */
export function withinLimits(
  { problem, free }: Pick<Asked, 'problem' | 'free'>,
  stops: Float64Array,
): Float64Array {
  const kept = stops.map((x, k) =>
    free[k] ? Math.min(Math.max(x, problem.keys[k].lowest), problem.keys[k].highest) : x,
  );
  for (const key of problem.order) {
    if (!free[key]) continue;
    for (const { driver, driven, ratio } of problem.arms) {
      if (driven === key) kept[key] = Math.min(kept[key], ratio * kept[driver]);
    }
  }
  return kept;
}

const furthest = (a: Float64Array, b: Float64Array): number =>
  a.reduce((most, x, k) => Math.max(most, Math.abs(x - b[k])), 0);
