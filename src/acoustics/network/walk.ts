import { coneTwoPortAt } from '../bore/cone.ts';
import { openEndImpedanceAt } from '../bore/open-end.ts';
import { holeAdmittanceAt } from '../holes/tone-hole.ts';
import type { Complex } from '../numerics/complex.ts';
import {
  applyReactance,
  applyShunt,
  applyTwoPort,
  makeTwoPort,
  makeWaveState,
  type OnePort,
  type WaveState,
} from '../two-port.ts';
import type { HoleElement, Network, NetworkElement } from './network.ts';

/** Extra impedance times S_h at the outlets of open holes, by hole id: what the neighbours’ sound adds. */
export type OutletExtras = ReadonlyMap<string, Complex>;

const twoPort = makeTwoPort();
const onePort: OnePort = new Float64Array(4);

/** Sets the wave state to what the bell's radiation asks for, in the scale u = 1. */
export function startAtBell(network: Network, f: number, state: WaveState): void {
  openEndImpedanceAt(network.bellRadius, f, network.bellAir, network.bellCorrection, onePort);
  state.fill(0);
  state[0] = onePort[0];
  state[1] = onePort[1];
  state[2] = 1;
  state[4] = onePort[2];
  state[5] = onePort[3];
}

/** Takes the wave state from an element's bell side to its mouthpiece side. */
export function passElement(
  element: NetworkElement,
  f: number,
  state: WaveState,
  withSlope: boolean,
  extras: OutletExtras | null,
): void {
  if (element.kind === 'bore') {
    coneTwoPortAt(element.piece, f, twoPort, withSlope);
    applyTwoPort(twoPort, state, withSlope);
  } else if (element.kind === 'hole') {
    applyHole(element, f, state, withSlope, extras);
  } else if (element.compliance !== 0) {
    onePort[0] = 0;
    onePort[1] = 2 * Math.PI * f * element.compliance;
    onePort[2] = 0;
    onePort[3] = 2 * Math.PI * element.compliance;
    applyShunt(onePort, state, withSlope);
  }
}

function applyHole(
  { hole, tube, halfSeriesPerHz }: HoleElement,
  f: number,
  state: WaveState,
  withSlope: boolean,
  extras: OutletExtras | null,
): void {
  applyReactance(halfSeriesPerHz, f, state, withSlope);
  holeAdmittanceAt(tube, f, onePort, withSlope, extras?.get(hole.id));
  applyShunt(onePort, state, withSlope);
  applyReactance(halfSeriesPerHz, f, state, withSlope);
}

/** The pressure on the bore at one hole. */
export interface HolePressure {
  readonly element: HoleElement;
  readonly pressure: Complex;
}

const walking: WaveState = makeWaveState();

/**
 * Pressures on the bore at every hole, from the bell up, and at the mouthpiece tip, all in one (arbitrary)
 * scale.
 */
export function wavesAt(network: Network, f: number): { holes: HolePressure[]; mouth: Complex } {
  startAtBell(network, f, walking);
  const holes: HolePressure[] = [];
  for (let i = network.elements.length - 1; i >= 0; i--) {
    const element = network.elements[i];
    passElement(element, f, walking, false, null);
    if (element.kind !== 'hole') continue;
    // Back over the upper half of the series impedance to the middle of the T.
    const back = element.halfSeriesPerHz * f;
    holes.push({
      element,
      pressure: { re: walking[0] + back * walking[3], im: walking[1] - back * walking[2] },
    });
  }
  return { holes, mouth: { re: walking[0], im: walking[1] } };
}
