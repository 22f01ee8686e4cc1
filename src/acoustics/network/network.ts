import { airAt, airLogSlopesAt, type Air, type AirColumn } from '../air/air.ts';
import { cutBore } from '../bore/bore.ts';
import { coneTwoPortAt, LONGEST_PIECE, type ConePiece } from '../bore/cone.ts';
import { openEndImpedanceAt } from '../bore/open-end.ts';
import type { PadModel } from '../holes/pad-models/pad-model.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import { holeEndIn } from '../holes/pad-over-hole.ts';
import { holeAdmittanceAt, makeHoleTube, type HoleEnd, type HoleTube } from '../holes/tone-hole.ts';
import { seriesLength } from '../holes/hole-lengths.ts';
import type { Horn, Setup, ToneHole } from '../horn.ts';
import type { Fingering } from '../keywork/fingerings.ts';
import { padStates } from '../keywork/linkage.ts';
import {
  applyReactance,
  applyShunt,
  applyTwoPort,
  makeTwoPort,
  makeWaveState,
  type OnePort,
  type WaveState,
} from '../two-port.ts';

/** One hole on the bore, ready to compute. */
export interface HoleElement {
  readonly kind: 'hole';
  readonly hole: ToneHole;
  readonly end: HoleEnd;
  readonly tube: HoleTube;
  readonly air: Air;
  /** logarithmic slopes of its air, per °C */
  readonly warming: Air;
  /** ½ρt_a/S·2π: half the series impedance per Hz, imaginary part */
  readonly halfSeriesPerHz: number;
}

/** One piece of bore, ready to compute. */
export interface BoreElement {
  readonly kind: 'bore';
  readonly piece: ConePiece;
  readonly warming: Air;
}

/** A small volume of air beside the bore, as a compliance. */
export interface VolumeElement {
  readonly kind: 'volume';
  /** m³/Pa */
  readonly compliance: number;
  readonly air: Air;
  readonly warming: Air;
}

/** One thing on the way from the mouthpiece to the bell. */
export type NetworkElement = BoreElement | HoleElement | VolumeElement;

/** A whole horn under one fingering: its elements from the mouthpiece to the bell, and what closes both ends. */
export interface Network {
  readonly elements: readonly NetworkElement[];
  readonly bellRadius: number;
  readonly bellAir: Air;
  /** logarithmic slopes of the air at the bell and at the mouthpiece tip, per °C */
  readonly bellWarming: Air;
  readonly mouthWarming: Air;
  readonly bellCorrection: number;
  /** m³/Pa, the reed as a shunt across the mouthpiece tip */
  readonly reedCompliance: number;
  /** Pa·s/m³, ρc/S at the neck's small end: the unit of resonance heights */
  readonly referenceImpedance: number;
}

/** Choices about how the network is built. */
export interface NetworkOptions {
  readonly padModel?: PadModel;
  /** m, the longest bore piece */
  readonly longestPiece?: number;
}

/** Builds the network of a horn as set up, under a fingering, in the day's air. */
export function makeNetwork(
  horn: Horn,
  setup: Setup,
  fingering: Fingering,
  air: AirColumn,
  options: NetworkOptions = {},
): Network {
  const model = options.padModel ?? DEFAULT_PAD_MODEL;
  const states = padStates(horn.keywork, new Set(fingering.touches));
  const ends = new Map(
    horn.holes.map((hole) => [hole.id, holeEndIn(horn, setup, hole, states.get(hole.id)!, model)]),
  );
  return makeNetworkWithEnds(horn, ends, air, options.longestPiece);
}

/** Builds the network from how each hole ends, for studies that set ends themselves. */
export function makeNetworkWithEnds(
  horn: Horn,
  ends: ReadonlyMap<string, HoleEnd>,
  air: AirColumn,
  longestPiece = LONGEST_PIECE,
): Network {
  const { bore } = horn;
  const elements: NetworkElement[] = [];
  const even = air.mouthpieceC === air.bellC ? airLogSlopesAt(air, 0) : null;
  const warmingAt = (place: number): Air => even ?? airLogSlopesAt(air, place / bore.length);
  let x = 0;
  const addBore = (to: number): void => {
    for (const piece of cutBore(bore, x, to, air, longestPiece)) {
      elements.push({ kind: 'bore', piece, warming: warmingAt(x + piece.length / 2) });
      x += piece.length;
    }
    x = to;
  };
  addBore(horn.neckStart);
  const neckAir = airAt(air, x / bore.length);
  const compliance = horn.extraMouthpieceVolume / (neckAir.density * neckAir.soundSpeed ** 2);
  elements.push({ kind: 'volume', compliance, air: neckAir, warming: warmingAt(x) });
  for (const hole of horn.holes) {
    addBore(hole.x);
    elements.push(
      makeHoleElement(hole, ends.get(hole.id)!, airAt(air, hole.x / bore.length), warmingAt(hole.x)),
    );
  }
  addBore(bore.length);
  const mouthAir = airAt(air, 0);
  const rhoC = mouthAir.density * mouthAir.soundSpeed;
  return {
    elements,
    bellRadius: bore.stations[bore.stations.length - 1].radius,
    bellAir: airAt(air, 1),
    bellWarming: airLogSlopesAt(air, 1),
    mouthWarming: airLogSlopesAt(air, 0),
    bellCorrection: bore.bellCorrection,
    reedCompliance: horn.reedVolume / (rhoC * mouthAir.soundSpeed),
    referenceImpedance: rhoC / (Math.PI * bore.referenceRadius ** 2),
  };
}

/** The same network with some holes ending otherwise. */
export function withHoleEnds(network: Network, ends: ReadonlyMap<string, HoleEnd>): Network {
  return {
    ...network,
    elements: network.elements.map((e) => {
      const end = e.kind === 'hole' ? ends.get(e.hole.id) : undefined;
      return e.kind === 'hole' && end !== undefined && end !== e.end
        ? makeHoleElement(e.hole, end, e.air, e.warming)
        : e;
    }),
  };
}

function makeHoleElement(hole: ToneHole, end: HoleEnd, air: Air, warming: Air): HoleElement {
  const boreArea = Math.PI * hole.boreRadius ** 2;
  const halfSeriesPerHz = (Math.PI * air.density * seriesLength(hole, end.ventShare)) / boreArea;
  return { kind: 'hole', hole, end, tube: makeHoleTube(hole, end, air), air, warming, halfSeriesPerHz };
}

const twoPort = makeTwoPort();
const state: WaveState = makeWaveState();
const onePort: OnePort = new Float64Array(4);

/** What stands across the mouthpiece tip when the admittance is taken. */
export type MouthEnd = 'bare' | 'with reed';

/**
 * Input admittance at the mouthpiece tip, in m³/(Pa·s), with its slope per Hz.
 *
 * Walks the wave state from the bell to the mouthpiece (see two-port.ts), then Y = u/p; with the reed its
 * compliance jωC is added.
 *
 * @param f   Hz, > 0
 * @param out re Y, im Y and, if asked for, re dY/df, im dY/df
 */
export function inputAdmittanceAt(
  network: Network,
  f: number,
  mouth: MouthEnd,
  out: OnePort,
  withSlope = true,
): void {
  openEndImpedanceAt(network.bellRadius, f, network.bellAir, network.bellCorrection, onePort);
  state.fill(0);
  state[0] = onePort[0];
  state[1] = onePort[1];
  state[2] = 1;
  state[4] = onePort[2];
  state[5] = onePort[3];
  const { elements } = network;
  for (let i = elements.length - 1; i >= 0; i--) {
    const element = elements[i];
    if (element.kind === 'bore') {
      coneTwoPortAt(element.piece, f, twoPort, withSlope);
      applyTwoPort(twoPort, state, withSlope);
    } else if (element.kind === 'hole') {
      applyHole(element, f, withSlope);
    } else if (element.compliance !== 0) {
      onePort[0] = 0;
      onePort[1] = 2 * Math.PI * f * element.compliance;
      onePort[2] = 0;
      onePort[3] = 2 * Math.PI * element.compliance;
      applyShunt(onePort, state, withSlope);
    }
  }
  writeAdmittance(f, mouth === 'with reed' ? network.reedCompliance : 0, out, withSlope);
}

function applyHole({ tube, halfSeriesPerHz }: HoleElement, f: number, withSlope: boolean): void {
  applyReactance(halfSeriesPerHz, f, state, withSlope);
  holeAdmittanceAt(tube, f, onePort, withSlope);
  applyShunt(onePort, state, withSlope);
  applyReactance(halfSeriesPerHz, f, state, withSlope);
}

function writeAdmittance(f: number, compliance: number, out: OnePort, withSlope: boolean): void {
  const pr = state[0];
  const pi = state[1];
  const ur = state[2];
  const ui = state[3];
  const norm = pr * pr + pi * pi;
  const yr = (ur * pr + ui * pi) / norm;
  const yi = (ui * pr - ur * pi) / norm;
  const perHz = 2 * Math.PI * compliance;
  out[0] = yr;
  out[1] = yi + perHz * f;
  if (!withSlope) return;
  const dpr = state[4];
  const dpi = state[5];
  const dur = state[6];
  const dui = state[7];
  // (u/p)' = (u' − Y p')/p
  const nr = dur - (yr * dpr - yi * dpi);
  const ni = dui - (yr * dpi + yi * dpr);
  out[2] = (nr * pr + ni * pi) / norm;
  out[3] = (ni * pr - nr * pi) / norm + perHz;
}

/**
 * Input impedance over a list of frequencies, Pa·s/m³.
 *
 * @param frequencies Hz
 * @returns re and im parts, each as long as `frequencies`
 */
export function impedanceSweep(
  network: Network,
  frequencies: ArrayLike<number>,
  mouth: MouthEnd = 'bare',
): { re: Float64Array; im: Float64Array } {
  const re = new Float64Array(frequencies.length);
  const im = new Float64Array(frequencies.length);
  const y = new Float64Array(4);
  for (let i = 0; i < frequencies.length; i++) {
    inputAdmittanceAt(network, frequencies[i], mouth, y, false);
    const norm = y[0] * y[0] + y[1] * y[1];
    re[i] = y[0] / norm;
    im[i] = -y[1] / norm;
  }
  return { re, im };
}
