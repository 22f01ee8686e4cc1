import type { AirColumn } from '../air/air.ts';
import type { Horn, Setup } from '../horn.ts';
import type { Fingering } from '../keywork/fingerings.ts';
import { enoughForAll, type Enough } from './proposal-enough.ts';
import {
  pitchRows,
  playFound,
  playLook,
  worthOf,
  type Look,
  type PlayedLook,
  type ProposalNote,
} from './proposal-objective.ts';
import {
  makeProposalProblem,
  standingFor,
  withStops,
  type ProposalOptions,
  type ProposalProblem,
  type ProposalTerm,
} from './proposal-problem.ts';
import { reasonsOf, type ProposedKey, type ReasonsOf } from './proposal-reasons.ts';
import { shortListOf, type ShortListed } from './proposal-short-list.ts';
import { solvePlayed, withinLimits, type Asked, type Solved } from './proposal-solve.ts';

/** A note before and after. */
export interface ProposedNote {
  readonly fingering: Fingering;
  /** how much it counts, 0…1 */
  readonly weight: number;
  readonly found: NotePitch;
  readonly proposed: NotePitch;
  readonly shortList: NotePitch;
}

/** A note's pitch, cents. */
export interface NotePitch {
  /** from equal temperament */
  readonly cents: number;
  /** from the mean of what it is tuned by */
  readonly about: number;
}

/** An arm that holds a pad below its own stop though neither was to move. Metres at the front. */
export interface HeldApart {
  readonly driver: string;
  readonly driven: string;
  /** the driven pad's own stop, and what the arm lets it */
  readonly own: number;
  readonly lets: number;
}

/** The proposed setup: every stop with its reason, few keys for most of the gain, and what it does. */
export interface Proposal {
  readonly setup: Setup;
  /** from the bell up */
  readonly keys: readonly ProposedKey[];
  readonly notes: readonly ProposedNote[];
  /** how far notes stand from what they are tuned by: root of the weighted mean square, cents */
  readonly spread: { readonly found: number; readonly proposed: number; readonly shortList: number };
  readonly shortList: {
    /** the key that brings most first */
    readonly keys: readonly ShortListed[];
    readonly setup: Setup;
  };
  readonly heldApart: readonly HeldApart[];
  /** what each term costs, in the objective's unit */
  readonly terms: Readonly<Record<'found' | 'proposed', Readonly<Record<ProposalTerm, number>>>>;
}

/** Rounds of finding enough anew, and m of it that change nothing. */
const PASSES = 3;
const ENOUGH_STILL = 2e-5;
const SHORT_LIST_SHARE = 0.8;
/** m: a pad held lower by less is not seen to be held. */
const APART = 5e-5;

/**
 * Solves for all stops at once: least weighted pitch error and under-venting, keys as low as that allows, within
 * arms and reach (proposal-objective.ts has the formula). Deterministic; starts from as found.
 *
 * @throws RangeError as {@link makeProposalProblem}
 *
 * **Holds for:** keys that are moved one against another by bending and corks; the pitch of a register as a whole
 * is left to the cork of the neck.
 */
export function proposeSetup(
  horn: Horn,
  setup: Setup,
  air: AirColumn,
  options: ProposalOptions = {},
): Proposal {
  const solved = solveProposal(makeProposalProblem(horn, setup, air, options));
  const { problem, notes, found, look, foundWorth, worth } = solved;
  const list = shortListOf(
    {
      ...solved,
      enough: Float64Array.from(solved.enough, ({ front }) => front),
      among: options.shortListAmong,
    },
    options.shortListShare ?? SHORT_LIST_SHARE,
  );
  const few = playLook(problem, notes, list.stops, found.near, false) ?? found;
  const [was, is, some] = [found, look, few].map((each) => pitchesOf(problem, notes, each));
  return {
    setup: withStops(problem, look.stops),
    keys: reasonsOf(solved),
    notes: notes.map(({ fingering, weight }, n) => ({
      fingering,
      weight,
      found: was[n],
      proposed: is[n],
      shortList: some[n],
    })),
    spread: {
      found: spreadOf(notes, was),
      proposed: spreadOf(notes, is),
      shortList: spreadOf(notes, some),
    },
    shortList: {
      keys: list.keys,
      setup: withStops(problem, list.stops),
    },
    heldApart: heldApartIn(problem, look.stops),
    terms: { found: foundWorth.terms, proposed: worth.terms },
  };
}

/** A solved question, with all that its reasons are read from. */
export interface SolvedProposal extends ReasonsOf {
  /** how often the whole horn was played */
  readonly plays: number;
}

/** Solves a question made ready. */
export function solveProposal(problem: ProposalProblem): SolvedProposal {
  const { keys } = problem;
  const { notes, look: found } = playFound(problem);
  let plays = 1;
  let enough = enoughForAll(problem, notes, found);
  const ask = (free: readonly boolean[]): Asked => ({ problem, notes, enough: frontsOf(enough), free });
  const solve = (free: readonly boolean[], from: PlayedLook): Solved<PlayedLook> => {
    const asked = ask(free);
    const solved = solvePlayed(asked, startFrom(asked, found, from));
    plays += solved.plays;
    return solved;
  };
  const unlocked = keys.map(({ locked }) => !locked);
  let solved = solve(unlocked, found);
  for (let pass = 1; pass < PASSES; pass++) {
    const again = enoughForAll(problem, notes, solved.look);
    if (again.every(({ front }, k) => Math.abs(front - enough[k].front) < ENOUGH_STILL)) break;
    enough = again;
    solved = solve(unlocked, solved.look);
  }
  let kept = keys.map(() => false);
  for (;;) {
    const within = keys.map(
      ({ found: was, plusMinus }, k) =>
        unlocked[k] && (kept[k] || Math.abs(solved.look.stops[k] - was) < plusMinus),
    );
    if (within.every((is, k) => is === kept[k])) break;
    kept = within;
    solved = solve(
      unlocked.map((is, k) => is && !kept[k]),
      solved.look,
    );
  }
  const foundWorth = worthOf(problem, notes, found, frontsOf(enough));
  return { problem, notes, enough, found, foundWorth, ...solved, kept, plays };
}

/** A look within the limits from where another stands, stops that are not free as found. */
function startFrom(asked: Asked, found: PlayedLook, from: PlayedLook): PlayedLook {
  const { problem, notes, free } = asked;
  const wanted = from.stops.map((x, k) => (free[k] ? x : found.stops[k]));
  const start = withinLimits(asked, wanted);
  for (const look of [from, found]) if (start.every((x, k) => x === look.stops[k])) return look;
  // Where the horn is lost there, from as found it is not.
  return playLook(problem, notes, start, found.near) ?? found;
}

const frontsOf = (enough: readonly Enough[]): Float64Array => Float64Array.from(enough, ({ front }) => front);

function pitchesOf(problem: ProposalProblem, notes: readonly ProposalNote[], look: Look): NotePitch[] {
  return pitchRows(problem, notes, look).map(({ value }, n) => ({ cents: look.cents[n], about: value }));
}

function spreadOf(notes: readonly ProposalNote[], pitches: readonly NotePitch[]): number {
  const weights = notes.reduce((sum, { weight }) => sum + weight, 0);
  if (weights === 0) return 0;
  return Math.sqrt(notes.reduce((sum, { weight }, n) => sum + weight * pitches[n].about ** 2, 0) / weights);
}

function heldApartIn(problem: ProposalProblem, stops: Float64Array): HeldApart[] {
  const { fronts } = standingFor(problem, stops);
  return problem.arms.flatMap(({ driver, driven, ratio }) => {
    const lets = ratio * fronts[driver];
    return lets < stops[driven] - APART
      ? [{ driver: problem.keys[driver].id, driven: problem.keys[driven].id, own: stops[driven], lets }]
      : [];
  });
}
