import type { Budget } from './uncertainty.ts';

/** Decibels of a resonance's height per unit of its natural logarithm. */
export const DB_PER_NEPER = 20 / Math.LN10;

/** dB from one height to another, + where the other is higher. */
export function decibelsBetween(from: number, to: number): number {
  return DB_PER_NEPER * Math.log(to / from);
}

/** The ± of an answer told in another unit. @param factor units of the other per unit of this, either sign */
export function scaledBudget(
  { plusMinus, readings, padModel, wholeHorn, calibration }: Budget,
  factor: number,
): Budget {
  return {
    plusMinus: plusMinus * Math.abs(factor),
    readings: readings.map((part) => ({ ...part, effect: part.effect * factor })),
    padModel: padModel * factor,
    wholeHorn: wholeHorn * Math.abs(factor),
    calibration: calibration * Math.abs(factor),
  };
}
