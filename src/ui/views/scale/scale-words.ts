import { canBeShown, noteAt, noteNumber, usualFingerings } from '../../../acoustics/index.ts';
import { formatBoth, formatLength, type LengthUnit } from '../../../documents/length-format.ts';
import { tenths } from '../../../documents/tenths.ts';
import { listed, noteLabel, signedCents, unbroken } from '../../parts/note-names.ts';
import { centsWithPlusMinus } from '../../parts/plus-minus-words.ts';
import type { NoteNaming } from '../../state/bench-state.ts';
import type { FingeringReport, LoudReport, ScaleNumbers, ScaleReport } from '../../state/scale-report.ts';
import type { CentsSureness, ScaleSureness } from '../../state/scale-sureness.ts';
import { TOLD_LEVEL_KPA } from '../../state/whole-scale.ts';

/** A note that moves by no more than this is not counted, cents. */
const COUNTED_CENTS = 5;
/** A move smaller than this is none to speak of, cents. */
const LEAST_TOLD_CENTS = 0.05;
/** A change of strength when loud smaller than this is none, share of soft strength. */
const LEAST_LOUD_SHARE = 0.01;

/** How notes are called. */
export type Namer = (fingering: FingeringReport) => string;

/** @param transpositionSemitones from written to sounding, for concert names */
export function makeNamer(naming: NoteNaming, transpositionSemitones: number): Namer {
  return ({ note, way }) => {
    const name = naming === 'written' ? note : noteAt(noteNumber(note) + transpositionSemitones);
    return noteLabel(way === '' ? name : `${name} ${way}`);
  };
}

/** The answer in words, biggest first. */
export interface ScaleAnswer {
  readonly headline: string;
  readonly standing: string;
  readonly sure: string;
}

/**
 * @param proposed null where no key is proposed otherwise than found
 * @param sure of what is shown; null while a hand moves and until it is known
 */
export function makeScaleAnswer(
  report: ScaleReport,
  proposed: ScaleNumbers | null,
  nameOf: Namer,
  sure: ScaleSureness | null = null,
): ScaleAnswer {
  const usual = usualFingerings(report.fingerings);
  const shown = report.fingerings.flatMap((_, i) => (usual[i] ? [i] : []));
  const words =
    proposed === null
      ? asFound(report, shown, nameOf, sure)
      : asProposed(report, proposed, shown, nameOf, sure);
  return {
    headline: unbroken(words.headline),
    standing: unbroken(words.standing),
    sure: unbroken(sure === null ? NOT_YET_SURE : surelyWords(sure, shown)),
  };
}

const NOT_YET_SURE = 'Absolute pitch is good to ± 10 cents at best; differences are far better.';

/** How sure the pitches are, from the surest to the least sure, and the moves. */
function surelyWords({ found, moves }: ScaleSureness, shown: readonly number[]): string {
  const known = (of: readonly (CentsSureness | null)[]): CentsSureness['budget'][] =>
    shown.flatMap((i) => of[i]?.budget ?? []);
  const pitches = known(found);
  if (pitches.length === 0) return NOT_YET_SURE;
  const model = Math.max(...pitches.map(({ wholeHorn }) => wholeHorn));
  const ofModel = model === 0 ? '' : `, ${model.toFixed(0)} of them the model of the whole horn`;
  const moving = known(moves);
  const better =
    moving.length === 0
      ? 'moves are far surer'
      : `moves are far surer, ± ${tenths(Math.max(...moving.map(({ plusMinus }) => plusMinus)))} cents at most`;
  return `Pitches are known to ± ${wholeRange(pitches)} cents${ofModel}; ${better}.`;
}

/** `12–14`. */
function wholeRange(budgets: readonly { readonly plusMinus: number }[]): string {
  const all = budgets.map(({ plusMinus }) => plusMinus);
  const [low, high] = [Math.min(...all), Math.max(...all)].map((half) => half.toFixed(0));
  return low === high ? low : `${low}–${high}`;
}

function asFound(
  { fingerings, found }: ScaleReport,
  shown: readonly number[],
  nameOf: Namer,
  sure: ScaleSureness | null,
): Omit<ScaleAnswer, 'sure'> {
  const widest = furthest(shown, (i) => found.cents[i]);
  const low = shown.filter((i) => fingerings[i].register === 1).map((i) => found.cents[i]);
  const lost = lostWords(shown, found, fingerings, nameOf);
  return {
    headline:
      widest === null
        ? 'As found, no note has a resonance.'
        : `As found, the widest note is ${nameOf(fingerings[widest])}, ${awayWords(found.cents[widest], sure?.found[widest])}; ` +
          `the low register lies ${withinWords(low)}.`,
    standing: `Nothing is proposed yet: move a key’s opening and watch its notes.${lost}`,
  };
}

function asProposed(
  { fingerings, found }: ScaleReport,
  proposed: ScaleNumbers,
  shown: readonly number[],
  nameOf: Namer,
  sure: ScaleSureness | null,
): Omit<ScaleAnswer, 'sure'> {
  const moveOf = (i: number): number => proposed.cents[i] - found.cents[i];
  const most = furthest(shown, moveOf);
  const count = shown.filter((i) => Math.abs(moveOf(i)) > COUNTED_CENTS).length;
  const widest = furthest(shown, (i) => proposed.cents[i]);
  const lost = lostWords(shown, proposed, fingerings, nameOf);
  const counted =
    count === 0
      ? `no note moves by more than ${COUNTED_CENTS} cents`
      : `${count} ${count === 1 ? 'note moves' : 'notes move'} by more than ${COUNTED_CENTS} cents`;
  const moved =
    most === null || Math.abs(moveOf(most)) < LEAST_TOLD_CENTS
      ? 'As proposed, no note moves.'
      : `As proposed, ${counted}; ${nameOf(fingerings[most])} moves most, ${mostWords(moveOf(most), sure?.moves[most] ?? null)}.`;
  const stronger = furthest(shown, (i) => proposed.heights[i] / found.heights[i] - 1);
  const strength =
    stronger === null
      ? ''
      : ` Strength changes most on ${nameOf(fingerings[stronger])}, ` +
        `${signedPercent(proposed.heights[stronger] / found.heights[stronger] - 1)}.`;
  return {
    headline: moved,
    standing:
      widest === null
        ? lost.trim()
        : `The widest note is then ${nameOf(fingerings[widest])}, ${awayWords(proposed.cents[widest], sure?.found[widest])}.${strength}${lost}`,
  };
}

/** `+1.8 ± 0.3 cents`, and whether that can be shown. */
function mostWords(cents: number, sure: CentsSureness | null): string {
  if (sure === null) return centsWords(cents);
  const { plusMinus } = sure.budget;
  const words = `${centsWithPlusMinus(cents, plusMinus)} cents`;
  return canBeShown({ value: cents, plusMinus }) ? words : `${words}: no difference that can be shown`;
}

function lostWords(
  shown: readonly number[],
  numbers: ScaleNumbers,
  fingerings: readonly FingeringReport[],
  nameOf: Namer,
): string {
  const lost = shown.filter((i) => Number.isNaN(numbers.cents[i])).map((i) => nameOf(fingerings[i]));
  return lost.length === 0 ? '' : ` ${listed(lost)} ${lost.length === 1 ? 'is' : 'are'} lost.`;
}

/** How far the answer can be trusted: in a line, and pad by pad. */
export interface ScaleLimits {
  readonly lines: readonly string[];
  /** null where every pad lies within its model's range */
  readonly pads: { readonly summary: string; readonly list: readonly string[] } | null;
}

export function makeScaleLimits({ warnings }: ScaleNumbers): ScaleLimits {
  const list = warnings.flatMap(({ pad, text }) => (pad === null ? [] : [`${pad} key: ${text}`]));
  const names = [...new Set(warnings.flatMap(({ pad }) => pad ?? []))];
  return {
    lines: warnings.flatMap(({ pad, text }) => (pad === null ? [text] : [])),
    pads:
      names.length === 0
        ? null
        : {
            summary:
              `${names.length === 1 ? 'One pad lies' : `${names.length} pads lie`} outside the range the pad ` +
              `model was made for; what ${names.length === 1 ? 'it does' : 'they do'} is less sure`,
            list,
          },
  };
}

/** Of some, the one whose value lies furthest from zero; those without a value left out. */
function furthest(of: readonly number[], value: (i: number) => number): number | null {
  let best: number | null = null;
  for (const i of of) {
    const size = Math.abs(value(i));
    if (Number.isFinite(size) && (best === null || size > Math.abs(value(best)))) best = i;
  }
  return best;
}

/** `65 cents sharp`, `65 ± 14 cents sharp`, `0.4 cents flat`, `in tune`. @param sure where that is known */
export function awayWords(cents: number, sure?: CentsSureness | null): string {
  if (Math.abs(cents) < LEAST_TOLD_CENTS) return 'in tune';
  const half = sure === null || sure === undefined ? '' : ` ± ${sized(sure.budget.plusMinus)}`;
  return `${sized(Math.abs(cents))}${half} cents ${cents > 0 ? 'sharp' : 'flat'}`;
}

/** `within ±0.1 cents`, or both ends where that is wide. */
function withinWords(cents: readonly number[]): string {
  const known = cents.filter(Number.isFinite);
  const low = Math.min(...known);
  const high = Math.max(...known);
  const wide = Math.max(-low, high);
  if (wide <= 1) return `within ±${Math.max(0.1, Math.ceil(wide * 10) / 10).toFixed(1)} cents`;
  return `between ${signedCents(low)} and ${signedCents(high)} cents`;
}

function sized(size: number): string {
  return size >= 10 ? String(Math.round(size)) : size.toFixed(1);
}

/** `+6.3 cents`. */
export function centsWords(cents: number): string {
  return `${signedCents(cents)} cents`;
}

/** A share as a signed percentage, `+1.2 %`. */
export function signedPercent(share: number): string {
  return `${signedCents(100 * share)} %`;
}

/** `F4: as found −0.0 cents, …`: everything about one fingering. */
export function makeNoteTold(
  report: ScaleReport,
  proposed: ScaleNumbers | null,
  nameOf: Namer,
  sure: ScaleSureness | null = null,
): (index: number) => string {
  const { fingerings, found } = report;
  const within = (cents: number, known: CentsSureness | null | undefined): string =>
    known === null || known === undefined
      ? signedCents(cents)
      : centsWithPlusMinus(cents, known.budget.plusMinus);
  return (i) => {
    const name = nameOf(fingerings[i]);
    if (Number.isNaN(found.cents[i])) return `${name} has no resonance near its pitch as found`;
    if (proposed === null) {
      const cutoff = Number.isNaN(found.cutoffHz[i]) ? '' : ` · cutoff ${found.cutoffHz[i].toFixed(0)} Hz`;
      return unbroken(
        `${name}  ${within(found.cents[i], sure?.found[i])} cents · strength ${found.heights[i].toFixed(1)}${cutoff}`,
      );
    }
    if (Number.isNaN(proposed.cents[i])) return `${name} is lost as proposed`;
    const cutoff =
      Number.isNaN(found.cutoffHz[i]) || Number.isNaN(proposed.cutoffHz[i])
        ? ''
        : ` · cutoff ${found.cutoffHz[i].toFixed(0)} → ${proposed.cutoffHz[i].toFixed(0)} Hz`;
    return unbroken(
      `${name}  ${signedCents(found.cents[i])} → ${signedCents(proposed.cents[i])} cents ` +
        `(moves ${within(proposed.cents[i] - found.cents[i], sure?.moves[i])}) · strength ` +
        `${signedPercent(proposed.heights[i] / found.heights[i] - 1)}${cutoff}`,
    );
  };
}

/** One key that is proposed otherwise than found. */
export function proposalWords(name: string, foundMm: number, proposedMm: number, unit: LengthUnit): string {
  return unbroken(`${name} ${formatLength(foundMm, unit)} → ${formatLength(proposedMm, unit)}`);
}

/** The same with both units, for paper. */
export function proposalOnPaper(name: string, foundMm: number, proposedMm: number, unit: LengthUnit): string {
  return unbroken(
    `${name} key: as found ${formatBoth(foundMm, unit)}, proposed ${formatBoth(proposedMm, unit)}, both at the front`,
  );
}

/** What loud playing does to the note. */
export function loudSentence(loud: LoudReport, name: string, moved: boolean): string {
  const at = loud.pressuresKpa.indexOf(TOLD_LEVEL_KPA);
  const found = loud.found[at];
  const proposed = loud.proposed[at];
  const level = `at ${TOLD_LEVEL_KPA} kPa`;
  if (found === null) return `${name} cannot be followed as loud as ${TOLD_LEVEL_KPA} kPa.`;
  const keeps = `${level} ${name} keeps ${Math.round(100 * found)} % of its soft strength as found`;
  if (!moved) return unbroken(`${capital(keeps)}.`);
  if (proposed === null) return unbroken(`${capital(keeps)}, and is lost as proposed.`);
  const change = proposed - found;
  const verdict =
    Math.abs(change) < LEAST_LOUD_SHARE
      ? 'No different when played loud'
      : change > 0
        ? 'Opens up when played loud'
        : 'Chokes when played loud';
  return unbroken(`${verdict}: ${keeps}, ${Math.round(100 * proposed)} % as proposed.`);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
