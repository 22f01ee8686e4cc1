import { playWholeHorn, type WholeHornNote, type WholeHornOptions } from './whole-horn.ts';
import { padThere, type PadThere } from './proposal-curve.ts';
import {
  PROPOSAL_TERMS,
  standingFor,
  withStops,
  type ProposalProblem,
  type ProposalTerm,
  type Standing,
} from './proposal-problem.ts';
import type { Fingering } from '../keywork/fingerings.ts';

/**
 * What a setup is worth to the proposal, and how that answers to every stop:
 *
 *   F(x) = Σ_n p·w_n·(c_n − c̄)²         pitch: c̄ the mean of the note's register, w_n below
 *        + Σ_k v·((E_k − s_k)⁺/Δ)²       venting: steps Δ short of enough
 *        + Σ_k h·(s_k/Δ)²                height
 *        + Σ_jk e·(100(v_j − v_k))²      evenness of neighbours' vent shares
 *        + Σ_k m·((x_k − x_k⁰)/Δ)²       few and small moves
 *
 * x own stops, s where the pads stand for them, E enough (proposal-enough.ts), all m at the front. Every slope
 * is exact: cents from the whole horn, vent share from the pad model.
 */

/** A note whose pitch counts. */
export interface ProposalNote {
  readonly fingering: Fingering;
  /** 0 for one that was not played where others were */
  readonly weight: number;
  /** cents that it was played from where it is worked out to be, on the horn as found; 0 where none was played */
  readonly apart: number;
}

/** A setup looked at: its notes and pads with their slopes. */
export interface Look {
  readonly stops: Float64Array;
  readonly standing: Standing;
  /** from equal temperament, by note */
  readonly cents: Float64Array;
  /** by note, per m of every pad's front as it stands */
  readonly centsSlopes: readonly Float64Array[];
  /** by pad, as it stands */
  readonly pads: readonly PadThere[];
}

/** A look that was played, with its resonances to follow from. */
export interface PlayedLook extends Look {
  readonly near: ReadonlyMap<string, number>;
}

/** Ways that are not the usual one, and notes above the octave register, count so much: ours. */
const SELDOM = 0.25;

/**
 * Plays the horn with its stops as found: every fingering that has a resonance there counts.
 */
export function playFound(problem: ProposalProblem): {
  readonly notes: ProposalNote[];
  readonly look: PlayedLook;
} {
  const stops = Float64Array.from(problem.keys, ({ found }) => found);
  const standing = standingFor(problem, stops);
  const played = playStanding(problem, standing, {}).filter(({ outcome }) => outcome.found);
  const { heard } = problem;
  const notes = played.map(({ fingering, outcome }): ProposalNote => {
    const cents = heard.get(fingering.id);
    const usual = fingering.way !== '' || fingering.register === 3 ? SELDOM : 1;
    return {
      fingering,
      weight: heard.size > 0 && cents === undefined ? 0 : usual,
      apart: cents === undefined || !outcome.found ? 0 : cents - outcome.cents,
    };
  });
  return { notes, look: lookFrom(problem, notes, stops, standing, played)! };
}

/**
 * Plays the horn with these stops.
 *
 * @param near   Hz by fingering id, to follow each note from
 * @param slopes whether notes are differentiated; where not, their slopes are zero
 * @returns null where a note that counts has no resonance
 */
export function playLook(
  problem: ProposalProblem,
  notes: readonly ProposalNote[],
  stops: Float64Array,
  near: ReadonlyMap<string, number>,
  slopes = true,
): PlayedLook | null {
  const standing = standingFor(problem, stops);
  const fingerings = notes.map(({ fingering }) => fingering);
  const played = playStanding(problem, standing, { fingerings, near, answers: slopes });
  return lookFrom(problem, notes, stops, standing, played);
}

function playStanding(
  problem: ProposalProblem,
  { fronts }: Standing,
  options: Pick<WholeHornOptions, 'fingerings' | 'near' | 'answers'>,
): WholeHornNote[] {
  const { horn, air, playing } = problem;
  return playWholeHorn(horn, withStops(problem, fronts), air, { ...playing, ...options });
}

function lookFrom(
  { horn, setup, keys, padModel }: ProposalProblem,
  notes: readonly ProposalNote[],
  stops: Float64Array,
  standing: Standing,
  played: readonly WholeHornNote[],
): PlayedLook | null {
  const cents = new Float64Array(played.length);
  const centsSlopes: Float64Array[] = [];
  const near = new Map<string, number>();
  for (const [n, { fingering, outcome }] of played.entries()) {
    if (!outcome.found) return null;
    const byPad = new Map(outcome.answers?.keys.map(({ id, opening }) => [id, opening.cents]));
    cents[n] = outcome.cents + notes[n].apart;
    centsSlopes.push(Float64Array.from(keys, ({ id }) => byPad.get(id) ?? 0));
    near.set(fingering.id, outcome.resonance.frequency);
  }
  const pads = keys.map(({ hole }, k) => padThere(horn, setup, hole, padModel, standing.fronts[k]));
  return { stops, standing, cents, centsSlopes, pads, near };
}

/** What a look is worth: each term, its slope by stop, and the second slopes of Gauss and Newton. */
export interface Worth {
  readonly total: number;
  readonly terms: Readonly<Record<ProposalTerm, number>>;
  /** per step of every stop */
  readonly slopes: Readonly<Record<ProposalTerm, Float64Array>>;
  readonly slope: Float64Array;
  /** per step and step, 2JᵀJ */
  readonly curvature: readonly Float64Array[];
}

/** Weighs a look. @param enough m at the front, by pad */
export function worthOf(
  problem: ProposalProblem,
  notes: readonly ProposalNote[],
  look: Look,
  enough: Float64Array,
): Worth {
  const { weights, neighbours, keys, thresholds } = problem;
  const { step } = thresholds;
  const { fronts } = look.standing;
  const sum = makeSum(keys.length);
  const byFront = new Float64Array(keys.length);
  const add = (
    term: ProposalTerm,
    weight: number,
    value: number,
    slopes: readonly (readonly [number, number])[],
  ): void => {
    byFront.fill(0);
    for (const [k, slope] of slopes) byFront[k] = slope * step;
    sum.add(term, weight, value, byStop(look.standing, byFront));
  };
  for (const row of pitchRows(problem, notes, look)) {
    for (let k = 0; k < keys.length; k++) byFront[k] = row.slopes[k] * step;
    sum.add('pitch', weights.pitch * row.weight, row.value, byStop(look.standing, byFront));
  }
  keys.forEach(({ found }, k) => {
    const short = (enough[k] - fronts[k]) / step;
    if (short > 0) add('venting', weights.venting, short, [[k, -1 / step]]);
    add('height', weights.height, fronts[k] / step, [[k, 1 / step]]);
    const moved = new Float64Array(keys.length);
    moved[k] = 1;
    sum.add('stay', weights.stay, (look.stops[k] - found) / step, moved);
  });
  for (const [j, k] of neighbours) {
    const [a, b] = [look.pads[j], look.pads[k]];
    add('evenness', weights.evenness, 100 * (a.share - b.share), [
      [j, 100 * a.shareSlope],
      [k, -100 * b.shareSlope],
    ]);
  }
  return sum.worth();
}

/** Each note's cents about what it is tuned by. */
export function pitchRows(
  { keys, tunedBy }: ProposalProblem,
  notes: readonly ProposalNote[],
  { cents, centsSlopes }: Look,
): { readonly weight: number; readonly value: number; readonly slopes: Float64Array }[] {
  const group = ({ fingering }: ProposalNote): number =>
    tunedBy === 'each register' ? fingering.register : 1;
  const means = new Map<number, { weight: number; value: number; slopes: Float64Array }>();
  if (tunedBy !== 'equal temperament') {
    notes.forEach((note, n) => {
      const mean = means.get(group(note)) ?? { weight: 0, value: 0, slopes: new Float64Array(keys.length) };
      mean.weight += note.weight;
      mean.value += note.weight * cents[n];
      for (let k = 0; k < keys.length; k++) mean.slopes[k] += note.weight * centsSlopes[n][k];
      means.set(group(note), mean);
    });
  }
  return notes.map((note, n) => {
    const mean = means.get(group(note));
    if (mean === undefined || mean.weight === 0)
      return { weight: note.weight, value: cents[n], slopes: centsSlopes[n] };
    return {
      weight: note.weight,
      value: cents[n] - mean.value / mean.weight,
      slopes: centsSlopes[n].map((slope, k) => slope - mean.slopes[k] / mean.weight),
    };
  });
}

/** Slopes by pad as slopes by the stops that decide. */
function byStop({ ruler, ratio }: Standing, byFront: Float64Array): Float64Array {
  const sums = new Float64Array(byFront.length);
  for (let k = 0; k < byFront.length; k++) if (byFront[k] !== 0) sums[ruler[k]] += ratio[k] * byFront[k];
  return sums;
}

/** Adds weighted squares and their slopes up. */
function makeSum(count: number): {
  add: (term: ProposalTerm, weight: number, value: number, slopes: Float64Array) => void;
  worth: () => Worth;
} {
  const terms: Record<ProposalTerm, number> = { pitch: 0, venting: 0, height: 0, evenness: 0, stay: 0 };
  const none = (): Float64Array => new Float64Array(count);
  const slopes: Record<ProposalTerm, Float64Array> = {
    pitch: none(),
    venting: none(),
    height: none(),
    evenness: none(),
    stay: none(),
  };
  const curvature = Array.from({ length: count }, none);
  return {
    add(term, weight, value, row) {
      terms[term] += weight * value * value;
      for (let i = 0; i < count; i++) {
        if (row[i] === 0) continue;
        slopes[term][i] += 2 * weight * value * row[i];
        for (let j = 0; j < count; j++) curvature[i][j] += 2 * weight * row[i] * row[j];
      }
    },
    worth() {
      const slope = none().map((_, i) => PROPOSAL_TERMS.reduce((total, term) => total + slopes[term][i], 0));
      const total = PROPOSAL_TERMS.reduce((all, term) => all + terms[term], 0);
      return { total, terms, slopes, slope, curvature };
    },
  };
}
