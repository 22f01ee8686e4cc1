import { standingPad, type Horn, type Setup, type WholeHornNote } from '../../acoustics/index.ts';
import type { ModelWarning } from '../../documents/model-warnings.ts';

/** One fingering, whatever the setup. */
export interface FingeringReport {
  readonly id: string;
  /** written, ASCII */
  readonly note: string;
  /** how it differs from the usual fingering; empty for the usual one */
  readonly way: string;
  readonly register: 1 | 2 | 3;
}

/** One pad with a hinge. */
export interface PadReport {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  /** as it stands found, links considered */
  readonly foundFrontMm: number;
}

/**
 * What the whole horn does in one setup, in bench units, packed to cross quickly. NaN where a note is lost or
 * has no lattice.
 */
export interface ScaleNumbers {
  /** from equal temperament, one per fingering */
  readonly cents: Float64Array;
  /** resonance height in units of ρc/S at the neck's small end, one per fingering */
  readonly heights: Float64Array;
  readonly cutoffHz: Float64Array;
  /** per mm of each pad's own stop at the front, links followed: fingering by fingering, in the pads' order */
  readonly centsPerMm: Float64Array;
  /** change of the resonance's height, likewise */
  readonly strengthPercentPerMm: Float64Array;
  readonly warnings: readonly ModelWarning[];
}

/** The whole horn: what does not change with a proposal, and the horn as found. */
export interface ScaleReport {
  readonly fingerings: readonly FingeringReport[];
  /** from the bell to the mouthpiece */
  readonly pads: readonly PadReport[];
  readonly transpositionSemitones: number;
  readonly found: ScaleNumbers;
}

/** Strength of one note against the level of playing, an estimate. */
export interface LoudReport {
  readonly fingeringId: string;
  /** peak pressure in the mouthpiece */
  readonly pressuresKpa: readonly number[];
  /** share of the strength of soft playing; null where the note is lost */
  readonly found: readonly (number | null)[];
  readonly proposed: readonly (number | null)[];
}

/** mm at the front by pad id: the openings a person proposed. */
export type ProposedOpenings = Readonly<Record<string, number>>;

const PER_MM = 1e-3;

/** The pads with hinges, bell first, as indices into the horn's holes. */
function padOrder(horn: Horn): number[] {
  return horn.holes.flatMap((hole, i) => (hole.hinge === null ? [] : [i])).reverse();
}

/** Packs a played horn. */
export function packScale(
  horn: Horn,
  notes: readonly WholeHornNote[],
  warnings: readonly ModelWarning[],
): ScaleNumbers {
  const pads = padOrder(horn);
  const numbers: ScaleNumbers = {
    cents: new Float64Array(notes.length).fill(NaN),
    heights: new Float64Array(notes.length).fill(NaN),
    cutoffHz: new Float64Array(notes.length).fill(NaN),
    centsPerMm: new Float64Array(notes.length * pads.length).fill(NaN),
    strengthPercentPerMm: new Float64Array(notes.length * pads.length).fill(NaN),
    warnings,
  };
  notes.forEach(({ outcome, cutoff }, n) => {
    if (cutoff.found) numbers.cutoffHz[n] = cutoff.frequency;
    if (!outcome.found) return;
    numbers.cents[n] = outcome.cents;
    numbers.heights[n] = outcome.resonance.height;
    if (outcome.answers === null) return;
    for (let p = 0; p < pads.length; p++) {
      const { opening } = outcome.answers.keys[pads[p]];
      numbers.centsPerMm[n * pads.length + p] = opening.cents * PER_MM;
      numbers.strengthPercentPerMm[n * pads.length + p] = 100 * opening.logHeight * PER_MM;
    }
  });
  return numbers;
}

/** Makes a horn as found plain. */
export function makeScaleReport(
  horn: Horn,
  setup: Setup,
  notes: readonly WholeHornNote[],
  warnings: readonly ModelWarning[],
): ScaleReport {
  return {
    fingerings: notes.map(({ fingering: { id, note, way, register } }) => ({ id, note, way, register })),
    pads: padOrder(horn).map((i) => {
      const { id, number, name } = horn.holes[i];
      return { id, number, name, foundFrontMm: standingPad(horn, setup, id).pose.front / PER_MM };
    }),
    transpositionSemitones: horn.transposition,
    found: packScale(horn, notes, warnings),
  };
}

/** The buffers of packed numbers, to hand over rather than copy. */
export function buffersOf(numbers: ScaleNumbers): ArrayBuffer[] {
  const { cents, heights, cutoffHz, centsPerMm, strengthPercentPerMm } = numbers;
  return [cents, heights, cutoffHz, centsPerMm, strengthPercentPerMm].map(
    ({ buffer }) => buffer as ArrayBuffer,
  );
}
