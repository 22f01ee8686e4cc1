import { describe, expect, it } from 'vitest';
import { cutAtFigures } from '../../src/ui/parts/reason-view.model.ts';
import { makeAnswerSentences } from '../../src/ui/views/key-study/answer-sentences.ts';
import type { Manner } from '../../src/ui/views/key-study/opening-words.ts';
import {
  answerReasons,
  changeReason,
  pitchReason,
} from '../../src/ui/views/key-study/study-reasons.model.ts';
import { onTheBench, report, sureReport } from './demo.ts';

const contents = onTheBench('alto');
const e = report('e');
const MANNERS: readonly Manner[] = [
  { unit: 'mm', readAt: 'front' },
  { unit: 'thou', readAt: 'centre' },
];

describe('the reasons of a key’s answer', () => {
  it.each(MANNERS)('stand at the figures of its sentences, $unit at the $readAt', (manner) => {
    const { point, present } = answerReasons({ report: e, contents, manner });
    const { headline, sure, standing, tilt } = makeAnswerSentences(e, manner);
    const kindsIn = (text: string, reasons: typeof point): string[] =>
      cutAtFigures(text, reasons).flatMap((piece) => (typeof piece === 'string' ? [] : [piece.kind]));
    expect(kindsIn(headline, point)).toEqual(['diminishing-return']);
    expect(kindsIn(sure, point)).toEqual(['plus-minus']);
    expect(kindsIn(standing, present)).toEqual(['opening', 'vent-share']);
    expect(kindsIn(tilt, present)).toContain('equivalent-opening');
  });

  it('carry the study’s own parts of the ±', () => {
    const { point, present } = answerReasons({ report: e, contents, manner: MANNERS[0] });
    expect(point[0].budget).toEqual({ parts: e.budgets.answerMm, in: 'mm' });
    expect(present.map(({ budget }) => budget?.parts ?? null)).toEqual([
      e.budgets.presentMm,
      e.budgets.ventShare,
      null,
    ]);
  });

  it('say of a key that an arm stops what the arm allows', () => {
    const held = report('bis', { a: { openingMm: 4.5 } });
    expect(held.answer.kind).toBe('set by a link');
    const { point } = answerReasons({ report: held, contents, manner: MANNERS[0] });
    const { headline } = makeAnswerSentences(held, MANNERS[0]);
    expect(cutAtFigures(headline, point)).toContain(point[0]);
    expect(point[0].kind).toBe('link-limit');
  });
});

describe('the reasons of notes', () => {
  it('have two pitches that make up the change', () => {
    if (e.answer.kind !== 'reached') throw new Error('the demo’s E key has an answer');
    const { point } = e.answer;
    e.governed.forEach((_, i) => {
      const { inputs, budget } = changeReason(e, i, {
        ...{ point, figure: 'x', unit: 'mm', contents },
        changes: e.budgets.changeCents,
      })!;
      const told = (label: string): number =>
        Number.parseFloat(inputs.find((input) => input.label === label)!.value.replace('−', '-'));
      // Pitches are told to a tenth.
      expect(
        Math.abs(told('pitch there') - told('pitch as found') - point.notes[i]!.fromPresentCents),
      ).toBeLessThan(0.11);
      expect(budget!.parts).toBe(e.budgets.changeCents[i]);
    });
  });

  it('name the opening and the pad model a change rests on, as read and where they come from', () => {
    const e = sureReport('e');
    if (e.answer.kind !== 'reached') throw new Error('the demo’s E key has an answer');
    const moved = { point: e.answer.point, figure: 'x', unit: 'mm', contents } as const;
    const { inputs } = changeReason(e, 0, { ...moved, changes: e.budgets.changeCents })!;
    const told = new Map(inputs.map(({ label, value, from }) => [label, `${value}, ${from}`]));
    expect(told.get('pad model')).toBe('± 5 % of what a pad adds to its hole, our solved flow under a pad');
    expect(told.get('opening of the E key, as found at the front')).toMatch(/^8\.0 mm .* ± 0\.2 mm, /);
    expect(told.has('model of the whole horn')).toBe(false);
    expect(told.get('bore')).toMatch(/taken as exact$/);
  });

  it('claim no ± while the hand moves', () => {
    const moving = { point: e.curve[3], changes: null, figure: 'x', unit: 'mm', contents } as const;
    const { budget, remarks } = changeReason(e, 0, moving)!;
    expect(budget).toBeNull();
    expect(remarks.join(' ')).toMatch(/once the hand rests/);
    expect(pitchReason(e, 0, { contents, unit: 'mm' })!.budget!.parts.wholeHorn).toBeGreaterThan(5);
  });
});
