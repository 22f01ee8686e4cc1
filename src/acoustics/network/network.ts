import { airAt, airLogSlopesAt, type Air, type AirColumn } from '../air/air.ts';
import { cutBore } from '../bore/bore.ts';
import { LONGEST_PIECE, type ConePiece } from '../bore/cone.ts';
import { seriesLength } from '../holes/hole-lengths.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { PadModel } from '../holes/pad-models/pad-model.ts';
import { leakEndsIn, type Leaks } from '../holes/leak-ends.ts';
import { holeEndIn } from '../holes/pad-over-hole.ts';
import { CLOSED, makeHoleTube, type HoleEnd, type HoleTube } from '../holes/hole-tube.ts';
import type { Horn, Setup, ToneHole } from '../horn.ts';
import type { Fingering } from '../keywork/fingerings.ts';
import { padStates, type PadState } from '../keywork/linkage.ts';

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
  /** whether open holes hear each other outside the horn (neighbours.ts) */
  readonly neighbours: boolean;
}

/** Choices about how the network is built. */
export interface NetworkOptions {
  readonly padModel?: PadModel;
  /** m, the longest bore piece */
  readonly longestPiece?: number;
  /** let open holes hear each other outside the horn; default false */
  readonly neighbours?: boolean;
  /** what shut pads leave open; default nothing */
  readonly leaks?: Leaks;
}

/** Builds the network of a horn as set up, under a fingering, in the day's air. */
export function makeNetwork(
  horn: Horn,
  setup: Setup,
  fingering: Fingering,
  air: AirColumn,
  options: NetworkOptions = {},
): Network {
  return prepareNetworks(horn, setup, air, options)(fingering);
}

/** Builds the networks of one horn as set up, one fingering after another: what all share is worked out once. */
export function prepareNetworks(
  horn: Horn,
  setup: Setup,
  air: AirColumn,
  options: NetworkOptions = {},
): (fingering: Fingering) => Network {
  const model = options.padModel ?? DEFAULT_PAD_MODEL;
  const shut = makeNetworkWithEnds(horn, new Map(horn.holes.map(({ id }) => [id, CLOSED])), air, options);
  const standing = new Map<string, HoleEnd>();
  const endIn = (hole: ToneHole, state: PadState): HoleEnd => {
    if (!state.open) return CLOSED;
    if (state.front !== undefined) return holeEndIn(horn, setup, hole, state, model);
    const end = standing.get(hole.id) ?? holeEndIn(horn, setup, hole, state, model);
    standing.set(hole.id, end);
    return end;
  };
  return ({ touches }) => {
    const states = padStates(horn.keywork, new Set(touches));
    const ends = new Map(horn.holes.map((hole) => [hole.id, endIn(hole, states.get(hole.id)!)]));
    if (options.leaks !== undefined) {
      for (const [id, end] of leakEndsIn(horn, setup, touches, options.leaks, model)) ends.set(id, end);
    }
    return withHoleEnds(shut, ends);
  };
}

/** Builds the network from how each hole ends, for studies that set ends themselves. */
export function makeNetworkWithEnds(
  horn: Horn,
  ends: ReadonlyMap<string, HoleEnd>,
  air: AirColumn,
  options: NetworkOptions = {},
): Network {
  const { bore } = horn;
  const longestPiece = options.longestPiece ?? LONGEST_PIECE;
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
    neighbours: options.neighbours ?? false,
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
