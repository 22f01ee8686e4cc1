import { describe, expect, it } from 'vitest';
import { keyedHoles } from '../../src/documents/horn-document.ts';
import type { BudgetReport, NextReport } from '../../src/documents/uncertainty-report.ts';
import { makeSureness, NOTHING_NARROWS, type SurenessManner } from '../../src/ui/parts/sureness.model.ts';
import { centsWithPlusMinus } from '../../src/ui/parts/plus-minus-words.ts';
import { makeStudySureness } from '../../src/ui/views/key-study/study-sureness.model.ts';
import { ALTO, onTheBench, plain, sureReport } from './demo.ts';

const MM: SurenessManner = {
  of: 'mm',
  unit: 'mm',
  what: 'The opening that is enough',
  keys: new Set(keyedHoles(ALTO.horn).map(({ id }) => id)),
};

const part = (label: string, effect: number): BudgetReport['readings'][number] => ({
  label,
  pad: 'e',
  kind: 'rimThickness',
  unit: 'mm',
  value: 1.2,
  plusMinus: 0.2,
  link: null,
  effect,
});

const reading = (kind: NextReport['kind'], pad: string | null): NextReport => ({
  label: 'that length',
  pad,
  kind,
  unit: 'mm',
  value: 1.2,
  plusMinus: 0.2,
  link: null,
  tool: 'caliper',
  becomes: 0.1,
  alone: 0.25,
  together: 0.25,
});

const made = (
  parts: Partial<BudgetReport>,
  next: readonly NextReport[] = [],
  manner: SurenessManner = MM,
): ReturnType<typeof makeSureness> => {
  const whole = {
    readings: [],
    others: { count: 0, effect: 0 },
    padModel: 0,
    wholeHorn: 0,
    calibration: 0,
    ...parts,
  };
  const effects = [...whole.readings.map(({ effect }) => effect), whole.others.effect];
  const plusMinus = Math.hypot(...effects, whole.padModel, whole.wholeHorn, whole.calibration);
  return makeSureness({ plusMinus, ...whole }, next, manner);
};

describe('how sure a key’s answer is', () => {
  const e = sureReport('e');
  const { panel, notes } = makeStudySureness(e, 'mm', onTheBench('alto'));
  const budget = e.budgets.answerMm!;

  it('tells the core’s ± and its parts, the greatest first', () => {
    expect(plain(panel.told)).toContain(`± ${budget.plusMinus.toFixed(2)} mm (`);
    const core = [...budget.readings.map(({ effect }) => Math.abs(effect)), Math.abs(budget.padModel)];
    const greatest = core.sort((a, b) => b - a).slice(0, 5);
    const shown = panel.parts.map(sizeOf);
    expect(shown.slice(0, 5)).toEqual(greatest.map((size) => Number(size.toFixed(2))));
    expect(panel.parts[0].share).toBe(1);
  });

  it('says what to measure next as the core ranks it, in both units, and where it is typed', () => {
    const [first] = e.next;
    const [told] = panel.next;
    const inches = (mm: number): string => (mm / 25.4).toFixed(3);
    expect(plain(told.text)).toBe(
      `Measure the ${first.label} with a ${first.tool}, ± ${first.becomes.toFixed(1)} mm (${inches(first.becomes)} in): ` +
        `the ± falls from ${budget.plusMinus.toFixed(2)} to ${first.alone.toFixed(2)} mm ` +
        `(${inches(budget.plusMinus)} to ${inches(first.alone)} in).`,
    );
    expect(told.target).toEqual({ pad: 'e', field: 'rimMm' });
  });

  it('keeps its promise once that is measured and typed with its ±', () => {
    const [first] = e.next;
    expect(first.kind).toBe('rimThickness');
    const rimMm = ALTO.horn.holes.find(({ id }) => id === 'e')!.rimMm;
    const then = sureReport('e', { e: { rimMm, plusMinusMm: { rimMm: first.becomes } } });
    expect(then.budgets.answerMm!.plusMinus).toBeCloseTo(first.alone, 9);
  });

  it('puts inches first where lengths are read in inches', () => {
    const inch = makeStudySureness(e, 'thou', onTheBench('alto')).panel;
    expect(plain(inch.told)).toContain(`± ${(budget.plusMinus / 25.4).toFixed(3)} in (`);
  });

  it('gives every governed note its ± on pitch and on its change', () => {
    const answer = e.answer.kind === 'reached' ? e.answer.point : null;
    expect(notes.map(({ id }) => id)).toEqual(e.governed.map(({ id }) => id));
    notes.forEach((note, i) => {
      const pitch = e.present.notes[i]!.pitchCents;
      const change = e.budgets.changeCents[i]!.plusMinus;
      expect(note.pitch).toBe(centsWithPlusMinus(pitch, e.budgets.pitchCents[i]!.plusMinus));
      expect(note.change).toBe(centsWithPlusMinus(answer!.notes[i]!.fromPresentCents, change));
      expect(note.shown).toBe(Math.abs(answer!.notes[i]!.fromPresentCents) > change);
    });
  });
});

describe('the panel', () => {
  it('gathers what is not named so that the squares still add up', () => {
    const { parts } = made({ readings: [6, 5, 4, 3, 2, 1, 1].map((n) => part(`part ${n}`, n)) });
    expect(parts.map(({ label }) => label).slice(0, 5)).toEqual([
      'part 6',
      'part 5',
      'part 4',
      'part 3',
      'part 2',
    ]);
    expect(parts[5].label).toBe('others, 2 readings');
    expect(sizeOf(parts[5])).toBeCloseTo(Math.SQRT2, 2);
  });

  it('counts readings too small to be listed among the others, and names a model that is', () => {
    const readings = [6, 5, 4, 3, 2].map((n) => part(`part ${n}`, n));
    const { parts } = made({ readings, others: { count: 7, effect: 0.3 }, padModel: 0.4 });
    expect(parts[5].label).toBe('others, 7 readings and pad model');
    expect(sizeOf(parts[5])).toBeCloseTo(0.5, 2);
  });

  it('names the models beside the readings', () => {
    const { parts } = made({ padModel: -0.2, wholeHorn: 10, calibration: 1 });
    expect(parts.map(({ label, kind }) => `${kind}: ${label}`)).toEqual([
      'model: model of the whole horn',
      'model: what calibrating leaves open',
      'model: pad model',
    ]);
  });

  it('says that no reading would narrow it, and whose most of it is', () => {
    expect(made({ padModel: 0.3, readings: [part('rim', 0.1)] }).closing).toBe(
      plainly(`${NOTHING_NARROWS} Most of it is the pad model’s own.`),
    );
    expect(made({ padModel: 0.1, readings: [part('rim', 0.3)] }).closing).toBe(plainly(NOTHING_NARROWS));
    expect(made({}).closing).toBe('');
  });

  it('offers a field only where there is one: of a key, for a length that is typed', () => {
    const target = (next: NextReport): unknown => made({ padModel: 1 }, [next]).next[0].target;
    expect(target(reading('hingeDistance', 'e'))).toEqual({ pad: 'e', field: 'hingeMm' });
    expect(target(reading('hingeDistance', 'body-vent'))).toBeNull();
    expect(target(reading('place', 'e'))).toBeNull();
    expect(made({ padModel: 1 }, [reading('linkRatio', null)]).next[0].link?.href).toBe('#links');
  });

  it('tells what several bring together', () => {
    const two = [reading('hingeDistance', 'e'), { ...reading('chimney', 'e'), together: 0.2 }];
    expect(plain(made({ padModel: 0.3 }, two).closing)).toBe('Both: ± 0.20 mm (0.008 in).');
  });

  it('tells a ± of cents in cents', () => {
    const cents = { ...MM, of: 'cents' as const };
    expect(plain(made({ wholeHorn: 10 }, [], cents).told)).toBe('The opening that is enough: ± 10.0 cents.');
  });
});

/** The number of `± 0.10 mm (0.004 in)`. */
function sizeOf({ size }: { readonly size: string }): number {
  return Number(/^± ([\d.]+) /.exec(plain(size))![1]);
}

/** As the page keeps a number with its unit. */
function plainly(text: string): string {
  return text.replace('2 %', '2\u00a0%');
}
