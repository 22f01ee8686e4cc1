import { describe, expect, it } from 'vitest';
import { FINGERINGS, findFingering, noteFrequency } from '../../src/acoustics/index.ts';
import { FRAME_SAMPLES, makePitchEar } from '../../src/ui/state/hear-pitch.ts';
import {
  heardMore,
  heardOut,
  hearingOf,
  namedPitch,
  noteSoFar,
  notesIn,
  SILENCE,
  takeFrom,
} from '../../src/ui/state/heard-note.ts';
import { inTurn, tone } from './played-tones.ts';

/** What a tuner’s person asks for, cents. */
const ONE_CENT = 1;
const ALTO = { transposition: -9, a4: 440 };
const cents = (from: number, to: number): number => 1200 * Math.log2(to / from);

/** From a baritone’s lowest note to a soprano’s highest. */
const PITCHES = [...Array(56).keys()].map((i) => 440 * 2 ** ((37 + i - 69) / 12));

describe.each([44_100, 48_000])('an ear at %i samples a second', (sampleRate) => {
  const ear = makePitchEar(sampleRate);
  const seconds = (FRAME_SAMPLES + 1) / sampleRate;
  const heard = (samples: Float32Array): number => {
    const frame = ear(samples.subarray(0, FRAME_SAMPLES));
    if (frame === null) throw new Error('nothing heard');
    return frame.hz;
  };

  it.each([
    ['a plain tone', { harmonics: 1 }],
    ['a reed’s tone', { harmonics: 12 }],
    ['a noisy one', { harmonics: 8, noise: 0.02 }],
    ['one whose octave is all but alone', { harmonics: 12, odd: 0.1 }],
  ])('tells %s within one cent over every saxophone’s range', (_, shape) => {
    PITCHES.forEach((hz, i) => {
      const bent = hz * 2 ** (((i * 13) % 97) / 1200);
      const error = cents(bent, heard(tone(bent, { sampleRate, seconds, seed: i + 1, ...shape })));
      expect(Math.abs(error)).toBeLessThan(ONE_CENT);
    });
  });

  it('says nothing of silence and noise', () => {
    expect(ear(new Float32Array(FRAME_SAMPLES))).toBeNull();
    expect(
      ear(tone(440, { sampleRate, seconds, harmonics: 0, noise: 0.3 }).subarray(0, FRAME_SAMPLES)),
    ).toBeNull();
  });
});

describe('a recording', () => {
  const sampleRate = 48_000;
  const hzOf = (id: string, off: number): number =>
    noteFrequency(findFingering(id)!.note, ALTO.transposition, ALTO.a4) * 2 ** (off / 1200);

  it('comes apart into its notes, each within a cent, attacks and ends left out', () => {
    const played = [
      ['Bb3', -12],
      ['D4', 7],
      ['A4', 0.5],
      ['C#5', -20],
      ['D5', 18],
      ['F#6', 3],
    ] as const;
    const parts = played.map(([id, off], i) =>
      tone(hzOf(id, off), { sampleRate, seconds: 1, attack: 0.1, seed: i + 3 }),
    );
    const notes = notesIn(inTurn(parts, sampleRate, 0.4), sampleRate);
    expect(notes).toHaveLength(played.length);
    notes.forEach((note, i) => {
      const [id, off] = played[i];
      const named = namedPitch(note.hz, ALTO)!;
      expect(named.fingering.id).toBe(id);
      expect(Math.abs(named.cents - off)).toBeLessThan(ONE_CENT);
      expect(note.spreadCents).toBeLessThan(ONE_CENT);
    });
  });

  it('slurred comes apart too', () => {
    const parts = ['F4', 'G4', 'A4'].map((id) => tone(hzOf(id, 0), { sampleRate, seconds: 0.9 }));
    const notes = notesIn(inTurn(parts, sampleRate, 0), sampleRate);
    expect(notes.map(({ hz }) => namedPitch(hz, ALTO)!.fingering.id)).toEqual(['F4', 'G4', 'A4']);
  });

  it('with vibrato gives the middle of it, and a spread that tells of it', () => {
    const [note] = notesIn(tone(hzOf('G4', 5), { sampleRate, seconds: 3, vibratoCents: 15 }), sampleRate);
    expect(Math.abs(namedPitch(note.hz, ALTO)!.cents - 5)).toBeLessThan(3 * ONE_CENT);
    expect(note.spreadCents).toBeGreaterThan(2);
    expect(note.spreadCents).toBeLessThan(20);
  });

  it('of a tone too short, or of none, has no note', () => {
    expect(notesIn(tone(440, { sampleRate, seconds: 0.3 }), sampleRate)).toEqual([]);
    expect(notesIn(new Float32Array(sampleRate), sampleRate)).toEqual([]);
  });
});

describe('a recording gone through', () => {
  const sampleRate = 48_000;

  it('gives way after each moment and comes to the same notes', () => {
    const samples = tone(300, { sampleRate, seconds: 1.5 });
    const heard = [...hearingOf(samples, sampleRate)];
    expect(heard.length).toBeGreaterThan(1.3 * 20);
    expect(heard.at(-1)!.notes).toEqual(notesIn(samples, sampleRate));
  });

  it('shorter than one moment has no note', () => {
    expect(notesIn(new Float32Array(100), sampleRate)).toEqual([]);
  });
});

describe('what is being heard', () => {
  const moment = (at: number, hz: number) => ({ at, hz, clarity: 0.98, level: 0.1 });
  const after = (count: number, hz: number, from = 0) =>
    [...Array(count).keys()].reduce((h, i) => heardMore(h, moment(from + i * 0.05, hz)), SILENCE);

  it('is a note once its steady part is long enough', () => {
    expect(noteSoFar(after(6, 440))).toBeNull();
    expect(noteSoFar(after(20, 440))!.hz).toBe(440);
  });

  it('may hum for hours and is still one note, of its last half minute', () => {
    const hummed = after(2000, 60);
    expect(hummed.tone).toHaveLength(600);
    expect(heardOut(hummed).notes).toHaveLength(1);
    expect(noteSoFar(hummed)!.seconds).toBeCloseTo(599 * 0.05 - 0.15, 6);
  });

  it('goes on over a missed moment, and ends in silence', () => {
    const missed = heardMore(heardMore(after(20, 440), null), moment(1.1, 441));
    expect(missed.tone).toHaveLength(21);
    const ended = [1, 2, 3, 4].reduce((h) => heardMore(h, null), missed);
    expect(ended.notes).toHaveLength(1);
    expect(ended.tone).toEqual([]);
  });
});

describe('a heard note as a take', () => {
  const note = { hz: 207.65, spreadCents: 1.234, seconds: 1, clarity: 0.97 };

  it('is told from the fingering it was played with', () => {
    const take = takeFrom(note, findFingering('F4')!, 'as found', 'microphone', ALTO);
    expect(take).toMatchObject({
      fingering: 'F4',
      setup: 'as found',
      heard: 'microphone',
      spreadCents: 1.23,
    });
    expect(Math.abs((take as { cents: number }).cents)).toBeLessThan(0.1);
  });

  it('an octave or a wrong note away is refused by name', () => {
    expect(takeFrom(note, findFingering('F5')!, 'as found', 'microphone', ALTO)).toBe(
      'heard F4; expected F5 within 200 cents',
    );
  });

  it('beyond the horn has no name', () => {
    expect(namedPitch(noteFrequency(FINGERINGS[0].note, -9, 440) / 1.1, ALTO)).toBeNull();
  });
});
