import {
  holeOf,
  type Calibration,
  type Cause,
  type Horn,
  type ToldUnknown,
  type Unknown,
} from '../acoustics/index.ts';
import { causesOf, type CalibratedVisit, type PlayedDay } from './calibrated.ts';
import {
  alikeSentence,
  answerSentence,
  causeSentence,
  leftOutSentence,
  scatterSentence,
} from './calibration-words.ts';
import { modelWarnings } from './model-warnings.ts';
import type { PlayedSetup } from './pitch-log.ts';

/** A calibration in bench units. */
export interface CalibrationReport {
  /** what the log says, in a sentence */
  readonly answer: string;
  readonly unknowns: readonly UnknownReport[];
  /** what cannot be told apart, a sentence each */
  readonly alike: readonly string[];
  /** cents that notes scatter by beyond their own ±, and who says so */
  readonly unexplainedCents: number;
  readonly unexplainedFrom: Calibration['unexplainedFrom'];
  readonly scatter: string;
  /** root mean square of what is left of the notes fitted; null of none */
  readonly leftCents: number | null;
  readonly notes: readonly CalibratedNoteReport[];
  /** notes left out of the fit, a sentence each */
  readonly leftOut: readonly string[];
  /** why the fit is not the best there is, or null */
  readonly problem: string | null;
  /** where the air or a pad lies outside what its model holds for, a sentence each */
  readonly warnings: readonly string[];
}

/** One unknown. */
export interface UnknownReport {
  readonly unknown: Unknown;
  readonly unit: string;
  /** more than written */
  readonly amount: number;
  readonly plusMinus: number;
  /** its ± before anything was played */
  readonly beforehand: number;
  readonly standing: ToldUnknown['standing'];
}

/** One note of the log. */
export interface CalibratedNoteReport {
  readonly fingering: string;
  readonly setup: PlayedSetup;
  readonly playedCents: number;
  readonly plusMinusCents: number;
  readonly takes: number;
  readonly standing: Calibration['notes'][number]['standing'];
  /** null where the model hears no such note */
  readonly predictedCents: number | null;
  /** played less predicted, and its ± */
  readonly residualCents: number | null;
  readonly residualPlusMinusCents: number | null;
  /** by how much the fit moves the pitch worked out from as written, and its ± */
  readonly movedCents: number | null;
  readonly movedPlusMinusCents: number | null;
  /** keys that could explain a residual outside its ±, the best first */
  readonly causes: readonly CauseReport[];
}

/** A key that could explain a residual. */
export interface CauseReport {
  readonly pad: string;
  /** mm at the front that it would stand higher than written */
  readonly changeMm: number;
  /** by the ± of the notes it governs, all else as fitted */
  readonly changePlusMinusMm: number;
  readonly leftCents: number;
  readonly sentence: string;
}

/** Bench units per SI unit, and the unit's name. */
export const UNKNOWN_UNITS: Readonly<Record<Unknown, { readonly unit: string; readonly scale: number }>> = {
  'mouthpiece volume': { unit: 'cm³', scale: 1e6 },
  'mouthpiece place': { unit: 'mm', scale: 1e3 },
  temperature: { unit: '°C', scale: 1 },
  'bell end': { unit: 'mm', scale: 1e3 },
  'player’s trend': { unit: 'cents per octave', scale: 1 },
};

/** Not every key that could is worth naming. */
const MOST_CAUSES = 3;

/** What a log says of its horn. */
export function reportCalibration(visit: CalibratedVisit, day: PlayedDay): CalibrationReport {
  const { calibration, played, log } = visit;
  const unknowns = calibration.fitted.map(({ unknown, amount, plusMinus, expected }, j): UnknownReport => {
    const { unit, scale } = UNKNOWN_UNITS[unknown];
    return {
      unknown,
      unit,
      amount: amount * scale,
      plusMinus: plusMinus * scale,
      beforehand: expected * scale,
      standing: calibration.told.unknowns[j].standing,
    };
  });
  const causes = causesOf(visit, day);
  const notes = calibration.notes.map(({ note, standing, fit }, i): CalibratedNoteReport => {
    const found = causes.get(i) ?? [];
    return {
      fingering: note.fingering.id,
      setup: log[i].setup,
      playedCents: note.cents,
      plusMinusCents: note.plusMinus,
      takes: log[i].note.count,
      standing,
      predictedCents: fit?.predicted ?? null,
      residualCents: fit?.residual ?? null,
      residualPlusMinusCents: fit?.plusMinus ?? null,
      movedCents: fit?.moved.cents ?? null,
      movedPlusMinusCents: fit?.moved.plusMinus ?? null,
      causes: found
        .slice(0, MOST_CAUSES)
        .map((cause) => causeReport(played[calibration.notes[i].setup].horn, cause)),
    };
  });
  const fitted = calibration.notes.flatMap(({ standing, fit }) =>
    standing === 'fitted' && fit !== null ? [fit.residual] : [],
  );
  const leftCents = fitted.length === 0 ? null : Math.hypot(...fitted) / Math.sqrt(fitted.length);
  const { unexplained: unexplainedCents, unexplainedFrom, told, problem } = calibration;
  return {
    answer: answerSentence({ unknowns, notes, leftCents, airC: day.air.mouthpieceC }),
    unknowns,
    alike: told.alike.map((pair) => alikeSentence(pair, UNKNOWN_UNITS)),
    unexplainedCents,
    unexplainedFrom,
    scatter: scatterSentence({ unexplainedCents, unexplainedFrom }),
    leftCents,
    notes,
    leftOut: notes.flatMap((note) => leftOutSentence(note) ?? []),
    warnings: warningsFor(visit, day),
    problem:
      problem === null
        ? null
        : `This is the best fit found, and it may not be the best there is: ${problem}.`,
  };
}

function warningsFor({ played }: CalibratedVisit, { air }: PlayedDay): string[] {
  const all = played.flatMap(({ horn, setup }) => modelWarnings(horn, setup, air));
  return [...new Set(all.map(({ pad, text }) => (pad === null ? text : `${pad} key: ${text}`)))];
}

function causeReport(horn: Horn, { key, change, plusMinus, left }: Cause): CauseReport {
  const [changeMm, changePlusMinusMm] = [change * 1e3, plusMinus * 1e3];
  const sentence = causeSentence(holeOf(horn, key).name, changeMm, changePlusMinusMm);
  return { pad: key, changeMm, changePlusMinusMm, leftCents: left, sentence };
}
