import { FINGERINGS, noteFrequency } from '../../../acoustics/index.ts';
import { noteLabel } from '../../../documents/note-label.ts';
import {
  FARTHEST_CENTS,
  notesPlayed,
  takesIn,
  type PlayedNote,
  type Take,
} from '../../../documents/pitch-log.ts';
import { tenths } from '../../../documents/tenths.ts';
import { signedCents } from '../../parts/note-names.ts';
import { hornInHand, type BenchState } from '../../state/bench-state.ts';
import { centsFrom, namedPitch, nearerNote, noteSoFar } from '../../state/heard-note.ts';
import { centsAs, playedOf, refusedOf, tuningOf } from '../../state/played-log.ts';
import type { PlayedState } from '../../state/played-state.ts';

/** The view of played notes, as plain text and numbers. */
export interface PlayedView {
  readonly headline: string;
  readonly standing: string;
  readonly needle: NeedleView | null;
  readonly rows: readonly PlayedRow[];
  /** how many takes the visit holds, both setups */
  readonly takeCount: number;
}

/** What is heard at this moment. */
export interface NeedleView {
  /** −50…50 */
  readonly cents: number;
  /** such as `6 cents sharp` */
  readonly words: string;
  readonly note: string;
  readonly sure: string;
  readonly isSteady: boolean;
}

/** One fingering. */
export interface PlayedRow {
  readonly id: string;
  readonly label: string;
  /** where it should sound, Hz */
  readonly target: string;
  /** what its takes come to; empty where there are none */
  readonly cents: string;
  readonly spread: string;
  readonly takes: readonly TakeView[];
  readonly isOpen: boolean;
  readonly typed: { readonly text: string; readonly problem: string } | null;
}

/** One take. */
export interface TakeView {
  /** in the visit’s log */
  readonly index: number;
  readonly words: string;
  readonly leftOut: boolean;
  /** the fingerings it may have been played with, its own among them */
  readonly choices: readonly { readonly id: string; readonly label: string }[];
}

/** Cents the needle shows either way. */
export const NEEDLE_CENTS = 50;

export function makePlayedView(state: BenchState): PlayedView {
  const played = playedOf(state);
  const refused = refusedOf(state);
  const { contents } = hornInHand(state);
  const log = contents.visit.document.played ?? [];
  const tuning = tuningOf(contents);
  const notes = new Map(
    notesPlayed(takesIn(contents.visit.document, played.setup)).map((note) => [note.fingering, note]),
  );
  const needle = needleOf(state);
  return {
    ...(needle === null ? summary([...notes.values()], played) : heard(needle, played)),
    needle,
    rows: FINGERINGS.map((fingering): PlayedRow => {
      const note = notes.get(fingering.id);
      return {
        id: fingering.id,
        label: noteLabel(fingering.id),
        target: `${noteFrequency(fingering.note, tuning.transposition, tuning.a4).toFixed(1)} Hz`,
        cents: shown(note?.cents, signedCents),
        spread: shown(note?.spreadCents, (cents) => `± ${cents.toFixed(1)}`),
        takes: log.flatMap((take, index) =>
          take.fingering === fingering.id && take.setup === played.setup ? [takeView(take, index)] : [],
        ),
        isOpen: played.open === fingering.id,
        typed: refused[fingering.id] ?? null,
      };
    }),
    takeCount: log.length,
  };
}

function shown(value: number | null | undefined, words: (value: number) => string): string {
  return value === null || value === undefined ? '' : words(value);
}

function takeView(take: Take, index: number): TakeView {
  const spread = take.spreadCents === undefined ? '' : ` ± ${tenths(take.spreadCents)}`;
  return {
    index,
    words: `${signedCents(take.cents)}${spread} cents, ${HEARD_WORDS[take.heard]}`,
    leftOut: take.leftOut === true,
    choices: FINGERINGS.filter((each) => Math.abs(centsAs(take, each)) <= FARTHEST_CENTS).map(({ id }) => ({
      id,
      label: noteLabel(id),
    })),
  };
}

const HEARD_WORDS: Readonly<Record<Take['heard'], string>> = {
  tuner: 'typed',
  table: 'from a table',
  microphone: 'heard',
  recording: 'from a recording',
};

/** What is heard now; null while nothing is listened for. */
function needleOf(state: BenchState): NeedleView | null {
  const played = playedOf(state);
  if (played.listening !== 'on') return null;
  const { now } = played.hearing;
  const steady = noteSoFar(played.hearing);
  if (now === null) {
    return { cents: 0, words: 'listening', note: '–', sure: 'no note is heard', isSteady: false };
  }
  const tuning = tuningOf(hornInHand(state).contents);
  const hz = steady?.hz ?? now.hz;
  const chosen = FINGERINGS.find(({ id }) => id === played.fingering);
  const named =
    chosen === undefined
      ? namedPitch(hz, tuning)
      : { fingering: chosen, cents: centsFrom(chosen, hz, tuning) };
  if (named === null) {
    const sure = 'no note of this horn';
    return { cents: 0, words: `${hz.toFixed(1)} Hz`, note: '–', sure, isSteady: false };
  }
  const other = nearerNote(named.fingering, hz, tuning);
  const nearer = other === null ? '' : `; that is nearer to ${noteLabel(other)}`;
  return {
    cents: Math.max(-NEEDLE_CENTS, Math.min(NEEDLE_CENTS, named.cents)),
    words: sharpOrFlat(named.cents),
    note: noteLabel(named.fingering.id),
    sure:
      steady === null
        ? 'hold the note …'
        : `steady for ${steady.seconds.toFixed(1)} s within ± ${Math.max(0.1, steady.spreadCents).toFixed(1)} cents, ${clearness(steady.clarity)}${nearer}`,
    isSteady: steady !== null,
  };
}

function clearness(clarity: number): string {
  if (clarity > 0.97) return 'clear';
  return clarity > 0.93 ? 'fairly clear' : 'not clear: a quieter room would help';
}

function heard(
  { note, words }: NeedleView,
  { logged }: PlayedState,
): Pick<PlayedView, 'headline' | 'standing'> {
  return {
    headline: note === '–' ? 'Play a note and hold it' : `${note}: ${words}`,
    standing: logged ?? 'Each note that has been held for half a second is logged when it ends.',
  };
}

/** What the log comes to. */
function summary(
  notes: readonly PlayedNote[],
  { setup, logged }: PlayedState,
): Pick<PlayedView, 'headline' | 'standing'> {
  const cents = notes.flatMap((note) => (note.cents === null ? [] : [note.cents])).sort((a, b) => a - b);
  if (cents.length === 0) {
    return {
      headline: `No note is logged ${setup}`,
      standing:
        logged ??
        'Type cents from a tuner, listen, or bring in a recording or a table. Ten notes over both registers are enough to calibrate.',
    };
  }
  const middle = cents[Math.floor((cents.length - 1) / 2)];
  const low = cents[Math.floor(0.25 * (cents.length - 1))];
  const high = cents[Math.ceil(0.75 * (cents.length - 1))];
  const count = cents.length === 1 ? '1 note' : `${cents.length} notes`;
  return {
    headline: `${count} logged ${setup}: the middle one ${sharpOrFlat(middle)}`,
    standing:
      logged ??
      (cents.length < 4
        ? 'A few more, over both registers, and they tell the mouthpiece from the air.'
        : `Half of them lie between ${signedCents(low)} and ${signedCents(high)} cents.`),
  };
}

/** `6 cents sharp`; what rounds to nothing is `in tune`. */
export function sharpOrFlat(cents: number): string {
  const size = Math.abs(cents).toFixed(0);
  if (size === '0') return 'in tune';
  return `${size} ${size === '1' ? 'cent' : 'cents'} ${cents > 0 ? 'sharp' : 'flat'}`;
}
