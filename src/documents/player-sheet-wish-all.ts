import type { ComparisonReport, NoteDifferenceReport } from './comparison-report.ts';
import type { LengthUnit } from './length-format.ts';
import { isPitchShown, isStrengthShown, spokenNote } from './player-sheet-decisions.ts';
import { nameOf, type WishedShift } from './player-sheet-facts.ts';
import { capital, inARow, many, shiftWords, withPlusMinus } from './player-sheet-lengths.ts';
import type { EndOfWay } from './shifted-openings.ts';

/** Keys that go another way than asked by less are read the same, mm. */
const SAME_WAY_MM = 0.05;

/** As many keys as a sentence names. */
const NAMED = 3;

/** What all keys as wished would do, in a sentence, and which keys cannot go the whole way. */
export function wishForAllSentence(shift: WishedShift, isProposal: boolean, unit: LengthUnit): string {
  return `With every key ${shiftWords(shift.byMm, unit)} at the front than ${isProposal ? 'is proposed' : 'it leaves'}, ${verdict(shift.cost)}${heldWords(shift)}${endedWords(shift)}`;
}

function verdict({ notes }: ComparisonReport): string {
  const [worst] = notes;
  const difference = worst?.differences[0] ?? null;
  const lost = notes
    .filter(({ differences: [d] }) => d === null)
    .map(({ fingering }) => spokenNote(fingering));
  const unplayed =
    lost.length === 0
      ? ''
      : ` ${capital(listed(lost))} would not sound as ${lost.length === 1 ? 'a note' : 'notes'} of this horn.`;
  if (difference === null || !difference.canBeShown) {
    return `no note would change by as much as can be shown.${unplayed}`;
  }
  const by = (who: NoteDifferenceReport['noticedBy']): number =>
    notes.filter(({ differences: [d] }) => d?.noticedBy === who).length;
  const [heard, careful] = [by('the player'), by('a careful player')];
  const most = `${spokenNote(worst.fingering)} by ${amountWords(difference)}`;
  const sentence =
    heard > 0
      ? `you should notice ${many(heard, 'note')}, most of all ${most}.`
      : careful > 0
        ? `a careful ear may notice ${many(careful, 'note')}, most of all ${most}.`
        : `no note would change by as much as you would notice; most of all ${most}.`;
  return sentence + unplayed;
}

/** `8.1 ± 0.4 cents flatter and 0.3 ± 0.1 dB weaker`: what can be shown of it. */
function amountWords(d: NoteDifferenceReport): string {
  const isStrength = isStrengthShown(d) && Math.abs(d.strengthDb!) >= 0.05;
  return inARow([
    ...(isPitchShown(d)
      ? [`${withPlusMinus(d.cents, d.centsPlusMinus)} cents ${d.cents > 0 ? 'sharper' : 'flatter'}`]
      : []),
    ...(isStrength
      ? [
          `${withPlusMinus(d.strengthDb!, d.strengthDbPlusMinus!)} dB ${d.strengthDb! > 0 ? 'stronger' : 'weaker'}`,
        ]
      : []),
  ]);
}

/** Keys that an arm lets go less far than their stop does. */
function heldWords({ byMm, cost, ended }: WishedShift): string {
  const held = cost.keys.filter(({ id, setups: [, as], differences: [d] }) => {
    const isEnded = ended.some(({ pad }) => pad === id);
    return as?.ruledBy !== null && !isEnded && Math.abs(d!.frontMm - byMm) >= SAME_WAY_MM;
  });
  return held.length === 0 ? '' : ` Arms let ${listed(held.map(({ name }) => name))} go less far.`;
}

const ENDS: Readonly<Record<EndOfWay, string>> = {
  shut: 'would not open at all',
  hinge: 'cannot swing so far',
  'foot cork': 'cannot go so far, the foot cork would be gone before',
};

function endedWords({ cost, ended }: WishedShift): string {
  return (Object.keys(ENDS) as EndOfWay[])
    .map((by) => {
      const names = ended.filter(({ endedBy }) => endedBy === by).map(({ pad }) => nameOf(cost, pad));
      return names.length === 0 ? '' : ` ${capital(listed(names))} ${ENDS[by]}.`;
    })
    .join('');
}

/** `a, b, c and 4 more`. */
function listed(words: readonly string[]): string {
  const rest = words.length - NAMED;
  return rest <= 0 ? inARow(words) : `${words.slice(0, NAMED).join(', ')} and ${rest} more`;
}
