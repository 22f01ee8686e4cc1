import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { knownSetupLength } from '../../src/documents/sheet-edits.ts';
import { readCells, readHead, type CellManner, type SheetReading } from '../../src/ui/state/read-sheet.ts';
import type { FieldId } from '../../src/ui/state/fields.ts';
import { onTheBench } from './demo.ts';

const contents = onTheBench('alto');
const FRONT: CellManner = { unit: 'mm', pointOf: () => 'front' };
const read = (cell: FieldId, text: string, manner = FRONT): SheetReading =>
  readCells(contents, [{ pad: 'e', cell, text }], manner);
const found = ({ contents: { asFound } }: SheetReading) => asFound.document.keys.find((k) => k.pad === 'e')!;

describe('a text typed into the sheet', () => {
  it.each([
    ['7.9', 7.9, 'front'],
    ['7,9 mm c', 7.9, 'centre'],
    ['4.0c', 4, 'centre'],
    ['5/16 centre', 7.9375, 'centre'],
    ['0.310 in at the front', 7.874, 'front'],
    ['.310" f', 7.874, 'front'],
    ['1.2 b', 1.2, 'back'],
  ] as const)('%s is an opening with its measuring point', (text, mm, at) => {
    const key = found(read('openingMm', text));
    expect(key.openingMm).toBeCloseTo(mm, 9);
    expect(key.measuredAt).toBe(at);
    expect(key.readings!.openingMm).toEqual({ origin: 'measured' });
  });

  it('may have its ± with it, which is kept with the reading, and not of what is only meant', () => {
    const opening = read('openingMm', '7,9 ± 0,1 mm c');
    expect(found(opening).readings!.openingMm).toEqual({ origin: 'measured', plusMinusMm: 0.1 });
    expect(found(opening).measuredAt).toBe('centre');
    expect(opening.kept[0].typed!.text).toBe('7,9');
    const set = read('asSet', '9 +/- 0.1').contents.asSet.document.keys[0];
    expect(set.readings!.openingMm).toEqual({ origin: 'measured', plusMinusMm: 0.1 });
    const rim = read('rimMm', '1.1 ± 0.1').contents.horn.document.holes.find((hole) => hole.id === 'e')!;
    expect(rim.readings!.rimMm).toEqual({ origin: 'measured', plusMinusMm: 0.1 });
    const meant = read('proposed', '9 ± 0.1');
    expect(meant.contents).toBe(contents);
    expect(meant.kept[0].typed!.problem).toMatch(/^invalid proposed opening: .*; expected no ±/);
  });

  it('tells the unit it names, and none where it names none', () => {
    expect(
      ['7.9', '7,9 mm', '0.310 in', '310 thou', '5/16', '.310"', '4.0 mm c'].map(
        (t) => read('openingMm', t).unit,
      ),
    ).toEqual([null, 'mm', 'thou', 'thou', null, 'thou', 'mm']);
  });

  it('takes a proposal or an opening set away when it is empty, and leaves what must be there', () => {
    const set = read('asSet', '9').contents;
    expect(
      readCells(set, [{ pad: 'e', cell: 'asSet', text: ' ' }], FRONT).contents.asSet.document.keys,
    ).toEqual([]);
    const kept = read('openingMm', '');
    expect(kept.contents).toBe(contents);
    expect(kept.kept).toEqual([{ pad: 'e', cell: 'openingMm', typed: null }]);
  });

  it('that contradicts the key in any of its setups is refused, and nothing is changed', () => {
    for (const [cell, text] of [
      ['padDiameterMm', '30'],
      ['hingeMm', '17'],
      ['asSet', '58'],
      ['proposed', '58'],
      ['openingMm', '4 furlongs'],
    ] as const) {
      const reading = read(cell, text);
      expect(reading.contents).toBe(contents);
      expect(reading.kept[0].typed!.problem).toMatch(/^(invalid|pad 7: invalid) .*; expected /);
      expect(reading.kept[0].typed!.text).toBe(text);
    }
  });

  it('that was refused for what the key had before is taken once the rest is measured', () => {
    const wide = read('diameterMm', '43');
    expect(wide.kept[0].typed!.problem).toContain('expected more than its hole, 43 mm');
    const later = readCells(contents, [{ pad: 'e', cell: 'padDiameterMm', text: '42.5' }], FRONT, [
      { pad: 'e', cell: 'hingeMm', text: '26' },
      { pad: 'e', cell: 'diameterMm', text: '40' },
    ]);
    expect(found(later).padDiameterMm).toBe(42.5);
    expect(later.contents.horn.document.holes.find((h) => h.id === 'e')!.diameterMm).toBe(40);
    const last = new Map(later.kept.map(({ cell, typed }) => [cell, typed!.problem]));
    expect([...last.values()]).toEqual([null, null, null]);
    const still = readCells(contents, [{ pad: 'e', cell: 'rimMm', text: '1.2' }], FRONT, [
      { pad: 'e', cell: 'diameterMm', text: '43' },
    ]);
    expect(still.kept.map((k) => k.cell)).toEqual(['rimMm']);
  });

  it('that is a small plain number while thousandths are in use asks for its unit', () => {
    const thou: CellManner = { ...FRONT, unit: 'thou' };
    for (const [cell, text] of [
      ['openingMm', '8'],
      ['asSet', '4.1 c'],
      ['diameterMm', '42'],
    ] as const) {
      const { contents: next, kept } = read(cell, text, thou);
      expect(next).toBe(contents);
      expect(kept[0].typed!.problem).toMatch(/may be .* mm or .* thousandths of an inch; expected its unit/);
    }
    expect(found(read('openingMm', '310', thou)).openingMm).toBeCloseTo(7.874, 9);
    expect(found(read('openingMm', '8 mm', thou)).openingMm).toBe(8);
    expect(found(read('openingMm', '0', thou)).openingMm).toBe(0);
  });

  it('is read over what was typed just before it', () => {
    const both = readCells(
      contents,
      [
        { pad: 'e', cell: 'diameterMm', text: '33.5' },
        { pad: 'e', cell: 'padDiameterMm', text: '33' },
      ],
      FRONT,
    );
    expect(both.kept.map(({ typed }) => typed!.problem === null)).toEqual([true, false]);
  });

  it('never throws and never leaves a number that is none, whatever is typed', () => {
    const cells = fc.constantFrom<FieldId>(
      'openingMm',
      'proposed',
      'asSet',
      'hingeMm',
      'hingeHeightMm',
      'adhesiveBedMm',
    );
    const texts = fc.oneof(
      fc.string(),
      fc.stringMatching(/^[-−]?\d{0,3}[.,/]?\d{0,3} ?(mm|in|"|thou|c|b|f)?$/),
    );
    fc.assert(
      fc.property(cells, texts, (cell, text) => {
        const { contents: next, kept } = read(cell, text);
        expect(kept).toHaveLength(1);
        for (const role of ['asFound', 'proposed', 'asSet'] as const) {
          const known = knownSetupLength(next[role].document, 'e', 'openingMm');
          if (known !== null) expect(Number.isFinite(known.mm)).toBe(true);
        }
      }),
      { seed: 5101, numRuns: 300 },
    );
  });
});

describe('a text about the horn or the visit', () => {
  it('is written where it belongs, and taken away when it is empty', () => {
    const told = readHead(contents, 'player', ' Mira Testfall ');
    expect(told.ok && told.contents.visit.document.player).toBe('Mira Testfall');
    expect(told.ok && told.contents.horn).toBe(contents.horn);
    const gone = readHead(told.ok ? told.contents : contents, 'player', '');
    expect(gone.ok && gone.contents.visit.document).not.toHaveProperty('player');
  });

  it('is refused with a sentence where it cannot be', () => {
    expect(readHead(contents, 'date', 'tomorrow')).toEqual({
      ok: false,
      message: 'invalid date: "tomorrow"; expected a day such as 2026-05-31',
    });
    expect(readHead(contents, 'name', '').ok).toBe(false);
    expect(readHead(contents, 'maker', '').ok).toBe(false);
    const made = readHead(contents, 'maker', ' Brookmill ');
    expect(made.ok && made.contents.horn.document.maker).toBe('Brookmill');
  });
});
