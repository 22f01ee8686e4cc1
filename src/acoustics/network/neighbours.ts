import { coneTwoPortAt } from '../bore/cone.ts';
import { chimneyLineAt, holeAdmittanceAt, type ChimneyLine } from '../holes/tone-hole.ts';
import { add, div, mul, sub, type Complex } from '../numerics/complex.ts';
import { Matrix, solve } from '../numerics/linear-system.ts';
import {
  applyReactance,
  applyShunt,
  applyTwoPort,
  makeTwoPort,
  makeWaveState,
  type OnePort,
  type TwoPort,
  type WaveState,
} from '../two-port.ts';
import type { HoleElement, Network, NetworkElement } from './network.ts';
import { passElement, startAtBell, type OutletExtras } from './walk.ts';

/**
 * Open holes hear each other outside the horn: what one sends out presses on the outlet of the next.
 *
 *   p_o,i = Z_e,i U_i + Σ_j Z_ij U_j,   Z_ij = jωρ e^{−jkr}/(4πr),  j ≠ i
 *
 * r is the distance along the bore, but never less than the bore's radius there: holes at nearly one height
 * sit round the body, not inside each other. The bell is left out.
 *
 * With one unit of flow at the mouthpiece the pressures on the bore at the open holes are
 * p = G₀ − G·V, G_ij = p_L(x_<)p_R(x_>)/u_R(0), from a walk up from the bell (R) and one down from a blocked
 * mouthpiece (L), both with the open holes' shunts left off. The chimneys turn p, V into the outlets' p_o, U,
 * and a dense system gives all U at once.
 *
 * **Source:** Lefebvre, Scavone & Kergomard 2013, Acta Acustica 99, 975 (abstract read); the Green's-function
 * form is ours. **Holds for:** holes small against the wavelength.
 */
export interface Surroundings {
  /** what the neighbours add outside each open hole, as an impedance times S_h at the present flows */
  readonly extras: OutletExtras;
  /** what the change of Z_ij adds to the slope of the input admittance, per Hz and per °C */
  readonly slope: Complex;
  readonly warming: Complex;
}

interface OpenHole {
  readonly element: HoleElement;
  readonly line: ChimneyLine;
  readonly area: number;
  /** p_L and p_R on the bore in the middle of the hole's T */
  readonly left: Complex;
  readonly right: Complex;
}

const ZERO: Complex = { re: 0, im: 0 };

/** Solves the sound field round the open holes of a network at a frequency. */
export function meetNeighbours(network: Network, f: number): Surroundings {
  const { holes, mouth } = openHoles(network, f);
  if (holes.length < 2) return { extras: new Map(), slope: ZERO, warming: ZERO };
  const mutual = holes.map((a, i) => holes.map((b, j) => (i === j ? ZERO : mutualImpedance(a, b, f))));
  const outlets = solveOutlets(holes, mutual, mouth.flow);

  const extras = new Map<string, Complex>();
  let slope = ZERO;
  let warming = ZERO;
  let inputPressure = div(mouth.pressure, mouth.flow);
  holes.forEach((hole, i) => {
    let outside = ZERO;
    holes.forEach((other, j) => {
      const pressure = scale(mul(mutual[i][j], outlets[j]), other.area);
      outside = add(outside, pressure);
      const power = scale(mul(outlets[i], pressure), hole.area);
      const air = between(hole, other);
      const kr = (2 * Math.PI * f * distance(hole, other)) / air.soundSpeed;
      slope = sub(slope, mul(power, { re: 1 / f, im: -kr / f }));
      warming = sub(warming, mul(power, { re: air.densitySlope, im: kr * air.soundSpeedSlope }));
    });
    const extra = div(outside, outlets[i]);
    extras.set(hole.element.hole.id, extra);
    const into = boreVelocity(hole.line, outlets[i], extra);
    inputPressure = sub(inputPressure, scale(mul(div(hole.right, mouth.flow), into), hole.area));
  });
  const square = mul(inputPressure, inputPressure);
  return { extras, slope: div(slope, square), warming: div(warming, square) };
}

/** v on the bore side of a chimney from v at its outlet. */
function boreVelocity(line: ChimneyLine, outlet: Complex, extra: Complex): Complex {
  return mul(add(mul(line.ys, add(line.end, extra)), line.ch), outlet);
}

/**
 * Velocities at all outlets for one unit of flow at the mouthpiece:
 *   [χP + zσ + jωρt_i(yσP + χ) + G S(yσP + χ)] v = G₀,   P = diag(end) + Z_ij S_j
 */
function solveOutlets(
  holes: readonly OpenHole[],
  mutual: readonly (readonly Complex[])[],
  mouthFlow: Complex,
): Complex[] {
  const n = holes.length;
  const outside = holes.map((a, i) =>
    holes.map((b, j) => (i === j ? a.line.end : scale(mutual[i][j], b.area))),
  );
  const into = holes.map((a, i) =>
    outside[i].map((p, j) => (i === j ? add(mul(a.line.ys, p), a.line.ch) : mul(a.line.ys, p))),
  );
  const real = Matrix.zeros(2 * n, 2 * n);
  const wanted = Matrix.zeros(2 * n, 1);
  holes.forEach((a, i) => {
    const { line } = a;
    for (let j = 0; j < n; j++) {
      let entry = mul(line.ch, outside[i][j]);
      if (i === j) entry = add(entry, line.zs);
      entry = add(entry, mul({ re: 0, im: line.inner }, into[i][j]));
      for (let k = 0; k < n; k++) {
        const g = div(mul(holes[Math.min(i, k)].left, holes[Math.max(i, k)].right), mouthFlow);
        entry = add(entry, scale(mul(g, into[k][j]), holes[k].area));
      }
      real.set(i, j, entry.re);
      real.set(i, n + j, -entry.im);
      real.set(n + i, j, entry.im);
      real.set(n + i, n + j, entry.re);
    }
    const drive = div(a.right, mouthFlow);
    wanted.set(i, 0, drive.re);
    wanted.set(n + i, 0, drive.im);
  });
  const v = solve(real, wanted).to1DArray();
  return holes.map((_, i) => ({ re: v[i], im: v[n + i] }));
}

function mutualImpedance(a: OpenHole, b: OpenHole, f: number): Complex {
  const { density, soundSpeed } = between(a, b);
  const r = distance(a, b);
  const kr = (2 * Math.PI * f * r) / soundSpeed;
  const size = (density * f) / (2 * r);
  return { re: size * Math.sin(kr), im: size * Math.cos(kr) };
}

/** Density and sound speed half way between two holes, so that Z_ij = Z_ji, and their logarithmic slopes. */
function between(a: OpenHole, b: OpenHole): Between {
  const mean = (key: 'density' | 'soundSpeed'): [value: number, logSlope: number] => {
    const p = a.element.air[key];
    const q = b.element.air[key];
    return [(p + q) / 2, (p * a.element.warming[key] + q * b.element.warming[key]) / (p + q)];
  };
  const [density, densitySlope] = mean('density');
  const [soundSpeed, soundSpeedSlope] = mean('soundSpeed');
  return { density, densitySlope, soundSpeed, soundSpeedSlope };
}

interface Between {
  readonly density: number;
  readonly densitySlope: number;
  readonly soundSpeed: number;
  readonly soundSpeedSlope: number;
}

function distance(a: OpenHole, b: OpenHole): number {
  const p = a.element.hole;
  const q = b.element.hole;
  return Math.max(Math.abs(p.x - q.x), (p.boreRadius + q.boreRadius) / 2);
}

function scale(a: Complex, by: number): Complex {
  return { re: a.re * by, im: a.im * by };
}

const state: WaveState = makeWaveState();
const twoPort: TwoPort = makeTwoPort();
const onePort: OnePort = new Float64Array(4);

/** The open holes from the mouthpiece down, with both walks' pressures, and the R walk at the mouthpiece. */
function openHoles(
  network: Network,
  f: number,
): { holes: OpenHole[]; mouth: { pressure: Complex; flow: Complex } } {
  const { elements } = network;
  const right = new Map<HoleElement, Complex>();
  startAtBell(network, f, state);
  for (let i = elements.length - 1; i >= 0; i--) {
    const element = elements[i];
    if (!isOpen(element)) {
      passElement(element, f, state, false, null);
      continue;
    }
    applyReactance(element.halfSeriesPerHz, f, state, false);
    right.set(element, { re: state[0], im: state[1] });
    applyReactance(element.halfSeriesPerHz, f, state, false);
  }
  const mouth = { pressure: { re: state[0], im: state[1] }, flow: { re: state[2], im: state[3] } };

  const holes: OpenHole[] = [];
  state.fill(0);
  state[0] = 1;
  for (const element of elements) {
    if (!isOpen(element)) {
      passBack(element, f);
      continue;
    }
    applyReactance(-element.halfSeriesPerHz, f, state, false);
    holes.push({
      element,
      line: chimneyLineAt(element.tube, f),
      area: element.tube.area,
      left: { re: state[0], im: state[1] },
      right: right.get(element)!,
    });
    applyReactance(-element.halfSeriesPerHz, f, state, false);
  }
  return { holes, mouth };
}

function isOpen(element: NetworkElement): element is HoleElement {
  return element.kind === 'hole' && element.end.endLength !== Infinity;
}

/** Takes the state from an element's mouthpiece side to its bell side: the inverse, [D −B; −C A]. */
function passBack(element: NetworkElement, f: number): void {
  if (element.kind === 'bore') {
    coneTwoPortAt(element.piece, f, twoPort, false);
    for (const i of [0, 1]) {
      const a = twoPort[i];
      twoPort[i] = twoPort[6 + i];
      twoPort[6 + i] = a;
      twoPort[2 + i] *= -1;
      twoPort[4 + i] *= -1;
    }
    applyTwoPort(twoPort, state, false);
  } else if (element.kind === 'hole') {
    applyReactance(-element.halfSeriesPerHz, f, state, false);
    holeAdmittanceAt(element.tube, f, onePort, false);
    onePort[0] *= -1;
    onePort[1] *= -1;
    applyShunt(onePort, state, false);
    applyReactance(-element.halfSeriesPerHz, f, state, false);
  } else if (element.compliance !== 0) {
    onePort[0] = 0;
    onePort[1] = -2 * Math.PI * f * element.compliance;
    applyShunt(onePort, state, false);
  }
}
