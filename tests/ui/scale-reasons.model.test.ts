import { describe, expect, it } from 'vitest';
import { cutAtFigures } from '../../src/ui/parts/reason-view.model.ts';
import type { Reason } from '../../src/ui/state/reasons.ts';
import type { ScaleSureness } from '../../src/ui/state/scale-sureness.ts';
import { moveScale } from '../../src/ui/state/whole-scale.ts';
import { HEAD_REASONS, noteReasons } from '../../src/ui/views/scale/note-reasons.model.ts';
import { SCALE_HEAD } from '../../src/ui/views/scale/scale-tables.model.ts';
import { makeNamer, makeNoteTold } from '../../src/ui/views/scale/scale-words.ts';
import { scale } from './demo.ts';

const { prepared, report } = scale();
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
        noteReasons(report, note),
      );
      const reasons = pieces.filter((piece): piece is Reason => typeof piece !== 'string');
      expect(reasons.map(({ kind }) => kind)).toEqual(kinds);
      expect(reasons[0].budget?.parts ?? null).toBe(each === null ? null : known.budget);
    }
  });

  it('are none where the note is lost', () => {
    const cents = report.found.cents.slice();
    cents[index] = NaN;
    const lost = { ...report.found, cents };
    expect(noteReasons({ ...report, found: lost }, { name: 'F5', index, proposed: null, sure })).toEqual([]);
    expect(noteReasons(report, { name: 'F5', index, proposed: lost, sure })).toEqual([]);
  });
});

it('every head of the scale’s table has its reason under its own words, names none', () => {
  expect(HEAD_REASONS).toHaveLength(SCALE_HEAD.length);
  HEAD_REASONS.forEach((reason, i) => {
    if (reason !== null) expect(reason.figure).toBe(SCALE_HEAD[i]);
  });
});
