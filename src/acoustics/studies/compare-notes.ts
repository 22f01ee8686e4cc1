import type { AirColumn } from '../air/air.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { PadModel } from '../holes/pad-models/pad-model.ts';
import type { Horn, Setup } from '../horn.ts';
import { FINGERINGS, type Fingering } from '../keywork/fingerings.ts';
import type { NetworkOptions } from '../network/network.ts';
import { moreNoticed, whoNoticesPitch, whoNoticesStrength, type Measured, type Notice } from './noticed.ts';
import { asItStands, EXACT, prepareReadings, type PlusMinus, type Readings } from './readings.ts';
import {
  budgetOf,
  differenceBudget,
  MODEL_ERROR,
  noteSlopes,
  uncalibrated,
  type Budget,
} from './uncertainty.ts';
import { playWholeHorn, type NoteAnswers, type WholeHornNote } from './whole-horn.ts';

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
  /** what is left out counts as exact */
  readonly plusMinus?: PlusMinus;
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
      /** of that pitch by itself, uncalibrated; null where its answers are not known */
      readonly centsPlusMinus: number | null;
      /** of the resonance, in units of ρc/S at the neck's small end */
      readonly height: number;
      /** Hz; null where fewer than two holes are open */
      readonly cutoff: number | null;
    }
  | { readonly found: false; readonly reason: string };

/** One fingering against the reference. */
export interface NoteDifference {
  readonly cents: Measured;
  /** what the ± of the cents is made of */
  readonly budget: Budget;
  /** of resonance height, dB; null where the horns sound at different pitches, whose heights are no measure of each other */
  readonly strengthDb: Measured | null;
  /** Hz; null where either has none */
  readonly cutoff: number | null;
  readonly byPitch: Notice;
  readonly byStrength: Notice | null;
  /** the more noticed of the two */
  readonly noticedBy: Notice;
}

const DB_PER_LOG = 20 / Math.LN10;

/**
 * Whether two horns are one: the same name, bore, mouthpiece and reed, and the same holes at the same places.
 * A hole or hinge measured anew leaves it the same horn. Two horns that were both begun from one example have its
 * bore in common and each its own name: they err each on their own.
 */
export function isSameHorn(a: Horn, b: Horn): boolean {
  if (a === b) return true;
  return (
    a.name === b.name &&
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

/** One setup played: its notes, and the readings its answers rest on. */
export interface Played {
  readonly compared: Compared;
  readonly notes: ReadonlyMap<string, WholeHornNote>;
  readonly readings: Readings;
  readonly padModel: PadModel;
}

/** Plays one setup with its answers. */
export function playCompared(compared: Compared, options: CompareOptions): Played {
  const { horn, setup, air, a4, plusMinus } = compared;
  const touches = new Set(horn.keywork.touches.map(({ id }) => id));
  const fingerings = (options.fingerings ?? FINGERINGS).filter((f) => f.touches.every((t) => touches.has(t)));
  const standing = asItStands(horn, setup);
  const playing = { ...options, ...(a4 === undefined ? {} : { a4 }), fingerings };
  const notes = playWholeHorn(standing.horn, standing.setup, air, playing);
  return {
    compared,
    notes: new Map(notes.map((note) => [note.fingering.id, note])),
    readings: prepareReadings(horn, setup, air, plusMinus ?? EXACT),
    padModel: options.padModel ?? DEFAULT_PAD_MODEL,
  };
}

/** One fingering in one setup. */
export function noteIn({ notes, readings, padModel }: Played, { id, touches }: Fingering): NoteInSetup {
  const note = notes.get(id);
  if (note === undefined) {
    return { found: false, reason: `this horn lacks one of the touches ${touches.join(', ')}` };
  }
  const { outcome, cutoff } = note;
  if (!outcome.found) return outcome;
  const { answers } = outcome;
  const budget =
    answers === null
      ? null
      : budgetOf(readings, noteSlopes(answers, 'cents'), padModel, uncalibrated(answers, 'cents'));
  const { frequency, height } = outcome.resonance;
  return {
    found: true,
    frequency,
    cents: outcome.cents,
    centsPlusMinus: budget?.plusMinus ?? null,
    height,
    cutoff: cutoff.found ? cutoff.frequency : null,
  };
}

/** One fingering against the reference; null where it is lost in either. */
export function compareNote(
  first: Played,
  other: Played,
  sameHorn: boolean,
  fingering: Fingering,
): NoteDifference | null {
  const a = noteIn(first, fingering);
  const b = noteIn(other, fingering);
  const answers = [first, other].map(({ notes }) => answersTo(notes.get(fingering.id)));
  if (!a.found || !b.found || answers[0] === null || answers[1] === null) return null;
  const of = { first, other, sameHorn, answers: [answers[0], answers[1]] as const };
  const budget = budgetOfDifference(of, 'cents');
  const cents = { value: b.cents - a.cents, plusMinus: budget.plusMinus };
  const samePitch = first.compared.horn.transposition === other.compared.horn.transposition;
  const strengthDb = samePitch
    ? {
        value: DB_PER_LOG * Math.log(b.height / a.height),
        plusMinus: DB_PER_LOG * budgetOfDifference(of, 'logHeight').plusMinus,
      }
    : null;
  const byPitch = whoNoticesPitch(cents);
  const byStrength = strengthDb === null ? null : whoNoticesStrength(strengthDb);
  return {
    cents,
    budget,
    strengthDb,
    cutoff: a.cutoff === null || b.cutoff === null ? null : b.cutoff - a.cutoff,
    byPitch,
    byStrength,
    noticedBy: byStrength === null ? byPitch : moreNoticed(byPitch, byStrength),
  };
}

function answersTo(note: WholeHornNote | undefined): NoteAnswers | null {
  return note !== undefined && note.outcome.found ? note.outcome.answers : null;
}

/** One note in two setups. */
interface InTwo {
  readonly first: Played;
  readonly other: Played;
  readonly sameHorn: boolean;
  readonly answers: readonly [NoteAnswers, NoteAnswers];
}

/** What the ± of one note's difference is made of. */
function budgetOfDifference({ first, other, sameHorn, answers }: InTwo, of: 'cents' | 'logHeight'): Budget {
  const [a, b] = [first, other].map(({ readings, padModel }, i) => ({
    readings,
    padModel,
    slopes: noteSlopes(answers[i], of),
  }));
  return differenceBudget(a, b, sameHorn ? 'same horn' : MODEL_ERROR[of]);
}
