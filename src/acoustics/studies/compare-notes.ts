import type { AirColumn } from '../air/air.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import { scaledPadModel } from '../holes/pad-models/pad-model.ts';
import type { Horn, Setup } from '../horn.ts';
import { FINGERINGS, type Fingering } from '../keywork/fingerings.ts';
import type { NetworkOptions } from '../network/network.ts';
import { moreNoticed, whoNoticesPitch, whoNoticesStrength, type Measured, type Notice } from './noticed.ts';
import { asItStands, readingsWorth, type KeyPlusMinus, type ReadingsWorth } from './readings-worth.ts';
import { playWholeHorn, type Answer, type WholeHornNote } from './whole-horn.ts';

/**
 * Side by side: two to four setups, of one horn or of several, the first of them the reference.
 *
 * Notes align by fingering, keys by id and failing that by number. The ± of a difference puts together, as the
 * root of the sum of squares (notes/physics/side-by-side.md):
 *
 *   readings   by exact derivatives; of one horn, the same reading in both setups errs the same way in both
 *   pad model  its stated relative error on every pad at once; of one horn, the same way in both
 *   bore       for different horns only, {@link MODEL_CENTS} and {@link MODEL_STRENGTH} each
 */
export interface Compared {
  readonly label: string;
  readonly horn: Horn;
  readonly setup: Setup;
  readonly air: AirColumn;
  /** Hz, sounding A4, default 440 */
  readonly a4?: number;
  /** by hole id; what is left out counts as exact */
  readonly plusMinus?: ReadonlyMap<string, KeyPlusMinus>;
}

/** Choices about the comparison. */
export interface CompareOptions extends NetworkOptions {
  /** which fingerings, default all */
  readonly fingerings?: readonly Fingering[];
}

/** One fingering in one setup. */
export type NoteInSetup =
  | {
      readonly found: true;
      /** Hz */
      readonly frequency: number;
      /** from equal temperament */
      readonly cents: number;
      /** of the resonance, in units of ρc/S at the neck's small end */
      readonly height: number;
      /** Hz; null where fewer than two holes are open */
      readonly cutoff: number | null;
    }
  | { readonly found: false; readonly reason: string };

/** One fingering against the reference. */
export interface NoteDifference {
  readonly cents: Measured;
  /** of resonance height, dB; null where the horns sound at different pitches, whose heights are no measure of each other */
  readonly strengthDb: Measured | null;
  /** Hz; null where either has none */
  readonly cutoff: number | null;
  readonly byPitch: Notice;
  readonly byStrength: Notice | null;
  /** the more noticed of the two */
  readonly noticedBy: Notice;
}

/**
 * What a plane-wave model may err by on a whole instrument, cents.
 *
 * **Source:** Lefebvre 2010, thesis, McGill University (abstract read).
 */
export const MODEL_CENTS = 10;

/**
 * What the height of a resonance may err by, as a share: half of the span 4…19 % by which open holes that hear
 * each other lower it, which this model leaves out. Taken as an error, that span's middle being common to horns.
 *
 * **Source:** Lefebvre, Scavone & Kergomard 2013 (abstract read) for the span; the halving is ours.
 */
export const MODEL_STRENGTH = 0.075;

const DB_PER_LOG = 20 / Math.LN10;

/**
 * Whether two horns are one: the same bore, mouthpiece and reed, and the same holes at the same places.
 * A hole or hinge measured anew leaves it the same horn.
 */
export function isSameHorn(a: Horn, b: Horn): boolean {
  if (a === b) return true;
  return (
    a.transposition === b.transposition &&
    a.neckStart === b.neckStart &&
    a.reedVolume === b.reedVolume &&
    a.extraMouthpieceVolume === b.extraMouthpieceVolume &&
    a.bore.referenceRadius === b.bore.referenceRadius &&
    a.bore.bellCorrection === b.bore.bellCorrection &&
    a.bore.stations.length === b.bore.stations.length &&
    a.bore.stations.every(
      ({ x, radius }, i) => x === b.bore.stations[i].x && radius === b.bore.stations[i].radius,
    ) &&
    a.holes.length === b.holes.length &&
    a.holes.every(({ id, x, hinge }, i) => {
      const other = b.holes[i];
      return id === other.id && x === other.x && (hinge === null) === (other.hinge === null);
    })
  );
}

/** One setup played: its notes, what its readings are worth, and what the pad model's error does. */
export interface Played {
  readonly compared: Compared;
  readonly notes: ReadonlyMap<string, WholeHornNote>;
  readonly worth: ReadingsWorth;
  /** by fingering id: what the pad model's stated error does, either way; left out where the note is lost by it */
  readonly padModel: ReadonlyMap<string, Answer>;
}

/** Plays one setup, and once more with the pad model erring either way. */
export function playCompared(compared: Compared, options: CompareOptions): Played {
  const { horn, setup, air, a4, plusMinus } = compared;
  const touches = new Set(horn.keywork.touches.map(({ id }) => id));
  const fingerings = (options.fingerings ?? FINGERINGS).filter((f) => f.touches.every((t) => touches.has(t)));
  const standing = asItStands(horn, setup);
  const playing = { ...options, ...(a4 === undefined ? {} : { a4 }), fingerings };
  const notes = playWholeHorn(standing.horn, standing.setup, air, playing);
  const near = new Map(
    notes.flatMap(({ fingering, outcome }) =>
      outcome.found ? [[fingering.id, outcome.resonance.frequency] as const] : [],
    ),
  );
  const model = options.padModel ?? DEFAULT_PAD_MODEL;
  const erring = [1 - model.relativeError, 1 + model.relativeError].map((factor) =>
    playWholeHorn(standing.horn, standing.setup, air, {
      ...playing,
      near,
      answers: false,
      padModel: scaledPadModel(model, factor),
    }),
  );
  return {
    compared,
    notes: new Map(notes.map((note) => [note.fingering.id, note])),
    worth: readingsWorth(horn, setup, plusMinus ?? new Map(), notes),
    padModel: new Map(
      notes.flatMap(({ fingering }, i) => {
        const spread = halfBetween(erring[0][i], erring[1][i]);
        return spread === null ? [] : [[fingering.id, spread] as const];
      }),
    ),
  };
}

function halfBetween(low: WholeHornNote, high: WholeHornNote): Answer | null {
  if (!low.outcome.found || !high.outcome.found) return null;
  return {
    cents: (high.outcome.cents - low.outcome.cents) / 2,
    logHeight: Math.log(high.outcome.resonance.height / low.outcome.resonance.height) / 2,
  };
}

/** One fingering in one setup. */
export function noteIn({ notes }: Played, { id, touches }: Fingering): NoteInSetup {
  const note = notes.get(id);
  if (note === undefined) {
    return { found: false, reason: `this horn lacks one of the touches ${touches.join(', ')}` };
  }
  const { outcome, cutoff } = note;
  if (!outcome.found) return outcome;
  const { frequency, height } = outcome.resonance;
  return {
    found: true,
    frequency,
    cents: outcome.cents,
    height,
    cutoff: cutoff.found ? cutoff.frequency : null,
  };
}

/** One fingering against the reference; null where it is lost in either, or by the pad model's error. */
export function compareNote(
  first: Played,
  other: Played,
  sameHorn: boolean,
  fingering: Fingering,
): NoteDifference | null {
  const a = noteIn(first, fingering);
  const b = noteIn(other, fingering);
  const spread = plusMinusOf(first, other, sameHorn, fingering.id);
  if (!a.found || !b.found || spread === null) return null;
  const cents = { value: b.cents - a.cents, plusMinus: spread.cents };
  const samePitch = first.compared.horn.transposition === other.compared.horn.transposition;
  const strengthDb = samePitch
    ? { value: DB_PER_LOG * Math.log(b.height / a.height), plusMinus: DB_PER_LOG * spread.logHeight }
    : null;
  const byPitch = whoNoticesPitch(cents);
  const byStrength = strengthDb === null ? null : whoNoticesStrength(strengthDb);
  return {
    cents,
    strengthDb,
    cutoff: a.cutoff === null || b.cutoff === null ? null : b.cutoff - a.cutoff,
    byPitch,
    byStrength,
    noticedBy: byStrength === null ? byPitch : moreNoticed(byPitch, byStrength),
  };
}

/** The ± of one note's difference; null where the pad model's error loses the note. */
function plusMinusOf(first: Played, other: Played, sameHorn: boolean, id: string): Answer | null {
  const modelA = first.padModel.get(id);
  const modelB = other.padModel.get(id);
  const a = first.worth.effects.get(id);
  const b = other.worth.effects.get(id);
  if (modelA === undefined || modelB === undefined || a === undefined || b === undefined) return null;
  const parts: Answer[] = sameHorn
    ? [less(modelB, modelA)]
    : [modelA, modelB, ...[1, 2].map(() => ({ cents: MODEL_CENTS, logHeight: Math.log1p(MODEL_STRENGTH) }))];
  const once = sameHorn ? sameReadings(first.worth, other.worth) : a.map(() => false);
  a.forEach((effect, i) => {
    if (once[i]) parts.push(less(b[i], effect));
    else parts.push(effect);
  });
  b.forEach((effect, i) => {
    if (!once[i]) parts.push(effect);
  });
  return {
    cents: Math.hypot(...parts.map((part) => part.cents)),
    logHeight: Math.hypot(...parts.map((part) => part.logHeight)),
  };
}

/** Which readings of one horn are one reading in both setups: the same value at the same point, the same ±. */
function sameReadings(a: ReadingsWorth, b: ReadingsWorth): boolean[] {
  return a.readings.map((reading, i) => {
    const other = b.readings[i];
    return reading.value === other.value && reading.at === other.at && reading.plusMinus === other.plusMinus;
  });
}

function less(a: Answer, b: Answer): Answer {
  return { cents: a.cents - b.cents, logHeight: a.logHeight - b.logHeight };
}
