import {
  impedanceSweep,
  makeNetwork,
  playScale,
  playWholeHorn,
  scaleBudgets,
  studyVenting,
  type VentingStudyOptions,
} from '../acoustics/index.ts';
import { compareLoaded } from '../documents/compare-loaded.ts';
import { plusMinusOf } from '../documents/plus-minus.ts';
import { answerHoles } from '../documents/hole-request.ts';
import { reportScale } from '../documents/scale-report.ts';
import { reportVentingStudy } from '../documents/venting-report.ts';
import { reportWholeHorn } from '../documents/whole-horn-report.ts';
import { accept, BadInput } from './bad-input.ts';
import { DAY, json, neighbours, type Command } from './command.ts';
import { calibrateCommand } from './calibrate-command.ts';
import { comparisonText } from './comparison-text.ts';
import { readHorn, readJson } from './files.ts';
import { measureNextCommand } from './measure-next-command.ts';
import {
  a4Option,
  airOption,
  fingeringOption,
  keyOption,
  numberOption,
  onlyFile,
  sortWords,
  type Words,
} from './options.ts';
import { proposeCommand } from './propose-command.ts';
import { REGULATION_COMMANDS } from './regulation-commands.ts';
import { holesText } from './holes-text.ts';
import { scaleTable, studyText } from './tables.ts';

const COMMANDS: Readonly<Record<string, Command>> = {
  hole: {
    usage: 'hole [--text] < holes.json  (or a file)',
    allowed: ['text'],
    run: printHoles,
  },
  impedance: {
    usage:
      'impedance <horn.json> --note F4 --from 100 --to 1200 --step 0.5 [--setup <setup.json>] [--with-reed] [--neighbours]',
    allowed: ['note', 'from', 'to', 'step', 'setup', 'with-reed', 'neighbours', ...DAY],
    run: printImpedance,
  },
  scale: {
    usage: 'scale <horn.json> [--setup <setup.json>] [--a4 440] [--neighbours] [--json]',
    allowed: ['setup', 'json', 'a4', 'neighbours', ...DAY],
    run: printScale,
  },
  answers: {
    usage: 'answers <horn.json> [--setup <setup.json>] [--a4 440] [--neighbours]',
    allowed: ['setup', 'a4', 'neighbours', ...DAY],
    run: printAnswers,
  },
  study: {
    usage:
      'study <horn.json> --key 7 [--setup <setup.json>] [--a4 440] [--reach-mm 14] [--neighbours] [--json]',
    allowed: ['key', 'setup', 'json', 'a4', 'reach-mm', 'neighbours', ...DAY],
    run: printStudy,
  },
  compare: {
    usage:
      'compare <horn.json> [<horn.json> …] [--setup <name or setup.json> …] [--a4 440] [--neighbours] [--json]',
    allowed: ['setup', 'json', 'a4', 'neighbours', ...DAY],
    run: printComparison,
  },
  'measure-next': measureNextCommand,
  propose: proposeCommand,
  calibrate: calibrateCommand,
  ...REGULATION_COMMANDS,
};

/** Holes come on standard input, or from the one file named. */
function printHoles(words: Words): string {
  if (words.files.length > 1)
    throw new BadInput(`expected at most one file of holes; got ${words.files.length}`);
  const path = words.files[0] ?? '-';
  const answers = accept(answerHoles(readJson(path)), path === '-' ? 'standard input' : path);
  return words.options['text'] === true ? holesText(answers) : json(answers);
}

function printImpedance(words: Words): string {
  const loaded = readHorn(onlyFile(words), words.options['setup'] as string | undefined);
  const hz = { low: 1, high: 20000, unit: 'Hz' };
  const from = numberOption(words, 'from', hz, undefined);
  const to = numberOption(words, 'to', { ...hz, low: from }, undefined);
  const step = numberOption(words, 'step', { low: 0.001, high: 1000, unit: 'Hz' }, undefined);
  const count = Math.floor((to - from) / step + 1e-9) + 1;
  if (!(count <= 1_000_000))
    throw new BadInput(`invalid --step: ${step} Hz; expected at most a million lines, this makes ${count}`);
  const network = makeNetwork(
    loaded.horn,
    loaded.setup,
    fingeringOption(words),
    airOption(words, loaded),
    neighbours(words),
  );
  const frequencies = Float64Array.from({ length: count }, (_, i) => from + i * step);
  const { re, im } = impedanceSweep(
    network,
    frequencies,
    words.options['with-reed'] === true ? 'with reed' : 'bare',
  );
  const rows = Array.from(frequencies, (f, i) => `${Number(f.toFixed(9))},${re[i]},${im[i]}`);
  return ['frequencyHz,realPaSPerM3,imaginaryPaSPerM3', ...rows].join('\n');
}

function printScale(words: Words): string {
  const loaded = readHorn(onlyFile(words), words.options['setup'] as string | undefined);
  const air = airOption(words, loaded);
  const options = { a4: a4Option(words), ...neighbours(words) };
  const notes = reportScale(
    loaded.horn,
    playScale(loaded.horn, loaded.setup, air, options),
    scaleBudgets(loaded.horn, loaded.setup, air, { ...options, plusMinus: plusMinusOf(loaded) }),
  );
  return words.options['json'] === true ? json(notes) : scaleTable(loaded.documents.horn.name, notes);
}

function printAnswers(words: Words): string {
  const loaded = readHorn(onlyFile(words), words.options['setup'] as string | undefined);
  const options = { a4: a4Option(words), ...neighbours(words) };
  const notes = playWholeHorn(loaded.horn, loaded.setup, airOption(words, loaded), options);
  return json(reportWholeHorn(loaded.horn, notes));
}

function printStudy(words: Words): string {
  const loaded = readHorn(onlyFile(words), words.options['setup'] as string | undefined);
  const reach = numberOption(words, 'reach-mm', { low: 1, high: 60, unit: 'mm' }, 0) / 1000;
  const options: VentingStudyOptions = {
    a4: a4Option(words),
    ...neighbours(words),
    ...(reach > 0 ? { reach } : {}),
    plusMinus: plusMinusOf(loaded),
  };
  const study = studyVenting(
    loaded.horn,
    loaded.setup,
    keyOption(words, loaded),
    airOption(words, loaded),
    options,
  );
  const report = reportVentingStudy(study);
  return words.options['json'] === true ? json(report) : studyText(report);
}

/** Every horn as it stands, then the first one with each setup named; all in the first one's air. */
function printComparison(words: Words): string {
  const [first] = words.files;
  if (first === undefined) throw new BadInput('expected at least one horn file; got 0');
  const loaded = [
    ...words.files.map((path) => readHorn(path, undefined)),
    ...words.setups.map((setup) => readHorn(first, setup)),
  ];
  const report = compareLoaded(loaded, {
    air: airOption(words, loaded[0]),
    a4Hz: a4Option(words),
    ...neighbours(words),
  });
  return words.options['json'] === true ? json(report) : comparisonText(report);
}

/** One line a command. */
function usages(): string {
  return Object.values(COMMANDS)
    .map((c) => `  npm run --silent ventwright -- ${c.usage}`)
    .join('\n');
}

/** What a run of the program prints, and its exit code: 0, or 2 for a sentence about what it was given. */
export interface Run {
  readonly code: 0 | 2;
  readonly out: string;
  readonly err: string;
}

/** Runs one command by the words of its line. */
export function runProgram([name, ...rest]: readonly string[]): Run {
  try {
    if (name === '--help' || name === 'help') return { code: 0, out: `${usages()}\n`, err: '' };
    const command = name !== undefined && Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
    if (command === undefined) {
      throw new BadInput(
        `${name === undefined ? 'missing command' : `unknown command "${name}"`}; expected one of\n${usages()}`,
      );
    }
    return { code: 0, out: `${command.run(sortWords(rest, command.allowed))}\n`, err: '' };
  } catch (error) {
    // RangeErrors are the core's sentences about what it was given.
    if (!(error instanceof BadInput || error instanceof RangeError)) throw error;
    return { code: 2, out: '', err: `${error.message}\n` };
  }
}
