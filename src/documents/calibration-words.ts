import type { AlikePair, Unknown } from '../acoustics/index.ts';
import type { CalibratedNoteReport, CalibrationReport, UnknownReport } from './calibration-report.ts';
import { listed } from './listed.ts';
import { noteLabel } from './note-label.ts';

/** What is said of a calibration. */

const shown = (value: number, plusMinus: number): string => {
  const digits = plusMinus >= 0.095 ? 1 : 2;
  return `${Math.abs(value).toFixed(digits)} ± ${plusMinus.toFixed(digits)}`;
};

/** What an unknown is called in a sentence. */
export const UNKNOWN_NAMES: Readonly<Record<Unknown, string>> = {
  'mouthpiece volume': 'the mouthpiece’s volume',
  'mouthpiece place': 'the mouthpiece’s place on the cork',
  temperature: 'the air’s temperature',
  'bell end': 'the bell’s end',
  'player’s trend': 'the player’s trend',
};

/** `the mouthpiece 2.1 ± 0.6 mm further out than written` @param airC as written */
export function unknownWords({ unknown, amount, plusMinus }: UnknownReport, airC: number): string {
  const by = shown(amount, plusMinus);
  const more = amount >= 0;
  switch (unknown) {
    case 'mouthpiece volume':
      return `the mouthpiece’s volume ${by} cm³ ${more ? 'larger' : 'smaller'} than written`;
    case 'mouthpiece place':
      return `the mouthpiece ${by} mm further ${more ? 'out' : 'in'} than written`;
    case 'temperature':
      return `the air at ${shown(airC + amount, plusMinus)} °C`;
    case 'bell end':
      return `the bell acoustically ${by} mm ${more ? 'longer' : 'shorter'} than written`;
    case 'player’s trend':
      return `the player ${by} cents per octave ${more ? 'sharper' : 'flatter'} upwards`;
  }
}

/** `…, which is as written within its ±`; what a fit finds of one unknown, and how far the notes tell it. */
export function fittedWords(unknown: UnknownReport, airC: number): string {
  const { standing, amount, plusMinus, beforehand, unit } = unknown;
  if (standing === 'not told') {
    return `these notes do not tell it; it stays as written, ± ${beforehand} ${unit} as known before them`;
  }
  const within = Math.abs(amount) <= plusMinus ? '; as written, within that ±' : '';
  const together = standing === 'told only together' ? '; told only together with another, see below' : '';
  return `${unknownWords(unknown, airC)}${within}${together}`;
}

/** The answer first: what the notes put where, what stays as written, what they do not tell, what is left. */
export function answerSentence({
  unknowns,
  notes,
  leftCents,
  airC,
}: {
  readonly unknowns: readonly UnknownReport[];
  readonly notes: readonly CalibratedNoteReport[];
  readonly leftCents: number | null;
  readonly airC: number;
}): string {
  if (leftCents === null) return 'No note is logged yet: nothing can be told.';
  const left = `what is left is ±${leftCents.toFixed(leftCents < 9.95 ? 1 : 0)} cents`;
  if (unknowns.length === 0) return `Nothing is fitted; ${left}.`;
  const told = unknowns.filter(({ standing }) => standing !== 'not told');
  const moved = told.filter(({ amount, plusMinus }) => Math.abs(amount) > plusMinus);
  const stays = told.filter((unknown) => !moved.includes(unknown));
  const untold = unknowns.filter(({ standing }) => standing === 'not told');
  const name = ({ unknown }: UnknownReport): string => UNKNOWN_NAMES[unknown];
  const first =
    moved.length === 0
      ? nothingMovedWords(notes, left)
      : `The log puts ${listed(movedWords(moved, airC))}; ${left}.`;
  return [
    first,
    ...(stays.length === 0 || moved.length === 0
      ? []
      : [`Within ${stays.length === 1 ? 'its' : 'their'} ± as written: ${listed(stays.map(name))}.`]),
    ...(untold.length === 0 ? [] : [`These notes do not tell ${listed(untold.map(name), 'or')}.`]),
  ].join(' ');
}

/**
 * Where no number differs from written by more than its ±, what all of them together still do to the pitch: known
 * better than each, it may be more than its own ±. Else it is no evidence, and is said to be none.
 */
function nothingMovedWords(notes: readonly CalibratedNoteReport[], left: string): string {
  const moves = notes.flatMap(({ fingering, movedCents: cents, movedPlusMinusCents: within }) =>
    cents === null || within === null ? [] : [{ fingering, cents, within }],
  );
  const beyond = moves.filter(({ cents, within }) => Math.abs(cents) > within);
  const [most] = (beyond.length > 0 ? beyond : moves).sort((a, b) => Math.abs(b.cents) - Math.abs(a.cents));
  const nothing = `The log finds nothing other than written; ${left}.`;
  if (most === undefined || Math.abs(most.cents) < LEAST_TOLD_CENTS) return nothing;
  const by = `${most.cents < 0 ? '−' : '+'}${shown(most.cents, most.within)} cents`;
  const note = noteLabel(most.fingering);
  return beyond.length > 0
    ? `No number by itself differs from written by more than its ±, but together they move pitches that can be shown to move, ${note} most, by ${by}; ${left}.`
    : `${nothing} With it in use pitches move within their ± only, ${note} most, by ${by}: that is no evidence that they lie so.`;
}

/** A pitch that moves by less is as written. */
const LEAST_TOLD_CENTS = 0.05;

/** Two numbers of the mouthpiece are said in one breath. */
function movedWords(moved: readonly UnknownReport[], airC: number): string[] {
  const [volume, place] = (['mouthpiece volume', 'mouthpiece place'] as const).map((wanted) =>
    moved.find(({ unknown }) => unknown === wanted),
  );
  if (volume === undefined || place === undefined) return moved.map((each) => unknownWords(each, airC));
  const larger = `${shown(volume.amount, volume.plusMinus)} cm³ ${volume.amount >= 0 ? 'larger' : 'smaller'}`;
  const out = `${shown(place.amount, place.plusMinus)} mm further ${place.amount >= 0 ? 'out' : 'in'}`;
  const rest = moved.filter((each) => each !== volume && each !== place);
  return [
    `the mouthpiece ${larger} and ${out} than written`,
    ...rest.map((each) => unknownWords(each, airC)),
  ];
}

/** Which two cannot be told apart, and what stands for what. */
export function alikeSentence(
  { first, second, secondPerFirst }: AlikePair,
  units: Readonly<Record<Unknown, { readonly unit: string; readonly scale: number }>>,
): string {
  const [a, b] = [units[first], units[second]];
  const ratio = (secondPerFirst * b.scale) / a.scale;
  const sense = ratio < 0 ? 'less' : 'more';
  return `These notes hardly tell ${UNKNOWN_NAMES[first]} from ${UNKNOWN_NAMES[second]}: 1 ${a.unit} more of the one and ${Math.abs(ratio).toPrecision(2)} ${b.unit} ${sense} of the other play nearly the same. What both do together is known better than either.`;
}

/** What notes scatter by, and who says so. */
export function scatterSentence({
  unexplainedCents,
  unexplainedFrom,
}: Pick<CalibrationReport, 'unexplainedCents' | 'unexplainedFrom'>): string {
  if (unexplainedFrom === 'model') {
    return `Too few notes to tell how well the model fits this horn: ±${unexplainedCents.toFixed(0)} cents are taken for it.`;
  }
  return unexplainedCents < 0.05
    ? 'The notes scatter no more than their own ±.'
    : `Beyond their own ± the notes scatter by ${unexplainedCents.toFixed(1)} cents that nothing here explains.`;
}

/** `D5 was left out of the fit: 48 cents from the rest.` or null for a note that was not */
export function leftOutSentence({
  fingering,
  standing,
  residualCents,
  setup,
}: CalibratedNoteReport): string | null {
  const note = `${noteLabel(fingering)}${setup === 'as set' ? ' as set' : ''}`;
  if (standing === 'not heard by the model') {
    return `${note} was left out of the fit: the model finds no resonance for it.`;
  }
  if (standing !== 'left out' || residualCents === null) return null;
  const way = residualCents > 0 ? 'above' : 'below';
  return `${note} was left out of the fit: ${Math.abs(residualCents).toFixed(0)} cents ${way} the rest.`;
}

/** A key that could explain a note. @param name of the key */
export function causeSentence(name: string, changeMm: number, plusMinusMm: number): string {
  const way = changeMm > 0 ? 'higher' : 'lower';
  return `could be the ${name} key, if it stood ${shown(changeMm, plusMinusMm)} mm ${way} than written`;
}
