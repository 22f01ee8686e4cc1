import { NOTICED, usualFingerings } from '../acoustics/index.ts';
import type { ComparisonReport, NoteDifferenceReport } from './comparison-report.ts';
import { feltWords } from './felt-words.ts';
import type { LengthUnit } from './length-format.ts';
import { listed } from './listed.ts';

/** What of a difference is told in words. */
type Difference = Pick<
  NoteDifferenceReport,
  'cents' | 'centsPlusMinus' | 'strengthDb' | 'strengthDbPlusMinus' | 'noticedBy'
>;

/** One note with its difference from the first setup. */
interface Told {
  readonly label: string;
  readonly difference: Difference;
}

/** How many notes are named before the rest are counted. */
const NAMED = 3;

/**
 * What a person would notice of one setup beside the first: what the fingers feel of the keys, then what is heard.
 *
 *   would notice     a note at least 10 cents or 1 dB apart, and beyond its ±
 *   might notice     at least 7.5 cents, likewise
 *   nothing          every note under 7.5 cents and 1 dB even at the far end of its ±
 *   cannot be shown  the rest: what might matter lies within what the numbers are worth
 *
 * It rests on each note's usual fingering, as the scale's headline does; of the others something is said only
 * where the usual ones alone would say too little.
 *
 * @param index of the difference: 0 for the second setup
 */
export function comparisonSentence(
  { setups, notes, keys }: Pick<ComparisonReport, 'setups' | 'notes' | 'keys'>,
  index: number,
  unit: LengthUnit = 'mm',
): string {
  const isUsual = usualFingerings(notes.map(({ fingering, note }) => ({ id: fingering, note })));
  const told = toldOf(
    notes.filter((_, i) => isUsual[i]),
    index,
  );
  const others = toldOf(
    notes.filter((_, i) => !isUsual[i]),
    index,
  );
  const untold = notes.filter(({ differences }, i) => isUsual[i] && differences[index] === null);
  const rest = untold.length === 0 ? '' : ` ${counted(untold.map(({ label }) => label))} cannot be compared.`;
  const beside = `“${setups[index + 1].label}” beside “${setups[0].label}”`;
  const felt = feltWords(keys, index, unit);
  const heard = verdict(told) + othersWords(told, others);
  if (felt === null) return `${beside}: ${heard}${rest}`;
  return `${beside}: ${felt}. ${heard[0].toUpperCase()}${heard.slice(1)}${rest}`;
}

const toldOf = (notes: ComparisonReport['notes'], index: number): Told[] =>
  notes.flatMap(({ label, differences }) => {
    const difference = differences[index];
    return difference === null ? [] : [{ label, difference }];
  });

/** Of other than usual fingerings: what somebody would notice where nothing of the usual ones is, or which differ alone. */
function othersWords(told: readonly Told[], others: readonly Told[]): string {
  const isHeard = ({ difference }: Told): boolean => difference.noticedBy !== 'nobody';
  const addsToNothing = others.some(isHeard) && !told.some(isHeard);
  const differAlone = widest(told, false) === null && widest(others, false) !== null;
  return addsToNothing || differAlone ? ` Of other fingerings, ${verdict(others)}` : '';
}

/** What would be noticed of these notes: a sentence without its beginning. */
export function verdict(told: readonly Told[]): string {
  const noticed = told.filter(({ difference }) => difference.noticedBy === 'the player');
  if (noticed.length > 0) return `the player would notice ${counted(noticed.map(noticedWords))}.`;
  const careful = told.filter(({ difference }) => difference.noticedBy === 'a careful player');
  if (careful.length > 0) return `a careful player might notice ${counted(careful.map(noticedWords))}.`;
  if (told.length === 0) return 'no note is played by both.';
  const shown = widest(told, true);
  const harmless = told.every(({ difference }) => partsOf(difference).every(surelyUnnoticed));
  if (shown === null) {
    const most = widest(told, false);
    return most === null
      ? 'the player would notice nothing: they play alike.'
      : `${harmless ? 'the player would notice nothing; ' : ''}no difference can be shown: the widest, ${most}, lies inside its ±.`;
  }
  return harmless
    ? `the player would notice nothing; most apart is ${shown}.`
    : `no difference can be shown that a player would notice; most apart is ${shown}.`;
}

/** Pitch or strength of one difference. */
interface Part {
  readonly value: number;
  readonly plusMinus: number;
  /** the least that is noticed at all, and by anybody */
  readonly noticed: number;
  readonly unnoticed: number;
  readonly unit: string;
  readonly more: string;
  readonly less: string;
}

function partsOf(d: Difference): readonly Part[] {
  const pitch: Part = {
    value: d.cents,
    plusMinus: d.centsPlusMinus,
    noticed: NOTICED.cents,
    unnoticed: NOTICED.carefulCents,
    unit: 'cents',
    more: 'sharper',
    less: 'flatter',
  };
  if (d.strengthDb === null || d.strengthDbPlusMinus === null) return [pitch];
  const strength: Part = {
    value: d.strengthDb,
    plusMinus: d.strengthDbPlusMinus,
    noticed: NOTICED.strengthDb,
    unnoticed: NOTICED.strengthDb,
    unit: 'dB',
    more: 'stronger',
    less: 'weaker',
  };
  return [pitch, strength];
}

const isShown = ({ value, plusMinus }: Part): boolean => Math.abs(value) > plusMinus;

/** Whether nobody would notice it even at the far end of its ±. */
const surelyUnnoticed = ({ value, plusMinus, unnoticed }: Part): boolean =>
  Math.abs(value) + plusMinus < unnoticed;

/** `F4 (12.1 ± 0.8 cents sharper and 1.3 ± 0.1 dB stronger)`: what of it is noticed. */
function noticedWords({ label, difference }: Told): string {
  const parts = partsOf(difference).filter((part) => isShown(part) && Math.abs(part.value) >= part.unnoticed);
  return `${label} (${parts.map(partWords).join(' and ')})`;
}

/** The widest part of all, in units of what is noticed; null where nothing differs. */
function widest(told: readonly Told[], shownOnly: boolean): string | null {
  let best: { label: string; part: Part; weight: number } | null = null;
  for (const { label, difference } of told) {
    for (const part of partsOf(difference)) {
      const weight = Math.abs(part.value) / part.noticed;
      if (weight > (best?.weight ?? 0) && (!shownOnly || isShown(part))) best = { label, part, weight };
    }
  }
  return best === null ? null : `${best.label}, ${partWords(best.part)}`;
}

/** `12.1 ± 0.8 cents sharper`. */
function partWords({ value, plusMinus, unit, more, less }: Part): string {
  const spread = plusMinus.toFixed(1);
  const size = Math.abs(value).toFixed(1);
  return `${size}${spread === '0.0' ? '' : ` ± ${spread}`} ${unit} ${value > 0 ? more : less}`;
}

/** `a`, `a and b`, `a, b and c`, `a, b, c and 4 more`. */
function counted(words: readonly string[]): string {
  const named = words.slice(0, NAMED);
  if (words.length > NAMED) return `${named.join(', ')} and ${words.length - NAMED} more`;
  return listed(named);
}
