import { describe, expect, it } from 'vitest';
import { makeAirColumn, prepareChangeBudgets, ventingAt } from '../../src/acoustics/index.ts';
import { plusMinusOf } from '../../src/documents/plus-minus.ts';
import { makePointReport, makeStudyReport } from '../../src/ui/state/study-report.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { study } from './demo.ts';

/** Cents: the same slopes at the same opening by two routes. */
const SAME_DIGITS = 9;

/** What each pad vents, by its number: the trade's table, with its octaves. */
const VENTS: Readonly<Record<number, string>> = {
  1: 'B3',
  2: 'C4',
  3: 'C#4',
  4: 'D4',
  5: 'Eb4',
  6: 'E4',
  7: 'F4',
  8: 'F#4',
  9: 'F#4',
  10: 'G4',
  11: 'G#4',
  12: 'A4',
  13: 'Bb4',
  14: 'Bb4',
  15: 'B4',
  16: 'C5',
  17: 'C5',
  18: 'C#5',
  19: 'D6',
  20: 'Eb6',
  21: 'E6',
  22: 'F6',
  25: 'F#6',
};

describe('the report that crosses from the worker', () => {
  const full = study('e');
  const report = makeStudyReport(full);

  it('is plain data', () => {
    expect(structuredClone(report)).toEqual(report);
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  });

  it('keeps the study’s numbers, in bench units', () => {
    full.curve.forEach((point, i) => {
      expect(report.curve[i].frontMm).toBe(point.pose.front * 1000);
      expect(report.curve[i].ventShare).toBe(point.ventShare);
      point.notes.forEach((note, j) => {
        expect(report.curve[i].notes[j]!.fromPresentCents).toBe(note!.cents);
        expect(report.curve[i].notes[j]!.riseMs).toBe(note!.riseTime * 1000);
      });
    });
  });

  it('knows for all 23 pads which note they vent', () => {
    const byNumber = Object.fromEntries(
      full.context.horn.holes
        .filter((hole) => hole.hinge !== null)
        .map((hole) => [hole.number, (report.vents[hole.id] ?? []).join(', ')]),
    );
    expect(byNumber).toEqual(VENTS);
  });

  it('is as sure of a change at the answer as the study, and of a change to where the key stands only by its reading', () => {
    const plusMinus = plusMinusOf(demoHorn('alto'));
    const { context, present, diminishingReturn } = study('e', {}, { plusMinus });
    if (diminishingReturn.kind === 'none in reach') throw new Error('the demo’s E key has an answer');
    const sure = makeStudyReport(study('e', {}, { plusMinus }));
    const changesAt = prepareChangeBudgets(context, makeAirColumn({ mouthpieceC: 26.85 }), { plusMinus });
    const { front } = diminishingReturn.at.pose;
    const there = makePointReport(context, diminishingReturn.at, changesAt(front));
    there.changeCents!.forEach((budget, i) => {
      expect(budget!.plusMinus).toBeCloseTo(sure.budgets.changeCents[i]!.plusMinus, SAME_DIGITS);
    });
    const here = makePointReport(context, present, changesAt(present.pose.front));
    for (const budget of here.changeCents!) {
      expect(budget!.readings.map(({ kind, pad }) => `${kind} of ${pad}`)).toEqual(['opening of e']);
    }
    const moving = makePointReport(context, ventingAt(context, front), null);
    expect(moving.changeCents).toBeNull();
  });
});
