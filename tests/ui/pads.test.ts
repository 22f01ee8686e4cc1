import { describe, expect, it } from 'vitest';
import { closingContact, makeAirColumn } from '../../src/acoustics/index.ts';
import { keyedHoles } from '../../src/documents/horn-document.ts';
import { readStock, usualStock } from '../../src/documents/stock-document.ts';
import { withHornLength, withSetupLength } from '../../src/documents/sheet-edits.ts';
import { loadHorn } from '../../src/documents/to-acoustics.ts';
import type { BenchContents } from '../../src/documents/bench-contents.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { withHorn } from '../../src/ui/state/horns-on-bench.ts';
import { stepped } from '../../src/ui/state/horn-on-bench.ts';
import { answerPadChange } from '../../src/ui/state/pad-change-answer.ts';
import { keysWithNewPads, withProposedPads, withoutProposedPads } from '../../src/ui/state/new-pads.ts';
import { thickerBy, withPlan, type PadChangePlan } from '../../src/ui/state/pads-state.ts';
import { readChange, readCup, readStockText } from '../../src/ui/state/read-pads.ts';
import { makeCupDrawing } from '../../src/ui/views/regulation/pads/cup-drawing.model.ts';
import { fitCups } from '../../src/ui/views/regulation/pads/pad-fit.model.ts';
import { makePadFitView } from '../../src/ui/views/regulation/pads/pad-fit-view.model.ts';
import { makePadChangeView } from '../../src/ui/views/regulation/pads/pad-change-view.model.ts';
import { onTheBench, plain } from './demo.ts';

/** Lengths are shown to a hundredth of a millimetre. */
const SHOWN_MM = 0.005 + 1e-9;

const EMPTY = withoutCups(onTheBench('alto'));

/** A horn of which no cup was measured. */
function withoutCups(contents: BenchContents): BenchContents {
  const document = keyedHoles(contents.horn.document).reduce(
    (horn, { id }) => withHornLength(withHornLength(horn, id, 'cupFloorMm', null), id, 'cupDiameterMm', null),
    contents.horn.document,
  );
  const setup = keyedHoles(document).reduce(
    (now, { id }) => withSetupLength(withSetupLength(now, id, 'adhesiveBedMm', null), id, 'seatMm', null),
    contents.asFound.document,
  );
  return {
    ...contents,
    horn: { ...contents.horn, document },
    asFound: { ...contents.asFound, document: setup },
  };
}

const stateOf = (contents: BenchContents): BenchState => ({
  ...makeBenchState([{ id: contents.horn.id, label: 'Alto' }], contents),
  view: 'pads',
});

function measured(floors: Readonly<Record<string, string>>, from = EMPTY): BenchContents {
  return Object.entries(floors).reduce((now, [pad, text]) => {
    const read = readCup(now, pad, 'cupFloorMm', { text, unit: 'mm' });
    if (!read.ok) throw new Error(read.message);
    return read.contents;
  }, from);
}

describe('a cup’s floor', () => {
  it('is read in either unit, kept as measured, and taken away by an empty text', () => {
    const read = readCup(EMPTY, 'e', 'cupFloorMm', { text: '0.180 in', unit: 'mm' });
    expect(read.ok && read.mm).toBeCloseTo(4.572, 9);
    const hole = read.ok && keyedHoles(read.contents.horn.document).find((h) => h.id === 'e')!;
    expect(hole && hole.readings?.cupFloorMm?.origin).toBe('measured');
    const again = read.ok && readCup(read.contents, 'e', 'cupFloorMm', { text: ' ', unit: 'mm' });
    expect(again && again.ok && again.mm).toBeNull();
    expect(again && again.ok && again.contents.horn.document).toEqual(EMPTY.horn.document);
  });

  it('out of range or unreadable is refused with name, value and what is expected', () => {
    const refused = (text: string): string => {
      const read = readCup(EMPTY, 'e', 'cupFloorMm', { text, unit: 'mm' });
      return read.ok ? '' : read.message;
    };
    expect(refused('45 mm')).toBe(
      'invalid cup floor: 45.0 mm (1.772 in); expected 0.5 mm (0.020 in) to 30.0 mm (1.181 in)',
    );
    expect(refused('deep')).toContain('invalid cup floor: “deep”; expected a length such as');
    const seat = readCup(EMPTY, 'e', 'seatMm', { text: '0,3', unit: 'mm' });
    expect(seat.ok && seat.contents.asFound.document.keys.find((k) => k.pad === 'e')!.seatMm).toBeCloseTo(
      0.3,
    );
  });
});

describe('the page of pads for cups', () => {
  it('asks for a reading where none is known, and says so of every cup', () => {
    const view = makePadFitView(stateOf(EMPTY));
    expect(view.answer.headline).toBe('Measure a cup to see which pad it takes.');
    expect(view.rows.map((row) => [row.take, row.why])).toEqual(
      keyedHoles(EMPTY.horn.document).map(() => [null, 'cup floor not measured']),
    );
    expect(view.order).toEqual([]);
  });

  it('fills each measured cup: pad and bed less the seat come to its floor', () => {
    const state = stateOf(measured({ e: '4.5', f: '4.2', g: '3.6', 'low-b': '5.0' }));
    const outcome = fitCups(
      { horn: state.horns[state.hornId].contents.horn.document, setup: EMPTY.asFound.document },
      usualStock(),
    );
    expect(outcome.ok && outcome.value.fits.length).toBe(4);
    for (const fit of outcome.ok ? outcome.value.fits : []) {
      expect(fit.fits).toBe(true);
      const filled = fit.choice.thicknessMm + fit.choice.bedMm - usualStock().seatMm;
      expect(Math.abs(filled - fit.floorMm)).toBeLessThan(SHOWN_MM);
    }
    const view = makePadFitView(state);
    expect(plain(view.answer.headline)).toBe('4 cups measured take a pad from your stock.');
    expect(plain(view.answer.standing)).toContain('19 cups are still to measure.');
    expect(view.orderTotal).toBe(4);
  });

  it('names a cup that wants another thickness first, with the range that would do', () => {
    const view = makePadFitView(stateOf(measured({ e: '6.4', f: '4.2' })));
    // Floor 6.4 and a seat of 0.2, less a bed of 0.2 to 1.0.
    expect(plain(view.answer.headline)).toBe(
      '1 of 2 measured cups wants a thickness you do not have: E (5.60 to 6.40 mm).',
    );
    const { take } = view.rows.find((row) => row.id === 'e')!;
    expect(take!.kind).toBe('nothing fits');
    expect(take!.says).toContain('the front touches first and the back gapes');
    expect(view.order.flatMap((line) => line.pads)).toEqual(['F']);
  });

  it('follows the stock: a thickness more can make a cup fit', () => {
    const contents = measured({ e: '6.4' });
    const more = readStockText(usualStock(), 'thickness', '6 mm', 'mm');
    const state = stateOf(contents);
    const view = makePadFitView({
      ...state,
      pads: { ...state.pads, stock: more.ok ? more.stock : usualStock() },
    });
    expect(view.rows.find((row) => row.id === 'e')!.take!.kind).toBe('fits');
  });

  it('draws the cup leaning as far as its pad first touches', () => {
    const contents = measured({ e: '2.2' });
    const documents = { horn: contents.horn.document, setup: contents.asFound.document };
    const outcome = fitCups(documents, usualStock());
    const [fit] = outcome.ok ? outcome.value.fits : [];
    const drawing = makeCupDrawing(documents, fit, 'mm');
    const loaded = loadHorn(documents);
    const hole = loaded.ok ? loaded.value.horn.holes.find((h) => h.id === 'e')! : null;
    const contact = closingContact(
      hole!.hinge!,
      hole!.holeRadius + hole!.rimThickness,
      fit.leftOverMm / 1000,
    );
    expect(fit.leftOverMm).toBeGreaterThan(0);
    expect(contact.touches).toBe('back');
    expect(drawing.turnDeg).toBeCloseTo((-contact.angle * 180) / Math.PI, 9);
    expect(drawing.gape!.x).toBeGreaterThan(hole!.hinge!.distance * 1000);
    expect(-drawing.gape!.y).toBeCloseTo(contact.gap * 1000, 9);
  });

  it('gives every bar that fits its end at the cup’s floor', () => {
    const { rows } = makePadFitView(stateOf(measured({ e: '4.5', f: '4.2', d: '6.4' })));
    for (const { id, take } of rows) {
      if (take === null) continue;
      const end = take.padShare + take.bedShare - take.floorShare;
      if (id === 'd') expect(end).toBeLessThan(0);
      else expect(Math.abs(end)).toBeLessThan(1e-9);
      expect(Math.max(take.floorShare, take.padShare + take.bedShare)).toBeLessThanOrEqual(1 + 1e-9);
    }
  });
});

describe('a stock on screen', () => {
  it('refuses what a stock cannot be, with why', () => {
    const read = readStockText(usualStock(), 'mostBedMm', '0.1', 'mm');
    expect(read.ok ? '' : read.message).toBe(
      'invalid greatest bed of adhesive: 0.1 mm; expected at least the least, 0.2 mm',
    );
    const twice = readStockText(usualStock(), 'thickness', '160 thou', 'mm');
    expect(twice.ok ? '' : twice.message).toContain('expected one the stock has not yet');
    const thick = readStockText(usualStock(), 'thickness', '0.190 in', 'mm');
    expect(thick.ok && readStock(thick.stock).ok).toBe(true);
  });
});

describe('proposed pads', () => {
  const fits = (contents: BenchContents) => makePadFitView(stateOf(contents)).toPropose;

  it('are those other than what a key has: one within a batch’s ± is its own', () => {
    const has = EMPTY.asFound.document.keys.find((k) => k.pad === 'e')!;
    const contents = measured({ e: '4.5', f: '5.1' });
    const proposed = withProposedPads(contents, fits(contents), usualStock().toleranceMm);
    expect(has.padThicknessMm).toBeCloseTo(4.1, 9);
    // 4.06 for 4.10 on E is its own pad; F takes 4.57.
    expect(keysWithNewPads(proposed).map((k) => [k.pad, k.padThicknessMm])).toEqual([['f', 4.572]]);
    expect(withoutProposedPads(proposed).proposed.document).toEqual(contents.proposed.document);
  });
});

describe('the page of other pads', () => {
  const changed = (contents: BenchContents, plan: Partial<PadChangePlan>): BenchState => {
    const state = stateOf(contents);
    const pads = withPlan({ ...state.pads, question: 'change' }, plan);
    const documents = { horn: contents.horn.document, setup: contents.asFound.document };
    const read = loadHorn(documents);
    if (!read.ok) throw new Error(read.issues[0].message);
    const thickerMm = thickerBy(documents, pads.plan, 'e');
    const report = answerPadChange(
      read.value,
      { thickerMm, seating: pads.plan.seating },
      makeAirColumn({ mouthpieceC: 26.85 }),
      440,
    );
    return {
      ...state,
      pads: { ...pads, toldPlan: pads.plan, change: { ...pads.change, report, asked: 1, answered: 1 } },
    };
  };

  it('tells what a thicker pad on one key takes, and how to have the venting back', () => {
    const state = changed(EMPTY, { scope: 'key', how: 'by', mm: 0.5 });
    const view = makePadChangeView(state);
    expect(plain(view.answer.headline)).toMatch(
      /^A pad 0\.50 mm \(0\.020 in\) thicker on E, stops as they are, takes 0\.\d\d mm off the front; .+ moves most, −\d+\.\d cents\.$/,
    );
    expect(view.rows.map((row) => row.id)).toEqual(['e']);
    const [row] = view.rows;
    expect(row.after).toBeLessThan(row.before);
    expect(Math.abs(row.restored! - row.before)).toBeLessThan(0.01);
    const { raiseMm } = state.pads.change.report!.pads[0].restored!;
    expect(raiseMm).toBeGreaterThan(0.5);
    expect(plain(view.answer.reasons.join(' '))).toContain(`raise the front by ${raiseMm.toFixed(2)} mm`);
    // The reasons' numbers are those of the page.
    expect(row.reason!.figure).toBe(row.restore);
    const [moved] = view.answer.figures;
    expect(view.answer.headline).toContain(moved.figure);
    const [before, after] = moved.inputs.map(({ value }) => Number.parseFloat(value.replace('−', '-')));
    expect(Math.abs(after - before - Number.parseFloat(moved.figure.replace('−', '-')))).toBeLessThan(0.16);
  });

  it('turns every word round for a thinner pad', () => {
    const view = makePadChangeView(changed(EMPTY, { scope: 'key', how: 'by', mm: -0.5 }));
    expect(plain(view.answer.headline)).toContain('thinner on E, stops as they are, gives 0.');
    expect(plain(view.answer.reasons.join(' '))).toContain('lower the front by 0.');
    expect(view.notes[0].cents.startsWith('+')).toBe(true);
  });

  it('asks nothing where every pad is so thick already', () => {
    const documents = { horn: EMPTY.horn.document, setup: EMPTY.asFound.document };
    const plan: PadChangePlan = { scope: 'all', how: 'to', mm: 4.1, seating: 'levelled' };
    expect(Object.keys(thickerBy(documents, plan, 'e')).length).toBeLessThan(23);
    const one = thickerBy(documents, { ...plan, scope: 'key' }, 'e');
    expect(one).toEqual({});
    const state = stateOf(EMPTY);
    const view = makePadChangeView({ ...state, pads: withPlan(state.pads, { scope: 'key', mm: 4.1 }) });
    expect(view.answer.headline).toBe('This pad is so thick already.');
    expect(view.waiting).toBe(false);
  });

  it('shows a change as problem, not as a stale answer, where a hinge cannot take it', () => {
    const state = stateOf(EMPTY);
    const pads = {
      ...state.pads,
      change: { ...state.pads.change, asked: 1, answered: 1, problem: 'no hinge' },
    };
    const view = makePadChangeView({ ...state, pads });
    expect([view.answer.headline, view.answer.standing]).toEqual([
      'These pads cannot be put in.',
      'no hinge',
    ]);
  });

  it('reads a change with its sign, and refuses what no pad is', () => {
    expect(readChange('by', '−0.5', 'mm')).toEqual({ ok: true, value: -0.5 });
    expect(readChange('by', '+20 thou', 'mm')).toEqual({ ok: true, value: 0.508 });
    const read = readChange('to', '20 mm', 'mm');
    expect(read.ok ? '' : read.message).toBe(
      'invalid new pad thickness: 20.0 mm (0.787 in); expected 0.5 mm (0.020 in) to 12.0 mm (0.472 in)',
    );
  });

  it('is undone with the horn’s history where a cup was typed', () => {
    const state = stateOf(EMPTY);
    const read = readCup(EMPTY, 'e', 'cupFloorMm', { text: '4.5', unit: 'mm' });
    const next = withHorn(state, (horn) => stepped(horn, read.ok ? read.contents : EMPTY, null));
    expect(next.horns[next.hornId].past).toEqual([EMPTY]);
  });
});
