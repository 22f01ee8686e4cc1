import { noteUnder, studyHeightOrLeak, type Fingering, type LeakOptions } from '../acoustics/index.ts';
import { reportHeightOrLeak, type HeightOrLeakReport } from '../documents/height-or-leak-report.ts';
import { costWords, decibels, heightOrLeakSentence } from '../documents/height-or-leak-words.ts';
import { plusMinusOf } from '../documents/plus-minus.ts';
import type { RegulationFacts } from '../documents/regulation-facts.ts';
import type { LoadedHorn } from '../documents/to-acoustics.ts';
import type { BudgetReport } from '../documents/uncertainty-report.ts';
import { BadInput } from './bad-input.ts';
import { json } from './command.ts';
import { airOption, fingeringOption, keyOption, type Words } from './options.ts';
import { columns, signed } from './tables.ts';

/** What the heights of a note's keys can still bring, beside what a leak at each of its pads would cost. */
export function printHeightOrLeak(
  words: Words,
  loaded: LoadedHorn,
  { horn }: RegulationFacts,
  options: LeakOptions,
): string {
  const fingering = askedNote(words, loaded);
  const study = studyHeightOrLeak(horn, loaded.setup, fingering, airOption(words, loaded), {
    ...options,
    plusMinus: plusMinusOf(loaded),
  });
  const report = reportHeightOrLeak(horn, fingering, study);
  return words.options['json'] === true ? json(report) : heightOrLeakText(report);
}

/** The note named, or the lowest that speaks under the key named. */
function askedNote(words: Words, loaded: LoadedHorn): Fingering {
  if (words.options['key'] === undefined) return fingeringOption(words);
  if (words.options['note'] !== undefined) throw new BadInput('expected --note or --key; got both');
  const pad = keyOption(words, loaded);
  const fingering = noteUnder(loaded.horn, pad);
  if (fingering === null) throw new BadInput(`invalid --key: no note speaks under ${pad}; expected --note`);
  return fingering;
}

function heightOrLeakText(report: HeightOrLeakReport): string {
  const { heights, leaks } = report;
  const keys = heights.map((h) => [
    h.pad,
    within(h.foundMm, h.foundMmBudget, 1),
    h.kind === 'none in reach'
      ? `more than ${h.enoughMm.toFixed(1)}`
      : within(h.enoughMm, h.enoughMmBudget, 1),
    h.gainDb === null ? 'lost' : decibels(h.gainDb, h.gainDbBudget?.plusMinus),
    h.changeCents === null ? '' : `${signed(h.changeCents)}${plusMinus(h.changeCentsBudget, 1)}`,
    h.heldBy === null ? '' : `${h.heldBy} lets it no higher`,
  ]);
  const pads = leaks.map(({ pad, shutBy, at }) => [
    pad,
    shutBy,
    ...at.map(costWords),
    ...at
      .slice(-1)
      .map((c) =>
        c.changeCents === null ? '' : `${signed(c.changeCents)}${plusMinus(c.changeCentsBudget, 1)}`,
      ),
  ]);
  const papers = leaks[0]?.at.map(({ gapMm }) => `cost at ${gapMm.toFixed(3)} mm`) ?? [];
  return [
    heightOrLeakSentence(report),
    '',
    ...(keys.length === 0
      ? []
      : [...columns([['key', 'found mm', 'enough mm', 'gain', 'cents', ''], ...keys]), '']),
    ...columns([['leak under', 'shut by', ...papers, 'cents then'], ...pads]),
    '',
    'One key moved or one pad leaking at a time, its whole ring. Leather that gives under the finger hides a part of a leak.',
  ].join('\n');
}

function within(value: number, budget: BudgetReport | null, digits: number): string {
  return `${value.toFixed(digits)}${plusMinus(budget, digits)}`;
}

function plusMinus(budget: BudgetReport | null, digits: number): string {
  if (budget === null) return '';
  return ` ± ${Math.max(budget.plusMinus, 10 ** -digits).toFixed(digits)}`;
}
