import { type Unknown } from '../acoustics/index.ts';
import { calibrateVisit, USUAL_UNKNOWNS } from '../documents/calibrated.ts';
import { reportCalibration, type CalibrationReport } from '../documents/calibration-report.ts';
import { fittedWords } from '../documents/calibration-words.ts';
import { readPitchCsv } from '../documents/pitch-log-csv.ts';
import type { Take } from '../documents/pitch-log.ts';
import { accept, BadInput } from './bad-input.ts';
import { DAY, json, type Command } from './command.ts';
import { readFoundAndSet, readHorn, readText } from './files.ts';
import { a4Option, airOption, onlyFile, textOption, type Words } from './options.ts';
import { columns } from './tables.ts';

/** The horn fitted to a table of played notes. */
export const calibrateCommand: Command = {
  usage:
    'calibrate <horn.json> --log <notes.csv> [--setup <name or setup.json>] [--unknowns volume,place,temperature,bell,trend] [--a4 440] [--json]',
  allowed: ['log', 'setup', 'unknowns', 'json', 'a4', ...DAY],
  run: (words) => {
    const path = onlyFile(words);
    const setup = words.options['setup'] as string | undefined;
    const bench = readFoundAndSet(path);
    // A setup named is the one that every row was played in.
    const found = setup === undefined ? bench.found : readHorn(path, setup);
    const takes = takesOf(textOption(words, 'log')).map((take): Take =>
      setup === undefined ? take : { ...take, setup: 'as found' },
    );
    const day = { air: airOption(words, found), a4Hz: a4Option(words) };
    const visit = accept(
      calibrateVisit(found, { takes, unknowns: unknownsIn(words), asSet: bench.asSet }, day),
      path,
    );
    const report = reportCalibration(visit, day);
    return words.options['json'] === true ? json(report) : textOf(report, day.air.mouthpieceC);
  },
};

/** Unknowns by the words they are asked for with. */
const WORDS: readonly (readonly [word: string, unknown: Unknown])[] = [
  ['volume', 'mouthpiece volume'],
  ['place', 'mouthpiece place'],
  ['temperature', 'temperature'],
  ['bell', 'bell end'],
  ['trend', 'player’s trend'],
];

function unknownsIn(words: Words): readonly Unknown[] {
  const raw = words.options['unknowns'];
  if (typeof raw !== 'string') return USUAL_UNKNOWNS;
  return raw.split(',').map((part) => {
    const known = WORDS.find(([word]) => word === part.trim());
    if (known !== undefined) return known[1];
    throw new BadInput(
      `invalid --unknowns: "${part}"; expected some of ${WORDS.map(([word]) => word).join(', ')}`,
    );
  });
}

/** A table's takes; rows that are none are told of, all at once. */
export function takesOf(path: string): readonly Take[] {
  const { takes, issues } = readPitchCsv(readText(path), 'as found');
  if (issues.length > 0) {
    const told = issues.map(({ row, message }) => `${path}: ${row === null ? '' : `row ${row}: `}${message}`);
    throw new BadInput(told.join('\n'));
  }
  return takes;
}

function textOf(report: CalibrationReport, airC: number): string {
  const { answer, unknowns, alike, scatter, leftOut, notes, problem, warnings } = report;
  const fitted = unknowns.map((unknown) => `  ${unknown.unknown}: ${fittedWords(unknown, airC)}`);
  const rows = notes.map(({ fingering, setup, playedCents, residualCents, residualPlusMinusCents }) => [
    fingering,
    setup,
    signed(playedCents),
    residualCents === null ? '' : signed(residualCents),
    residualPlusMinusCents === null ? '' : residualPlusMinusCents.toFixed(1),
  ]);
  const explained = notes.flatMap(({ fingering, causes }) =>
    causes.map(({ sentence }) => `${fingering} ${sentence}.`),
  );
  return [
    answer,
    ...(problem === null ? [] : [problem]),
    ...fitted,
    ...alike,
    scatter,
    ...leftOut,
    '',
    ...columns([['note', 'setup', 'played cents', 'left cents', '±'], ...rows]),
    ...(explained.length === 0 ? [] : ['', 'What could explain a note:', ...explained]),
    ...warnings.map((warning) => `! ${warning}`),
  ].join('\n');
}

const signed = (cents: number): string => `${cents >= 0 ? '+' : '−'}${Math.abs(cents).toFixed(1)}`;
