import { describe, expect, it } from 'vitest';
import { moveScale, playLoud, TOLD_LEVEL_KPA } from '../../src/ui/state/whole-scale.ts';
import type { LoudReport, ScaleNumbers } from '../../src/ui/state/scale-report.ts';
import {
  awayWords,
  loudSentence,
  makeNamer,
  makeNoteTold,
  makeScaleAnswer,
  makeScaleLimits,
} from '../../src/ui/views/scale/scale-words.ts';
import type { CentsSureness, ScaleSureness } from '../../src/ui/state/scale-sureness.ts';
import { plain, scale, TENOR } from './demo.ts';

const { prepared, report } = scale();
const written = makeNamer('written', report.transpositionSemitones);
const at = (id: string): number => report.fingerings.findIndex((f) => f.id === id);
const headline = (proposed: ScaleNumbers | null): string =>
  plain(makeScaleAnswer(report, proposed, written).headline);

/** The horn as found with some notes moved by so many cents. */
function moved(byCents: Readonly<Record<string, number>>): ScaleNumbers {
  const cents = report.found.cents.slice();
  for (const [id, by] of Object.entries(byCents)) cents[at(id)] += by;
  return { ...report.found, cents };
}

describe('the scale’s answer', () => {
  it('names the widest usual fingering as found, front fingerings left out', () => {
    expect(headline(null)).toMatch(
      /^As found, the widest note is C♯6, \d+ cents sharp; the low register lies within ±0\.1 cents\.$/,
    );
  });

  it('gives both ends where the low register is wide', () => {
    const wide = { ...report, found: moved({ F4: -4, A4: 3 }) };
    expect(plain(makeScaleAnswer(wide, null, written).headline)).toContain(
      'the low register lies between −4.0 and +3.0 cents',
    );
  });

  it('counts the notes that move by more than 5 cents, and names the one that moves most', () => {
    expect(headline(moved({ F4: 6.2, F5: 5.4, E4: -5.1, G4: 4.9 }))).toBe(
      'As proposed, 3 notes move by more than 5 cents; F4 moves most, +6.2 cents.',
    );
    expect(headline(moved({ G4: -5.5 }))).toBe(
      'As proposed, 1 note moves by more than 5 cents; G4 moves most, −5.5 cents.',
    );
    expect(headline(moved({ G4: 2 }))).toBe(
      'As proposed, no note moves by more than 5 cents; G4 moves most, +2.0 cents.',
    );
    expect(headline(moved({}))).toBe('As proposed, no note moves.');
  });

  it('tells the core’s own move of a key', () => {
    const wider = moveScale(prepared, { e: 10 });
    const move = wider.cents[at('F5')] - report.found.cents[at('F5')];
    expect(move).toBeGreaterThan(0);
    expect(plain(makeNoteTold(report, wider, written)(at('F5')))).toContain(`(moves +${move.toFixed(1)})`);
  });

  it('says that a note is lost rather than giving it a number', () => {
    const cents = report.found.cents.slice();
    cents[at('F4')] = NaN;
    const answer = makeScaleAnswer(report, { ...report.found, cents }, written);
    expect(answer.standing).toContain('F4 is lost.');
    expect(makeNoteTold(report, { ...report.found, cents }, written)(at('F4'))).toBe(
      'F4 is lost as proposed',
    );
  });

  it('tells in one line how many pads leave their model’s range, and in a list which', () => {
    const limits = makeScaleLimits({
      ...report.found,
      warnings: [
        { pad: 'E', text: 'Too thick.' },
        { pad: 'E', text: 'Too high.' },
        { pad: 'D', text: 'Too thick.' },
        { pad: null, text: 'Cold air.' },
      ],
    });
    expect(limits.pads!.summary).toMatch(/^2 pads lie outside/);
    expect(limits.pads!.list).toHaveLength(3);
    expect(limits.lines).toEqual(['Cold air.']);
    expect(makeScaleLimits({ ...report.found, warnings: [] })).toEqual({ lines: [], pads: null });
  });
});

describe('how sure the scale’s words are', () => {
  const known = (plusMinus: number, wholeHorn: number): CentsSureness => ({
    budget: {
      plusMinus,
      wholeHorn,
      readings: [],
      others: { count: 0, effect: 0 },
      padModel: 0,
      calibration: 0,
    },
    next: [],
  });
  const sure = (found: number, move: number): ScaleSureness => ({
    found: report.fingerings.map((_, i) => known(found + (i === at('C#6') ? 2 : 0), 10)),
    moves: report.fingerings.map((_, i) => (i === at('F4') ? known(move, 0) : null)),
  });
  const answer = (proposed: ScaleNumbers | null, of: ScaleSureness) =>
    makeScaleAnswer(report, proposed, written, of);

  it('give the widest note its ±, and all of them their range and the model’s part', () => {
    const told = answer(null, sure(12, 0.3));
    expect(plain(told.headline)).toMatch(/the widest note is C♯6, \d+ ± 14 cents sharp;/);
    expect(plain(told.sure)).toBe(
      'Pitches are known to ± 12–14 cents, 10 of them the model of the whole horn; ' +
        'moves are far surer, ± 0.3 cents at most.',
    );
  });

  it('give the greatest move its ±, and say where it cannot be shown', () => {
    const small = moved({ F4: 0.6 });
    expect(plain(answer(small, sure(12, 0.3)).headline)).toMatch(/F4 moves most, \+0\.6 ± 0\.3 cents\.$/);
    expect(plain(answer(small, sure(12, 0.7)).headline)).toMatch(
      /F4 moves most, \+0\.6 ± 0\.7 cents: no difference that can be shown\.$/,
    );
    expect(plain(makeNoteTold(report, small, written, sure(12, 0.3))(at('F4')))).toContain(
      '(moves +0.6 ± 0.3)',
    );
  });

  it('promise no more than ten cents while nothing is known', () => {
    expect(plain(makeScaleAnswer(report, null, written).sure)).toContain('± 10 cents');
  });
});

describe('names of notes', () => {
  it('are the player’s or the sounding ones', () => {
    const f4 = report.fingerings[at('Bb4 bis')];
    expect(written(f4)).toBe('B♭4 bis');
    expect(makeNamer('concert', -9)(f4)).toBe('C♯4 bis');
    expect(makeNamer('concert', scale({}, TENOR).report.transpositionSemitones)(f4)).toBe('G♯3 bis');
  });

  it('say sharp, flat or in tune', () => {
    expect([64.6, -4.31, 0.02].map((cents) => awayWords(cents))).toEqual([
      '65 cents sharp',
      '4.3 cents flat',
      'in tune',
    ]);
  });
});

describe('the sentence on loud playing', () => {
  const withShares = (found: number | null, proposed: number | null): LoudReport => ({
    fingeringId: 'F4',
    pressuresKpa: [1, TOLD_LEVEL_KPA],
    found: [0.9, found],
    proposed: [0.9, proposed],
  });

  it('says opens up, chokes or no different', () => {
    const say = (found: number | null, proposed: number | null): string =>
      plain(loudSentence(withShares(found, proposed), 'F4', true));
    expect(say(0.55, 0.62)).toBe(
      'Opens up when played loud: at 3 kPa F4 keeps 55 % of its soft strength as found, 62 % as proposed.',
    );
    expect(say(0.55, 0.4)).toMatch(/^Chokes when played loud/);
    expect(say(0.55, 0.552)).toMatch(/^No different when played loud/);
    expect(say(0.55, null)).toContain('lost as proposed');
    expect(say(null, 0.5)).toContain('cannot be followed');
  });

  it('gives the found share alone where nothing is proposed', () => {
    expect(plain(loudSentence(withShares(0.55, 0.55), 'F4', false))).toBe(
      'At 3 kPa F4 keeps 55 % of its soft strength as found.',
    );
  });

  it('agrees with the estimate: a lower pad chokes first', () => {
    const low = playLoud(prepared, { e: 4 }, 'F4');
    const last = low.pressuresKpa.length - 1;
    expect(low.proposed[last]!).toBeLessThan(low.found[last]!);
    expect(low.pressuresKpa).toContain(TOLD_LEVEL_KPA);
    expect(playLoud(prepared, {}, 'F4').proposed).toEqual(playLoud(prepared, {}, 'F4').found);
  });
});
