import { formatBoth, formatLength, type LengthUnit } from '../../../documents/length-format.ts';
import { lockedOn, preferenceOf, PREFERENCES, type Preference } from '../../../documents/proposal-choices.ts';
import {
  type ProposalReport,
  type ProposedKeyReport,
  type ProposedNoteReport,
} from '../../../documents/proposal-report.ts';
import { GAIN_WORDS, type ProposalReason } from '../../../documents/proposal-words.ts';
import { tenths } from '../../../documents/tenths.ts';
import { noteLabel, signedCents, unbroken } from '../../parts/note-names.ts';
import { lengthBothWithPlusMinus } from '../../parts/plus-minus-words.ts';
import type { Reason, ReasonInput } from '../../state/reasons.ts';
import type { ChoiceOption } from '../../parts/vw-choice.ts';
import { isWaiting, reportFor } from '../../state/asked-answer.ts';
import { dayInHand, hornInHand, proposedInHand, type BenchState } from '../../state/bench-state.ts';
import type { ProposedOpenings } from '../../state/scale-report.ts';
import { undoTakesBackProposal } from '../../state/horn-on-bench.ts';
import { padsSet, startSentence } from '../../state/stands-now.ts';
import { isTaken } from '../../state/take-proposal.ts';
import { makePitchPicture, type PitchPicture } from './pitch-picture.model.ts';

/** One key of the table. */
export interface KeyRow {
  readonly pad: string;
  readonly number: number;
  readonly name: string;
  readonly found: string;
  /** empty where it stays */
  readonly proposed: string;
  /** why it is proposed so, with what it rests on; null where it stays */
  readonly opens: Reason | null;
  readonly move: string;
  /** its move where only the first of the short list move; null where it is none of them, or moves as far then */
  readonly few: string | null;
  readonly why: string;
  readonly reason: ProposalReason;
  readonly locked: boolean;
  /** its place on the short list, from 1; null where it is not on it */
  readonly place: number | null;
}

/** A set of openings that can be taken. */
export interface TakeChoice {
  readonly id: 'first' | 'list' | 'all';
  readonly label: string;
  readonly frontsMm: Readonly<Record<string, number>>;
  /** whether exactly these stand as proposed */
  readonly taken: boolean;
}

/** Everything the proposed setup shows. */
export interface ProposalView {
  readonly unit: LengthUnit;
  readonly waiting: boolean;
  readonly problem: string | null;
  readonly headline: string;
  /** from which openings it starts */
  readonly start: string;
  /** what its shares are shares of; null where it tells none */
  readonly gain: string | null;
  readonly spread: string;
  readonly prefer: Preference;
  readonly preferences: readonly ChoiceOption[];
  readonly takes: readonly TakeChoice[];
  /** what taking one did, or would do */
  readonly takenWords: string;
  readonly rows: readonly KeyRow[];
  readonly picture: PitchPicture | null;
  /** what the cents of the table are, and how sure */
  readonly limits: string;
  readonly notes: readonly (readonly [note: string, found: string, proposed: string, change: string])[];
  readonly cautions: readonly string[];
}

const PREFERENCE_LABELS: Readonly<Record<Preference, string>> = {
  balanced: 'Balanced',
  'in tune': 'In tune',
  'low keys': 'Low keys',
  'few moves': 'Few moves',
};

/** The view of a state. */
export function makeProposalView(state: BenchState): ProposalView {
  const { answer } = state.proposal;
  const visit = dayInHand(state);
  const report = reportFor(answer, state.hornId);
  const waiting = isWaiting(answer, state.hornId);
  const common = {
    unit: state.unit,
    waiting,
    start: startSentence(hornInHand(state).contents),
    problem: answer.asked === answer.answered ? answer.problem : null,
    prefer: preferenceOf(visit),
    preferences: PREFERENCES.map((value) => ({ value, label: PREFERENCE_LABELS[value] })),
  };
  if (report === null) {
    return {
      ...common,
      ...{
        headline: 'Working out what every key could do…',
        gain: null,
        spread: '',
        takes: [],
        takenWords: '',
      },
      ...{ rows: [], picture: null, limits: '', notes: [], cautions: [] },
    };
  }
  const takes = takesOf(report, proposedInHand(state), padsSet(hornInHand(state).contents));
  return {
    ...common,
    headline: report.answer,
    gain: report.shortList.length === 0 ? null : GAIN_WORDS,
    spread: report.spreadSentence,
    takes,
    takenWords: takenWords(takes, proposedInHand(state), undoTakesBackProposal(hornInHand(state))),
    rows: rowsOf(report, lockedOn(visit), state.unit),
    picture: makePitchPicture(report.notes),
    limits:
      report.pitchFrom === 'playing'
        ? 'As played, ± what a player repeats; what was not played is as worked out. The changes to their own ±.'
        : 'From equal temperament, each with its own ±; the changes, far better known, with theirs. Log what is played to start from there.',
    notes: report.notes.map(noteRow),
    cautions: [...report.heldApart, ...report.cautions],
  };
}

const NUMBERS = ['none', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const word = (count: number): string => NUMBERS[count] ?? String(count);

/** The first of a long list are so many. */
const FIRST = 3;

/** @param set pads whose set openings it starts from: what is proposed is read over as found, so it says them too */
function takesOf(
  { shortList, keys }: ProposalReport,
  proposed: ProposedOpenings,
  set: ReadonlySet<string>,
): TakeChoice[] {
  const moved = keys.filter(({ moveMm }) => moveMm !== 0);
  const kept = keys.filter(({ pad }) => set.has(pad)).map(({ pad, foundMm }) => [pad, foundMm]);
  const choice = (id: TakeChoice['id'], label: string, movedMm: TakeChoice['frontsMm']): TakeChoice => {
    const frontsMm = { ...Object.fromEntries(kept), ...movedMm };
    return {
      id,
      label: `${label}${unreadWords(movedMm, keys)}`,
      frontsMm,
      taken: isTaken(frontsMm, proposed),
    };
  };
  const takes: TakeChoice[] = [];
  const count = shortList.length;
  if (count > FIRST) {
    takes.push(choice('first', `Take the first ${word(FIRST)}`, shortList[FIRST - 1].togetherMm));
  }
  if (count > 0 && count < moved.length) {
    const label = count === 1 ? 'Take this one' : `Take these ${word(count)}`;
    takes.push(choice('list', label, shortList[count - 1].togetherMm));
  }
  if (moved.length > 0) {
    const all = Object.fromEntries(moved.map(({ pad, proposedMm }) => [pad, proposedMm]));
    takes.push(choice('all', moved.length === 1 ? 'Take it' : `Take all ${word(moved.length)}`, all));
  }
  return takes;
}

/** `, 17 not read`: how many of the openings taken are moves from an example’s; empty where all were read. */
function unreadWords(frontsMm: TakeChoice['frontsMm'], keys: readonly ProposedKeyReport[]): string {
  const taken = keys.filter(({ pad }) => frontsMm[pad] !== undefined);
  const unread = taken.filter(({ isRead }) => !isRead).length;
  if (unread === 0) return '';
  return unread === taken.length ? ', none read here' : `, ${unread} not read here`;
}

/** @param canUndo whether the next undo is what takes them back */
function takenWords(takes: readonly TakeChoice[], proposed: ProposedOpenings, canUndo: boolean): string {
  const count = Object.keys(proposed).length;
  const openings = `${count} ${count === 1 ? 'opening is' : 'openings are'}`;
  if (takes.some(({ taken }) => taken)) {
    return `Taken: ${openings} proposed on the sheet now.${canUndo ? ' Undo takes it back.' : ''}`;
  }
  return count === 0
    ? 'Taking writes the openings into the proposed setup, as one step; nothing else changes.'
    : `Other ${openings} proposed on the sheet now; taking replaces them, as one step.`;
}

function rowsOf(report: ProposalReport, locked: readonly string[], unit: LengthUnit): KeyRow[] {
  return report.keys.map((key: ProposedKeyReport) => {
    const place = report.shortList.findIndex(({ pad }) => pad === key.pad);
    const stays = key.moveMm === 0;
    return {
      pad: key.pad,
      number: key.number,
      name: key.name,
      found: lengthBothWithPlusMinus(key.foundMm, key.foundPlusMinusMm, unit),
      proposed: stays ? '' : formatBoth(key.proposedMm, unit),
      opens: stays ? null : keyReason(key, report.shortList[place]?.sharePercent ?? null, unit),
      move: stays ? '' : moveWords(key.moveMm, unit),
      few: fewWords(key, report.shortList, unit),
      why: key.why,
      reason: key.reason,
      locked: locked.includes(key.pad),
      place: place < 0 ? null : place + 1,
    };
  });
}

/** `+1.8 mm if only the first three move`: where that is told at the head and is another than the whole's. */
function fewWords(
  key: ProposedKeyReport,
  list: ProposalReport['shortList'],
  unit: LengthUnit,
): string | null {
  const first = list.slice(0, FIRST);
  const alone = first[first.length - 1]?.togetherMm[key.pad];
  if (alone === undefined) return null;
  const move = moveWords(alone - key.foundMm, unit);
  if (move === moveWords(key.moveMm, unit)) return null;
  return `${move} if only ${first.length === 1 ? 'it moves' : `the first ${word(first.length)} move`}`;
}

const moveWords = (mm: number, unit: LengthUnit): string => `${mm < 0 ? '' : '+'}${formatLength(mm, unit)}`;

/** @param gainPercent of the whole gain, this key and those before it on the short list; null where it is not on it */
function keyReason(key: ProposedKeyReport, gainPercent: number | null, unit: LengthUnit): Reason {
  const length = (label: string, mm: number): ReasonInput => ({
    label,
    value: formatBoth(mm, unit),
    from: '',
  });
  return {
    kind: 'proposal-gain',
    figure: unbroken(formatBoth(key.proposedMm, unit)),
    of: `${key.name} key at the front`,
    inputs: [
      {
        ...length('as it stands', key.foundMm),
        value: lengthBothWithPlusMinus(key.foundMm, key.foundPlusMinusMm, unit),
        from: key.isRead ? '' : 'from the example',
      },
      ...(key.enoughMm === null ? [] : [enoughInput(key.enoughMm, key.enoughPlusMinusMm, unit)]),
      length('moves by', key.moveMm),
      ...(gainPercent === null
        ? []
        : [
            {
              label: 'gain, with those before it on the list',
              value: `${gainPercent.toFixed(0)} %`,
              from: '',
            },
          ]),
    ],
    budget: null,
    remarks: [key.why],
  };
}

function enoughInput(mm: number, plusMinusMm: number | null, unit: LengthUnit): ReasonInput {
  return {
    label: 'height stops helping at',
    value: plusMinusMm === null ? formatBoth(mm, unit) : lengthBothWithPlusMinus(mm, plusMinusMm, unit),
    from: '',
  };
}

function noteRow(note: ProposedNoteReport): ProposalView['notes'][number] {
  return [
    noteLabel(note.fingering),
    absoluteCents(note.foundCents, note.foundPlusMinusCents),
    absoluteCents(note.proposedCents, note.proposedPlusMinusCents),
    `${signedCents(note.changeCents)} ± ${tenths(note.changePlusMinusCents)}`,
  ];
}

const absoluteCents = (cents: number, plusMinus: number | null): string =>
  plusMinus === null ? signedCents(cents) : `${signedCents(cents)} ±\u00a0${plusMinus.toFixed(0)}`;
