import type { AirColumn } from '../air/air.ts';
import { ventShareSlopes } from '../holes/hole-lengths.ts';
import { leakEndsIn } from '../holes/leak-ends.ts';
import { GEOMETRY, openHole, type EndMotion, type OpenHole } from '../holes/open-hole.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import { CLOSED, type HoleEnd } from '../holes/hole-tube.ts';
import type { Horn, Setup } from '../horn.ts';
import { centsBetween, FINGERINGS, noteFrequency, type Fingering } from '../keywork/fingerings.ts';
import { padStates } from '../keywork/linkage.ts';
import { inputAdmittanceAt } from '../network/input-admittance.ts';
import { makeNetworkWithEnds, withHoleEnds, type Network, type NetworkOptions } from '../network/network.ts';
import { sensitivitiesAt, type HoleSensitivity } from '../network/sensitivities.ts';
import { add, mul, type Complex } from '../numerics/complex.ts';
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
  /** per m of what else is measured, the pad standing as high at its front; worked out when called */
  readonly geometry: (by: Geometry) => Answer;
}

/** What else is measured of a key and its hole: besides its lengths, the hole's place, towards the bell. */
export type Geometry = (typeof GEOMETRY)[number] | 'place';

/** How one note answers to everything. */
export interface NoteAnswers {
  /** one entry per hole of the horn, in its order */
  readonly keys: readonly KeyAnswer[];
  /** per °C */
  readonly temperature: Answer;
  /** per m³ of mouthpiece volume */
  readonly mouthpieceVolume: Answer;
  /** per m of mouthpiece pulled out */
  readonly mouthpiecePlace: Answer;
  /** per m of bell correction */
  readonly bell: Answer;
  /** per unit of the pad model's factor: what every pad adds to its hole larger by so much, as one */
  readonly padModel: Answer;
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
    const leaking =
      options.leaks === undefined ? [] : leakEndsIn(horn, setup, fingering.touches, options.leaks, model);
    const network = withHoleEnds(
      shut,
      new Map([...[...open].map(([id, hole]): [string, HoleEnd] => [id, hole.end]), ...leaking]),
    );
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
  const placed = (hole: HoleSensitivity): Answer => {
    const { re, im } = hole.place();
    return answer(re, im);
  };
  const byStop = new Map<string, Complex>();
  let byPadModel: Complex = { re: 0, im: 0 };
  const own = s.holes.map((hole, i) => {
    const standing = open.get(hole.id);
    if (standing === undefined || standing.lengths.length === Infinity) {
      return {
        padThickness: NOTHING,
        holeRadius: answer(hole.radiusRe, hole.radiusIm),
        chimney: answer(hole.chimneyRe, hole.chimneyIm),
        geometry: (by: Geometry) => (by === 'place' ? placed(hole) : NOTHING),
      };
    }
    const share = ventShareSlopes(horn.holes[i], standing.lengths.length, standing.lengths.noPadLength);
    const moved = (by: EndMotion): Complex => endAnswer(hole, standing, share, by);
    byPadModel = add(byPadModel, moved(standing.byPadModel));
    if (standing.byOpening !== null) addTo(byStop, standing.ruler, moved(standing.byOpening));
    const thicker = moved(standing.byThickness);
    const wider = moved(standing.byRadius);
    return {
      padThickness: answer(thicker.re, thicker.im),
      holeRadius: answer(
        hole.radiusRe + wider.re + hole.shareRe * share.holeRadius,
        hole.radiusIm + wider.im + hole.shareIm * share.holeRadius,
      ),
      chimney: answer(
        hole.chimneyRe + hole.shareRe * share.chimney,
        hole.chimneyIm + hole.shareIm * share.chimney,
      ),
      geometry: (by: Geometry) => {
        if (by === 'place') return placed(hole);
        const { re, im } = moved(standing.byGeometry()[by]);
        return answer(re, im);
      },
    };
  });
  const temperature = answer(s.temperatureRe, s.temperatureIm);
  return {
    keys: horn.holes.map(({ id }, i) => {
      const stop = byStop.get(id);
      return Object.assign(own[i], {
        id,
        opening: stop === undefined ? NOTHING : answer(stop.re, stop.im),
      });
    }),
    temperature: { cents: temperature.cents, logHeight: temperature.logHeight - s.referenceLogSlope },
    mouthpieceVolume: answer(s.mouthpieceRe, s.mouthpieceIm),
    mouthpiecePlace: answer(s.mouthpiecePlace.re, s.mouthpiecePlace.im),
    bell: answer(s.bell.re, s.bell.im),
    padModel: answer(byPadModel.re, byPadModel.im),
  };
}

const NOTHING: Answer = Object.freeze({ cents: 0, logHeight: 0 });
function addTo(sums: Map<string, Complex>, id: string, part: Complex): void {
  const sum = sums.get(id);
  sums.set(id, sum === undefined ? part : add(sum, part));
}

/**
 * How Y answers to a motion of a hole's end: through its length, through the friction in its gap,
 *
 *   δ(end) = δL + (K − 1)δs + s·dK/d ln g·δ ln g,   s the gap's share, g the gap,
 *
 * and through the vent share's part in the series length.
 */
function endAnswer(
  hole: HoleSensitivity,
  { lengths }: OpenHole,
  share: ReturnType<typeof ventShareSlopes>,
  by: EndMotion,
): Complex {
  const rub = add(
    mul(hole.friction, { re: by.gapShare, im: 0 }),
    mul(hole.frictionSlope, { re: lengths.gapShare * by.lnGap, im: 0 }),
  );
  const byEnd = mul({ re: hole.endRe, im: hole.endIm }, { re: by.length + rub.re, im: rub.im });
  const dShare = share.end * by.length + share.noPadEnd * by.noPadLength;
  return { re: byEnd.re + hole.shareRe * dShare, im: byEnd.im + hole.shareIm * dShare };
}
