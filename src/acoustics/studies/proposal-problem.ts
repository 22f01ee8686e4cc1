import type { AirColumn } from '../air/air.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { PadModel } from '../holes/pad-models/pad-model.ts';
import { ownPose } from '../holes/pad-over-hole.ts';
import { holeOf, keySetupOf, withOpening, type Horn, type Setup, type ToneHole } from '../horn.ts';
import { largestOpening } from '../keywork/hinge.ts';
import { DEFAULT_THRESHOLDS, type ReturnThresholds } from './diminishing-return.ts';
import { makePadCurve, padThere, type PadCurve } from './proposal-curve.ts';
import { LEAST_OPENING } from './venting.ts';
import type { WholeHornOptions } from './whole-horn.ts';

/**
 * The proposed setup as a question put to a solver: which stops may move, how far, and what is wanted.
 *
 * A pad's own stop is the variable, m at the front. An arm must not hold a pad below its own stop: the driven
 * stop is at most ratio × the driver's, so that every pad stands where its own stop has it and nothing kinks.
 */

/** What is wanted, each as a weight of squares: cents, and for heights steps of the definition (0.5 mm). */
export interface ProposalWeights {
  /** of a note's cents about its register's mean */
  readonly pitch: number;
  /** of steps short of enough */
  readonly venting: number;
  /** of steps that a pad stands open: keys as low as the rest allows */
  readonly height: number;
  /** of per cents of vent share between neighbours that rest open */
  readonly evenness: number;
  /** of steps that a stop moves */
  readonly stay: number;
}
export type ProposalTerm = keyof ProposalWeights;
export const PROPOSAL_TERMS = ['pitch', 'venting', 'height', 'evenness', 'stay'] as const;

/**
 * Our choice. A note that is off by 20 cents, twice what the model of a whole horn may err by, counts as one step
 * short of enough does.
 */
export const PROPOSAL_WEIGHTS: ProposalWeights = Object.freeze({
  pitch: 0.0025,
  venting: 1,
  height: 0.005,
  evenness: 0.02,
  stay: 0.02,
});

/** What a note's cents are measured from: what the player sets on the cork is no key's business. */
export type TunedBy = 'each register' | 'all notes' | 'equal temperament';

/** Choices about the proposal. */
export interface ProposalOptions extends Omit<WholeHornOptions, 'near' | 'answers' | 'fingerings'> {
  /** pads whose stop is not touched */
  readonly locked?: ReadonlySet<string>;
  /** m at the front, by pad: as far as it may be opened; default 1.75 times as found */
  readonly most?: ReadonlyMap<string, number>;
  /** m at the front, by pad: a smaller move is not proposed; default 0.2 mm */
  readonly plusMinus?: ReadonlyMap<string, number>;
  readonly weights?: Partial<ProposalWeights>;
  readonly tunedBy?: TunedBy;
  /**
   * cents from equal temperament by fingering id, as played on the horn as found: these notes start from there and
   * only what openings change of them is worked out; notes that were not played do not count
   */
  readonly heard?: ReadonlyMap<string, number>;
  readonly thresholds?: ReturnThresholds;
  /** share of the whole gain at which the short list ends, default 0.8 */
  readonly shortListShare?: number;
  /** pads the short list is chosen among, default all */
  readonly shortListAmong?: ReadonlySet<string>;
}

/** One stop. Metres at the front. */
export interface ProposalKey {
  readonly id: string;
  readonly hole: ToneHole;
  readonly locked: boolean;
  /** its own stop, as found */
  readonly found: number;
  readonly lowest: number;
  readonly highest: number;
  /** as far as venting is judged, the study's reach */
  readonly reach: number;
  readonly plusMinus: number;
  /** what its hole's end is, quickly */
  readonly curve: PadCurve;
}

/** An arm with a known ratio, by places in the list of keys. */
export interface Arm {
  readonly driver: number;
  readonly driven: number;
  readonly ratio: number;
}

/** A question made ready. */
export interface ProposalProblem {
  /** with no ratios: every pad by its own stop */
  readonly horn: Horn;
  readonly setup: Setup;
  readonly air: AirColumn;
  readonly playing: Omit<ProposalOptions, keyof typeof NOT_PLAYING>;
  readonly padModel: PadModel;
  readonly keys: readonly ProposalKey[];
  readonly arms: readonly Arm[];
  /** places in the list of keys, each driver before what it drives */
  readonly order: readonly number[];
  /** neighbours that rest open, by places in the list */
  readonly neighbours: readonly (readonly [number, number])[];
  readonly weights: ProposalWeights;
  readonly tunedBy: TunedBy;
  /** empty where pitch is the model's */
  readonly heard: ReadonlyMap<string, number>;
  readonly thresholds: ReturnThresholds;
}

const NOT_PLAYING = {
  locked: 1,
  most: 1,
  plusMinus: 1,
  weights: 1,
  tunedBy: 1,
  heard: 1,
  thresholds: 1,
  shortListShare: 1,
  shortListAmong: 1,
} as const;

/** Where nothing is said: of the opening as found, and m. */
const REACH_OF_FOUND = 1.75;
const LOWEST_OF_FOUND = 0.5;
const LOWEST = 1e-3;
/** A wedge's reading, as common practice has it, no source. */
const WEDGE = 0.2e-3;

/**
 * Makes the question ready.
 *
 * @param order ids of the pads in the order they are reckoned in, which changes nothing; default from the bell up
 * @throws RangeError for a pad the horn does not have, a weight that is negative, or a `most` that is not above 0
 */
export function makeProposalProblem(
  horn: Horn,
  setup: Setup,
  air: AirColumn,
  options: ProposalOptions = {},
  order?: readonly string[],
): ProposalProblem {
  checkOptions(horn, options);
  const padModel = options.padModel ?? DEFAULT_PAD_MODEL;
  const links = horn.keywork.links.map(({ driver, driven, effect }) => ({ driver, driven, effect }));
  const free = { ...horn, keywork: { ...horn.keywork, links } };
  const fromTheBell = horn.holes
    .filter(({ hinge }) => hinge !== null)
    .sort((a, b) => a.number - b.number)
    .map(({ id }) => id);
  const ids = order ?? fromTheBell;
  const thresholds = options.thresholds ?? DEFAULT_THRESHOLDS;
  const keys = ids.map((id) => keyOf(free, setup, id, { ...options, padModel, thresholds }));
  const place = new Map(ids.map((id, i) => [id, i]));
  const arms = horn.keywork.links.flatMap(({ driver, driven, ratio }) =>
    ratio === undefined ? [] : [{ driver: place.get(driver)!, driven: place.get(driven)!, ratio }],
  );
  const restOpen = fromTheBell.filter((id) => horn.keywork.rests.get(id) === 'open');
  return {
    horn: free,
    setup,
    air,
    playing: playingOf(options),
    padModel,
    keys,
    arms,
    order: driversFirst(keys.length, arms),
    neighbours: restOpen.slice(1).map((id, i) => [place.get(restOpen[i])!, place.get(id)!] as const),
    weights: { ...PROPOSAL_WEIGHTS, ...options.weights },
    tunedBy: options.tunedBy ?? 'each register',
    heard: options.heard ?? new Map(),
    thresholds,
  };
}

function playingOf(options: ProposalOptions): ProposalProblem['playing'] {
  return Object.fromEntries(Object.entries(options).filter(([name]) => !(name in NOT_PLAYING)));
}

function keyOf(
  horn: Horn,
  setup: Setup,
  id: string,
  options: ProposalOptions & { readonly padModel: PadModel; readonly thresholds: ReturnThresholds },
): ProposalKey {
  const hole = holeOf(horn, id);
  const found = ownPose(horn, setup, id).front;
  const largest = largestOpening(hole.hinge!, keySetupOf(setup, id).padRadius, 'front');
  const usual = Math.max(REACH_OF_FOUND * found, REACH_OF_FOUND * LOWEST);
  const highest = Math.min(options.most?.get(id) ?? usual, largest);
  const lowest = Math.min(found, highest, Math.max(LOWEST, LOWEST_OF_FOUND * found));
  const reach = Math.min(Math.max(usual, hole.holeRadius), largest);
  const there = (front: number): ReturnType<typeof padThere> =>
    padThere(horn, setup, hole, options.padModel, front);
  const from = Math.max(LEAST_OPENING, 0.9 * Math.min(lowest, 0.5 * found));
  const to = Math.min(Math.max(reach, highest, 1.5 * found) + options.thresholds.step, largest);
  return {
    id,
    hole,
    locked: options.locked?.has(id) ?? false,
    found,
    lowest,
    highest,
    reach,
    plusMinus: options.plusMinus?.get(id) ?? WEDGE,
    curve: makePadCurve(there, Math.min(from, 0.9 * to), to),
  };
}

/** Each driver before what it drives. */
function driversFirst(count: number, arms: readonly Arm[]): number[] {
  const order: number[] = [];
  const seen = new Set<number>();
  const visit = (key: number): void => {
    if (seen.has(key)) return;
    seen.add(key);
    for (const { driver, driven } of arms) if (driven === key) visit(driver);
    order.push(key);
  };
  for (let key = 0; key < count; key++) visit(key);
  return order;
}

function checkOptions(
  horn: Horn,
  { locked, most, plusMinus, weights, thresholds, heard }: ProposalOptions,
): void {
  const named = [...(locked ?? []), ...(most?.keys() ?? []), ...(plusMinus?.keys() ?? [])];
  for (const id of named) {
    if (holeOf(horn, id).hinge === null) {
      throw new RangeError(`invalid key: "${id}" is a vent; expected a pad with a hinge`);
    }
  }
  for (const [id, front] of most ?? []) {
    if (!(front > 0)) throw new RangeError(`invalid most of ${id}: ${front * 1e3} mm; expected more than 0`);
  }
  for (const [id, by] of plusMinus ?? []) {
    if (!(by >= 0)) throw new RangeError(`invalid ± of ${id}: ${by * 1e3} mm; expected 0 or more`);
  }
  for (const [term, weight] of Object.entries(weights ?? {})) {
    if (!(weight >= 0 && weight < Infinity)) {
      throw new RangeError(`invalid weight of ${term}: ${weight}; expected 0 or more`);
    }
  }
  for (const [id, cents] of heard ?? []) {
    if (!Number.isFinite(cents)) {
      throw new RangeError(`invalid pitch of ${id}: ${cents} cents; expected a number`);
    }
  }
  if (thresholds !== undefined && !(thresholds.step > 0)) {
    throw new RangeError(`invalid step: ${thresholds.step * 1e3} mm; expected more than 0`);
  }
}

/** Where every pad stands for given stops: by its own, or by the arm that holds it lower. */
export interface Standing {
  /** m at the front, in the order of the keys */
  readonly fronts: Float64Array;
  /** whose stop decides, by place, and front per that stop's front */
  readonly ruler: readonly number[];
  readonly ratio: Float64Array;
}

/** @param stops m at the front, in the order of the keys */
export function standingFor({ keys, arms, order }: ProposalProblem, stops: Float64Array): Standing {
  const fronts = Float64Array.from(stops);
  const ruler = keys.map((_, i) => i);
  const ratio = new Float64Array(keys.length).fill(1);
  for (const key of order) {
    for (const arm of arms) {
      if (arm.driven !== key) continue;
      const limit = arm.ratio * fronts[arm.driver];
      if (limit >= fronts[key] - HELD) continue;
      fronts[key] = limit;
      ruler[key] = ruler[arm.driver];
      ratio[key] = arm.ratio * ratio[arm.driver];
    }
  }
  return { fronts, ruler, ratio };
}

/** m: an arm that is lower by less than rounding does not hold. */
const HELD = 1e-10;

/** The setup with these stops; those as found stay as they were read. @param stops m at the front, by key */
export function withStops({ keys, setup }: ProposalProblem, stops: Float64Array): Setup {
  return keys.reduce(
    (whole, { id, found }, k) =>
      stops[k] === found ? whole : withOpening(whole, id, { at: 'front', height: stops[k] }),
    setup,
  );
}
