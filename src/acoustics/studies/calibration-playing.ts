import type { AirColumn } from '../air/air.ts';
import type { LoggedSetup } from './calibration.ts';
import { airWith, hornWith, octavesFromA4, type Amounts } from './calibration-unknowns.ts';
import { playWholeHorn, type NoteAnswers, type WholeHornOptions } from './whole-horn.ts';

/** A note as the model plays it; cents, the player's trend included. */
export interface NoteThere {
  readonly cents: number;
  readonly answers: NoteAnswers;
}

/** Every note of a log as the model plays it, in the log's order; null where it has no resonance. */
export interface PlayedThere {
  readonly notes: readonly (NoteThere | null)[];
}

/** Plays a log's notes on the horn with amounts of what is unknown. Where there is no such horn or air, nothing is heard. */
export function playLog(
  played: readonly LoggedSetup[],
  air: AirColumn,
  amounts: Amounts,
  options: Omit<WholeHornOptions, 'answers' | 'fingerings' | 'near'>,
): PlayedThere {
  return { notes: played.flatMap((one) => playOne(one, air, amounts, options)) };
}

function playOne(
  { horn, setup, notes }: LoggedSetup,
  air: AirColumn,
  amounts: Amounts,
  options: Omit<WholeHornOptions, 'answers' | 'fingerings' | 'near'>,
): (NoteThere | null)[] {
  if (notes.length === 0) return [];
  const there = possible(() => ({ horn: hornWith(horn, amounts), air: airWith(air, amounts) }));
  if (there === null) return notes.map(() => null);
  const fingerings = [...new Set(notes.map(({ fingering }) => fingering))];
  const heard = new Map(
    playWholeHorn(there.horn, setup, there.air, { ...options, fingerings }).map((n) => [
      n.fingering,
      n.outcome,
    ]),
  );
  const trend = amounts['player’s trend'] ?? 0;
  return notes.map(({ fingering }) => {
    const outcome = heard.get(fingering)!;
    if (!outcome.found || outcome.answers === null) return null;
    return { cents: outcome.cents + trend * octavesFromA4(fingering.note), answers: outcome.answers };
  });
}

/** A search may ask for a horn or air that cannot be; that is an answer, not a fault. */
function possible<T>(make: () => T): T | null {
  try {
    return make();
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
