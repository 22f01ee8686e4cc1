import { describe, expect, it } from 'vitest';
import { makePlayerSheet } from '../../src/documents/player-sheet.ts';
import { makePlayerSheetReasons } from '../../src/ui/sheets/player-sheet-reasons.model.ts';
import { REASON_GROUNDS, type Reason } from '../../src/ui/state/reasons.ts';
import { playerSheetFacts, raisedD, wishedForAll } from './demo-player-sheet.ts';

const contents = wishedForAll(raisedD());
const facts = playerSheetFacts(contents);
const sheet = makePlayerSheet(contents, facts, 'mm');
const reasons = makePlayerSheetReasons(contents, facts, sheet, 'mm');

describe('the reasons of the player’s sheet', () => {
  it('are of the figures as the tables say them', () => {
    for (const { pad, found, set, vented } of sheet.keys.rows) {
      const own = reasons.keys[pad];
      expect([own.found.figure, own.set.figure, own.vented.figure]).toEqual([found, set, vented]);
    }
    for (const [rows, of] of [
      [sheet.notes.rows, reasons.notes],
      [sheet.wishNotes!.rows, reasons.wishNotes],
    ] as const) {
      for (const { fingering, cents, strengthDb } of rows) {
        expect(of[fingering].cents.figure).toBe(`${cents} cents`);
        expect(of[fingering].strengthDb?.figure ?? '').toBe(strengthDb === '' ? '' : `${strengthDb} dB`);
      }
    }
    expect(Object.keys(reasons.curve)).toEqual(sheet.curve!.marks.map(({ mark }) => mark));
  });

  it('have a change’s ± from the comparison it is told of', () => {
    const partsOf = ({ budget }: Reason): number => budget!.parts.plusMinus;
    for (const { fingering } of sheet.wishNotes!.rows) {
      const note = facts.wishedShift!.cost.notes.find((each) => each.fingering === fingering)!;
      expect(partsOf(reasons.wishNotes[fingering].cents)).toBe(note.differences[0]!.centsPlusMinus);
      expect(reasons.wishNotes[fingering].cents.inputs[0].value).toBe('1.0 mm (0.039 in) lower');
    }
    expect(partsOf(reasons.curve.enough!.opening)).toBe(sheet.curve!.enoughPlusMinusMm);
  });

  it('name a ground and give what the figure rests on', () => {
    const all = [
      ...Object.values(reasons.keys).flatMap(({ found, set, vented }) => [found, set, vented]),
      ...Object.values(reasons.curve).flatMap(({ opening, vented, cents }) => [
        opening,
        vented,
        ...(cents === null ? [] : [cents]),
      ]),
    ];
    for (const { kind, inputs } of all) {
      expect(REASON_GROUNDS[kind]).toBeDefined();
      expect(inputs.length).toBeGreaterThan(0);
    }
  });
});
