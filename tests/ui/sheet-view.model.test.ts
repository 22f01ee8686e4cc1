import { describe, expect, it } from 'vitest';
import { nextVisit, type BenchContents } from '../../src/documents/bench-contents.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { withFoundLengths, withProposed, withSet } from '../../src/ui/state/key-lengths.ts';
import { makeSheetReport } from '../../src/ui/state/sheet-numbers.ts';
import type { EnoughReport } from '../../src/ui/state/sheet-report.ts';
import { enoughArrived, enoughParts, sheetArrived, sheetAsked } from '../../src/ui/state/sheet-state.ts';
import { standingTo } from '../../src/ui/views/sheet/sheet-rows.model.ts';
import { makeSheetView, type SheetView } from '../../src/ui/views/sheet/sheet-view.model.ts';
import { onTheBench, plain, preparedSheet } from './demo.ts';

const alto = onTheBench('alto');

/** The state with every answer there, where height stops helping as told. */
function answered(
  contents: BenchContents,
  enoughOf: (pad: string) => EnoughReport | null,
  change: Partial<BenchState> = {},
): BenchState {
  const state = { ...makeBenchState([], contents), ...change };
  const { keys, ...report } = makeSheetReport(preparedSheet(contents));
  const arrived = sheetArrived(sheetAsked(state.sheet, 1, state.hornId), 1, { keys, ...report });
  const sheet = keys.reduce((now, { pad }) => {
    const known = enoughOf(pad);
    const parts = enoughParts(contents, pad);
    return known === null ? now : enoughArrived(now, pad, { report: known, parts });
  }, arrived);
  return { ...state, sheet };
}

const enoughAt = (frontMm: number, plusMinusMm: number | null = 0.2): EnoughReport => ({
  kind: 'reached',
  frontMm,
  centreMm: frontMm / 2,
  backMm: frontMm / 9,
  ventShare: 0.8,
  decidedBy: { by: 'vent share' },
  plusMinusMm,
  budget: null,
});

const rowOf = (view: SheetView, pad: string) =>
  view.groups.flatMap(({ rows }) => rows).find((row) => row.pad === pad)!;

describe('the sheet’s answer', () => {
  it('names the keys that lack most, and by how much', () => {
    const low: Readonly<Record<string, number>> = { e: 9.1, g: 8.2, d: 8.9 };
    const view = makeSheetView(answered(alto, (pad) => enoughAt(low[pad] ?? 3)));
    expect(plain(view.answer.headline)).toBe(
      '3 keys stand low, and more height still helps: G by 2.0 ± 0.3 mm, E by 1.1 ± 0.3 mm and D by 0.9 ± 0.3 mm.',
    );
    expect(plain(view.answer.standing)).toBe('As found: 20 high enough.');
    expect(view.enoughForAll).toEqual({
      g: expect.closeTo(8.2, 9),
      e: expect.closeTo(9.1, 9),
      d: expect.closeTo(8.9, 9),
    });
  });

  it('says so where no key lacks height, and where the answers are still coming', () => {
    expect(makeSheetView(answered(alto, () => enoughAt(3))).answer.headline).toBe(
      'No key stands low: more height would help none.',
    );
    const coming = makeSheetView(answered(alto, (pad) => (pad === 'e' ? enoughAt(3) : null)));
    expect(coming.answer.headline).toBe('So far no key stands low: more height would help none.');
    const near = makeSheetView(answered(alto, (pad) => enoughAt(pad === 'e' ? 8.1 : 3)));
    expect(near.answer.headline).toBe('No key can be shown to stand low.');
    expect(near.answer.standing).toBe('As found: 1 within their ± of enough and 22 high enough.');
    const beyond: EnoughReport = { kind: 'none in reach', reason: '' };
    const open = makeSheetView(answered(alto, (pad) => (pad === 'e' ? beyond : enoughAt(3))));
    expect(open.answer.headline).toBe('No key can be shown to stand low.');
    expect(coming.answer.standing).toBe('As found: 1 high enough and 22 still being worked out.');
    expect(coming.busy).toBe(true);
    expect(makeSheetView(makeBenchState([], alto)).answer.headline).toBe('Working out how every key stands…');
  });

  describe('on a horn begun from an example', () => {
    const example: BenchContents = {
      ...alto,
      asFound: { ...alto.asFound, document: { ...alto.asFound.document, origin: 'template' } },
    };
    const lows: Readonly<Record<string, number>> = { b: 11, e: 9.1, g: 8.2, d: 8.9 };
    const shown = (contents: BenchContents, coming: readonly string[] = []): SheetView =>
      makeSheetView(answered(contents, (pad) => (coming.includes(pad) ? null : enoughAt(lows[pad] ?? 3))));
    const read = (...pads: readonly string[]): BenchContents =>
      pads.reduce((now, pad) => withFoundLengths(now, pad, { openingMm: 8 }), example);

    it('leads with the keys that were read, and counts the example’s apart', () => {
      const { answer, enoughForAll, enoughAct } = shown(read('d', 'e', 'f'));
      expect(plain(answer.headline)).toBe(
        'Of the 3 keys read, 2 stand low, and more height still helps: E by 1.1 ± 0.3 mm and D by 0.9 ± 0.3 mm.',
      );
      expect(answer.standing).toBe('As found: 1 high enough. 20 rest on the example: read them to know.');
      expect(Object.keys(enoughForAll).sort()).toEqual(['d', 'e']);
      expect(enoughAct).toBe('Propose enough for these 2 keys');
      expect(shown(read('d', 'e', 'f'), ['d', 'b']).answer.headline).toMatch(
        /^So far, of the 3 keys read, one stands low, .*: E by [^,]*$/,
      );
    });

    it('proposes nothing of the example’s where the keys read stand high enough', () => {
      const { answer, enoughForAll, enoughAct } = shown(read('f', 'a'));
      expect(answer.headline).toBe('Of the 2 keys read, none stands low: more height would help none.');
      expect([enoughForAll, enoughAct]).toEqual([{}, 'Propose enough']);
      expect(shown(read('f')).answer.headline).toBe(
        'The one key read, F, does not stand low: more height would not help it.',
      );
      expect(plain(shown(read('e')).answer.headline)).toBe(
        'The one key read stands low, and more height still helps: E by 1.1 ± 0.3 mm.',
      );
    });

    it('is told as the example stands while nothing was read', () => {
      const { answer, enoughAct } = shown(example);
      expect(answer.headline).toMatch(/^As the example stands, 2 keys stand low, .*: B by /);
      expect(answer.standing).toMatch(/ No opening was read on this horn: read them to know\.$/);
      expect(enoughAct).toBe('Propose enough for these 2 keys of the example');
    });

    it('takes what was set and read for read', () => {
      const { answer } = shown(withSet(example, 'e', { mm: 8, at: 'front' }));
      expect(answer.headline).toMatch(/^The one key read stands low/);
    });
  });

  it('says what rests on the example, key by key and for the bore', () => {
    const example: BenchContents = {
      ...alto,
      horn: { ...alto.horn, document: { ...alto.horn.document, origin: 'template' } },
      asFound: { ...alto.asFound, document: { ...alto.asFound.document, origin: 'template' } },
    };
    const measured = withFoundLengths(example, 'e', {
      diameterMm: 30,
      padDiameterMm: 34,
      hingeMm: 21,
      openingMm: 8,
    });
    const view = makeSheetView(answered(measured, () => enoughAt(9)));
    expect(view.answer.sure).toContain(
      'On 22 of 23 keys hole, pad, rod or opening is still the example’s, not read on this horn: measure those first.',
    );
    expect(view.answer.sure).toContain('Cents come from the example’s bore');
    expect(rowOf(view, 'e').fromExample).toBe(0);
    expect(rowOf(view, 'd').fromExample).toBe(4);
    const [cell] = rowOf(view, 'd').cells;
    expect([cell.origin, cell.plusMinus]).toEqual(['template', '±1.5']);
  });

  it('is told of the horn as it was set, once it was', () => {
    const set = withSet(alto, 'e', { mm: 9.2, at: 'front' });
    const view = makeSheetView(answered(set, (pad) => enoughAt(pad === 'e' ? 9.1 : 3)));
    expect(view.answer.standing).toMatch(/^As set, where it was set: 1 within their ± of enough/);
    expect(rowOf(view, 'e').bar!.marks.map(({ kind }) => kind)).toEqual(['asFound', 'asSet']);
  });

  it('says how many would stand low as proposed', () => {
    const low: Readonly<Record<string, number>> = { e: 9.1, g: 8.2 };
    const headline = (contents: BenchContents): string =>
      plain(makeSheetView(answered(contents, (pad) => enoughAt(low[pad] ?? 3))).answer.headline);
    expect(headline(alto)).not.toContain('As proposed');
    const one = withProposed(alto, 'e', 9.1);
    expect(headline(one)).toMatch(/^2 keys stand low, .* As proposed, 1 would\.$/);
    expect(headline(withProposed(one, 'g', 8.2))).toMatch(/As proposed, none would\.$/);
    expect(headline(withProposed(one, 'g', 6))).toMatch(/As proposed, 1 would, lower than now\.$/);
    const down = withProposed(alto, 'e', 7);
    expect(headline(down)).toMatch(/As proposed, 2 would, 1 of them lower than now\.$/);
  });

  it('tells each row as the key is to leave, and in which setup', () => {
    const rowIn = (contents: BenchContents) =>
      rowOf(makeSheetView(answered(contents, () => enoughAt(9.1))), 'e');
    const proposed = withProposed(alto, 'e', 7);
    const [found, asked, set] = [alto, proposed, withSet(proposed, 'e', { mm: 9.2, at: 'front' })].map(rowIn);
    expect([found, asked, set].map(({ bar }) => bar!.as)).toEqual(['as found', 'as proposed', 'as set']);
    expect(plain(found.leaving!.told)).toMatch(/^lacks 1\.1 ± 0\.3 mm$/);
    expect(plain(asked.leaving!.told)).toMatch(/^lacks 2\.1 ± 0\.\d mm$/);
    expect(set.leaving!.told).toMatch(/^there, /);
    const shares = [asked, found, set].map(({ bar }) => Number.parseInt(bar!.words, 10));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(plain(found.bar!.words)).toMatch(/^\d\d ± \d %$/);
    expect(asked.standing).toEqual(found.standing);
    expect(asked.reasons.share!.inputs[0]).toMatchObject({ label: 'opening as proposed at the front' });
  });

  it('has pads that follow a proposal leave as it lets them, set beside it or not', () => {
    const down = withProposed(withSet(alto, 'f-sharp-auxiliary', { mm: 7, at: 'front' }), 'a', 4.5);
    const row = rowOf(makeSheetView(answered(down, () => enoughAt(9))), 'bis');
    const { leaves, asSet } = makeSheetReport(preparedSheet(down)).keys.find(({ pad }) => pad === 'bis')!;
    expect(leaves.frontMm).toBeLessThan(asSet.frontMm - 0.5);
    expect([row.bar!.as, Number.parseInt(row.bar!.words, 10)]).toEqual([
      'as proposed',
      Math.round(100 * leaves.ventShare),
    ]);
  });

  it('tells readings that cannot both hold', () => {
    const contrary = withFoundLengths(withFoundLengths(alto, 'd', { openingMm: 6 }), 'f-sharp-auxiliary', {
      openingMm: 7.2,
    });
    const view = makeSheetView(answered(contrary, () => enoughAt(3)));
    expect(view.contradictions).toHaveLength(1);
    expect(plain(view.contradictions[0])).toMatch(
      /^Readings that cannot both hold: F♯ auxiliary 7\.2 ± 0\.2 mm and D 6\.0 ± 0\.2 mm/,
    );
    expect(makeSheetView(answered(alto, () => enoughAt(3))).contradictions).toEqual([]);
  });

  it('is in inches when the bench reads inches', () => {
    const view = makeSheetView(answered(alto, (pad) => enoughAt(pad === 'e' ? 9.1 : 3), { unit: 'thou' }));
    expect(plain(view.answer.headline)).toContain('E by 0.043 ± 0.011 in');
    expect(rowOf(view, 'e').cells[0]).toMatchObject({ text: '0.315', plusMinus: '±0.008' });
    expect(plain(rowOf(view, 'e').cells[0].second)).toBe('8.0 mm');
  });
});

describe('a row of the sheet', () => {
  it('stands below, about there or high enough by its ±', () => {
    const standing = makeSheetReport(preparedSheet(alto)).keys.find((k) => k.pad === 'e')!.asSet;
    const manner = { unit: 'mm', readAt: 'front' } as const;
    const kinds = [9.1, 8.25, 7.8, 7.6].map((mm) => standingTo(standing, enoughAt(mm), manner).kind);
    expect(kinds).toEqual(['below', 'about', 'about', 'enough']);
    expect(plain(standingTo(standing, enoughAt(9.1), manner).told)).toBe('lacks 1.1 ± 0.3 mm');
    expect(plain(standingTo(standing, enoughAt(8.25), manner).told)).toBe('there, within ± 0.3 mm');
    expect(standingTo(standing, enoughAt(9.1, null), manner).told).toContain('± not known');
    expect(standingTo(standing, { kind: 'none in reach', reason: '' }, manner)).toMatchObject({
      kind: 'open',
      at: '–',
    });
  });

  it('tells where height stops helping at the point openings are read at', () => {
    const view = makeSheetView(answered(alto, () => enoughAt(9), { readAt: 'centre' }));
    expect(plain(rowOf(view, 'e').standing!.at)).toBe('4.5 mm');
    expect(rowOf(view, 'e').cells[0]).toMatchObject({ text: '8.0', readAt: 'front' });
  });

  it('carries its marks in the order of their vent shares', () => {
    const state = answered(withProposed(withSet(alto, 'e', { mm: 9, at: 'front' }), 'e', 10), () =>
      enoughAt(9.1),
    );
    const { marks, said } = rowOf(makeSheetView(state), 'e').bar!;
    expect(marks.map(({ kind }) => kind)).toEqual(['asFound', 'proposed', 'asSet']);
    const at = Object.fromEntries(marks.map(({ kind, place }) => [kind, place]));
    expect(at.asFound).toBeLessThan(at.asSet);
    expect(at.asSet).toBeLessThan(at.proposed);
    expect(said).toMatch(/^Vent share 78 % as found, .*; 8\d % proposed, .*; enough at 80 %/);
  });

  it('is grouped as a bench goes through them, every key once', () => {
    const { groups } = makeSheetView(answered(alto, () => enoughAt(9)));
    expect(groups.map(({ name }) => name)).toEqual([
      'Bell keys',
      'Low C and E♭',
      'Lower stack',
      'G♯ and upper stack',
      'Palm and high keys',
    ]);
    const numbers = groups.flatMap(({ rows }) => rows.map(({ number }) => number));
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
    expect(numbers).toHaveLength(23);
  });
});

describe('openings of a visit before', () => {
  let count = 0;
  const plan = { date: '2027-06-01', airC: 22, a4Hz: 440 };
  const back = nextVisit(alto, plan, () => `next-${++count}`);
  const again = withFoundLengths(back, 'e', { openingMm: 8.1 });
  const view = makeSheetView(makeBenchState([], again));
  const cellOf = (pad: string) => rowOf(view, pad).cells.find(({ cell }) => cell === 'openingMm')!;

  it('are told by the day they were read, and from those read today', () => {
    const { date } = alto.visit.document;
    expect([cellOf('d').readOn, cellOf('e').readOn]).toEqual([date, null]);
    expect(cellOf('d').said).toContain(`measured on ${date}, plus or minus`);
    expect(cellOf('e').said).toContain('measured, plus or minus');
  });

  it('have a mark in the legend only where there are any', () => {
    expect(view.hasBefore).toBe(true);
    expect(makeSheetView(makeBenchState([], alto)).hasBefore).toBe(false);
  });
});
