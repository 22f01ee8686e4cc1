import { Matrix, solve } from 'ml-matrix';
import {
  centsBetween,
  findFingering,
  makeAirColumn,
  makeNetwork,
  noteFrequency,
  resonanceNear,
} from '../../src/acoustics/index.ts';
import { hornFromDocument, setupFromDocument } from '../../src/documents/to-acoustics.ts';
import { SOLVED_BY } from './keywork.ts';
import type { HornPlan } from './plan.ts';
import { makeDocument, type PlannedHorn, type Solved } from './planned-horn.ts';

const AIR = makeAirColumn();
/** How far the palm D hole stays above small C's. */
const PALM_D_ABOVE = 3;
/** The octaves the shape is asked for, and how wide we would like them, cents. */
const OCTAVES = ['D', 'Eb', 'E', 'F', 'F#', 'G', 'G#', 'A', 'Bb side', 'B', 'C', 'C#'] as const;
const OCTAVE_AIM = 20;
/** The first eight, D to A, count double: there the shape can serve; above, the cone itself is against it. */
const octaveWeight = (i: number): number => (i < 8 ? 2 : 1);
/** How far, in units of one, each shape number may wander on an alto or tenor: neck 0.4 mm, mouthpiece 1 mm,
 * lengths 6 mm, body vent 3 mm (it must stay on the body), neck vent 20 mm. */
const SHAPE_SPREAD = [0.4, 0.4, 0.4, 1, 1, 6, 6, 3, 20];
/** The same on a planned horn. */
const spreadOf = (plan: HornPlan): readonly number[] => SHAPE_SPREAD.map((mm) => mm * plan.freedom);

/** First guess: a complete cone, each hole where a node of its note would lie. */
export function firstGuess(plan: HornPlan): Solved {
  const apex = plan.neckEntrance / (2 * Math.tan((plan.halfAngle * Math.PI) / 180));
  const places: Record<number, number> = {};
  for (const [pad, id] of SOLVED_BY) {
    const fingering = findFingering(id)!;
    const f = noteFrequency(fingering.note, plan.transposition);
    const wave = 347.23 / f / (fingering.register === 2 ? 1 : 2);
    places[pad] = Math.max(15, 1000 * wave - apex - 20);
  }
  return { length: plan.length, places, shape: SHAPE_SPREAD.map(() => 0) };
}

/** Sounding frequency of a fingering on a document's horn, Hz, or null where it has no resonance near its note. */
export function frequencyOf({ horn, setup }: PlannedHorn, fingeringId: string): number | null {
  const fingering = findFingering(fingeringId)!;
  const network = makeNetwork(hornFromDocument(horn), setupFromDocument(setup), fingering, AIR);
  const played = resonanceNear(network, noteFrequency(fingering.note, horn.transpositionSemitones));
  return played.found ? played.resonance.frequency : null;
}

/** Moves each hole until its note is in tune, bottom up, and again until nothing moves. */
export function solvePlaces(plan: HornPlan, start: Solved, sweeps: number): Solved {
  let { length } = start;
  const places: Record<number, number> = { ...start.places };
  const miss = (id: string): number => {
    const f = frequencyOf(makeDocument(plan, { length, places, shape: start.shape }), id);
    const { note } = findFingering(id)!;
    return f === null ? 0 : centsBetween(noteFrequency(note, plan.transposition), f);
  };
  for (let sweep = 0; sweep < sweeps; sweep++) {
    length += step(plan, 'Bb3', miss('Bb3'));
    for (const [pad, id] of SOLVED_BY) {
      for (let i = 0; i < 2; i++) places[pad] = Math.max(8, places[pad] + step(plan, id, miss(id)));
      // A note is that of its first open pad: palm D stays above small C, even where its note wants it lower.
      if (pad === 19) places[19] = Math.min(places[19], places[18] - PALM_D_ABOVE);
    }
  }
  return { length, places, shape: start.shape };
}

/** How far a hole moves for so many cents: its note's wave length in a cone, in proportion. */
function step(plan: HornPlan, id: string, cents: number): number {
  const fingering = findFingering(id)!;
  const f = noteFrequency(fingering.note, plan.transposition);
  const length = 347230 / f / (fingering.register === 2 ? 1 : 2);
  return (cents / 1200) * Math.LN2 * length;
}

/** Widths of the octaves beyond a pure octave, cents, low D up. */
export function octaveMisses(document: PlannedHorn): number[] {
  return OCTAVES.map((name) => {
    const [letter, way] = name.split(' ');
    const low = letter === 'C' || letter === 'C#' ? 5 : 4;
    const suffix = way === undefined ? '' : ` ${way}`;
    const f1 = frequencyOf(document, `${letter}${low}${suffix}`);
    const f2 = frequencyOf(document, `${letter}${low + 1}${suffix}`);
    return f1 === null || f2 === null ? 100 : centsBetween(2 * f1, f2);
  });
}

/** One Gauss–Newton step of the shape towards the wanted octaves, held near the plan by the spread. */
export function improveShape(plan: HornPlan, at: Solved): Solved {
  const wander = spreadOf(plan);
  const base = octaveMisses(makeDocument(plan, at));
  const rows = base.length;
  const jacobian = Matrix.zeros(rows + wander.length, wander.length);
  wander.forEach((spread, j) => {
    const nudge = 0.1 * spread;
    const shape = at.shape.map((v, i) => (i === j ? v + nudge : v));
    const moved = octaveMisses(makeDocument(plan, { ...at, shape }));
    moved.forEach((m, i) => jacobian.set(i, j, (octaveWeight(i) * (m - base[i])) / 0.1));
    jacobian.set(rows + j, j, STIFFNESS);
  });
  const wanted = Matrix.columnVector([
    ...base.map((m, i) => octaveWeight(i) * (OCTAVE_AIM - m)),
    ...at.shape.map((v, j) => (-STIFFNESS * v) / wander[j]),
  ]);
  const change = solve(jacobian, wanted, true).to1DArray();
  return {
    ...at,
    shape: at.shape.map((v, j) => {
      const next = v + 0.6 * Math.max(-0.5, Math.min(0.5, change[j])) * wander[j];
      return Math.max(-2 * wander[j], Math.min(2 * wander[j], next));
    }),
  };
}

/** Cents of octave error that one unit of spread counts as much as. */
const STIFFNESS = 3;
