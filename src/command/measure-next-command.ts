import { findFingering, FINGERINGS, type Fingering } from '../acoustics/index.ts';
import {
  nextForComparison,
  nextForKey,
  nextForNote,
  type MeasureNextReport,
} from '../documents/measure-next-report.ts';
import { budgetParts } from '../documents/budget-parts.ts';
import type { BudgetReport } from '../documents/uncertainty-report.ts';
import { BadInput } from './bad-input.ts';
import { DAY, json, type Command } from './command.ts';
import { readHorn } from './files.ts';
import { a4Option, airOption, keyOption, textOption, type Words } from './options.ts';

/** What to measure next for a key, a note or a comparison. */
export const measureNextCommand: Command = {
  usage:
    'measure-next <horn.json> [<horn.json>] --question key:7 | note:F4 | comparison[:F4] [--setup <setup.json>] [--a4 440] [--json]',
  allowed: ['question', 'setup', 'json', 'a4', ...DAY],
  run: (words) => {
    const report = reportFor(words);
    return words.options['json'] === true ? json(report) : textOf(report);
  },
};

const KINDS = 'key:7, note:F4 or comparison:F4';

function reportFor(words: Words): MeasureNextReport {
  const question = textOption(words, 'question');
  const [, kind, what] = /^(\w+)(?:[:=](.*))?$/.exec(question.trim()) ?? [];
  const [first, second, ...more] = words.files;
  if (first === undefined || more.length > 0) {
    throw new BadInput(`expected one horn file, or two to compare; got ${words.files.length}`);
  }
  const setup = words.options['setup'] as string | undefined;
  if (kind === 'comparison') {
    const reference = readHorn(first, undefined);
    if (second === undefined && setup === undefined) {
      throw new BadInput('a comparison needs a second horn file, or --setup with another setup of the first');
    }
    const other = second === undefined ? readHorn(first, setup) : readHorn(second, setup);
    const fingering = what === undefined || what === '' ? null : fingeringNamed(what);
    return nextForComparison([reference, other], fingering, dayOf(words, reference));
  }
  if (second !== undefined) throw new BadInput(`expected one horn file for ${question}; got 2`);
  const loaded = readHorn(first, setup);
  const day = dayOf(words, loaded);
  if (kind === 'key') {
    const named = { ...words, options: { ...words.options, question: what ?? '' } };
    return nextForKey(loaded, keyOption(named, loaded, 'question'), day);
  }
  if (kind === 'note') return nextForNote(loaded, fingeringNamed(what ?? ''), day);
  throw new BadInput(`invalid --question: "${question}"; expected ${KINDS}`);
}

function dayOf(words: Words, loaded: ReturnType<typeof readHorn>): Parameters<typeof nextForKey>[2] {
  return { air: airOption(words, loaded), a4Hz: a4Option(words) };
}

function fingeringNamed(name: string): Fingering {
  const fingering = findFingering(name);
  if (fingering !== undefined) return fingering;
  const known = FINGERINGS.map((f) => f.id).join(', ');
  throw new BadInput(`invalid --question: "${name}"; expected one of ${known}`);
}

/** What a ± is made of, a line each; their squares add up to its square. */
function partLines(budget: BudgetReport, unit: string): string[] {
  const lines = budgetParts(budget).map(({ label, size, reading }) => {
    const known =
      reading === null ? '' : ` (known to ± ${`${plain(reading.plusMinus)} ${reading.unit}`.trim()})`;
    return `  ${label}: ± ${plain(size)} ${unit}${known}`;
  });
  return lines.length === 0 ? [] : ['Its ± is made of, added by squares:', ...lines];
}

const plain = (value: number): string => String(Number(value.toPrecision(3)));

function textOf({ question, value, reason, unit, budget, sentences }: MeasureNextReport): string {
  if (value === null || budget === null) return `${question}: cannot be said, ${reason}.`;
  const digits = unit === 'mm' ? 2 : 1;
  const shown = `${question}: ${value.toFixed(digits)} ± ${budget.plusMinus.toFixed(digits)} ${unit}.`;
  return [shown, ...partLines(budget, unit), ...sentences.map((sentence, i) => `${i + 1}. ${sentence}`)].join(
    '\n',
  );
}
