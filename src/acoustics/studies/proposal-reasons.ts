import type { Enough } from './proposal-enough.ts';
import { pitchRows, type PlayedLook, type ProposalNote, type Worth } from './proposal-objective.ts';
import { PROPOSAL_TERMS, type ProposalProblem, type ProposalTerm } from './proposal-problem.ts';
import type { Holds } from './proposal-solve.ts';

/**
 * Why each stop is where it is: what drove it there, and what holds it from going on.
 *
 * What a term gains by one stop's move is minus the mean of its slopes as found and as proposed, times the move:
 * exact for a parabola. An arm gains as its multiplier says. The greatest gain drove the move. What is held is
 * read from the multipliers: a limit that would not be missed has none.
 */

/** What moved a stop, or left it. */
export type ProposalDrive =
  | { readonly by: 'locked' }
  | { readonly by: 'stays'; readonly within: 'its reading' | 'what is wanted' }
  /** short of enough, and an arm lets it no higher */
  | { readonly by: 'stays'; readonly within: 'an arm'; readonly with: string }
  | { readonly by: 'vent' | 'height' | 'evenness' }
  | { readonly by: 'pitch'; readonly fingering: string }
  /** an arm that its pad drives, or that drives it */
  | { readonly by: 'link'; readonly with: string; readonly drives: boolean }
  | { readonly by: 'reach' };

/** What keeps a stop from going on. */
export type ProposalHold =
  | { readonly by: 'link'; readonly with: string; readonly drives: boolean }
  | { readonly by: 'reach' }
  | { readonly by: 'lowest' };

/** One stop of the proposal. Metres at the front. */
export interface ProposedKey {
  readonly id: string;
  readonly found: number;
  readonly proposed: number;
  readonly highest: number;
  readonly enough: Enough;
  readonly drive: ProposalDrive;
  /** null where nothing does: all that is wanted is in balance */
  readonly hold: ProposalHold | null;
  /** what each term gains by the move, in the objective's unit; negative, loses */
  readonly gains: Readonly<Record<ProposalTerm, number>>;
}

/** What reasons are read from. */
export interface ReasonsOf {
  readonly problem: ProposalProblem;
  readonly notes: readonly ProposalNote[];
  readonly enough: readonly Enough[];
  readonly found: PlayedLook;
  readonly foundWorth: Worth;
  readonly look: PlayedLook;
  readonly worth: Worth;
  readonly holds: Holds;
  readonly kept: readonly boolean[];
}

/** A multiplier of less, per step, holds nothing; m of a move that is none. */
const HOLDS = 1e-4;
const MOVED = 1e-5;

/** Every stop with its reasons, in the order of the keys. */
export function reasonsOf(solved: ReasonsOf): ProposedKey[] {
  return solved.problem.keys.map(({ id, found, highest }, k) => ({
    id,
    found,
    proposed: solved.look.stops[k],
    highest,
    enough: solved.enough[k],
    drive: driveOf(solved, k),
    hold: holdOf(solved, k),
    gains: gainsOf(solved, k),
  }));
}

function movedSteps({ problem, look }: ReasonsOf, k: number): number {
  return (look.stops[k] - problem.keys[k].found) / problem.thresholds.step;
}

function gainsOf(solved: ReasonsOf, k: number): Record<ProposalTerm, number> {
  const { foundWorth, worth } = solved;
  const by = movedSteps(solved, k);
  const gain = (term: ProposalTerm): number =>
    by === 0 ? 0 : -0.5 * (foundWorth.slopes[term][k] + worth.slopes[term][k]) * by;
  return {
    pitch: gain('pitch'),
    venting: gain('venting'),
    height: gain('height'),
    evenness: gain('evenness'),
    stay: gain('stay'),
  };
}

function driveOf(solved: ReasonsOf, k: number): ProposalDrive {
  const { problem, found, kept, look } = solved;
  const key = problem.keys[k];
  if (key.locked) return { by: 'locked' };
  const still = kept[k] || Math.abs(look.stops[k] - key.found) < MOVED;
  const over = still ? armOver(solved, k) : null;
  if (over !== null) return { by: 'stays', within: 'an arm', with: over };
  if (kept[k]) return { by: 'stays', within: 'its reading' };
  if (Math.abs(look.stops[k] - key.found) < MOVED) return { by: 'stays', within: 'what is wanted' };
  if (key.found > key.highest) return { by: 'reach' };
  // Its stop stood above what an arm lets it: to come down to the arm moves no pad.
  const ruler = problem.arms.find(
    ({ driver, driven, ratio }) =>
      driven === k && ratio * found.standing.fronts[driver] < key.found - MOVED && look.stops[k] < key.found,
  );
  if (ruler !== undefined) return { by: 'link', with: problem.keys[ruler.driver].id, drives: false };
  const gains = gainsOf(solved, k);
  const arm = armGain(solved, k);
  const term = PROPOSAL_TERMS.reduce((most, each) => (gains[each] > gains[most] ? each : most));
  if (arm !== null && arm.gain > gains[term]) return { by: 'link', with: arm.with, drives: arm.drives };
  if (term === 'venting') return { by: 'vent' };
  if (term === 'pitch') return { by: 'pitch', fingering: noteBehind(solved, k) };
  return term === 'stay' ? { by: 'stays', within: 'what is wanted' } : { by: term };
}

/** The driver whose arm leaves a pad that is short of enough no room to rise by more than its reading can tell. */
function armOver({ problem, look, enough }: ReasonsOf, k: number): string | null {
  const { found, plusMinus } = problem.keys[k];
  if (!(enough[k].front - found > plusMinus)) return null;
  const arm = problem.arms.find(
    ({ driver, driven, ratio }) =>
      driven === k && ratio * look.standing.fronts[driver] - found < plusMinus + MOVED,
  );
  return arm === undefined ? null : problem.keys[arm.driver].id;
}

/** The arm that gains most by a stop's move: half its multiplier, since as found it holds nothing. */
function armGain(
  solved: ReasonsOf,
  k: number,
): { readonly gain: number; readonly with: string; readonly drives: boolean } | null {
  const { problem, holds } = solved;
  const by = movedSteps(solved, k);
  const gains = problem.arms.flatMap(({ driver, driven, ratio }, a) => {
    const multiplier = holds.arms[a];
    if (driver === k)
      return [{ gain: 0.5 * ratio * multiplier * by, with: problem.keys[driven].id, drives: true }];
    if (driven === k) return [{ gain: -0.5 * multiplier * by, with: problem.keys[driver].id, drives: false }];
    return [];
  });
  return gains.reduce<(typeof gains)[number] | null>(
    (most, each) => (each.gain > (most?.gain ?? 0) ? each : most),
    null,
  );
}

function holdOf({ problem, holds, look }: ReasonsOf, k: number): ProposalHold | null {
  if (holds.highest[k] > HOLDS && look.stops[k] > problem.keys[k].highest - MOVED) return { by: 'reach' };
  if (holds.lowest[k] > HOLDS && look.stops[k] < problem.keys[k].lowest + MOVED) return { by: 'lowest' };
  let most = HOLDS;
  let hold: ProposalHold | null = null;
  problem.arms.forEach(({ driver, driven }, a) => {
    if (holds.arms[a] <= most || (driver !== k && driven !== k)) return;
    most = holds.arms[a];
    hold = { by: 'link', with: problem.keys[driver === k ? driven : driver].id, drives: driver === k };
  });
  return hold;
}

/** The note whose pitch gains most by a stop's move. */
function noteBehind(solved: ReasonsOf, k: number): string {
  const { problem, notes, found, look } = solved;
  const by = movedSteps(solved, k);
  const gains = [found, look].map((each) =>
    pitchRows(problem, notes, each).map(({ weight, value, slopes }) => -weight * value * slopes[k] * by),
  );
  let best = 0;
  for (let n = 1; n < notes.length; n++) {
    if (gains[0][n] + gains[1][n] > gains[0][best] + gains[1][best]) best = n;
  }
  return notes[best].fingering.id;
}
