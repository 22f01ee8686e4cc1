import { parseArgs } from 'node:util';
import {
  findFingering,
  FINGERINGS,
  makeAirColumn,
  type AirColumn,
  type Fingering,
} from '../acoustics/index.ts';
import { keyedHoles } from '../documents/horn-document.ts';
import type { LoadedHorn } from '../documents/to-acoustics.ts';
import { BadInput } from './bad-input.ts';

/** The words after a command, sorted. */
export interface Words {
  readonly files: readonly string[];
  readonly options: Readonly<Record<string, string | boolean | undefined>>;
  /** every --setup, in order; `options` has the last */
  readonly setups: readonly string[];
}

/** Options that take a value, and options that stand alone. */
const VALUED = [
  'setup',
  'note',
  'key',
  'from',
  'to',
  'step',
  'air-c',
  'bell-air-c',
  'humidity',
  'a4',
  'reach-mm',
  'pad',
  'by',
  'gap-mm',
  'arc-deg',
  'at',
  'lost-db',
  'front-mm',
  'thickness-mm',
  'floor-mm',
  'stock-mm',
  'bed-mm',
  'tolerance-mm',
  'seat-mm',
  'seats-mm',
  'done-mm',
  'question',
  'log',
  'unknowns',
  'lock',
  'most-mm',
  'prefer',
  'weights',
  'tuned-by',
] as const;
const ALONE = ['json', 'text', 'with-reed', 'neighbours', 'map', 'heights', 'dropped-in'] as const;

/** Sorts the words of a command line. @throws BadInput for an option it does not know */
export function sortWords(words: readonly string[], allowed: readonly string[]): Words {
  const options = Object.fromEntries(
    [
      ...VALUED.map((name) => [name, { type: 'string' as const, multiple: name === 'setup' }]),
      ...ALONE.map((name) => [name, { type: 'boolean' as const }]),
    ].filter(([name]) => allowed.includes(name as string)),
  );
  try {
    const { values, positionals } = parseArgs({
      args: words.map(hyphened),
      options,
      allowPositionals: true,
      strict: true,
    });
    const setups = (values as { readonly setup?: readonly string[] }).setup ?? [];
    return { files: positionals, options: { ...values, setup: setups.at(-1) } as Words['options'], setups };
  } catch (error) {
    throw new BadInput(
      `${(error as Error).message.split('. ')[0]}; options here: ${allowed.map((a) => `--${a}`).join(', ')}`,
    );
  }
}

/** Option names may also be written as the documents write theirs: `--gapMm` is `--gap-mm`. */
function hyphened(word: string): string {
  return /^--[a-z0-9]+([A-Z][a-z0-9]*)+(=|$)/.test(word)
    ? word.replace(/^--[^=]*/, (name) => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`))
    : word;
}

/** The one file a command works on. */
export function onlyFile(words: Words): string {
  if (words.files.length !== 1)
    throw new BadInput(`expected one horn file (or - for standard input); got ${words.files.length}`);
  return words.files[0];
}

/** An option's number within a range. */
export function numberOption(
  words: Words,
  name: string,
  range: { readonly low: number; readonly high: number; readonly unit: string },
  otherwise: number | undefined,
): number {
  const raw = words.options[name];
  const { low, high, unit } = range;
  if (raw === undefined && otherwise !== undefined) return otherwise;
  const value = typeof raw === 'string' && raw.trim() !== '' ? Number(raw) : NaN;
  if (!(value >= low && value <= high)) {
    const shown = raw === undefined ? 'missing' : `invalid`;
    throw new BadInput(
      `${shown} --${name}${raw === undefined ? '' : `: ${String(raw)} ${unit}`}; expected ${low} to ${high} ${unit}`,
    );
  }
  return value;
}

/** Numbers of an option, parted by commas, each within a range. */
export function numbersOption(
  words: Words,
  name: string,
  range: { readonly low: number; readonly high: number; readonly unit: string },
): number[] | undefined {
  const raw = words.options[name];
  if (typeof raw !== 'string') return undefined;
  return raw
    .split(',')
    .map((part) => numberOption({ ...words, options: { [name]: part } }, name, range, undefined));
}

/** Numbers of an option by name, as `7=0.05,10=0.1`, each within a range; empty where it is left out. */
export function namedNumbersOption(
  words: Words,
  name: string,
  range: { readonly low: number; readonly high: number; readonly unit: string },
): [name: string, value: number][] {
  const raw = words.options[name];
  if (typeof raw !== 'string') return [];
  return raw.split(',').map((part) => {
    const at = part.lastIndexOf('=');
    if (at < 1) throw new BadInput(`invalid --${name}: "${part}"; expected a name, =, and a number`);
    const value = { ...words, options: { [name]: part.slice(at + 1) } };
    return [part.slice(0, at).trim(), numberOption(value, name, range, undefined)];
  });
}

/** The text of an option that must be there. */
export function textOption(words: Words, name: string): string {
  const raw = words.options[name];
  if (typeof raw !== 'string') throw new BadInput(`missing --${name}`);
  return raw;
}

/** The day's air: options first, then what the setup notes, then 26.85 °C. */
export function airOption(words: Words, loaded: LoadedHorn): AirColumn {
  const mouthpieceC = numberOption(
    words,
    'air-c',
    { low: 0, high: 45, unit: '°C' },
    loaded.documents.setup.airC ?? 26.85,
  );
  const bellC = numberOption(words, 'bell-air-c', { low: 0, high: 45, unit: '°C' }, mouthpieceC);
  if (words.options['humidity'] === undefined) return makeAirColumn({ mouthpieceC, bellC });
  const humidity = numberOption(
    words,
    'humidity',
    { low: 0, high: 1, unit: '(share of saturation)' },
    undefined,
  );
  return makeAirColumn({ mouthpieceC, bellC, humidity });
}

/** Hz of the sounding A4. */
export function a4Option(words: Words): number {
  return numberOption(words, 'a4', { low: 400, high: 480, unit: 'Hz' }, 440);
}

/** The fingering a note name stands for. */
export function fingeringOption(words: Words): Fingering {
  const name = textOption(words, 'note');
  const fingering = findFingering(name);
  if (fingering === undefined) {
    throw new BadInput(
      `invalid --note: "${name}"; expected one of ${FINGERINGS.map((f) => f.id).join(', ')}`,
    );
  }
  return fingering;
}

/** The id of the key that a pad number or id stands for. @param option its name, `key` unless said otherwise */
export function keyOption(words: Words, loaded: LoadedHorn, option = 'key'): string {
  const name = textOption(words, option);
  const pads = keyedHoles(loaded.documents.horn);
  const pad = pads.find((hole) => hole.id === name || String(hole.number) === name);
  if (pad === undefined) {
    throw new BadInput(
      `invalid --${option}: "${name}"; expected ${pads.map((h) => `${h.number} (${h.id})`).join(', ')}`,
    );
  }
  return pad.id;
}
