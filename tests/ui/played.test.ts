import { describe, expect, it } from 'vitest';
import { hornInHand, makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { putOnBench, takeUp, withHorn } from '../../src/ui/state/horns-on-bench.ts';
import { findFingering, noteFrequency } from '../../src/acoustics/index.ts';
import type { Take } from '../../src/documents/pitch-log.ts';
import type { PlayedState } from '../../src/ui/state/played-state.ts';
import { undone } from '../../src/ui/state/horn-on-bench.ts';
import {
  heardEnough,
  heardMoment,
  logTakes,
  playedOf,
  readCents,
  readTable,
  reassign,
  removeTake,
  setAside,
  tableOf,
  takeRecording,
  typeCents,
} from '../../src/ui/state/played-log.ts';
import { makePlayedView } from '../../src/ui/views/played/played-view.model.ts';
import { onTheBench } from './demo.ts';

const start = makeBenchState([], onTheBench('alto'));
const logOf = (state: BenchState): readonly Take[] => hornInHand(state).contents.visit.document.played ?? [];
const rowOf = (state: BenchState, id: string) => makePlayedView(state).rows.find((row) => row.id === id)!;
const withPlayed = (state: BenchState, part: Partial<PlayedState>): BenchState => ({
  ...state,
  played: { ...playedOf(state), ...part },
});
const listening = withPlayed(start, { listening: 'on' });
const hzOf = (id: string, off = 0): number => noteFrequency(findFingering(id)!.note, -9) * 2 ** (off / 1200);
const sounding = (state: BenchState, hz: number, count: number, from = 0): BenchState =>
  [...Array(count).keys()].reduce(
    (now, i) => heardMoment(now, { at: from + i * 0.05, hz, clarity: 0.99, level: 0.1 }),
    state,
  );

describe('cents typed', () => {
  it.each([
    ['3', 3],
    ['+4.5', 4.5],
    ['−7', -7],
    ['-2,5 cents', -2.5],
    [' 12¢ ', 12],
  ])('%s is read', (text, cents) => {
    expect(readCents(text)).toBe(cents);
  });

  it('are a take of the note, one step of the history', () => {
    const typed = typeCents(typeCents(start, 'F4', '−3'), 'F4', '5');
    expect(logOf(typed).map(({ cents, heard }) => [cents, heard])).toEqual([
      [-3, 'tuner'],
      [5, 'tuner'],
    ]);
    expect(rowOf(typed, 'F4')).toMatchObject({ cents: '+1.0', spread: '± 5.7' });
    expect(logOf(withHorn(typed, undone))).toHaveLength(1);
  });

  it('that cannot be read stay beside their reason, and harm nothing', () => {
    const wrong = typeCents(typeCents(start, 'F4', 'sharp'), 'G4', '2');
    expect(rowOf(wrong, 'F4').typed).toEqual({
      text: 'sharp',
      problem: 'invalid cents of F4: “sharp”; expected −200 to 200 cents',
    });
    expect(logOf(wrong)).toHaveLength(1);
    expect(rowOf(typeCents(wrong, 'F4', ''), 'F4').typed).toBeNull();
    expect(rowOf(typeCents(start, 'F4', '300'), 'F4').typed?.problem).toContain('“300”');
  });

  it('belong to the setup that is played', () => {
    const set = typeCents(withPlayed(start, { setup: 'as set' }), 'F4', '1');
    expect(logOf(set)[0].setup).toBe('as set');
    expect(rowOf(withPlayed(set, { setup: 'as found' }), 'F4').cents).toBe('');
  });
});

describe('another horn taken in hand', () => {
  const sharp = typeCents(
    withPlayed(start, { listening: 'on', logged: 'Logged A4, +1.0 cents.' }),
    'F4',
    'sharp',
  );
  const other = putOnBench(sharp, onTheBench('tenor'));

  it('is told and hears nothing of the one before', () => {
    expect(makePlayedView(other)).toMatchObject({ headline: 'No note is logged as found', needle: null });
    expect(makePlayedView(other).standing).not.toContain('Logged');
    expect(rowOf(other, 'F4').typed).toBeNull();
  });

  it('loses nothing typed of the one before', () => {
    const both = typeCents(other, 'G4', 'flat');
    const back = takeUp(both, start.hornId);
    expect(rowOf(back, 'F4').typed?.text).toBe('sharp');
    expect(rowOf(back, 'G4').typed).toBeNull();
  });
});

describe('takes', () => {
  const three = ['1', '2', '60'].reduce((now, text) => typeCents(now, 'F4', text), start);

  it('set aside stay and count in nothing', () => {
    const aside = setAside(three, 2, true);
    expect(rowOf(aside, 'F4')).toMatchObject({ cents: '+1.5' });
    expect(rowOf(aside, 'F4').takes[2]).toMatchObject({ leftOut: true });
    expect(setAside(aside, 2, false).horns).toEqual(setAside(aside, 2, false).horns);
    expect(logOf(setAside(aside, 2, false))).toEqual(logOf(three));
  });

  it('are removed one by one', () => {
    expect(logOf(removeTake(three, 1)).map(({ cents }) => cents)).toEqual([1, 60]);
  });

  it('go to the fingering they were played with, at their pitch, as one step', () => {
    const moved = reassign(three, 2, 'F#4');
    expect(logOf(moved)[2]).toEqual({ ...logOf(three)[2], fingering: 'F#4', cents: -40 });
    expect(rowOf(moved, 'F#4')).toMatchObject({ cents: '−40.0', isOpen: true });
    expect(logOf(withHorn(moved, undone))).toEqual(logOf(three));
  });

  it('may be given to no fingering so far off that it were no take of it', () => {
    const [first] = rowOf(three, 'F4').takes;
    const offered = first.choices.map(({ id }) => id);
    expect(offered).toEqual(expect.arrayContaining(['E4', 'F4', 'F#4', 'F#4 side']));
    expect(offered).not.toContain('G#4');
  });

  it('fill a log up to its end and no further, and that is told', () => {
    const full = logTakes(start, Array<Take>(2000).fill(logOf(three)[0]));
    const more = logTakes(full, logOf(three));
    expect(logOf(more)).toHaveLength(2000);
    expect(more.played.problem).toBe('The log of this visit is full at 2000 takes; 3 were left out.');
  });
});

describe('what is heard', () => {
  it('is named with its cents while it sounds, and logged when it ends', () => {
    const held = sounding(listening, hzOf('A4', 7), 24);
    const view = makePlayedView(held);
    expect(view.headline).toBe('A4: 7 cents sharp');
    expect(view.needle).toMatchObject({ note: 'A4', isSteady: true });
    expect(view.needle!.cents).toBeCloseTo(7, 6);
    expect(logOf(held)).toEqual([]);
    const over = heardEnough(held);
    expect(logOf(over)).toEqual([
      { fingering: 'A4', cents: 7, setup: 'as found', heard: 'microphone', spreadCents: 0 },
    ]);
    expect(over.played.listening).toBe('off');
  });

  it('is logged as the fingering in hand, and refused by name when it is another note', () => {
    const side = withPlayed(listening, { fingering: 'C5 side' });
    expect(logOf(heardEnough(sounding(side, hzOf('C5', -4), 24)))[0].fingering).toBe('C5 side');
    const wrong = heardEnough(sounding(side, hzOf('A4'), 24));
    expect(logOf(wrong)).toEqual([]);
    expect(wrong.played.logged).toBe('heard A4; expected C5 side within 200 cents: nothing was logged.');
  });

  it('that is nearer to another note is logged with that doubt, and shown with it', () => {
    const chosen = withPlayed(listening, { fingering: 'A4' });
    const flat = sounding(chosen, hzOf('A4', -80), 24);
    expect(makePlayedView(flat).needle).toMatchObject({ cents: -50, words: '80 cents flat' });
    expect(makePlayedView(flat).needle!.sure).toMatch(/that is nearer to G♯4$/);
    expect(heardEnough(flat).played.logged).toBe('Logged A4, −80.0 cents. That is nearer to G♯4.');
  });

  it('changes from note to note without a silence', () => {
    const two = sounding(sounding(listening, hzOf('G4'), 24), hzOf('A4'), 24, 1.2);
    expect(logOf(heardEnough(two)).map(({ fingering }) => fingering)).toEqual(['G4', 'A4']);
  });

  it('that is too short or no note of the horn logs nothing', () => {
    expect(logOf(heardEnough(sounding(listening, hzOf('A4'), 5)))).toEqual([]);
    const far = heardEnough(sounding(listening, 1800, 24));
    expect(far.played.logged).toBe('1800.0 Hz is no note of this horn: nothing was logged.');
  });
});

describe('files', () => {
  it('of a recording are logged as one step, what is no note told', () => {
    const note = (hz: number) => ({ hz, spreadCents: 1, seconds: 1, clarity: 0.99 });
    const taken = takeRecording(start, [note(hzOf('F4', 3)), note(1800), note(hzOf('G4', -2))], 'scale.wav');
    expect(logOf(taken).map(({ fingering, cents }) => [fingering, cents])).toEqual([
      ['F4', 3],
      ['G4', -2],
    ]);
    expect(taken.played.issues).toEqual(['1800.0 Hz is no note of this horn']);
    expect(taken.played.logged).toBe('2 of 3 notes of “scale.wav” were logged.');
    expect(logOf(withHorn(taken, undone))).toEqual([]);
    expect(takeRecording(start, [], 'noise.wav').played.problem).toBe(
      'No steady note was heard in “noise.wav”.',
    );
  });

  it('of a table come back as they were written', () => {
    const typed = typeCents(typeCents(start, 'F4', '−3'), 'Bb4 bis', '5');
    const again = readTable(start, tableOf(hornInHand(typed).contents), 'log.csv');
    expect(logOf(again)).toEqual(logOf(typed));
    expect(readTable(start, 'F4,flat\nG4,2', 'log.csv').played.issues[0]).toContain(
      'row 1: invalid cents of F4',
    );
  });
});

describe('the log in one sentence', () => {
  it('says that there is none, and what to do', () => {
    expect(makePlayedView(start).headline).toBe('No note is logged as found');
  });

  it('says how many there are and where the middle one lies', () => {
    const some = ['F4', 'G4', 'A4', 'B4', 'C5'].reduce(
      (now, id, i) => typeCents(now, id, String([2, 4, 6, 8, 30][i])),
      start,
    );
    expect(makePlayedView(some)).toMatchObject({
      headline: '5 notes logged as found: the middle one 6 cents sharp',
      standing: 'Half of them lie between +4.0 and +8.0 cents.',
    });
  });
});
