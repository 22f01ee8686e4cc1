import type { HeldApart, Horn, ProposedKey } from '../acoustics/index.ts';
import { formatBoth, formatLength } from './length-format.ts';
import { barePlusMinus, lengthBothWithPlusMinus, lengthWithPlusMinus } from './length-plus-minus.ts';
import { noteLabel } from './note-label.ts';
import type { ProposedKeyReport, ShortListedReport } from './proposal-report.ts';

/** Words for a proposal: why each key, and the answer at the head. */

/** What decides a key, in a word. */
export type ProposalReason = 'vent' | 'link' | 'pitch' | 'reach' | 'height' | 'evenness' | 'locked' | 'stays';

const MM = 1e-3;
const both = (metres: number): string => formatBoth(metres / MM, 'mm');

/** Where height stops helping, with its ± where that is known: `9.1 ± 0.4 mm (0.358 in)`. */
function enoughWords({ enough }: ProposedKey, plusMinusMm: number | null): string {
  if (plusMinusMm === null) return both(enough.front);
  return lengthBothWithPlusMinus(enough.front / MM, plusMinusMm, 'mm').replaceAll('\u00a0', ' ');
}

/** Why a key is where it is. @param plusMinus m, of its reading @param enoughPlusMinusMm null where it is not known */
export function reasonOf(
  horn: Horn,
  key: ProposedKey,
  plusMinus: number,
  enoughPlusMinusMm: number | null,
): { readonly reason: ProposalReason; readonly why: string } {
  const { drive, hold, enough, found, proposed } = key;
  const nameOf = (id: string): string => horn.holes.find((hole) => hole.id === id)?.name ?? id;
  const enoughAt = enoughWords(key, enoughPlusMinusMm);
  const up = proposed > found;
  switch (drive.by) {
    case 'locked':
      return { reason: 'locked', why: 'Locked: left where it stands.' };
    case 'stays':
      if (drive.within === 'an arm') {
        const wants = enough.reached ? `it helps up to ${enoughAt}` : 'it helps beyond reach';
        const why = `Stays, though under-vented: the arm of ${nameOf(drive.with)} lets it no higher; ${wants}.`;
        return { reason: 'link', why };
      }
      return {
        reason: 'stays',
        why:
          drive.within === 'its reading'
            ? `Stays: the move would be within what a reading can tell (±${formatLength(plusMinus / MM, 'mm')}).`
            : 'Stays: nothing asks for a move.',
      };
    case 'reach':
      return { reason: 'reach', why: `Lowered to the most it may open, ${both(key.highest)}.` };
    case 'evenness':
      return { reason: 'evenness', why: `${up ? 'Raised' : 'Lowered'} to vent more like its neighbours.` };
    case 'height':
      return {
        reason: 'height',
        why: `Lowered: above ${enoughAt} more height stops helping, and a lower key is quicker.`,
      };
    case 'pitch': {
      const note = noteLabel(drive.fingering);
      const why = up ? `Raised for ${note}, which is flat` : `Lowered for ${note}, which is sharp`;
      return {
        reason: hold?.by === 'reach' ? 'reach' : 'pitch',
        why: `${why} beside its register.${stopsAt(key)}`,
      };
    }
    case 'link':
      return {
        reason: 'link',
        why: drive.drives
          ? `${up ? 'Raised' : 'Lowered'} so that its arm lets ${nameOf(drive.with)} stand where it is wanted.`
          : `Lowered: the arm of ${nameOf(drive.with)} holds it down from there anyway.`,
      };
    case 'vent': {
      const short = enough.front - proposed > plusMinus;
      const over = proposed - enough.front > plusMinus;
      const why = short
        ? shortOf(key, nameOf, enoughAt)
        : `Under-vented: raised to where more height stops helping${enoughPlusMinusMm === null ? '' : `, ±${barePlusMinus(enoughPlusMinusMm, 'mm')} mm`}.`;
      if (short && hold?.by === 'link' && !hold.drives) return { reason: 'link', why };
      if (short && hold?.by === 'reach') return { reason: 'reach', why };
      if (over && hold?.by === 'link' && hold.drives) {
        return {
          reason: 'link',
          why: `Under-vented, and raised past its own ${enoughAt} so that its arm lets ${nameOf(hold.with)} open.`,
        };
      }
      return { reason: 'vent', why: why + lastToGain(key) };
    }
  }
}

function lastToGain({ enough: { fingering, reached } }: ProposedKey): string {
  return fingering === null || !reached ? '' : ` ${noteLabel(fingering)} is the last to gain.`;
}

function shortOf(
  { hold, enough, highest }: ProposedKey,
  nameOf: (id: string) => string,
  enoughAt: string,
): string {
  const wants = enough.reached ? `it helps up to ${enoughAt}` : 'it helps beyond reach';
  if (hold?.by === 'link' && !hold.drives) {
    return `Under-vented: raised as far as the arm of ${nameOf(hold.with)} lets it; ${wants}.`;
  }
  if (hold?.by === 'reach')
    return `Under-vented: raised to the most it may open, ${both(highest)}; ${wants}.`;
  return `Under-vented: raised, but not all the way: ${wants}, and pitch, travel and evenness count too.`;
}

function stopsAt({ hold, highest }: ProposedKey): string {
  return hold?.by === 'reach' ? ` The most it may open, ${both(highest)}, stops it.` : '';
}

/** An arm that holds a pad, neither to be moved. */
export function heldApartSentence(horn: Horn, { driver, driven, own, lets }: HeldApart): string {
  const nameOf = (id: string): string => horn.holes.find((hole) => hole.id === id)?.name ?? id;
  return `The arm of ${nameOf(driver)} holds ${nameOf(driven)} at ${both(lets)}, below its own stop at ${both(own)}; neither was to move.`;
}

/** What the gain of a proposal is, where its shares are told. */
export const GAIN_WORDS =
  'Gain: by how much less venting short of enough, pitch beside its register, height and unevenness weigh with all keys moved than as they stand. A move’s ± is that of the opening as read.';

const NUMBERS = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten'];
const word = (count: number): string => NUMBERS[count] ?? String(count);
/** How many keys are named at the head. */
const NAMED = 3;

/** A move with its sign and the ± of its reading: `E +0.8 ± 0.2 mm`. */
function moveWords({ name, foundMm, foundPlusMinusMm }: ProposedKeyReport, toMm: number): string {
  const move = toMm - foundMm;
  const within = lengthWithPlusMinus(move, foundPlusMinusMm, 'mm').replaceAll('\u00a0', ' ');
  return `${name} ${move < 0 ? '' : '+'}${within}`;
}

/** The answer in a sentence or two: of the keys that were read, or, where none was, of the example’s. */
export function headline(
  keys: readonly ProposedKeyReport[],
  shortList: readonly ShortListedReport[],
): string {
  const read = keys.filter(({ isRead }) => isRead);
  if (read.length === keys.length) return answerOf(keys, keys, shortList);
  if (read.length === 0) {
    return `As the example stands, ${uncapital(answerOf(keys, keys, shortList))} No opening was read on this horn: read them to know.`;
  }
  const lead = read.length === 1 ? `Of the one key read, ${read[0].name}` : `Of the ${read.length} keys read`;
  const moved = keys.filter(({ moveMm, isRead }) => moveMm !== 0 && !isRead).length;
  const others =
    moved === 0
      ? ''
      : ` ${word(moved)} ${moved === 1 ? 'move is of a key' : 'moves are of keys'} not read on this horn: read ${moved === 1 ? 'it' : 'them'} to know.`;
  return `${lead}: ${uncapital(answerOf(keys, read, shortList))}${others}`;
}

/** @param among the keys it tells of */
function answerOf(
  keys: readonly ProposedKeyReport[],
  among: readonly ProposedKeyReport[],
  shortList: readonly ShortListedReport[],
): string {
  const moves = (of: readonly ProposedKeyReport[]): number => of.filter(({ moveMm }) => moveMm !== 0).length;
  const moved = moves(among);
  if (moved === 0 || shortList.length === 0) {
    return moved === 0
      ? 'No key needs to move by more than a reading can tell.'
      : `${word(moved)} ${moved === 1 ? 'key moves' : 'keys move'}; no few of them bring most of the gain.`;
  }
  const last = shortList[shortList.length - 1];
  const first = shortList.slice(0, NAMED);
  const few = first[first.length - 1];
  const named = first
    .map(({ pad }) =>
      moveWords(
        keys.find((key) => key.pad === pad)!,
        few.togetherMm[pad],
      ),
    )
    .join(', ');
  const keysBring = `${word(first.length)} ${first.length === 1 ? 'key brings' : 'keys bring'}`;
  const alone = first.length === 1 ? 'if only it moves' : 'if only they move';
  const answer = `${keysBring} ${Math.round(few.sharePercent)} % of the gain ${alone}: ${named}.`;
  if (shortList.length <= NAMED) return answer;
  return `${answer} ${word(shortList.length)} of the ${moves(keys)} moves bring ${Math.round(last.sharePercent)} %.`;
}

const uncapital = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);
