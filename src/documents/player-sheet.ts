import type { BenchContents } from './bench-contents.ts';
import { saidOf } from './day-steps.ts';
import { keyedHoles } from './horn-document.ts';
import type { LengthUnit } from './length-format.ts';
import {
  linksSentence,
  lostMotionSentence,
  padsSentence,
  playedSentence,
  reversibleSentence,
  sealsSentence,
} from './player-sheet-checks.ts';
import { makeSheetCurve, type SheetCurve } from './player-sheet-curve.ts';
import { decisionsOf, headlineOf, NOT_READ } from './player-sheet-decisions.ts';
import { sentenceOf, type SheetSentence } from './player-sheet-edits.ts';
import type { PlayerSheetFacts } from './player-sheet-facts.ts';
import { followerSentences } from './player-sheet-followers.ts';
import { likeSentence } from './player-sheet-like.ts';
import { limitsSentence } from './player-sheet-limits.ts';
import { both, dayWords, many } from './player-sheet-lengths.ts';
import { keyTableOf, noteTableOf, type SheetKeyTable, type SheetNoteTable } from './player-sheet-tables.ts';
import { wishForAllSentence } from './player-sheet-wish-all.ts';
import { wishSentence } from './player-sheet-wish.ts';
import { knownSetupLength } from './sheet-edits.ts';
import type { VisitDocument } from './visit-document.ts';

/** A run of sentences under a heading of their own. */
export interface SheetPart {
  readonly id: string;
  readonly heading: string;
  readonly sentences: readonly SheetSentence[];
}

/** The page for the player: all that is printed on it, sentences apart from numbers. */
export interface PlayerSheet {
  readonly hornName: string;
  /** what stands in the head, in the order it is read */
  readonly head: readonly { readonly label: string; readonly text: string }[];
  /** the player’s own words; null where none are written down */
  readonly wish: string | null;
  readonly headline: SheetSentence;
  /** a sheet to agree on before the work: nothing is set, and all is told of what is proposed */
  readonly isProposal: boolean;
  readonly decided: SheetPart;
  readonly keys: SheetKeyTable;
  readonly notes: SheetNoteTable;
  readonly curve: SheetCurve | null;
  /** what a wish for all keys would do to the notes; null for any other */
  readonly wishNotes: SheetNoteTable | null;
  /** what the wish would cost, and what was changed and checked */
  readonly parts: readonly SheetPart[];
  readonly consent: SheetSentence;
  /** what is not there, for the screen only */
  readonly missing: readonly string[];
}

/** The player’s sheet of a visit. @param facts of the same contents */
export function makePlayerSheet(
  contents: BenchContents,
  facts: PlayerSheetFacts,
  unit: LengthUnit,
): PlayerSheet {
  const visit = contents.visit.document;
  const say = (id: string, written: string): SheetSentence => sentenceOf(visit, id, written);
  const { wished, wishedShift, isProposal } = facts;
  const cost =
    wishedShift === null
      ? wishSentence(wished, isProposal, unit)
      : wishForAllSentence(wishedShift, isProposal, unit);
  const leaving = isProposal ? contents.proposed : contents.asSet;
  const lost = lostMotionSentence(facts, unit);
  const like = visit.setLike === undefined ? null : likeSentence(visit.setLike, facts, unit);
  return {
    hornName: contents.horn.document.name,
    head: headOf(contents),
    wish: visit.wish ?? null,
    headline: say(
      'headline',
      isProposal ? 'Nothing is done yet: this is what is proposed.' : headlineOf(facts, unit),
    ),
    isProposal,
    decided: isProposal
      ? { id: 'decided', heading: 'What is proposed', sentences: proposed(contents, facts, unit, say) }
      : { id: 'decided', heading: 'What was decided, and why', sentences: decided(facts, unit, say) },
    keys: keyTableOf(facts, { asFound: contents.asFound.document, leaving: leaving.document }, unit),
    notes: noteTableOf(facts.comparison, isProposal ? null : visit),
    curve: wished === null ? null : makeSheetCurve(facts, wished, unit),
    wishNotes: wishedShift === null ? null : noteTableOf(wishedShift.cost, null),
    parts: [
      ...(like === null
        ? []
        : [{ id: 'like', heading: 'Like another horn', sentences: [say('like', like)] }]),
      ...(cost === null
        ? []
        : [{ id: 'wish', heading: 'What the wish would do', sentences: [say('wish', cost)] }]),
      {
        id: 'checked',
        heading: 'Changed and checked',
        sentences: [
          say('pads', padsSentence(facts, contents, unit)),
          say('links', linksSentence(facts, contents, unit)),
          ...(lost === null ? [] : [say('lost motion', lost)]),
          say('seals', sealsSentence(facts, contents)),
          say('played', playedSentence(contents)),
        ],
      },
      {
        id: 'limits',
        heading: 'How far to trust this',
        sentences: [say('limits', limitsSentence(facts, contents))],
      },
      {
        id: 'cautions',
        heading: 'Take care',
        sentences: [say('cautions', CAUTIONS), say('reversible', reversibleSentence(facts, contents))],
      },
    ],
    consent: say(
      'consent',
      isProposal
        ? 'I have read this sheet and agree to what it says may be done.'
        : 'I have read this sheet and agree to what was done and to what it says may be done.',
    ),
    missing: missingFrom(contents, facts),
  };
}

/** **Source:** common practice, no source. */
const CAUTIONS =
  'Torch, adhesive, bending and filing are for trained hands: heat dulls lacquer and looses old joints, filed metal does not come back.';

/** What was decided of the keys that were set, and which follow; nothing where none moved, which the headline says. */
function decided(
  facts: PlayerSheetFacts,
  unit: LengthUnit,
  say: (id: string, written: string) => SheetSentence,
): SheetSentence[] {
  return [
    ...decisionsOf(facts, unit).map(({ pad, text }) => say(`decided ${pad}`, text)),
    ...followerSentences(facts, unit).map(({ pad, text }) => say(`follows ${pad}`, text)),
  ];
}

/** As many proposed keys as are told of one by one. */
const TOLD_PROPOSALS = 8;

function proposed(
  { horn, asFound, proposed: plan }: BenchContents,
  { unreadAsFound }: PlayerSheetFacts,
  unit: LengthUnit,
  say: (id: string, written: string) => SheetSentence,
): SheetSentence[] {
  const keys = plan.document.keys.filter(({ openingMm }) => openingMm !== undefined);
  const told = keys.slice(0, TOLD_PROPOSALS).map(({ pad, openingMm, measuredAt = 'front' }) => {
    const name = horn.document.holes.find(({ id }) => id === pad)?.name ?? pad;
    const found = asFound.document.keys.find((key) => key.pad === pad);
    const isUnread = unreadAsFound.includes(pad);
    const from =
      found?.openingMm === undefined || isUnread
        ? ''
        : ` from ${both(found.openingMm, unit)} at the ${found.measuredAt}`;
    const unread = isUnread ? `; ${NOT_READ}` : '';
    return say(
      `proposed ${pad}`,
      `The ${name} key is to go${from} to ${both(openingMm!, unit)} at the ${measuredAt}${unread}.`,
    );
  });
  const more = keys.length - told.length;
  return more > 0
    ? [
        ...told,
        say(
          'proposed more',
          `${more === 1 ? 'One more key is' : `${more} more keys are`} to move; the shop’s page has them.`,
        ),
      ]
    : told;
}

function headOf({ horn, visit }: BenchContents): PlayerSheet['head'] {
  const { maker, serial } = horn.document;
  const { date, airC, a4Hz, measuredBy, player } = visit.document;
  const unsaid = 'not written down';
  return [
    { label: 'Player', text: player ?? unsaid },
    { label: 'Date', text: dayWords(date) },
    { label: 'Maker', text: maker },
    { label: 'Serial', text: serial ?? unsaid },
    { label: 'Air in the horn', text: `${airC.toFixed(1)} °C` },
    { label: 'A4', text: `${Number(a4Hz.toFixed(1))} Hz` },
    { label: 'Read by', text: measuredBy ?? unsaid },
  ];
}

function wishMissing(
  { wishShiftMm: shiftMm, setLike }: VisitDocument,
  { wished }: Pick<PlayerSheetFacts, 'wished'>,
): string[] {
  if (shiftMm === 0) return ['Say how much higher or lower the player wants all keys.'];
  return shiftMm !== undefined || setLike !== undefined || wished?.isNamed === true
    ? []
    : ['Say which key the wish is about, or that it is about all.'];
}

function missingFrom({ horn, asFound, visit }: BenchContents, facts: PlayerSheetFacts): string[] {
  const { player, wish, measuredBy, leakingSeats } = visit.document;
  const unread = keyedHoles(horn.document).filter(
    ({ id }) => knownSetupLength(asFound.document, id, 'openingMm')?.origin !== 'measured',
  );
  const isSpokenOf = saidOf(visit.document, 'seals and links') !== null;
  return [
    ...(player === undefined ? ['Nobody is written down as the player.'] : []),
    ...(measuredBy === undefined ? ['Nobody is written down as having read it.'] : []),
    ...(wish === undefined ? ['What the player asks for is not written down.'] : []),
    ...wishMissing(visit.document, facts),
    ...(facts.isProposal || facts.setByHand.length === 0 ? ['No opening is read as set.'] : []),
    ...(unread.length === 0
      ? []
      : [
          `${many(unread.length, 'opening')} as found ${unread.length === 1 ? 'is' : 'are'} an example’s, not read on this horn.`,
        ]),
    ...(leakingSeats === undefined && !isSpokenOf ? ['Seals are not recorded.'] : []),
  ];
}
