import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { demoNoise, makeDemoLog, PLANTED, SLIPPED } from '../../datasets/logs/make.ts';
import {
  airWith,
  FINGERINGS,
  hornWith,
  makeAirColumn,
  MODEL_CENTS,
  ownPose,
  playWholeHorn,
  scaleBudgets,
  withOpening,
  type Amounts,
  type Setup,
} from '../../src/acoustics/index.ts';
import {
  calibrateVisit,
  hornInAir,
  plusMinusOfNote,
  REPEAT_CENTS,
  USUAL_UNKNOWNS,
  type CalibratedVisit,
  type CalibrationSource,
} from '../../src/documents/calibrated.ts';
import { reportCalibration, type UnknownReport } from '../../src/documents/calibration-report.ts';
import { answerSentence } from '../../src/documents/calibration-words.ts';
import { readPitchCsv, writePitchCsv } from '../../src/documents/pitch-log-csv.ts';
import { notesPlayed, type PlayedSetup, type Take } from '../../src/documents/pitch-log.ts';
import type { SetupDocument } from '../../src/documents/setup-document.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { seededNormal } from '../acoustics/seeded.ts';

const found = demoHorn('alto');
const day = { air: makeAirColumn(), a4Hz: 440 };
const TRUTH: Amounts = { 'mouthpiece place': 3e-3, temperature: -2 };
/** A ± is one standard deviation, and what else is fitted takes its share of what one key does. */
const TWO_DEVIATIONS = 2;
/** cents: the same resonance reached by two routes */
const POLISHED = 1e-4;
const LOGGED = FINGERINGS.filter(({ way }, i) => way === '' && i % 3 !== 0);

const nothingSet: SetupDocument = {
  kind: 'ventwright setup',
  version: 2,
  name: 'As set',
  origin: 'measured',
  keys: [],
};

/** One take of every logged note, as the horn with that truth would be played. */
function takes(setup: PlayedSetup = 'as found', of: Setup = found.setup, noise = (): number => 0): Take[] {
  const horn = hornWith(found.horn, TRUTH);
  const notes = playWholeHorn(horn, of, airWith(day.air, TRUTH), { fingerings: LOGGED, answers: false });
  return notes.flatMap(({ fingering, outcome }): Take[] =>
    outcome.found ? [{ fingering: fingering.id, cents: outcome.cents + noise(), setup, heard: 'tuner' }] : [],
  );
}

function fitted(source: Partial<CalibrationSource>): CalibratedVisit {
  const outcome = calibrateVisit(
    found,
    { takes: takes(), unknowns: USUAL_UNKNOWNS, asSet: nothingSet, ...source },
    day,
  );
  if (!outcome.ok) throw new Error(outcome.issues[0].message);
  return outcome.value;
}

describe('a note’s takes', () => {
  const of = (cents: readonly number[], more: Partial<Take> = {}) =>
    notesPlayed(
      cents.map((c): Take => ({ fingering: 'A4', cents: c, setup: 'as found', heard: 'tuner', ...more })),
    )[0];

  it('are never held surer than a player repeats', () => {
    expect(plusMinusOfNote(of([4]))).toBe(REPEAT_CENTS);
    expect(plusMinusOfNote(of([4, 4.1, 3.9, 4]))).toBe(REPEAT_CENTS);
  });

  it('count by their spread where that is wider, and by the spread within a single one', () => {
    expect(plusMinusOfNote(of([0, 20]))).toBeCloseTo(Math.hypot(10, 10) / Math.SQRT2, 12);
    expect(plusMinusOfNote(of([4], { spreadCents: 7 }))).toBe(7);
  });
});

describe('a visit’s calibration', () => {
  it('leaves out takes that a person set aside', () => {
    const all = takes();
    const wrong = all.map((take, i): Take => (i === 3 ? { ...take, cents: 150, leftOut: true } : take));
    expect(fitted({ takes: wrong }).calibration.notes).toHaveLength(all.length - 1);
  });

  it('reads what was played as set over as found', () => {
    const low = withOpening(found.setup, 'e', { at: 'front', height: 4e-3 });
    const asSet: SetupDocument = { ...nothingSet, keys: [{ pad: 'e', openingMm: 4, measuredAt: 'front' }] };
    const { calibration, log } = fitted({ takes: [...takes(), ...takes('as set', low)], asSet });
    expect(new Set(log.map(({ setup }) => setup))).toEqual(new Set(['as found', 'as set']));
    for (const { fit } of calibration.notes) expect(Math.abs(fit!.residual)).toBeLessThan(1);
  });

  it('gives issues where the setup it leaves with is wrong', () => {
    const asSet = {
      ...nothingSet,
      keys: [{ pad: 'no such pad', openingMm: 4, measuredAt: 'front' as const }],
    };
    const source = { takes: takes('as set'), unknowns: USUAL_UNKNOWNS, asSet };
    expect(calibrateVisit(found, source, day)).toMatchObject({ ok: false });
  });
});

describe('a calibrated horn', () => {
  const normal = seededNormal(12);
  const { calibration } = fitted({ takes: takes('as found', found.setup, () => 3 * normal()) });

  it('plays as it was played, and its pitches are surer than a horn’s as described', () => {
    const told = hornInAir(found, day.air, calibration);
    const plain = hornInAir(found, day.air, null);
    const budgets = (one: typeof told) =>
      scaleBudgets(one.loaded.horn, one.loaded.setup, one.air, { fingerings: LOGGED, ...one.knowledge });
    const [after, before] = [budgets(told), budgets(plain)];
    for (const { id } of LOGGED) {
      expect(after.get(id)!.cents.calibration).toBeGreaterThan(0);
      expect(after.get(id)!.cents.wholeHorn).toBeLessThan(MODEL_CENTS);
      expect(after.get(id)!.cents.plusMinus).toBeLessThan(before.get(id)!.cents.plusMinus);
    }
    const pitches = playWholeHorn(told.loaded.horn, told.loaded.setup, told.air, {
      fingerings: LOGGED,
      answers: false,
    });
    pitches.forEach(({ outcome }, i) => {
      if (!outcome.found) throw new Error('a note is gone');
      expect(Math.abs(outcome.cents - calibration.notes[i].fit!.predicted)).toBeLessThan(1e-9);
    });
  });

  it('tells by how much it moves each pitch from as written', () => {
    const play = ({ loaded, air }: ReturnType<typeof hornInAir>) =>
      playWholeHorn(loaded.horn, loaded.setup, air, { fingerings: LOGGED, answers: false });
    const written = play(hornInAir(found, day.air, null));
    const trended = fitted({ unknowns: [...USUAL_UNKNOWNS, 'player’s trend'] }).calibration;
    for (const fit of [calibration, trended]) {
      play(hornInAir(found, day.air, fit)).forEach(({ outcome }, i) => {
        const before = written[i].outcome;
        if (!outcome.found || !before.found) throw new Error('a note is gone');
        const { moved } = fit.notes[i].fit!;
        expect(Math.abs(moved.cents - (outcome.cents - before.cents))).toBeLessThan(POLISHED);
        expect(moved.plusMinus).toBeGreaterThan(0);
      });
    }
  });

  it('is the horn as described as long as none is in use', () => {
    const plain = hornInAir(found, day.air, null);
    expect(plain.loaded).toBe(found);
    expect(plain.air).toBe(day.air);
  });
});

describe('the report', () => {
  const report = (source: Partial<CalibrationSource>) => reportCalibration(fitted(source), day);

  it('says first what the log puts where, and what is left', () => {
    const { answer, unknowns } = report({ unknowns: ['mouthpiece place', 'temperature'] });
    expect(answer).toMatch(
      /^The log puts the mouthpiece 3\.0 ± \d\.\d mm further out than written and the air at 24\.9 ± \d\.\d °C; what is left is ±0\.\d cents\.$/,
    );
    expect(unknowns.map(({ unit }) => unit)).toEqual(['mm', '°C']);
  });

  describe('where no number differs from written by more than its ±', () => {
    const none: UnknownReport = {
      unknown: 'temperature',
      unit: '°C',
      amount: 0.4,
      plusMinus: 1,
      beforehand: 2,
      standing: 'told',
    };
    const [note] = report({}).notes;
    const said = (...moved: readonly (readonly [id: string, cents: number, plusMinus: number])[]): string =>
      answerSentence({
        ...{ unknowns: [none], leftCents: 2.1, airC: 27 },
        notes: moved.map(([fingering, movedCents, movedPlusMinusCents]) => ({
          ...note,
          fingering,
          movedCents,
          movedPlusMinusCents,
        })),
      });

    it('says how far pitches move with it, and that this is no evidence', () => {
      expect(said(['G4', 0.4, 2], ['D5', -1.9, 2.4])).toBe(
        'The log finds nothing other than written; what is left is ±2.1 cents. With it in use pitches move within their ± only, D5 most, by −1.9 ± 2.4 cents: that is no evidence that they lie so.',
      );
    });

    it('says where all of them together move a pitch by more than its ±', () => {
      expect(said(['G4', 3, 4], ['D5', -1.9, 0.8])).toBe(
        'No number by itself differs from written by more than its ±, but together they move pitches that can be shown to move, D5 most, by −1.9 ± 0.8 cents; what is left is ±2.1 cents.',
      );
    });

    it('says no more where pitches stay', () => {
      expect(said(['G4', 0.01, 4])).toBe(
        'The log finds nothing other than written; what is left is ±2.1 cents.',
      );
    });
  });

  it('names a note left out by how far it is from the rest', () => {
    const wrong = takes().map((take): Take =>
      take.fingering === 'D5' ? { ...take, cents: take.cents + 48 } : take,
    );
    expect(wrong.some(({ fingering }) => fingering === 'D5')).toBe(true);
    expect(report({ takes: wrong }).leftOut).toEqual([
      'D5 was left out of the fit: 48 cents above the rest.',
    ]);
  });

  it('says what notes do not tell, never a number for it', () => {
    const one = takes().filter(({ fingering }) => fingering === 'G4' || fingering === 'B4');
    const { answer, scatter } = report({ takes: one });
    expect(answer).toContain('These notes do not tell');
    expect(answer).toContain('the bell’s end');
    expect(scatter).toBe(
      'Too few notes to tell how well the model fits this horn: ±10 cents are taken for it.',
    );
  });

  it('of an empty log says so', () => {
    expect(report({ takes: [] })).toMatchObject({
      answer: 'No note is logged yet: nothing can be told.',
      leftCents: null,
      notes: [],
    });
  });

  it('says where the air leaves what its formulas are good for', () => {
    const air = makeAirColumn({ mouthpieceC: 45 });
    expect(report({}).warnings).toEqual([]);
    expect(reportCalibration(fitted({}), { ...day, air }).warnings.join(' ')).toContain('outside 15–37 °C');
  });

  it('says which key could explain a note, and never that it does', () => {
    const low = withOpening(found.setup, 'e', { at: 'front', height: 3.5e-3 });
    const { notes } = report({ takes: takes('as found', low) });
    const [cause] = notes.find(({ fingering }) => fingering === 'F4')!.causes;
    expect(cause).toMatchObject({ pad: 'e' });
    const plantedMm = 3.5 - ownPose(found.horn, found.setup, 'e').front * 1e3;
    expect(Math.abs(cause.changeMm - plantedMm)).toBeLessThan(TWO_DEVIATIONS * cause.changePlusMinusMm);
    expect(cause.sentence).toMatch(
      /^could be the E key, if it stood \d\.\d ± \d\.\d+ mm lower than written$/,
    );
  });
});

describe('the demo log', () => {
  const file = readFileSync(new URL('../../datasets/logs/demo-alto.csv', import.meta.url), 'utf8');

  it('is what its maker writes', () => {
    expect(file).toBe(writePitchCsv(makeDemoLog(demoNoise())));
  });

  it('tells what was planted in it: amounts, the slip, the key that stood low', () => {
    const read = readPitchCsv(file, 'as found');
    expect(read.issues).toEqual([]);
    const visit = fitted({ takes: read.takes });
    for (const { unknown, amount, plusMinus } of visit.calibration.fitted) {
      expect(Math.abs(amount - (PLANTED[unknown] ?? 0))).toBeLessThan(3 * plusMinus);
    }
    const { leftOut, notes } = reportCalibration(visit, day);
    expect(leftOut.map((sentence) => sentence.split(' ')[0])).toEqual([SLIPPED.fingering]);
    expect(notes.find(({ fingering }) => fingering === 'F4')!.causes[0].pad).toBe('e');
  });
});
