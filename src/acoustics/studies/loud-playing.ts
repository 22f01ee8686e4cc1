import { chimneyLineAt } from '../holes/tone-hole.ts';
import { add, div, mul, type Complex } from '../numerics/complex.ts';
import { withHoleEnds, type HoleElement, type Network } from '../network/network.ts';
import { wavesAt } from '../network/walk.ts';
import { followResonance, type NoteOutcome, type Resonance } from '../resonance/resonances.ts';

/**
 * What loud playing does to a note: the flow separates at the gap and loses Δp = ½ρC·v|v|. For a sine the
 * first harmonic of that loss is a resistance
 *
 *   R = (4C/3π)·ρ|v|     per unit area, v the peak velocity through the narrowest area
 *
 * which is the curtain 2πb·h while that is less than the hole, else the hole itself.
 *
 * An ESTIMATE: the form is published, its constant C (about 1.2 for a rounded rim, 2.8 for a sharp one) is
 * unconfirmed for pads over tone holes.
 *
 * **Source:** Ingard & Ising 1967, JASA 42, 6; Atig et al. 2004; Dalmont et al. 2002 (from memory,
 * constants unconfirmed).
 */
export interface LoudOptions {
  /** C, 1.2…2.8, default 2 */
  readonly lossCoefficient?: number;
  /** centre opening of each open pad, m; a hole without one counts with its own area */
  readonly openings: ReadonlyMap<string, number>;
}

/** One level of playing. */
export interface LoudPoint {
  /** Pa, peak pressure in the mouthpiece */
  readonly pressure: number;
  /** the resonance at that level, or why there is none */
  readonly outcome: NoteOutcome;
  /** height as a share of that of soft playing */
  readonly strength: number;
  /** m/s, the highest peak velocity through any gap, and where */
  readonly fastest: { readonly id: string; readonly velocity: number } | null;
}

const DEFAULT_COEFFICIENT = 2;
const ROUNDS = 60;
const SETTLED = 1e-7;

/**
 * Height of one note's resonance against the level of playing.
 *
 * Solve, take the velocities, add the resistance, and again until it settles; each round goes half the way.
 *
 * @param soft      the note's resonance when played softly
 * @param pressures Pa, peak, in the mouthpiece
 */
export function strengthAgainstLevel(
  network: Network,
  soft: Resonance,
  pressures: readonly number[],
  options: LoudOptions,
): LoudPoint[] {
  return pressures.map((pressure) => playAt(network, soft, pressure, options));
}

function playAt(network: Network, soft: Resonance, pressure: number, options: LoudOptions): LoudPoint {
  const scale = ((4 * (options.lossCoefficient ?? DEFAULT_COEFFICIENT)) / (3 * Math.PI)) * pressure;
  const holes = network.elements.filter(
    (e): e is HoleElement => e.kind === 'hole' && e.end.endLength !== Infinity,
  );
  const resistances = new Map(holes.map((e) => [e.hole.id, 0]));
  let now = network;
  let outcome: NoteOutcome = { found: true, resonance: soft };
  let fastest: LoudPoint['fastest'] = null;
  for (let round = 0; round < ROUNDS && outcome.found; round++) {
    let change = 0;
    fastest = null;
    const velocities = outletVelocities(now, outcome.resonance.frequency);
    for (const { hole, air } of holes) {
      const perArea = velocities.get(hole.id)!;
      const narrowing = narrowest(hole.holeRadius, options.openings.get(hole.id));
      const velocity = perArea / narrowing;
      if (fastest === null || velocity * pressure > fastest.velocity) {
        fastest = { id: hole.id, velocity: velocity * pressure };
      }
      // R per unit of the narrow area; the chimney's velocity is smaller by the same ratio.
      const wanted = (scale * air.density * velocity) / narrowing;
      const before = resistances.get(hole.id)!;
      const next = 0.5 * (before + wanted);
      change = Math.max(change, Math.abs(next - before) / (1 + wanted));
      resistances.set(hole.id, next);
    }
    now = withHoleEnds(
      network,
      new Map(holes.map((e) => [e.hole.id, { ...e.end, flowResistance: resistances.get(e.hole.id)! }])),
    );
    outcome = followResonance(now, outcome.resonance.frequency);
    if (change < SETTLED) break;
  }
  const strength = outcome.found ? outcome.resonance.height / soft.height : 0;
  return { pressure, outcome, strength, fastest };
}

/** Narrowest area of the way out as a share of the hole's area, at most 1. */
function narrowest(holeRadius: number, opening: number | undefined): number {
  return opening === undefined ? 1 : Math.min(1, (2 * opening) / holeRadius);
}

/** Peak velocity at every open hole's rim plane per Pa in the mouthpiece, m/(s·Pa). */
export function outletVelocities(network: Network, f: number): Map<string, number> {
  const { holes, mouth } = wavesAt(network, f);
  const velocities = new Map<string, number>();
  for (const { element, pressure } of holes) {
    if (element.end.endLength === Infinity) continue;
    const { ch, zs, ys, inner, end } = chimneyLineAt(element.tube, f);
    // v_o = p/(χe + zσ + jωρt_i(yσe + χ))
    const n = add(mul(ys, end), ch);
    const below = add(add(mul(ch, end), zs), mul({ re: 0, im: inner }, n));
    const outlet: Complex = div(div(pressure, mouth), below);
    velocities.set(element.hole.id, Math.hypot(outlet.re, outlet.im));
  }
  return velocities;
}
