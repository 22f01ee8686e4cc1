import { PROPOSAL_TERMS, type ProposalTerm, type ProposalWeights, type TunedBy } from '../acoustics/index.ts';
import { formatLength } from '../documents/length-format.ts';
import { lengthBothWithPlusMinus } from '../documents/length-plus-minus.ts';
import { noteLabel } from '../documents/note-label.ts';
import { PREFERENCES, type Preference } from '../documents/proposal-choices.ts';
import { reportProposal, type ProposalReport } from '../documents/proposal-report.ts';
import { GAIN_WORDS } from '../documents/proposal-words.ts';
import { BadInput } from './bad-input.ts';
import { takesOf } from './calibrate-command.ts';
import { DAY, json, neighbours, type Command } from './command.ts';
import { readHorn } from './files.ts';
import {
  a4Option,
  airOption,
  keyOption,
  namedNumbersOption,
  onlyFile,
  textOption,
  type Words,
} from './options.ts';
import { tenths } from '../documents/tenths.ts';
import type { LoadedHorn } from '../documents/to-acoustics.ts';
import { columns } from './tables.ts';

/** The proposed setup: every key, as it stands and proposed, and why. */
export const proposeCommand: Command = {
  usage:
    'propose <horn.json> [--setup <setup.json>] [--log <notes.csv>] [--lock 7,10] [--most-mm 7=9.5] [--prefer "in tune"|"low keys"|"few moves"] [--weights pitch=0.01] [--tuned-by register|all|equal] [--a4 440] [--neighbours] [--json]',
  allowed: [
    ...['log', 'lock', 'most-mm', 'prefer', 'weights', 'tuned-by', 'setup', 'json', 'a4', 'neighbours'],
    ...DAY,
  ],
  run: (words) => {
    const loaded = readHorn(onlyFile(words), words.options['setup'] as string | undefined);
    const report = reportProposal(loaded, {
      air: airOption(words, loaded),
      a4Hz: a4Option(words),
      ...neighbours(words),
      locked: lockedIn(words, loaded),
      mostMm: mostIn(words, loaded),
      prefer: preferenceIn(words),
      weights: weightsIn(words),
      tunedBy: tunedByIn(words),
      takes: words.options['log'] === undefined ? [] : takesOf(textOption(words, 'log')),
    });
    return words.options['json'] === true ? json(report) : textOf(report);
  },
};

/** A pad by number or id, named in an option. */
function padNamed(words: Words, loaded: LoadedHorn, option: string, name: string): string {
  return keyOption({ ...words, options: { [option]: name.trim() } }, loaded, option);
}

function lockedIn(words: Words, loaded: LoadedHorn): string[] {
  const raw = words.options['lock'];
  return typeof raw === 'string' ? raw.split(',').map((name) => padNamed(words, loaded, 'lock', name)) : [];
}

function mostIn(words: Words, loaded: LoadedHorn): Map<string, number> {
  const range = { low: 0.5, high: 60, unit: 'mm' };
  return new Map(
    namedNumbersOption(words, 'most-mm', range).map(([name, mm]) => [
      padNamed(words, loaded, 'most-mm', name),
      mm,
    ]),
  );
}

function preferenceIn(words: Words): Preference {
  const raw = words.options['prefer'];
  if (raw === undefined) return 'balanced';
  const found = PREFERENCES.find((each) => each === String(raw).trim().replaceAll('-', ' '));
  if (found === undefined) {
    throw new BadInput(`invalid --prefer: "${String(raw)}"; expected ${PREFERENCES.join(', ')}`);
  }
  return found;
}

function weightsIn(words: Words): Partial<ProposalWeights> {
  const named = namedNumbersOption(words, 'weights', { low: 0, high: 1e6, unit: '' });
  for (const [name] of named) {
    if (!PROPOSAL_TERMS.includes(name as ProposalTerm)) {
      throw new BadInput(`invalid --weights: "${name}"; expected ${PROPOSAL_TERMS.join(', ')}`);
    }
  }
  return Object.fromEntries(named);
}

const TUNED_BY: Readonly<Record<string, TunedBy>> = {
  register: 'each register',
  all: 'all notes',
  equal: 'equal temperament',
};

function tunedByIn(words: Words): TunedBy {
  const raw = words.options['tuned-by'] ?? 'register';
  const found = Object.hasOwn(TUNED_BY, String(raw)) ? TUNED_BY[String(raw)] : undefined;
  if (found === undefined) {
    throw new BadInput(`invalid --tuned-by: "${String(raw)}"; expected ${Object.keys(TUNED_BY).join(', ')}`);
  }
  return found;
}

function textOf(report: ProposalReport): string {
  const { horn, answer, keys, shortList, notes, spreadSentence, heldApart, cautions } = report;
  const head = ['pad', 'as it stands', 'proposed', '', 'why'];
  const rows = keys.map(({ number, name, foundMm, foundPlusMinusMm, proposedMm, moveMm, why }) => [
    `${number} ${name}`,
    bothWithPlusMinus(foundMm, foundPlusMinusMm),
    moveMm === 0 ? '' : both(proposedMm),
    moveMm === 0 ? '' : signedMm(moveMm),
    why,
  ]);
  const list = shortList.map(({ number, name, proposedMm, moveMm, sharePercent }) => [
    `${number} ${name}`,
    `to ${both(proposedMm)}`,
    signedMm(moveMm),
    `${sharePercent.toFixed(0)} %`,
  ]);
  const changed = notes.filter((n) => Math.abs(n.changeCents) > n.changePlusMinusCents);
  const pitches = changed.map((n) => [
    noteLabel(n.fingering),
    absolute(n.foundCents, n.foundPlusMinusCents),
    absolute(n.proposedCents, n.proposedPlusMinusCents),
    `${signed(n.changeCents)} ± ${tenths(n.changePlusMinusCents)}`,
  ]);
  return [
    `${horn}: proposed setup, openings at the front.`,
    answer,
    ...(shortList.length === 0 ? [] : [GAIN_WORDS]),
    '',
    ...leftColumns([head, ...rows]),
    ...(list.length === 0 ? [] : ['', 'Few keys for most of it, the best first:', ...leftColumns(list)]),
    '',
    spreadSentence,
    ...(pitches.length === 0
      ? []
      : ['', ...columns([['note', 'as it stands', 'proposed', 'change, cents'], ...pitches])]),
    '',
    ...[...heldApart, ...cautions].map((sentence) => `! ${sentence}`),
  ].join('\n');
}

const both = (mm: number): string => `${formatLength(mm, 'mm')} (${formatLength(mm, 'thou')})`;
const bothWithPlusMinus = (mm: number, plusMinusMm: number): string =>
  lengthBothWithPlusMinus(mm, plusMinusMm, 'mm').replaceAll('\u00a0', ' ');
const absolute = (cents: number, plusMinus: number | null): string =>
  `${signed(cents)}${plusMinus === null ? '' : ` ± ${plusMinus.toFixed(0)}`}`;
const signedMm = (mm: number): string => `${mm < 0 ? '' : '+'}${formatLength(mm, 'mm')}`;
const signed = (cents: number): string => {
  const text = Math.abs(cents).toFixed(1);
  return `${cents < 0 && Number(text) !== 0 ? '−' : '+'}${text}`;
};

/** Columns that start on the left; the last as long as it is. */
function leftColumns(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0].map((_, i) => Math.max(...rows.map((row) => row[i].length)));
  return rows.map((row) =>
    row
      .map((cell, i) => (i === row.length - 1 ? cell : cell.padEnd(widths[i])))
      .join('  ')
      .trimEnd(),
  );
}
