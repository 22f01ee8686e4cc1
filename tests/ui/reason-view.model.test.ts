import { describe, expect, it } from 'vitest';
import type { BudgetReport } from '../../src/documents/uncertainty-report.ts';
import { GLOSSARY } from '../../src/ui/parts/glossary-words.ts';
import { panelPlace } from '../../src/ui/parts/panel-place.model.ts';
import { cutAtFigures, makeReasonView } from '../../src/ui/parts/reason-view.model.ts';
import { glossaryOf } from '../../src/ui/state/glossary.ts';
import { REASON_GROUNDS, REASON_KINDS, type Reason } from '../../src/ui/state/reasons.ts';
import { plain, report } from './demo.ts';

const reasonOf = (changes: Partial<Reason> = {}): Reason => ({
  kind: 'vent-share',
  figure: '75 %',
  of: 'E key',
  inputs: [],
  budget: null,
  remarks: [],
  ...changes,
});

describe('the panel of a reason', () => {
  it('has words from the glossary, a formula, a range, a source and a note for every kind', () => {
    for (const kind of REASON_KINDS) {
      const view = makeReasonView(reasonOf({ kind }), GLOSSARY, 'mm');
      expect(view.meanings.map(({ word }) => word)).toEqual(REASON_GROUNDS[kind].words);
      expect(view.meanings.every(({ meaning }) => meaning.length > 5)).toBe(true);
      expect(view.sources).toMatch(/ours|\d{4}|common practice|Pierce/);
      expect(view.noteHref).toMatch(/^#notes\/[a-z-]+\/[a-z0-9-]+$/);
    }
  });

  it('tells the parts of the ± as the study has them, the greatest first, in both units', () => {
    const { answerMm } = report('e').budgets;
    const view = makeReasonView(
      reasonOf({ kind: 'diminishing-return', budget: { parts: answerMm!, in: 'mm' } }),
      GLOSSARY,
      'mm',
    );
    const sizes = view.parts.map(({ size }) => Number(/± ([\d.]+) mm \(/.exec(plain(size))![1]));
    const rest = view.parts.findIndex(({ label }) => label.startsWith('others, '));
    const named = rest < 0 ? sizes : sizes.slice(0, rest);
    expect(named).toEqual([...named].sort((a, b) => b - a));
    const all = [...answerMm!.readings.map(({ effect }) => effect), answerMm!.padModel];
    expect(named[0]).toBeCloseTo(Math.max(...all.map(Math.abs)), 2);
    // Rounded parts make up the whole to their last digits.
    expect(Math.hypot(...sizes)).toBeCloseTo(answerMm!.plusMinus, 1);
    expect(view.parts.some(({ label }) => label === 'pad model')).toBe(true);
  });

  it('leaves out parts that are nothing and tells shares in points', () => {
    const budget: BudgetReport = {
      plusMinus: 0.02,
      readings: [],
      others: { count: 0, effect: 0 },
      padModel: -0.02,
      wholeHorn: 0,
      calibration: 0,
    };
    const view = makeReasonView(reasonOf({ budget: { parts: budget, in: 'share' } }), GLOSSARY, 'mm');
    expect(view.parts.map(({ label, size }) => [label, plain(size)])).toEqual([
      ['pad model', '± 2.0 points'],
    ]);
  });
});

describe('a sentence with figures', () => {
  const [one, two] = [reasonOf({ figure: '9.1 mm' }), reasonOf({ figure: '75 %' })];

  it('is cut at each, in the order of the sentence, and loses no word', () => {
    const text = 'It vents 75 % at 9.1 mm.';
    const pieces = cutAtFigures(text, [one, two]);
    expect(pieces).toEqual(['It vents ', two, ' at ', one, '.']);
    expect(pieces.map((piece) => (typeof piece === 'string' ? piece : piece.figure)).join('')).toBe(text);
  });

  it('gives the same figure said twice to the first and the second', () => {
    const [e, d] = [reasonOf({ figure: '1 mm', of: 'E' }), reasonOf({ figure: '1 mm', of: 'D' })];
    expect(cutAtFigures('E by 1 mm, D by 1 mm.', [e, d])).toEqual(['E by ', e, ', D by ', d, '.']);
  });

  it('stays whole where a figure does not stand in it, or within another', () => {
    expect(cutAtFigures('Nothing of it.', [one, two])).toEqual(['Nothing of it.']);
    const within = reasonOf({ figure: '1 mm' });
    expect(cutAtFigures('At 9.1 mm.', [within, one])).toEqual(['At ', one, '.']);
    expect(cutAtFigures('At 19.1 mm.', [one])).toEqual(['At 19.1 mm.']);
    expect(cutAtFigures('At 19.1 mm, 9.1 mm.', [one])).toEqual(['At 19.1 mm, ', one, '.']);
    expect(cutAtFigures('', [one])).toEqual([]);
  });
});

describe('the place of a panel', () => {
  const screen = { width: 1280, height: 800 };
  const panel = { width: 400, height: 300 };

  it('never covers its figure and lies within the screen, as high as there is room', () => {
    for (const height of [300, 700]) {
      for (let left = 0; left < 1280; left += 80) {
        for (let top = 0; top < 780; top += 60) {
          const place = panelPlace({ left, top, bottom: top + 20 }, { ...panel, height }, screen);
          const bottom = place.top + Math.min(height, place.mostHeight);
          expect(place.top >= top + 20 || bottom <= top).toBe(true);
          expect(place.left >= 0 && place.left + panel.width <= screen.width).toBe(true);
          expect(place.top >= 0 && bottom <= screen.height).toBe(true);
          // On the one side or the other there is nearly half the screen.
          expect(Math.min(height, place.mostHeight)).toBeGreaterThanOrEqual(Math.min(height, 370));
        }
      }
    }
  });

  it('lies under its figure wherever there is room', () => {
    expect(panelPlace({ left: 0, top: 10, bottom: 30 }, panel, screen).top).toBeGreaterThan(30);
    expect(panelPlace({ left: 0, top: 470, bottom: 490 }, panel, screen).top).toBeLessThan(470);
  });
});

it('a glossary is read as words and meanings, without its marks', () => {
  const text = '# G\n\n| word | meaning |\n| ---- | ------- |\n| a, b | the _one_ |\n| c | two |\n';
  expect([...glossaryOf(text)]).toEqual([
    ['a, b', 'the one'],
    ['c', 'two'],
  ]);
});
