import { describe, expect, it } from 'vitest';
import { budgetParts, NAMED_PARTS } from '../../src/documents/budget-parts.ts';
import { cutAtFigures } from '../../src/ui/parts/reason-view.model.ts';
import type { Reason } from '../../src/ui/state/reasons.ts';
import type { ScaleSureness } from '../../src/ui/state/scale-sureness.ts';
import { moveScale } from '../../src/ui/state/whole-scale.ts';
import { HEAD_REASONS, noteReasons } from '../../src/ui/views/scale/note-reasons.model.ts';
import { SCALE_HEAD } from '../../src/ui/views/scale/scale-tables.model.ts';
import { makeNamer, makeNoteTold } from '../../src/ui/views/scale/scale-words.ts';
import { onTheBench, scale, scaleSureness } from './demo.ts';

const { prepared, report } = scale();
const on = { contents: onTheBench('alto'), unit: 'mm' } as const;
const nameOf = makeNamer('written', report.transpositionSemitones);
const index = report.fingerings.findIndex(({ id }) => id === 'F5');
const known = {
  budget: {
    plusMinus: 11.8,
    readings: [],
    others: { count: 0, effect: 0 },
    padModel: 1,
    wholeHorn: 10,
    calibration: 0,
  },
  next: [],
};
const sure: ScaleSureness = {
  found: report.fingerings.map(() => known),
  moves: report.fingerings.map(() => known),
};

describe('the reasons of the picked note', () => {
  it.each([
    ['as found', null],
    ['as proposed', moveScale(prepared, { e: 10 })],
  ] as const)('stand at every figure of its line, %s, with their ± where it is known', (_, proposed) => {
    const kinds = [proposed === null ? 'pitch' : 'change', 'strength', 'cutoff'];
    for (const each of [null, sure]) {
      const note = { name: 'F5', index, proposed, sure: each };
      const pieces = cutAtFigures(
        makeNoteTold(report, proposed, nameOf, each)(index),
        noteReasons(report, note, on),
      );
      const reasons = pieces.filter((piece): piece is Reason => typeof piece !== 'string');
      expect(reasons.map(({ kind }) => kind)).toEqual(kinds);
      expect(reasons[0].budget?.parts ?? null).toBe(each === null ? null : known.budget);
    }
  });

  it('name what its ± rests on, as read, with their own ± and where they come from', () => {
    const { found } = scaleSureness()({}, Math.floor(index / 6) * 6);
    const of: ScaleSureness = { ...sure, found: report.fingerings.map(() => found[index % 6]) };
    const [{ inputs, budget }] = noteReasons(report, { name: 'F5', index, proposed: null, sure: of }, on);
    const named = budgetParts(budget!.parts, NAMED_PARTS).map(({ label }) => label);
    expect(inputs.map(({ label }) => label)).toEqual([
      ...named.filter((l) => !l.startsWith('others')),
      'bore',
    ]);
    expect(inputs.find(({ label }) => label === 'air temperature')).toEqual({
      label: 'air temperature',
      value: '26.9 °C ± 2 °C',
      from: 'of this visit',
    });
    for (const { label, value } of inputs) expect([label, /±|diameters/.test(value)]).toEqual([label, true]);
  });

  it('are none where the note is lost', () => {
    const cents = report.found.cents.slice();
    cents[index] = NaN;
    const lost = { ...report.found, cents };
    expect(noteReasons({ ...report, found: lost }, { name: 'F5', index, proposed: null, sure }, on)).toEqual(
      [],
    );
    expect(noteReasons(report, { name: 'F5', index, proposed: lost, sure }, on)).toEqual([]);
  });
});

it('every head of the scale’s table has its reason under its own words, names none', () => {
  expect(HEAD_REASONS).toHaveLength(SCALE_HEAD.length);
  HEAD_REASONS.forEach((reason, i) => {
    if (reason !== null) expect(reason.figure).toBe(SCALE_HEAD[i]);
  });
});
