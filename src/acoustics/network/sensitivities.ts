import { borePerMetreAt, coneWarmingAt, type ConePiece } from '../bore/cone.ts';
import { openEndImpedanceAt, openEndPerLength } from '../bore/open-end.ts';
import { holeVariationsAt, type HoleVariations } from '../holes/hole-variations.ts';
import { seriesLengthSlopes } from '../holes/hole-lengths.ts';
import {
  applyReactance,
  applyShunt,
  applyTwoPort,
  makeTwoPort,
  makeWaveState,
  type OnePort,
} from '../two-port.ts';
import { mul, sub, type Complex } from '../numerics/complex.ts';
import { meetNeighbours } from './neighbours.ts';
import type { HoleElement, Network } from './network.ts';

/**
 * How the input admittance answers to every small change in the network, exactly, from one walk.
 *
 * Let p, u be the state of the network and δp, δu what a small change adds to it. For a reciprocal two-port
 * (AD − BC = 1) the number
 *
 *   W = p·δu − u·δp
 *
 * is the same on both its sides. At the mouthpiece δY = δ(u/p) = W/p². So a change anywhere needs only the
 * state where it happens: reciprocity carries it through everything between there and the mouthpiece, and the
 * left partial product is never formed.
 *
 *   shunt admittance y       W = p²·δy
 *   series impedance z       W = −u²·δz
 *   two-port                 W = p₁(δC p₂ + δD u₂) − u₁(δA p₂ + δB u₂)
 *   bell load z, u = 1       W = −δz
 *   a stretch of bore δx     W = (p²Y' − u²Z')·δx   Z', Y' per metre at the place
 *   between open holes       W = −Σ U_i δZ_ij U_j   (neighbours.ts)
 *
 * **Source:** ours; the invariant is Lagrange's identity for the wave equation. Checked against central
 * differences in the tests.
 */

/** What the bench can change at one hole. Slopes of the input admittance, re and im, m³/(Pa·s) per m. */
export interface HoleSensitivity {
  readonly id: string;
  /** per m of end length, everything beyond the rim plane; zero for a closed hole */
  readonly endRe: number;
  readonly endIm: number;
  /** K − 1 of the gap's friction and dK/d ln gap: what the gap's share counts as end length, and how that changes */
  readonly friction: Complex;
  readonly frictionSlope: Complex;
  /** per unit of vent share, which sets the series length; zero for a closed hole */
  readonly shareRe: number;
  readonly shareIm: number;
  /** per m of chimney, the vent share held */
  readonly chimneyRe: number;
  readonly chimneyIm: number;
  /** per m of hole radius, end length and vent share held */
  readonly radiusRe: number;
  readonly radiusIm: number;
  /**
   * per m towards the bell: the bore before the hole longer, that after it shorter; the bore's radius at the hole
   * held, and its distances outside the horn. Worked out when called: few questions need it.
   */
  readonly place: () => Complex;
}

/** All first-order answers of a network's input admittance (with reed) at one frequency. */
export interface Sensitivities {
  readonly holes: readonly HoleSensitivity[];
  /** per °C, the whole column warming evenly */
  readonly temperatureRe: number;
  readonly temperatureIm: number;
  /** per m³ of mouthpiece volume, added at the neck's small end */
  readonly mouthpieceRe: number;
  readonly mouthpieceIm: number;
  /** per m of mouthpiece pulled out: its bore's end drawn longer at the neck's small end */
  readonly mouthpiecePlace: Complex;
  /** per m of bell correction */
  readonly bell: Complex;
  /** of ln(ρc) at the mouthpiece, per °C: how the unit of heights changes */
  readonly referenceLogSlope: number;
}

const twoPort = makeTwoPort();
const state = makeWaveState();
const onePort: OnePort = new Float64Array(4);
const variations: HoleVariations = new Float64Array(12);

/**
 * Slopes of the input admittance, reed included, with respect to every hole, the temperature and the
 * mouthpiece's volume.
 *
 * @param f Hz, usually a resonance
 */
export function sensitivitiesAt(network: Network, f: number): Sensitivities {
  const { elements } = network;
  const omega = 2 * Math.PI * f;
  const around = network.neighbours ? meetNeighbours(network, f) : null;

  const bell = network.bellWarming;
  openEndImpedanceAt(network.bellRadius, f, network.bellAir, network.bellCorrection, onePort);
  state.fill(0);
  state[0] = onePort[0];
  state[1] = onePort[1];
  state[2] = 1;
  // Z = ρc·ζ(f/c): d/dT = Z(ρ' + c') − f c'·dZ/df, primes for logarithmic slopes.
  const warm = bell.density + bell.soundSpeed;
  let wTempRe = -(onePort[0] * warm - f * bell.soundSpeed * onePort[2]);
  let wTempIm = -(onePort[1] * warm - f * bell.soundSpeed * onePort[3]);
  const wBell = openEndPerLength(network.bellRadius, f, network.bellAir, { re: onePort[0], im: onePort[1] });
  let wMouthRe = 0;
  let wMouthIm = 0;
  let wPlace: Complex = NOTHING;
  const holes: Mutable<Omit<HoleSensitivity, 'place'>>[] = [];
  const moves: Move[] = [];

  for (let i = elements.length - 1; i >= 0; i--) {
    const element = elements[i];
    const logSlopes = element.warming;
    if (element.kind === 'bore') {
      const { 0: pr, 1: pi, 2: ur, 3: ui } = state;
      coneWarmingAt(element.piece, f, logSlopes, twoPort);
      applyTwoPort(twoPort, state, false);
      const m = twoPort;
      const dpr = m[8] * pr - m[9] * pi + m[10] * ur - m[11] * ui;
      const dpi = m[8] * pi + m[9] * pr + m[10] * ui + m[11] * ur;
      const dur = m[12] * pr - m[13] * pi + m[14] * ur - m[15] * ui;
      const dui = m[12] * pi + m[13] * pr + m[14] * ui + m[15] * ur;
      wTempRe += state[0] * dur - state[1] * dui - (state[2] * dpr - state[3] * dpi);
      wTempIm += state[0] * dui + state[1] * dur - (state[2] * dpi + state[3] * dpr);
    } else if (element.kind === 'volume') {
      const squareRe = state[0] * state[0] - state[1] * state[1];
      const squareIm = 2 * state[0] * state[1];
      const perVolume = omega / (element.air.density * element.air.soundSpeed ** 2);
      wMouthRe -= squareIm * perVolume;
      wMouthIm += squareRe * perVolume;
      const y = omega * element.compliance;
      const dy = -y * (logSlopes.density + 2 * logSlopes.soundSpeed);
      wTempRe -= squareIm * dy;
      wTempIm += squareRe * dy;
      onePort[0] = 0;
      onePort[1] = y;
      applyShunt(onePort, state, false);
      const mouthpiece = pieceBeside(elements, i, -1);
      wPlace = stretchOf(mouthpiece, mouthpiece?.r2 ?? 0, f, squaresOf(state));
    } else {
      const bellSide = squaresOf(state);
      const hole = passHole(element, f, around?.extras.get(element.hole.id));
      moves.push({ i, radius: element.hole.boreRadius, bellSide, mouthSide: squaresOf(state) });
      holes.push(hole.sensitivity);
      wTempRe += hole.temperatureRe;
      wTempIm += hole.temperatureIm;
    }
  }

  // δY = W/p²
  const pr = state[0];
  const pi = state[1];
  const squareRe = pr * pr - pi * pi;
  const squareIm = 2 * pr * pi;
  const norm = squareRe * squareRe + squareIm * squareIm;
  const iRe = squareRe / norm;
  const iIm = -squareIm / norm;
  for (const hole of holes) {
    for (const [re, im] of PARTS) {
      const wRe = hole[re];
      hole[re] = wRe * iRe - hole[im] * iIm;
      hole[im] = wRe * iIm + hole[im] * iRe;
    }
  }
  const mouth = network.mouthWarming;
  const reedSlope = -omega * network.reedCompliance * (mouth.density + 2 * mouth.soundSpeed);
  return {
    holes: holes
      .map((hole, n): HoleSensitivity => {
        const { i, radius, bellSide, mouthSide } = moves[n];
        const place = (): Complex => {
          const longer = stretchOf(pieceBeside(elements, i, -1), radius, f, mouthSide);
          return mul(sub(longer, stretchOf(pieceBeside(elements, i, 1), radius, f, bellSide)), {
            re: iRe,
            im: iIm,
          });
        };
        return Object.assign(hole, { place });
      })
      .reverse(),
    temperatureRe: wTempRe * iRe - wTempIm * iIm + (around?.warming.re ?? 0),
    temperatureIm: wTempRe * iIm + wTempIm * iRe + reedSlope + (around?.warming.im ?? 0),
    mouthpieceRe: wMouthRe * iRe - wMouthIm * iIm,
    mouthpieceIm: wMouthRe * iIm + wMouthIm * iRe,
    mouthpiecePlace: mul(wPlace, { re: iRe, im: iIm }),
    bell: mul({ re: -wBell.re, im: -wBell.im }, { re: iRe, im: iIm }),
    referenceLogSlope: mouth.density + mouth.soundSpeed,
  };
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

const PARTS = [
  ['endRe', 'endIm'],
  ['shareRe', 'shareIm'],
  ['chimneyRe', 'chimneyIm'],
  ['radiusRe', 'radiusIm'],
] as const;

const NOTHING: Complex = Object.freeze({ re: 0, im: 0 });

/** The piece of bore next to an element, past holes at the same place; null at an end. */
function pieceBeside(elements: Network['elements'], from: number, step: 1 | -1): ConePiece | null {
  for (let i = from + step; i >= 0 && i < elements.length; i += step) {
    const element = elements[i];
    if (element.kind === 'bore') return element.piece;
  }
  return null;
}

/** Where a hole stands among the elements, and the state on both its sides. */
interface Move {
  readonly i: number;
  readonly radius: number;
  readonly bellSide: Squares;
  readonly mouthSide: Squares;
}

/** p² and u², real and imaginary parts. */
type Squares = readonly [number, number, number, number];

function squaresOf(at: Float64Array): Squares {
  return [at[0] * at[0] - at[1] * at[1], 2 * at[0] * at[1], at[2] * at[2] - at[3] * at[3], 2 * at[2] * at[3]];
}

/** W per m of bore added where a state stands; nothing where there is no bore. */
function stretchOf(piece: ConePiece | null, radius: number, f: number, at: Squares): Complex {
  if (piece === null) return NOTHING;
  const { z, y } = borePerMetreAt(piece, radius, f);
  return sub(mul({ re: at[0], im: at[1] }, y), mul({ re: at[2], im: at[3] }, z));
}

/** Takes the state past a hole and gives the W of each of its changes, still undivided by p². */
function passHole(
  element: HoleElement,
  f: number,
  extra: Complex | undefined,
): { sensitivity: Mutable<Omit<HoleSensitivity, 'place'>>; temperatureRe: number; temperatureIm: number } {
  const { hole, tube, end, air, warming, halfSeriesPerHz } = element;
  // Both halves of the series impedance: −(u₂² + u₁²)·δz, δz = jωρδt_a/2S.
  let uRe = state[2] * state[2] - state[3] * state[3];
  let uIm = 2 * state[2] * state[3];
  applyReactance(halfSeriesPerHz, f, state, false);
  const pRe = state[0] * state[0] - state[1] * state[1];
  const pIm = 2 * state[0] * state[1];
  holeVariationsAt(hole, tube, f, warming, variations, onePort, extra);
  applyShunt(onePort, state, false);
  uRe += state[2] * state[2] - state[3] * state[3];
  uIm += 2 * state[2] * state[3];
  applyReactance(halfSeriesPerHz, f, state, false);

  const series = seriesLengthSlopes(hole, end.ventShare);
  const perLength = (air.density * f) / hole.boreRadius ** 2;
  // −u²·j·x = (u_im·x, −u_re·x)
  const shareX = perLength * series.ventShare;
  const chimneyX = perLength * series.chimney;
  const radiusX = perLength * series.holeRadius;
  const warmX = halfSeriesPerHz * f * warming.density;
  const v = variations;
  const open = end.endLength !== Infinity;
  return {
    sensitivity: {
      id: hole.id,
      endRe: open ? pRe * v[0] - pIm * v[1] : 0,
      endIm: open ? pRe * v[1] + pIm * v[0] : 0,
      friction: { re: v[8], im: v[9] },
      frictionSlope: { re: v[10], im: v[11] },
      shareRe: open ? uIm * shareX : 0,
      shareIm: open ? -uRe * shareX : 0,
      chimneyRe: pRe * v[2] - pIm * v[3] + uIm * chimneyX,
      chimneyIm: pRe * v[3] + pIm * v[2] - uRe * chimneyX,
      radiusRe: pRe * v[4] - pIm * v[5] + uIm * radiusX,
      radiusIm: pRe * v[5] + pIm * v[4] - uRe * radiusX,
    },
    temperatureRe: pRe * v[6] - pIm * v[7] + uIm * warmX,
    temperatureIm: pRe * v[7] + pIm * v[6] - uRe * warmX,
  };
}
