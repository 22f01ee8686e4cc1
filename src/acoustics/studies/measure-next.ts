import type { Reading } from './readings.ts';
import type { Budget, ReadingPart } from './uncertainty.ts';

/**
 * What to measure next: which reading, taken more carefully, narrows an answer most.
 *
 *   σ'² = σ² − e²(1 − (u'/u)²)        e the reading's effect, u its ± now, u' its ± once measured
 *
 * Each reading errs on its own, so that what several bring together is the sum of their squares, and the best
 * set is that of the best single ones. **Source:** JCGM 100:2008, 5.1.2; the ranking is ours.
 */
export interface NextReading extends Pick<ReadingPart, 'reading' | 'side'> {
  /** its own ± once measured, in its unit */
  readonly becomes: number;
  /** the answer's ± once this one is measured */
  readonly alone: number;
  /** the answer's ± once this one and all before it in the list are */
  readonly together: number;
}

/** A gain smaller than this share of the answer's ± is not worth a measurement; ours to choose. */
export const LEAST_GAIN = 0.02;

/**
 * Ranks the readings of an answer by how much measuring each would narrow it, the best first.
 *
 * @param attainable a reading's ± once it is measured with care; null where it cannot be measured
 * @returns readings worth measuring only; empty where none is
 */
export function measureNext(budget: Budget, attainable: (reading: Reading) => number | null): NextReading[] {
  const { plusMinus } = budget;
  const candidates = budget.readings
    .flatMap(({ effect, ...read }) => {
      const { reading } = read;
      const becomes = attainable(reading);
      if (becomes === null || !(becomes < reading.plusMinus)) return [];
      return [{ ...read, becomes, squareGain: effect ** 2 * (1 - (becomes / reading.plusMinus) ** 2) }];
    })
    .filter(({ squareGain }) => plusMinus - without(plusMinus, squareGain) > LEAST_GAIN * plusMinus)
    .sort((a, b) => b.squareGain - a.squareGain);
  let gained = 0;
  return candidates.map(({ squareGain, ...candidate }) => {
    gained += squareGain;
    return {
      ...candidate,
      alone: without(plusMinus, squareGain),
      together: without(plusMinus, gained),
    };
  });
}

function without(plusMinus: number, squareGain: number): number {
  return Math.sqrt(Math.max(0, plusMinus ** 2 - squareGain));
}
