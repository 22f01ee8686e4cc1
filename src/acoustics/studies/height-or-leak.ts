import type { AirColumn } from '../air/air.ts';
import type { Horn, Setup } from '../horn.ts';
import type { Fingering } from '../keywork/fingerings.ts';
import type { Resonance } from '../resonance/resonances.ts';
import { sealedNote, type LeakOptions } from './leak-study.ts';
import { heightsFor, type HeightEffect } from './note-heights.ts';
import { leaksFor, type PadLeak } from './note-leaks.ts';
import { canBeShown, NOTICED, type Measured } from './noticed.ts';
import type { Knowledge } from './scale-budgets.ts';

/**
 * A note is stuffy: is a key too low, or does a pad leak? What the heights of its keys can still bring, from as found
 * to enough, beside what a leak at each of its pads would cost, all in dB of the same resonance's height.
 *
 * The best height and the worst leak are compared, both being what is found first when one looks for the greatest.
 * Their ± are taken as erring each on its own.
 */
export interface HeightOrLeak {
  readonly fingering: Fingering;
  /** as found, all pads sealing */
  readonly sealed: Resonance;
  /** the key that brings most first; keys that do not move the note by a cent left out */
  readonly heights: readonly HeightEffect[];
  /** the pad whose leak costs most first */
  readonly leaks: readonly PadLeak[];
  readonly verdict: Verdict;
}

/**
 * What to look for first. `neither` where neither would be noticed, `alike` where the two cannot be told apart.
 * A player is taken to notice 1 dB: ours (noticed.ts).
 */
export type Verdict = 'leak' | 'height' | 'alike' | 'neither';

/** m: one cigarette paper and two. **Source:** common practice, no source. */
export const COMPARED_GAPS = [0.025e-3, 0.05e-3] as const;

/** Null where the note has no resonance as found. */
export function studyHeightOrLeak(
  horn: Horn,
  setup: Setup,
  fingering: Fingering,
  air: AirColumn,
  options: LeakOptions & Knowledge = {},
): HeightOrLeak | null {
  const note = sealedNote(horn, setup, fingering, air, options);
  if (note === null) return null;
  const { fingerings: _, ...asked } = options;
  const heights = heightsFor(horn, setup, fingering, air, asked);
  const leaks = leaksFor(horn, setup, note, air, { ...asked, gaps: COMPARED_GAPS });
  const verdict = verdictOn(bestGain(heights), worstLoss(leaks));
  return { fingering, sealed: note.resonance, heights, leaks, verdict };
}

/** dB that the best height brings; nothing where none helps. */
function bestGain([best]: readonly HeightEffect[]): Measured {
  const change = best?.change ?? null;
  if (change === null || change.gainDb <= 0) return NOTHING;
  return { value: change.gainDb, plusMinus: change.gainBudget?.plusMinus ?? 0 };
}

/** dB that the worst leak of the widest gap costs. */
function worstLoss([worst]: readonly PadLeak[]): Measured {
  if (worst === undefined) return NOTHING;
  const { cost } = worst.at[worst.at.length - 1];
  if (cost === null) return { value: Infinity, plusMinus: 0 };
  return { value: cost.lostDb, plusMinus: cost.lostBudget?.plusMinus ?? 0 };
}

const NOTHING: Measured = Object.freeze({ value: 0, plusMinus: 0 });

/** Which of the two to look for first. @param gain dB @param loss dB, Infinity where the note is lost */
export function verdictOn(gain: Measured, loss: Measured): Verdict {
  if (Math.max(gain.value, loss.value) < NOTICED.strengthDb) return 'neither';
  const value = loss.value - gain.value;
  const plusMinus = Math.hypot(loss.plusMinus, gain.plusMinus);
  if (!canBeShown({ value, plusMinus })) return 'alike';
  return value > 0 ? 'leak' : 'height';
}
