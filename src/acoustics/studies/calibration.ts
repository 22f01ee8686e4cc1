import type { AirColumn } from '../air/air.ts';
import type { Horn, Setup } from '../horn.ts';
import type { Fingering } from '../keywork/fingerings.ts';
import { playLog, type PlayedThere } from './calibration-playing.ts';
import { makeFit } from './calibration-stages.ts';
import { whatIsTold, type Told } from './calibration-told.ts';
import {
  EXPECTED,
  heightSlopeOf,
  inOrder,
  slopeOf,
  type Amounts,
  type Unknown,
} from './calibration-unknowns.ts';
import { MODEL_ERROR, type AbsoluteParts } from './uncertainty.ts';
import type { NoteAnswers, WholeHornOptions } from './whole-horn.ts';

/**
 * Calibration: a few unknowns of horn, mouthpiece, air and player fitted to the notes as they were played.
 *
 *   played = model(unknowns) + the take's own ± + what nothing here explains
 *
 * Three stages, each on exact derivatives:
 *
 *   1 a robust fit, whose scatter comes from the median
 *   2 notes farther off than {@link FAR} of that scatter, and {@link LEAST_FAR_CENTS}, are left out, and named
 *   3 least squares over the rest, whose scatter comes from the sum of squares
 *
 * What nothing explains, the whole horn's model included, is thus estimated from the notes; as long as they
 * are too few to tell, it is what such a model may err by.
 */

/** One note as played. */
export interface LoggedNote {
  readonly fingering: Fingering;
  /** cents from equal temperament */
  readonly cents: number;
  /** cents, > 0: how far the take itself may be off */
  readonly plusMinus: number;
}

/** Notes played on a horn in one of its setups. */
export interface LoggedSetup {
  readonly horn: Horn;
  readonly setup: Setup;
  readonly notes: readonly LoggedNote[];
}

/** One unknown as fitted, in its own unit. */
export interface FittedUnknown {
  readonly unknown: Unknown;
  readonly amount: number;
  readonly plusMinus: number;
  /** its ± before anything was played */
  readonly expected: number;
}

/** One note after the fit; cents. */
export interface CalibratedNote {
  /** which of the setups it was played in */
  readonly setup: number;
  readonly note: LoggedNote;
  readonly standing: 'fitted' | 'left out' | 'not heard by the model';
  /** null where the model hears no such note */
  readonly fit: {
    readonly predicted: number;
    /** played less predicted */
    readonly residual: number;
    /** of the residual: the take's and the prediction's */
    readonly plusMinus: number;
    /** by how much the fit moves the horn's pitch from as written, the player's trend not in it */
    readonly moved: { readonly cents: number; readonly plusMinus: number };
    readonly answers: NoteAnswers;
  } | null;
}

/** What the notes say of the horn. */
export interface Calibration {
  /** those that were fitted, in the order of the list of unknowns */
  readonly fitted: readonly FittedUnknown[];
  readonly amounts: Amounts;
  /** of the amounts, in their units, in the order of `fitted` */
  readonly covariance: readonly (readonly number[])[];
  /** in the order they were given, setup by setup */
  readonly notes: readonly CalibratedNote[];
  /** cents that each note scatters by beyond its own ± */
  readonly unexplained: number;
  /** whether the notes told it, or it is what a model of a whole horn may err by */
  readonly unexplainedFrom: 'notes' | 'model';
  readonly told: Told;
  /** why the fit is not the best there is; null where it is */
  readonly problem: string | null;
}

/**
 * A note farther off than so many times its ± and the scatter together, and by so many cents at least, does not
 * belong to the rest: a slip, or another fingering; ours.
 */
export const FAR = 3.5;
export const LEAST_FAR_CENTS = 20;

/**
 * Fits unknowns to played notes.
 *
 * @param played   setups of one horn, with the notes played in each
 * @param unknowns which to fit; the others stay as described
 * @throws RangeError for cents that are no number, or a ± that is not above 0
 */

export function calibrate(
  played: readonly LoggedSetup[],
  air: AirColumn,
  unknowns: readonly Unknown[],
  options: Omit<WholeHornOptions, 'answers' | 'fingerings' | 'near'> = {},
): Calibration {
  checkNotes(played);
  const fitting = inOrder(unknowns);
  const play = (x: readonly number[]): PlayedThere => playLog(played, air, amountsOf(fitting, x), options);
  const there = play(fitting.map(() => 0));
  const heard = there.notes.flatMap((note, i) => (note === null ? [] : [i]));
  const log = played.flatMap(({ notes }, setup) => notes.map((note) => ({ setup, note })));
  const fit = makeFit(
    log.map(({ note }) => note),
    fitting,
    play,
  );

  const first = fit.robust(heard, fit.weighed(there, heard, 0)!);
  const isFar = (i: number): boolean => {
    const { plusMinus, value } = fit.residuals(first.misfits, [i])[0];
    return Math.abs(value) > Math.max(FAR * Math.hypot(plusMinus, first.scatter), LEAST_FAR_CENTS);
  };
  const kept = heard.filter((i) => !isFar(i));
  const last = fit.least(kept, first);
  const { x, misfits, scatter, problem } = last;

  const scaled = fit.covariance(misfits);
  const covariance = scaled.map((row, j) =>
    row.map((value, k) => value * EXPECTED[fitting[j]] * EXPECTED[fitting[k]]),
  );
  const notes = log.map(({ setup, note }, i): CalibratedNote => {
    const heardThere = misfits.playing.notes[i];
    if (heardThere === null) return { setup, note, standing: 'not heard by the model', fit: null };
    const slopes = fitting.map((unknown) => slopeOf(unknown, heardThere.answers, note.fingering.note));
    const ofHorn = slopes.map((slope, j) => (fitting[j] === 'player’s trend' ? 0 : slope));
    const trend = slopes.reduce(
      (sum, slope, j) => sum + (slope - ofHorn[j]) * x[j] * EXPECTED[fitting[j]],
      0,
    );
    return {
      setup,
      note,
      standing: kept.includes(i) ? 'fitted' : 'left out',
      fit: {
        predicted: heardThere.cents,
        residual: note.cents - heardThere.cents,
        plusMinus: Math.hypot(note.plusMinus, plusMinusAlong(covariance, slopes)),
        moved: {
          cents: heardThere.cents - trend - (there.notes[i]?.cents ?? heardThere.cents - trend),
          plusMinus: plusMinusAlong(covariance, ofHorn),
        },
        answers: heardThere.answers,
      },
    };
  });
  return {
    fitted: fitting.map((unknown, j) => ({
      unknown,
      amount: x[j] * EXPECTED[unknown],
      plusMinus: Math.sqrt(covariance[j][j]),
      expected: EXPECTED[unknown],
    })),
    amounts: amountsOf(fitting, x),
    covariance,
    notes,
    unexplained: scatter,
    unexplainedFrom: last.from,
    told: whatIsTold(fitting, misfits.slopes, scaled),
    problem,
  };
}

/** What an absolute answer may be off by once a horn is calibrated: what the fit leaves, and what nothing explains. */
export function calibratedParts({ fitted, covariance, unexplained }: Calibration): AbsoluteParts {
  return (answers, of) => {
    const slopes = fitted.map(({ unknown }) => {
      if (of === 'logHeight') return heightSlopeOf(unknown, answers);
      // The player's trend is no part of the horn's pitch.
      return unknown === 'player’s trend' ? 0 : slopeOf(unknown, answers, 'A4');
    });
    // Played pitches say nothing of how high resonances are.
    const wholeHorn = of === 'cents' ? unexplained : MODEL_ERROR.logHeight;
    return { wholeHorn, calibration: plusMinusAlong(covariance, slopes) };
  };
}

/** √(gᵀCg) */
function plusMinusAlong(covariance: readonly (readonly number[])[], g: readonly number[]): number {
  const square = covariance.reduce(
    (sum, row, j) => sum + g[j] * row.reduce((inner, value, k) => inner + value * g[k], 0),
    0,
  );
  return Math.sqrt(Math.max(0, square));
}

function amountsOf(fitting: readonly Unknown[], x: readonly number[]): Amounts {
  return Object.fromEntries(fitting.map((unknown, j) => [unknown, x[j] * EXPECTED[unknown]]));
}

function checkNotes(played: readonly LoggedSetup[]): void {
  for (const { fingering, cents, plusMinus } of played.flatMap(({ notes }) => notes)) {
    if (!(Math.abs(cents) < Infinity))
      throw new RangeError(`invalid pitch of ${fingering.id}: ${cents} cents; expected a number`);
    if (!(plusMinus > 0 && plusMinus < Infinity)) {
      throw new RangeError(`invalid ± of ${fingering.id}: ${plusMinus} cents; expected more than 0`);
    }
  }
}
