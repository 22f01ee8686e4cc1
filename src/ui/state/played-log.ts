import { findFingering, noteNumber, type Fingering } from '../../acoustics/index.ts';
import type { BenchContents } from '../../documents/bench-contents.ts';
import { noteLabel } from '../../documents/note-label.ts';
import { FARTHEST_CENTS, MOST_TAKES, withTake, withTakes, type Take } from '../../documents/pitch-log.ts';
import { readPitchCsv, writePitchCsv } from '../../documents/pitch-log-csv.ts';
import type { VisitDocument } from '../../documents/visit-document.ts';
import { signedCents } from '../parts/note-names.ts';
import { hornInHand, type BenchState } from './bench-state.ts';
import { withHorn } from './horns-on-bench.ts';
import {
  heardMore,
  heardOut,
  namedPitch,
  nearerNote,
  SILENCE,
  takeFrom,
  type HeardNote,
  type Hearing,
  type Moment,
  type Tuning,
} from './heard-note.ts';
import { stepped } from './horn-on-bench.ts';
import { playedIn, type PlayedState, type RefusedCents } from './played-state.ts';

/** The tuning of the horn in hand. */
export function tuningOf({ horn, visit }: BenchContents): Tuning {
  return { transposition: horn.document.transpositionSemitones, a4: visit.document.a4Hz };
}

/** What holds for the visit in hand. */
export function playedOf(state: BenchState): PlayedState {
  return playedIn(state.played, hornInHand(state).contents.visit.id);
}

/** Cents typed and refused of the visit in hand. */
export function refusedOf(state: BenchState): RefusedCents {
  return state.played.typed[hornInHand(state).contents.visit.id] ?? {};
}

const withPlayed = (state: BenchState, change: Partial<PlayedState>): BenchState => ({
  ...state,
  played: { ...playedOf(state), ...change },
});

/** The log otherwise, as one step of the history. */
export function withLog(state: BenchState, change: (visit: VisitDocument) => VisitDocument): BenchState {
  return withHorn(state, (horn) => {
    const { visit } = horn.contents;
    const document = change(visit.document);
    if (document === visit.document) return horn;
    return stepped(horn, { ...horn.contents, visit: { ...visit, document } }, null);
  });
}

/** Adds takes to the log; as many as it has room for. */
export function logTakes(state: BenchState, takes: readonly Take[]): BenchState {
  const room = MOST_TAKES - (hornInHand(state).contents.visit.document.played?.length ?? 0);
  const next = withLog(state, (visit) => withTakes(visit, takes.slice(0, room)));
  if (takes.length <= room) return next;
  const left = takes.length - room;
  return withPlayed(next, {
    problem: `The log of this visit is full at ${MOST_TAKES} takes; ${left} were left out.`,
  });
}

/** Cents as typed: a point or a comma, any sign for minus, with or without the word. */
export function readCents(text: string): number {
  const plain = text
    .trim()
    .replace(',', '.')
    .replace(/^[−–]/, '-')
    .replace(/\s*(cents?|¢|ct)$/i, '');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : NaN;
}

/** Reads cents typed for a fingering: a take, or a sentence beside the text, which stays. */
export function typeCents(state: BenchState, fingering: string, text: string): BenchState {
  const { [fingering]: _, ...others } = refusedOf(state);
  const withTyped = (next: BenchState, typed: RefusedCents): BenchState => {
    const { id } = hornInHand(state).contents.visit;
    return withPlayed(next, { typed: { ...next.played.typed, [id]: typed } });
  };
  if (text.trim() === '') return withTyped(state, others);
  const cents = readCents(text);
  if (!(Math.abs(cents) <= FARTHEST_CENTS)) {
    const problem = `invalid cents of ${noteLabel(fingering)}: “${text.trim()}”; expected −${FARTHEST_CENTS} to ${FARTHEST_CENTS} cents`;
    return withTyped(state, { ...others, [fingering]: { text, problem } });
  }
  const take: Take = { fingering, cents: cents + 0, setup: playedOf(state).setup, heard: 'tuner' };
  return withTyped(logTakes(state, [take]), others);
}

/** Sets a take aside or counts it again. @param index in the visit’s log */
export function setAside(state: BenchState, index: number, leftOut: boolean): BenchState {
  return withLog(state, (visit) => {
    const { leftOut: _, ...take } = visit.played![index];
    return withTake(visit, index, leftOut ? { ...take, leftOut } : take);
  });
}

/** A take’s cents from the note of another fingering. */
export function centsAs(take: Take, fingering: Fingering): number {
  const note = findFingering(take.fingering)!.note;
  return take.cents + 100 * (noteNumber(note) - noteNumber(fingering.note));
}

/** The take was played with another fingering: its pitch stays. @param index in the visit’s log */
export function reassign(state: BenchState, index: number, fingeringId: string): BenchState {
  const take = hornInHand(state).contents.visit.document.played![index];
  const fingering = findFingering(fingeringId)!;
  const cents = Math.round(100 * centsAs(take, fingering)) / 100 + 0;
  const next = withLog(state, (visit) => withTake(visit, index, { ...take, fingering: fingering.id, cents }));
  return withPlayed(next, {
    open: fingering.id,
    logged: `The take is now one of ${noteLabel(fingering.id)}, ${signedCents(cents)} cents.`,
  });
}

/** Takes a take out of the log. @param index in the visit’s log */
export function removeTake(state: BenchState, index: number): BenchState {
  return withLog(state, (visit) => withTake(visit, index, null));
}

/** One more moment has been heard; a tone that ended is logged. */
export function heardMoment(state: BenchState, moment: Moment | null): BenchState {
  const { hearing } = playedOf(state);
  return withHearing(state, heardMore(hearing, moment));
}

/** Listening is over; the tone that still sounded is logged. */
export function heardEnough(state: BenchState): BenchState {
  return withPlayed(withHearing(state, heardOut(playedOf(state).hearing)), {
    listening: 'off',
    hearing: SILENCE,
  });
}

function withHearing(state: BenchState, hearing: Hearing): BenchState {
  const next = withPlayed(state, { hearing });
  const known = playedOf(state).hearing.notes.length;
  return hearing.notes.slice(known).reduce((now, note) => logHeard(now, note, 'microphone'), next);
}

/** Logs a heard note by its name, or by the fingering in hand. */
function logHeard(state: BenchState, note: HeardNote, heard: 'microphone' | 'recording'): BenchState {
  const { contents } = hornInHand(state);
  const tuning = tuningOf(contents);
  const named = fingeringFor(state, note, tuning);
  if (named === null) {
    return withPlayed(state, {
      logged: `${note.hz.toFixed(1)} Hz is no note of this horn: nothing was logged.`,
    });
  }
  const take = takeFrom(note, named, playedOf(state).setup, heard, tuning);
  if (typeof take === 'string') return withPlayed(state, { logged: `${take}: nothing was logged.` });
  const nearer = nearerNote(named, note.hz, tuning);
  const doubt = nearer === null ? '' : ` That is nearer to ${noteLabel(nearer)}.`;
  return withPlayed(logTakes(state, [take]), {
    logged: `Logged ${noteLabel(take.fingering)}, ${signedCents(take.cents)} cents.${doubt}`,
  });
}

function fingeringFor(state: BenchState, { hz }: HeardNote, tuning: Tuning): Fingering | null {
  const { fingering } = playedOf(state);
  const chosen = fingering === null ? undefined : findFingering(fingering);
  return chosen ?? namedPitch(hz, tuning)?.fingering ?? null;
}

/** Takes in the notes of a recording, as one step. */
export function takeRecording(state: BenchState, notes: readonly HeardNote[], name: string): BenchState {
  if (notes.length === 0) {
    return withPlayed(state, { problem: `No steady note was heard in “${name}”.`, issues: [] });
  }
  const tuning = tuningOf(hornInHand(state).contents);
  const read = notes.map((note) => {
    const named = fingeringFor(state, note, tuning);
    return named === null
      ? `${note.hz.toFixed(1)} Hz is no note of this horn`
      : takeFrom(note, named, playedOf(state).setup, 'recording', tuning);
  });
  const takes = read.filter((each) => typeof each !== 'string');
  const issues = read.filter((each) => typeof each === 'string');
  const logged = `${takes.length} of ${notes.length} notes of “${name}” were logged.`;
  return withPlayed(logTakes(state, takes), { problem: null, issues, logged });
}

/** The whole log as a table. */
export function tableOf({ visit }: BenchContents): string {
  return writePitchCsv(visit.document.played ?? []);
}

/** Takes in a table, as one step. */
export function readTable(state: BenchState, text: string, name: string): BenchState {
  const { takes, issues } = readPitchCsv(text, playedOf(state).setup);
  const told = issues.map(({ row, message }) => (row === null ? message : `row ${row}: ${message}`));
  const logged = `${takes.length} takes of “${name}” were logged.`;
  return withPlayed(logTakes(state, takes), { problem: null, issues: told, logged });
}
