import type { AirColumn } from '../air/air.ts';
import { flangedEndLength, flangedEndSlope } from '../bore/open-end.ts';
import { ventShareSlopes } from '../holes/hole-lengths.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { PadEnd, PadModel } from '../holes/pad-models/pad-model.ts';
import { holeEnd, padEnd, standingPad } from '../holes/pad-over-hole.ts';
import { CLOSED, type HoleEnd } from '../holes/tone-hole.ts';
import { keySetupOf, type Horn, type Setup, type ToneHole } from '../horn.ts';
import { centsBetween, FINGERINGS, noteFrequency, type Fingering } from '../keywork/fingerings.ts';
import { centrePerFront, makePadPose } from '../keywork/hinge.ts';
import { padStates } from '../keywork/linkage.ts';
import { inputAdmittanceAt } from '../network/input-admittance.ts';
import { makeNetworkWithEnds, withHoleEnds, type Network, type NetworkOptions } from '../network/network.ts';
import { sensitivitiesAt, type HoleSensitivity } from '../network/sensitivities.ts';
import { latticeCutoff, type CutoffOutcome } from '../resonance/lattice-cutoff.ts';
import { followResonance, resonanceNear, type Resonance } from '../resonance/resonances.ts';

/**
 * The whole horn at once: every fingering's note, and how it answers to everything the bench can change.
 *
 *   df/dθ = −(∂B/∂θ)/(∂B/∂f)            Y = G + jB at resonance, B = 0
 *   d ln H/dθ = −(∂G/∂θ + ∂G/∂f·df/dθ)/G  H = 1/(G·Z_c)
 *
 * The partial derivatives come from one walk (network/sensitivities.ts); nothing is differenced.
 */

/** How one note answers: cents, and the natural logarithm of the resonance's height, per unit of each change. */
export interface Answer {
  readonly cents: number;
  readonly logHeight: number;
}

/** How one note answers to one key and its hole. */
export interface KeyAnswer {
  readonly id: string;
  /** per m of the key's own stop, read at the front; links followed to every pad it rules */
  readonly opening: Answer;
  /** per m of pad thickness at the same stop: the face comes down by what the pad gains */
  readonly padThickness: Answer;
  /** per m of hole radius */
  readonly holeRadius: Answer;
  /** per m of chimney */
  readonly chimney: Answer;
}

/** How one note answers to everything. */
export interface NoteAnswers {
  /** one entry per hole of the horn, in its order */
  readonly keys: readonly KeyAnswer[];
  /** per °C */
  readonly temperature: Answer;
  /** per m³ of mouthpiece volume */
  readonly mouthpieceVolume: Answer;
}

/** One fingering on the whole horn. */
export interface WholeHornNote {
  readonly fingering: Fingering;
  /** Hz, equal temperament */
  readonly target: number;
  readonly outcome:
    | {
        readonly found: true;
        readonly resonance: Resonance;
        readonly cents: number;
        readonly answers: NoteAnswers | null;
      }
    | { readonly found: false; readonly reason: string };
  readonly cutoff: CutoffOutcome;
}

/** Choices about the whole horn. */
export interface WholeHornOptions extends NetworkOptions {
  /** Hz, sounding A4, default 440 */
  readonly a4?: number;
  readonly fingerings?: readonly Fingering[];
  /** Hz by fingering id: where each note's resonance was before a small change, to follow it from there */
  readonly near?: ReadonlyMap<string, number>;
  /** whether the notes are differentiated too; default true */
  readonly answers?: boolean;
}

/** Plays every fingering and differentiates it. */
export function playWholeHorn(
  horn: Horn,
  setup: Setup,
  air: AirColumn,
  options: WholeHornOptions = {},
): WholeHornNote[] {
  const model = options.padModel ?? DEFAULT_PAD_MODEL;
  const full = new Map(horn.holes.map((hole) => [hole.id, openHole(horn, setup, hole, model, undefined)]));
  const allShut = new Map(horn.holes.map((hole) => [hole.id, CLOSED]));
  const shut = makeNetworkWithEnds(horn, allShut, air, options);
  return (options.fingerings ?? FINGERINGS).map((fingering) => {
    const states = padStates(horn.keywork, new Set(fingering.touches));
    const open = new Map<string, OpenHole>();
    for (const hole of horn.holes) {
      const state = states.get(hole.id)!;
      if (!state.open) continue;
      open.set(
        hole.id,
        state.front === undefined ? full.get(hole.id)! : openHole(horn, setup, hole, model, state.front),
      );
    }
    const network = withHoleEnds(shut, new Map([...open].map(([id, hole]) => [id, hole.end])));
    const target = noteFrequency(fingering.note, horn.transposition, options.a4);
    const near = options.near?.get(fingering.id);
    const outcome = near === undefined ? resonanceNear(network, target) : followResonance(network, near);
    const cutoff = latticeCutoff(horn, network);
    if (!outcome.found) return { fingering, target, outcome, cutoff };
    const { resonance } = outcome;
    const cents = centsBetween(target, resonance.frequency);
    const answers = options.answers === false ? null : answersOf(horn, network, resonance.frequency, open);
    return { fingering, target, outcome: { found: true, resonance, cents, answers }, cutoff };
  });
}

/** An open hole, with what it contributes to the chain rule. */
interface OpenHole {
  readonly end: HoleEnd;
  /** lengths and their slopes in the hole's radius */
  readonly model: Pick<PadEnd, 'length' | 'noPadLength' | 'holeRadiusSlope' | 'noPadHoleRadiusSlope'>;
  /** d endLength per m of the front opening of the stop that decides it; 0 where no stop does */
  readonly endPerOpening: number;
  /** whose own stop that is: its own, or a driver's through links */
  readonly ruler: string;
  /** d endLength per m of pad thickness at the same stop */
  readonly endPerThickness: number;
}

/** A hole standing open: as its stop and links let it, or no further than a touch opens it (m at the front). */
function openHole(
  horn: Horn,
  setup: Setup,
  hole: ToneHole,
  padModel: PadModel,
  byTouch: number | undefined,
): OpenHole {
  if (hole.hinge === null) return openVent(hole);
  const { padRadius } = keySetupOf(setup, hole.id);
  const { pose: asSet } = standingPad(horn, setup, hole.id);
  const limited = byTouch !== undefined && byTouch < asSet.front;
  const pose = limited ? makePadPose(hole.hinge, padRadius, { at: 'front', height: byTouch }) : asSet;
  const model = padEnd(hole, setup, pose, padModel);
  const end = holeEnd(hole, model);
  if (model.length === Infinity) return { end, model, endPerOpening: 0, ruler: hole.id, endPerThickness: 0 };
  const ruler = rulerOf(horn, setup, hole.id);
  return {
    end,
    model,
    endPerOpening: limited ? 0 : model.slope * centrePerFront(hole.hinge, padRadius, pose) * ruler.ratio,
    ruler: ruler.id,
    // The face sinks along its own normal.
    endPerThickness: model.padThicknessSlope - model.slope * Math.cos(pose.angle),
  };
}

/** A vent: only its own radius changes its end. */
function openVent(hole: ToneHole): OpenHole {
  const length = flangedEndLength(hole.holeRadius, hole.rimThickness);
  const slope = flangedEndSlope(hole.holeRadius, hole.rimThickness);
  return {
    end: { endLength: length, ventShare: 1 },
    model: { length, noPadLength: length, holeRadiusSlope: slope, noPadHoleRadiusSlope: slope },
    endPerOpening: 0,
    ruler: hole.id,
    endPerThickness: 0,
  };
}

/** Follows the links that rule a pad to the stop that decides, multiplying their ratios. */
function rulerOf(horn: Horn, setup: Setup, id: string): { id: string; ratio: number } {
  const { ruledBy, pose } = standingPad(horn, setup, id);
  if (ruledBy === null) return { id, ratio: 1 };
  const driver = standingPad(horn, setup, ruledBy.driver);
  const above = rulerOf(horn, setup, ruledBy.driver);
  return { id: above.id, ratio: (above.ratio * pose.front) / driver.pose.front };
}

function answersOf(
  horn: Horn,
  network: Network,
  f: number,
  open: ReadonlyMap<string, OpenHole>,
): NoteAnswers {
  const y = new Float64Array(4);
  inputAdmittanceAt(network, f, 'with reed', y);
  const s = sensitivitiesAt(network, f);
  const answer = (dRe: number, dIm: number): Answer => {
    const df = -dIm / y[3];
    return { cents: (1200 / Math.LN2) * (df / f), logHeight: -(dRe + y[2] * df) / y[0] };
  };
  const byStop = new Map<string, { re: number; im: number }>();
  const own = s.holes.map((hole, i) => {
    const standing = open.get(hole.id);
    if (standing === undefined || standing.model.length === Infinity) {
      return {
        padThickness: NOTHING,
        holeRadius: answer(hole.radiusRe, hole.radiusIm),
        chimney: answer(hole.chimneyRe, hole.chimneyIm),
      };
    }
    const chain = chainRule(horn.holes[i], hole, standing.model);
    const { endPerOpening, endPerThickness, ruler } = standing;
    if (endPerOpening !== 0) addTo(byStop, ruler, chain.endRe * endPerOpening, chain.endIm * endPerOpening);
    return {
      padThickness: answer(chain.endRe * endPerThickness, chain.endIm * endPerThickness),
      holeRadius: answer(chain.radiusRe, chain.radiusIm),
      chimney: answer(chain.chimneyRe, chain.chimneyIm),
    };
  });
  const temperature = answer(s.temperatureRe, s.temperatureIm);
  return {
    keys: horn.holes.map(({ id }, i) => {
      const stop = byStop.get(id);
      return { id, opening: stop === undefined ? NOTHING : answer(stop.re, stop.im), ...own[i] };
    }),
    temperature: { cents: temperature.cents, logHeight: temperature.logHeight - s.referenceLogSlope },
    mouthpieceVolume: answer(s.mouthpieceRe, s.mouthpieceIm),
  };
}

const NOTHING: Answer = Object.freeze({ cents: 0, logHeight: 0 });

function addTo(sums: Map<string, { re: number; im: number }>, id: string, re: number, im: number): void {
  const sum = sums.get(id) ?? { re: 0, im: 0 };
  sums.set(id, { re: sum.re + re, im: sum.im + im });
}

/** Slopes of Y per m of end length, chimney and hole radius, the vent share's part in the series length included. */
function chainRule(hole: ToneHole, s: HoleSensitivity, model: OpenHole['model']) {
  const share = ventShareSlopes(hole, model.length, model.noPadLength);
  const endRe = s.endRe + s.shareRe * share.end;
  const endIm = s.endIm + s.shareIm * share.end;
  const shareByRadius = share.holeRadius + share.noPadEnd * model.noPadHoleRadiusSlope;
  return {
    endRe,
    endIm,
    chimneyRe: s.chimneyRe + s.shareRe * share.chimney,
    chimneyIm: s.chimneyIm + s.shareIm * share.chimney,
    radiusRe: s.radiusRe + endRe * model.holeRadiusSlope + s.shareRe * shareByRadius,
    radiusIm: s.radiusIm + endIm * model.holeRadiusSlope + s.shareIm * shareByRadius,
  };
}
