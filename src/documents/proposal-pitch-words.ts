import { whoNoticesPitch, type Proposal, type TunedBy } from '../acoustics/index.ts';
import { verdict } from './comparison-words.ts';
import { noteLabel } from './note-label.ts';
import type { ProposedNoteReport } from './proposal-report.ts';
import { tenths } from './tenths.ts';

const TUNED: Readonly<Record<TunedBy, string>> = {
  'each register': 'Notes stand from the mean of their register',
  'all notes': 'Notes stand from the mean of all',
  'equal temperament': 'Notes stand from equal temperament',
};

/**
 * What a proposal does to the pitch: as a whole, and note by note in the words that setups side by side are told in.
 *
 * @param plusMinus cents, of the change as a whole
 */
export function spreadSentence(
  spread: Proposal['spread'],
  plusMinus: number,
  notes: readonly ProposedNoteReport[],
  { tunedBy, isPlayed }: { readonly tunedBy: TunedBy; readonly isPlayed: boolean },
): string {
  const change = spread.proposed - spread.found;
  const from = `${TUNED[tunedBy]} by ${spread.found.toFixed(1)} cents ${isPlayed ? 'as played' : 'as the horn stands'}, ${spread.proposed.toFixed(1)} as proposed`;
  const way = change < 0 ? 'closer' : 'further apart';
  const whole =
    Math.abs(change) <= plusMinus
      ? `no difference that can be shown (±${tenths(plusMinus)} cents)`
      : `${Math.abs(change).toFixed(1)} ± ${tenths(plusMinus)} cents ${way} all together`;
  return `${from}: ${whole}. By the pitch of single notes, ${noticedWords(notes)}`;
}

function noticedWords(notes: readonly ProposedNoteReport[]): string {
  return verdict(
    [...notes]
      .sort((a, b) => Math.abs(b.changeCents) - Math.abs(a.changeCents))
      .map(({ fingering, changeCents, changePlusMinusCents }) => ({
        label: noteLabel(fingering),
        difference: {
          cents: changeCents,
          centsPlusMinus: changePlusMinusCents,
          strengthDb: null,
          strengthDbPlusMinus: null,
          noticedBy: whoNoticesPitch({ value: changeCents, plusMinus: changePlusMinusCents }),
        },
      })),
  );
}
