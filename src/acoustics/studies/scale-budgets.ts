import type { AirColumn } from '../air/air.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { Horn, Setup } from '../horn.ts';
import { asItStands, EXACT, prepareReadings, type PlusMinus } from './readings.ts';
import { budgetOf, noteSlopes, uncalibrated, type AbsoluteParts, type Budget } from './uncertainty.ts';
import { playWholeHorn, type WholeHornOptions } from './whole-horn.ts';

/** How sure one note of a scale is. */
export interface NoteBudgets {
  /** of its pitch, cents */
  readonly cents: Budget;
  /** of the logarithm of its resonance's height */
  readonly logHeight: Budget;
}

/** What is known about the readings, and about the whole horn's own error. */
export interface Knowledge {
  /** what is left out counts as exact */
  readonly plusMinus?: PlusMinus;
  /** default {@link uncalibrated} */
  readonly absolute?: AbsoluteParts;
}

/**
 * How sure every note of a horn as set up is, absolutely: by fingering id, notes without a resonance left out.
 *
 * @throws RangeError for a ± that is negative or no number
 */
export function scaleBudgets(
  horn: Horn,
  setup: Setup,
  air: AirColumn,
  options: Omit<WholeHornOptions, 'answers'> & Knowledge = {},
): Map<string, NoteBudgets> {
  const { plusMinus = EXACT, absolute = uncalibrated, ...playing } = options;
  const readings = prepareReadings(horn, setup, air, plusMinus);
  const model = playing.padModel ?? DEFAULT_PAD_MODEL;
  const standing = asItStands(horn, setup);
  const notes = playWholeHorn(standing.horn, standing.setup, air, playing);
  return new Map(
    notes.flatMap(({ fingering, outcome }) => {
      if (!outcome.found || outcome.answers === null) return [];
      const { answers } = outcome;
      const budget = (of: 'cents' | 'logHeight'): Budget =>
        budgetOf(readings, noteSlopes(answers, of), model, absolute(answers, of));
      return [[fingering.id, { cents: budget('cents'), logHeight: budget('logHeight') }] as const];
    }),
  );
}
