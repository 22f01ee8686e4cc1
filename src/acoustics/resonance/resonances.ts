import { findRoot } from '../numerics/find-root.ts';
import { inputAdmittanceAt } from '../network/input-admittance.ts';
import type { Network } from '../network/network.ts';

/**
 * What a resonance of the air column is to the player.
 *
 * The reed's compliance is part of the column. At resonance the input admittance Y = G + jB is real and B
 * rises through zero.
 */
export interface Resonance {
  /** Hz */
  readonly frequency: number;
  /** 1/(G·Z_c): the peak's height in units of ρc/S of the neck's small end */
  readonly height: number;
  /** Q = f·B'/(2G) */
  readonly q: number;
  /** s, Q/(πf): the time the oscillation takes to grow or fade by e */
  readonly riseTime: number;
}

/** 0.001 cent is 5.8e-7 of the frequency; we polish well below it. */
const TOLERANCE = 1e-12;

/**
 * The step, relative, after which Newton's method is done: what is left goes with its square times half
 * f·B''/B', some tens, so with 1e-14.
 */
const LAST_STEP = 1e-8;

/** Widest step of the search, as a share of the spacing between resonances, c/(2·length). */
const STEPS_PER_SPACING = 10;

/**
 * Every resonance between two frequencies, found by bracketing and polishing.
 *
 * The search walks in steps small against the spacing of resonances. It halves a step over which the angle of
 * the input reflection turns by more than a radian, so that a sharp peak is not stepped over, and one whose
 * tangents leave room for B to cross zero and come back. A bracket is a step
 * over which B goes from negative to positive without passing a pole (G below 1/Z_c at the crossing).
 *
 * @param from Hz, > 0
 * @param to   Hz, > from
 */
export function findResonances(network: Network, from: number, to: number): Resonance[] {
  const found: Resonance[] = [];
  const y = new Float64Array(4);
  const widest = widestStep(network);
  const sampleAt = (f: number): Sample => {
    inputAdmittanceAt(network, f, 'with reed', y);
    const g = y[0] * network.referenceImpedance;
    const b = y[1] * network.referenceImpedance;
    return { f, b: y[1], slope: y[3], angle: -Math.atan2(2 * b, 1 - g * g - b * b) };
  };
  let last = sampleAt(from);
  while (last.f < to) {
    let next = sampleAt(Math.min(to, last.f + widest));
    const tooWide = (): boolean =>
      Math.abs(wrap(next.angle - last.angle)) > 1 || mayHideCrossings(last, next);
    while (tooWide() && next.f - last.f > widest / 256) next = sampleAt(0.5 * (last.f + next.f));
    if (last.b < 0 && next.b >= 0) {
      const resonance = polish(network, last.f, next.f);
      if (resonance !== null) found.push(resonance);
    }
    last = next;
  }
  return found;
}

/** B, its slope and the angle of the input reflection at a frequency. */
interface Sample {
  readonly f: number;
  readonly b: number;
  readonly slope: number;
  readonly angle: number;
}

/** Whether B may cross zero and come back between two samples of one sign: where the tangents meet lies beyond zero. */
function mayHideCrossings(last: Sample, next: Sample): boolean {
  if (last.b * next.b <= 0 || last.b * last.slope >= 0 || next.b * next.slope <= 0) return false;
  const meet = (next.b - last.b + last.slope * last.f - next.slope * next.f) / (last.slope - next.slope);
  return (last.b + last.slope * (meet - last.f)) * last.b < 0;
}

function widestStep(network: Network): number {
  let length = 0;
  for (const e of network.elements) if (e.kind === 'bore') length += e.piece.length;
  return network.bellAir.soundSpeed / (2 * length) / STEPS_PER_SPACING;
}

function wrap(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}

/** The resonance inside a bracket, or null where B jumps through a pole instead of crossing zero. */
function polish(network: Network, lower: number, upper: number): Resonance | null {
  const y = new Float64Array(4);
  const root = findRoot(
    (f, out) => {
      inputAdmittanceAt(network, f, 'with reed', y);
      out[0] = y[1];
      out[1] = y[3];
    },
    lower,
    upper,
    TOLERANCE,
  );
  if (!root.found) return null;
  inputAdmittanceAt(network, root.x, 'with reed', y);
  return y[3] > 0 ? makeResonance(network, root.x, y) : null;
}

function makeResonance(network: Network, f: number, y: Float64Array): Resonance {
  const q = (f * y[3]) / (2 * y[0]);
  return {
    frequency: f,
    height: 1 / (y[0] * network.referenceImpedance),
    q,
    riseTime: q / (Math.PI * f),
  };
}

/** What following one note's resonance came to. */
export type NoteOutcome =
  | { readonly found: true; readonly resonance: Resonance }
  | { readonly found: false; readonly reason: string };

/** Half the interval between the second and third resonance of a complete cone, cents: beyond it lies another mode. */
const WINDOW_CENTS = 350;

/**
 * The resonance a note sounds on: the one nearest to the wanted frequency, within ±350 cents.
 *
 * Newton's steps from the wanted frequency mostly end at it; then only what lies nearer still is searched.
 *
 * @param target Hz
 */
export function resonanceNear(network: Network, target: number): NoteOutcome {
  const settled = settle(network, target);
  const window = WINDOW_CENTS * (Math.LN2 / 1200);
  const distance = (r: Resonance): number => Math.abs(Math.log(r.frequency / target));
  const reach = settled === null ? window : Math.min(distance(settled), window);
  const span = Math.exp(reach);
  const candidates = findResonances(network, target / span, target * span);
  if (settled !== null && reach < window) candidates.push(settled);
  if (candidates.length === 0) {
    return { found: false, reason: `no resonance within ${WINDOW_CENTS} cents of ${target.toFixed(1)} Hz` };
  }
  return { found: true, resonance: candidates.reduce((a, b) => (distance(b) < distance(a) ? b : a)) };
}

/**
 * The same resonance after a small change, polished from where it was; falls back to a search.
 *
 * @param near Hz, where the resonance was
 */
export function followResonance(network: Network, near: number): NoteOutcome {
  const settled = settle(network, near);
  return settled === null ? resonanceNear(network, near) : { found: true, resonance: settled };
}

/**
 * How far Newton's first step goes from a frequency, cents: what a resonance has moved by from there, where that
 * is a small part of its width. NaN where B falls.
 *
 * @param near Hz
 */
export function firstStepCents(network: Network, near: number): number {
  const y = new Float64Array(4);
  inputAdmittanceAt(network, near, 'with reed', y);
  return y[3] > 0 ? (-1200 / Math.LN2) * (y[1] / y[3] / near) : NaN;
}

/** Newton's steps from a frequency to the resonance beside it; null where they go further than 6 % or do not end. */
function settle(network: Network, near: number): Resonance | null {
  const y = new Float64Array(4);
  let f = near;
  let step = Infinity;
  for (let i = 0; i < 12; i++) {
    inputAdmittanceAt(network, f, 'with reed', y);
    if (!(y[3] > 0)) return null;
    if (Math.abs(step) <= LAST_STEP * f) return makeResonance(network, f, y);
    step = y[1] / y[3];
    f -= step;
    if (!(Math.abs(f / near - 1) < 0.06)) return null;
  }
  return null;
}
