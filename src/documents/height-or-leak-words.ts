import { NOTICED } from '../acoustics/index.ts';
import type { GapCostReport, HeightEffectReport, HeightOrLeakReport } from './height-or-leak-report.ts';
import { noteLabel } from './note-label.ts';

/**
 * Height beside leak in words: the same sentence on the screen, in the story and on the terminal.
 *
 * @param note as it is called: `E4`, `low E`
 */
export function heightOrLeakSentence(report: HeightOrLeakReport, note = noteLabel(report.fingering)): string {
  const leak = worstLeakWords(report);
  const height = bestHeightWords(report);
  const [best] = report.heights;
  switch (report.verdict) {
    case null:
      return `For ${note} height and leak cannot be compared: ${report.reason ?? 'it does not sound'}.`;
    case 'leak':
      return `For ${note}, look for a leak first: ${leak}; ${height}.`;
    case 'height':
      return `For ${note}, look at the ${best.name} key’s height first: ${height}; ${leak}.`;
    case 'alike':
      return `For ${note}, height and leak cannot be told apart: ${height}; ${leak}.`;
    case 'neither':
      return `For ${note}, look elsewhere: ${leak}; ${height}; a player is taken to notice ${NOTICED.strengthDb} dB.`;
  }
}

/** `two papers under high F♯ would cost 4.9 ± 0.6 dB`. */
export function worstLeakWords({ leaks }: HeightOrLeakReport): string {
  const [worst] = leaks;
  if (worst === undefined) return 'no pad is shut that could leak';
  const widest = worst.at[worst.at.length - 1];
  return `${paperCount(widest)} under ${worst.name} would ${widest.lostDb === null ? 'lose it' : `cost ${costWords(widest)}`}`;
}

/** `raising D to enough would bring 0.03 ± 0.01 dB`. */
export function bestHeightWords({ heights }: HeightOrLeakReport): string {
  const [best] = heights;
  if (best === undefined) return 'no key’s height moves it';
  if (best.gainDb === null || best.gainDb <= 0) return 'no key’s height would bring it any';
  const goal = best.kind === 'none in reach' ? 'as far as it opens' : 'to enough';
  return `${moveWord(best)} ${best.name} ${goal} would bring ${decibels(best.gainDb, best.gainDbBudget?.plusMinus)}`;
}

/** Whether a key must rise or come down to stand at enough. */
export function moveWord({ foundMm, enoughMm }: HeightEffectReport): 'raising' | 'lowering' {
  return enoughMm >= foundMm ? 'raising' : 'lowering';
}

/** What a gap costs, with its ±: `4.9 ± 0.6 dB`; `lost` where the note is. */
export function costWords({ lostDb, lostDbBudget }: GapCostReport): string {
  return lostDb === null ? 'lost' : decibels(lostDb, lostDbBudget?.plusMinus);
}

const HUNDREDTH = 0.01;

/** `4.9 ± 0.6 dB`, `0.03 ± 0.01 dB`: as many digits as its ± bears; `under 0.01 dB` for next to nothing. */
export function decibels(db: number, plusMinus?: number): string {
  if (Math.abs(db) + (plusMinus ?? 0) < HUNDREDTH) return `under ${HUNDREDTH} dB`;
  const digits = Math.max(Math.abs(db), plusMinus ?? 0) < 0.095 || (plusMinus ?? 1) < 0.05 ? 2 : 1;
  const value = Math.abs(db).toFixed(digits);
  const sign = db < 0 && Number(value) !== 0 ? '−' : '';
  if (plusMinus === undefined) return `${sign}${value} dB`;
  const half = Math.max(plusMinus, 10 ** -digits);
  return `${sign}${value} ± ${half.toFixed(digits)} dB`;
}

function paperCount({ papers }: GapCostReport): string {
  const count = Math.round(papers);
  return count === 1 ? 'one paper' : count === 2 ? 'two papers' : `${count} papers`;
}
