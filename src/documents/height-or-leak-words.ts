import { NOTICED, type Sides } from '../acoustics/index.ts';
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

/** `two papers under high F♯ would cost 4.9 +0.8 −0.6 dB`. */
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

/** What a gap costs, with its ±: `4.9 +0.8 −0.6 dB`, `1.5 ± 0.2 dB`; `lost` where the note is. */
export function costWords({ lostDb, lostDbSides }: GapCostReport): string {
  return lostDb === null ? 'lost' : decibels(lostDb, lostDbSides ?? undefined);
}

const HUNDREDTH = 0.01;

/**
 * `4.9 ± 0.6 dB`, `0.03 ± 0.01 dB`: as many digits as its ± bears; `under 0.01 dB` for next to nothing. Where the two
 * sides are not the same as they are written, each is told: `4.9 +0.8 −0.6 dB`.
 */
export function decibels(db: number, within?: number | Sides): string {
  const sides = typeof within === 'number' ? { more: within, less: within } : within;
  const plusMinus = sides === undefined ? undefined : Math.max(sides.more, sides.less);
  if (Math.abs(db) + (plusMinus ?? 0) < HUNDREDTH) return `under ${HUNDREDTH} dB`;
  const digits = Math.max(Math.abs(db), plusMinus ?? 0) < 0.095 || (plusMinus ?? 1) < 0.05 ? 2 : 1;
  const value = Math.abs(db).toFixed(digits);
  const sign = db < 0 && Number(value) !== 0 ? '−' : '';
  if (sides === undefined) return `${sign}${value} dB`;
  const [more, less] = [sides.more, sides.less].map((s) => Math.max(s, 10 ** -digits).toFixed(digits));
  return `${sign}${value} ${more === less ? `± ${more}` : `+${more} −${less}`} dB`;
}

function paperCount({ papers }: GapCostReport): string {
  const count = Math.round(papers);
  return count === 1 ? 'one paper' : count === 2 ? 'two papers' : `${count} papers`;
}
