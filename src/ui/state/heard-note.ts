import { centsBetween, FINGERINGS, noteFrequency, type Fingering } from '../../acoustics/index.ts';
import { noteLabel } from '../../documents/note-label.ts';
import { FARTHEST_CENTS, type Heard, type PlayedSetup, type Take } from '../../documents/pitch-log.ts';
import { FRAME_SAMPLES, makePitchEar, type HeardFrame } from './hear-pitch.ts';

/**
 * From moments of sound to notes: a tone is moments whose pitch stays together; what counts of it is its middle.
 *
 *      attack ╱▔▔▔▔▔▔▔▔▔▔▔▔▔▔╲ end
 *             │←  steady   →│        median of its cents, their spread
 */

/** A moment of sound at a time. */
export interface Moment extends HeardFrame {
  /** s, its middle */
  readonly at: number;
}

/** One tone from beginning to end. */
export interface HeardNote {
  readonly hz: number;
  /** half of what lies between the 16th and the 84th of a hundred moments, cents */
  readonly spreadCents: number;
  /** s, the steady part */
  readonly seconds: number;
  /** 0…1, the middle clarity of its moments */
  readonly clarity: number;
}

/** What is being heard. */
export interface Hearing {
  /** the moment just heard; null in silence or noise */
  readonly now: Moment | null;
  /** the tone that sounds, its moments so far */
  readonly tone: readonly Moment[];
  /** silent moments since */
  readonly gap: number;
  /** tones that have ended, the last one last */
  readonly notes: readonly HeardNote[];
}

export const SILENCE: Hearing = Object.freeze({ now: null, tone: [], gap: 0, notes: [] });

/** Moments further apart belong to two tones, cents. */
const TOGETHER_CENTS = 60;
/** So many moments in a row may be missed within a tone. */
const MISSED = 3;
/** s left out at the beginning and at the end of a tone */
const ATTACK = 0.15;
const ENDING = 0.1;
/** s a steady part must last to be a note */
const SHORTEST = 0.25;
/** moments of a tone that are kept, at twenty a second half a minute: a room’s hum may last for hours */
const KEPT = 600;

/** What is being heard once one more moment has come. @param moment null where it has no pitch */
export function heardMore(hearing: Hearing, moment: Moment | null): Hearing {
  const { tone, notes } = hearing;
  if (moment === null) {
    const gap = hearing.gap + 1;
    if (tone.length === 0 || gap <= MISSED) return { ...hearing, now: null, gap };
    return { now: null, tone: [], gap, notes: withNote(notes, tone) };
  }
  const near = tone.length === 0 || isTogether(tone, moment);
  return near
    ? { now: moment, tone: [...tone.slice(1 - KEPT), moment], gap: 0, notes }
    : { now: moment, tone: [moment], gap: 0, notes: withNote(notes, tone) };
}

/** The tone that still sounds ends here. */
export function heardOut(hearing: Hearing): Hearing {
  return { now: null, tone: [], gap: 0, notes: withNote(hearing.notes, hearing.tone) };
}

/** The tone that sounds as a note, as far as it has come; null where its steady part is still too short. */
export function noteSoFar({ tone }: Hearing): HeardNote | null {
  return noteOf(tone, 0);
}

function withNote(notes: readonly HeardNote[], tone: readonly Moment[]): readonly HeardNote[] {
  const note = noteOf(tone, ENDING);
  return note === null ? notes : [...notes, note];
}

function isTogether(tone: readonly Moment[], { hz }: Moment): boolean {
  const recent = tone.slice(-9).map((moment) => moment.hz);
  return Math.abs(centsBetween(middle(recent), hz)) < TOGETHER_CENTS;
}

function noteOf(tone: readonly Moment[], ending: number): HeardNote | null {
  if (tone.length === 0) return null;
  const from = tone[0].at + ATTACK;
  const to = tone[tone.length - 1].at - ending;
  const steady = tone.filter(({ at }) => at >= from && at <= to);
  if (steady.length < 4 || to - from < SHORTEST) return null;
  const hz = middle(steady.map((moment) => moment.hz));
  const cents = steady.map((moment) => centsBetween(hz, moment.hz)).sort((a, b) => a - b);
  const share = (part: number): number => cents[Math.round(part * (cents.length - 1))];
  return {
    hz,
    spreadCents: (share(0.84) - share(0.16)) / 2,
    seconds: to - from,
    clarity: middle(steady.map(({ clarity }) => clarity)),
  };
}

/** How far two frames of a recording lie apart, in samples: about as far as the microphone’s. */
const HOP = 2048;

/**
 * Hears a recording moment by moment, so that whoever goes through it can do something else in between.
 *
 * @param samples one channel, −1…1 @param sampleRate Hz
 * @returns yields what is heard after each moment, the last one after the end
 */
export function* hearingOf(samples: Float32Array, sampleRate: number): Generator<Hearing, void, void> {
  const ear = makePitchEar(sampleRate);
  let hearing: Hearing = SILENCE;
  for (let start = 0; start + FRAME_SAMPLES <= samples.length; start += HOP) {
    const frame = ear(samples.subarray(start, start + FRAME_SAMPLES));
    const at = (start + FRAME_SAMPLES / 2) / sampleRate;
    hearing = heardMore(hearing, frame === null ? null : { ...frame, at });
    yield hearing;
  }
  yield heardOut(hearing);
}

/** Every note of a recording, one after another. @param samples one channel, −1…1 @param sampleRate Hz */
export function notesIn(samples: Float32Array, sampleRate: number): readonly HeardNote[] {
  let notes: readonly HeardNote[] = [];
  for (const hearing of hearingOf(samples, sampleRate)) notes = hearing.notes;
  return notes;
}

/** What a pitch is on this horn. */
export interface NamedPitch {
  readonly fingering: Fingering;
  /** from equal temperament */
  readonly cents: number;
}

/** The day's tuning of a horn. */
export interface Tuning {
  /** semitones from written to sounding */
  readonly transposition: number;
  /** Hz, sounding A4 */
  readonly a4: number;
}

/** The written note nearest to a pitch, by its usual fingering; null beyond the horn’s range. */
export function namedPitch(hz: number, { transposition, a4 }: Tuning): NamedPitch | null {
  const named = FINGERINGS.filter(({ way }) => way === '').map((fingering) => ({
    fingering,
    cents: centsBetween(noteFrequency(fingering.note, transposition, a4), hz),
  }));
  const nearest = named.reduce((a, b) => (Math.abs(b.cents) < Math.abs(a.cents) ? b : a));
  return Math.abs(nearest.cents) <= TOGETHER_CENTS ? nearest : null;
}

/** The note a pitch is nearer to than to the one fingered, by its name; null where there is none. */
export function nearerNote(fingering: Fingering, hz: number, tuning: Tuning): string | null {
  const named = namedPitch(hz, tuning);
  return named === null || named.fingering.note === fingering.note ? null : named.fingering.note;
}

/** A pitch from the note of a fingering, cents. */
export function centsFrom(fingering: Fingering, hz: number, { transposition, a4 }: Tuning): number {
  return centsBetween(noteFrequency(fingering.note, transposition, a4), hz);
}

/** A note as a take of a fingering, or a sentence on why it is none. */
export function takeFrom(
  note: HeardNote,
  fingering: Fingering,
  setup: PlayedSetup,
  heard: Heard,
  tuning: Tuning,
): Take | string {
  const cents = centsFrom(fingering, note.hz, tuning);
  if (!(Math.abs(cents) <= FARTHEST_CENTS)) {
    const named = namedPitch(note.hz, tuning);
    const told = named === null ? `${note.hz.toFixed(1)} Hz` : noteLabel(named.fingering.id);
    return `heard ${told}; expected ${noteLabel(fingering.id)} within ${FARTHEST_CENTS} cents`;
  }
  const round = (value: number): number => Math.round(value * 100) / 100 + 0;
  return {
    fingering: fingering.id,
    cents: round(cents),
    setup,
    heard,
    spreadCents: Math.min(100, round(note.spreadCents)),
  };
}

function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}
