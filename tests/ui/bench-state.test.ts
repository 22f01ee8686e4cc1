import { describe, expect, it } from 'vitest';
import { acceptDay, acceptEdit, keepText, propose } from '../../src/ui/state/edits-in-hand.ts';
import { chooseKey, endMovements, putOnBench, takeUp, withHorn } from '../../src/ui/state/horns-on-bench.ts';
import {
  documentsInHand,
  hornInHand,
  makeBenchState,
  proposedInHand,
  type BenchState,
} from '../../src/ui/state/bench-state.ts';
import { proposedMmOf, studyArrived, studyAsked, studyFailed } from '../../src/ui/state/study-in-hand.ts';
import {
  changedRecords,
  changedSince,
  redone,
  refused,
  rested,
  undone,
} from '../../src/ui/state/horn-on-bench.ts';
import { makeStore } from '../../src/ui/state/bench-store.ts';
import { knownHornLength } from '../../src/documents/sheet-edits.ts';
import { makeKeyStudyView } from '../../src/ui/views/key-study/key-study-view.model.ts';
import { onTheBench, plain, report } from './demo.ts';

const shelf = [
  { id: 'demo-alto', label: 'Demo alto' },
  { id: 'demo-tenor', label: 'Demo tenor' },
];
const contents = onTheBench('alto');
const fresh = makeBenchState(shelf, contents);
const undo = (state: BenchState): BenchState => withHorn(state, undone);
const redo = (state: BenchState): BenchState => withHorn(state, redone);
const e = report('e');
const studied = (state: BenchState): BenchState => studyArrived(studyAsked(state, 1), 1, e);

describe('the bench', () => {
  it('opens with the lower-stack E key, pad 7, in hand', () => {
    const view = makeKeyStudyView(fresh);
    expect(view.keyId).toBe('e');
    expect(view.keyTitle).toBe('Pad 7 · E key');
    expect(view.strip.map((k) => k.number)).toHaveLength(23);
    expect(view.study).toBeNull();
  });

  it('keeps what was typed on a key while another is in hand, and on a horn while another is', () => {
    let state = acceptEdit(fresh, 'padThicknessMm', { padThicknessMm: 4.6 }, '0.180 in');
    state = keepText(state, 'chimneyMm', refused('tall', 'invalid chimney height'));
    state = chooseKey(state, 'g');
    expect(makeKeyStudyView(state).fields.find((f) => f.id === 'padThicknessMm')!.text).toBe('4.1 mm');
    state = putOnBench(state, onTheBench('tenor'));
    state = takeUp(state, 'demo-alto');
    state = chooseKey(state, 'e');
    const { fields } = makeKeyStudyView(state);
    const thickness = fields.find((f) => f.id === 'padThicknessMm')!;
    expect(thickness.text).toBe('0.180 in');
    expect(thickness.echo).toBe('4.6 mm (0.181 in)');
    const chimney = fields.find((f) => f.id === 'chimneyMm')!;
    expect(chimney.text).toBe('tall');
    expect(chimney.problem).toBe('Invalid chimney height. Still in use: 4.2 mm (0.165 in).');
  });

  it('writes every edit into the document that the study is asked of, and leaves the document itself alone', () => {
    const before = structuredClone(contents);
    let state = acceptEdit(fresh, 'openingMm', { openingMm: 9 }, '9');
    state = acceptEdit(state, 'hingeMm', { hingeMm: 25 }, '25');
    const changed = documentsInHand(state);
    expect(changed.setup.keys.find((k) => k.pad === 'e')!.openingMm).toBe(9);
    expect(changed.horn.holes.find((h) => h.id === 'e')!.key!.hingeMm).toBe(25);
    expect(contents).toEqual(before);
  });

  it('marks what was typed as measured, and leaves every other number its own origin', () => {
    const state = acceptEdit(fresh, 'rimMm', { rimMm: 1.4 }, '1.4');
    const { horn } = hornInHand(state).contents;
    expect(knownHornLength(horn.document, 'e', 'rimMm')).toMatchObject({ mm: 1.4, origin: 'measured' });
    const example = {
      ...contents,
      horn: { ...contents.horn, document: { ...contents.horn.document, origin: 'template' as const } },
    };
    const typed = acceptEdit(makeBenchState(shelf, example), 'rimMm', { rimMm: 1.4 }, '1.4');
    const { document } = hornInHand(typed).contents.horn;
    expect(knownHornLength(document, 'e', 'rimMm')).toMatchObject({ origin: 'measured', plusMinusMm: 0.2 });
    expect(knownHornLength(document, 'e', 'chimneyMm')).toMatchObject({ origin: 'template', plusMinusMm: 1 });
  });

  it('writes the day into the visit', () => {
    const state = acceptDay(fresh, 'a4Hz', 442, '442 Hz');
    expect(hornInHand(state).contents.visit.document.a4Hz).toBe(442);
    expect(hornInHand(undo(state)).contents).toEqual(contents);
    expect(acceptDay(state, 'a4Hz', 442, '442').horns['demo-alto'].past).toHaveLength(1);
  });

  it('proposes the answer until a hand moves it, and again when told to', () => {
    const answer = e.answer.kind === 'reached' ? e.answer.point.frontMm : NaN;
    let state = studied(fresh);
    expect(proposedMmOf(state, e)).toBe(answer);
    state = propose(state, 6);
    expect(proposedMmOf(state, e)).toBe(6);
    expect(proposedMmOf(propose(state, null), e)).toBe(answer);
  });

  it('proposes nothing for the next key while the screen still shows the one before', () => {
    const next = chooseKey(studied(fresh), 'g');
    expect(propose(next, 6)).toBe(next);
    const tenor = putOnBench(studied(fresh), onTheBench('tenor'));
    expect(propose(tenor, 6)).toBe(tenor);
  });

  it('tells a proposed opening apart from the one found', () => {
    const state = propose(studied(fresh), 6);
    expect(documentsInHand(state).setup.keys.find((k) => k.pad === 'e')!.openingMm).toBe(8);
    const { study } = makeKeyStudyView(state);
    expect(study!.proposal.foundMm).toBeCloseTo(8, 9);
    expect(study!.proposal.frontMm).toBe(6);
  });

  it('shows the last answer with the reason when a study fails', () => {
    const view = makeKeyStudyView(studyFailed(studyAsked(studied(fresh), 2), 2, 'the pad does not fit.'));
    expect(view.problem).toBe('the pad does not fit.');
    expect(view.study).not.toBeNull();
    expect(view.waiting).toBe(false);
  });
});

describe('the history of a horn', () => {
  const edit = (state: BenchState, mm: number): BenchState =>
    acceptEdit(state, 'openingMm', { openingMm: mm }, `${mm} mm`);
  const openings = Array.from({ length: 30 }, (_, i) => 5 + i / 10);

  it('goes back and forth over any number of steps, to the very same documents', () => {
    const states = openings.reduce((all, mm) => [...all, edit(all[all.length - 1], mm)], [fresh]);
    let state = states[states.length - 1];
    for (let i = states.length - 2; i >= 0; i--) {
      state = undo(state);
      expect(hornInHand(state).contents).toBe(hornInHand(states[i]).contents);
    }
    expect(undo(state)).toBe(state);
    for (const wanted of states.slice(1)) {
      state = redo(state);
      expect(hornInHand(state).contents).toBe(hornInHand(wanted).contents);
    }
    expect(redo(state)).toBe(state);
  });

  it('forgets what was undone once something else is done', () => {
    const state = edit(undo(edit(edit(fresh, 7), 9)), 6);
    expect(redo(state)).toBe(state);
    expect(hornInHand(undo(undo(state))).contents).toBe(contents);
  });

  it('shows a text as typed only while it stands for the value in use', () => {
    const textOf = (state: BenchState): string =>
      makeKeyStudyView(state).fields.find((f) => f.id === 'openingMm')!.text;
    const state = acceptEdit(fresh, 'openingMm', { openingMm: 7.874 }, '0.310 in');
    expect(textOf(state)).toBe('0.310 in');
    expect(textOf(undo(state))).toBe('8.0 mm');
    expect(textOf(redo(undo(state)))).toBe('0.310 in');
  });

  it('takes the key in hand that a step was done on', () => {
    const state = chooseKey(edit(fresh, 7), 'g');
    expect(hornInHand(undo(state)).keyId).toBe('e');
  });

  it('counts one movement of a slider as one step, and the next as another', () => {
    let state = studied(fresh);
    for (const mm of [6, 6.1, 6.2]) state = propose(state, mm);
    state = withHorn(state, rested);
    for (const mm of [7, 7.1]) state = propose(state, mm);
    expect(proposedInHand(undo(state))).toEqual({ e: 6.2 });
    expect(proposedInHand(undo(undo(state)))).toEqual({});
  });

  it('ends the movement of every horn at once, so that one that was left in the middle is saved too', () => {
    let state = propose(studied(fresh), 6);
    state = endMovements(putOnBench(state, onTheBench('tenor')));
    expect(Object.values(state.horns).map(({ movement }) => movement)).toEqual([null, null]);
    expect(endMovements(state)).toBe(state);
  });

  it('keeps keys apart that are as they came from those that are not', () => {
    expect([...changedSince(hornInHand(edit(fresh, 7)))]).toEqual(['e']);
    expect([...changedSince(hornInHand(undo(edit(fresh, 7))))]).toEqual([]);
  });

  it('names the records that a step has changed, and only those', () => {
    const after = hornInHand(edit(fresh, 7)).contents;
    const changed = changedRecords(contents, after);
    expect([changed.horns, changed.setups, changed.visits]).toEqual([[], [after.asFound], []]);
    expect(changedRecords(null, after).setups).toHaveLength(3);
  });
});

describe('the view of a study', () => {
  const view = makeKeyStudyView(studied(fresh)).study!;

  it('plots the study’s own numbers', () => {
    expect(view.chart.lines.map((l) => l.label)).toEqual([
      'F4',
      'F♯4 side',
      'F5',
      'F♯5 side',
      'B♭5 one-and-one',
    ]);
    view.chart.lines.forEach((line, i) => {
      expect(line.x).toEqual(e.curve.map((p) => p.frontMm));
      expect(line.y).toEqual(e.curve.map((p) => p.notes[i]!.fromPresentCents));
    });
    expect(view.chart.share.y).toEqual(e.curve.map((p) => 100 * p.ventShare));
  });

  it('plots thousandths of an inch, strength and rise time on request', () => {
    const thou = makeKeyStudyView({ ...studied(fresh), unit: 'thou', measure: 'strength' }).study!;
    expect(thou.chart.lines[0].x[40]).toBeCloseTo((e.curve[40].frontMm / 25.4) * 1000, 9);
    expect(thou.chart.lines[0].y[40]).toBe(100 * e.curve[40].notes[0]!.strength);
    const rise = makeKeyStudyView({ ...studied(fresh), measure: 'rise time' }).study!;
    expect(rise.chart.lines[0].y[7]).toBe(e.curve[7].notes[0]!.riseMs);
  });

  it('gives a note and its octave one tint, the octave dashed by its register', () => {
    const [f4, , f5] = view.chart.lines;
    expect(f4.tint).toBe(f5.tint);
    expect([f4.register, f5.register]).toEqual([1, 2]);
  });

  it('marks as found and enough where they are', () => {
    expect(view.chart.fixedMarkers.map((m) => [m.word, m.x])).toEqual([
      ['as found', e.present.frontMm],
      ['enough', e.answer.kind === 'reached' ? e.answer.point.frontMm : NaN],
    ]);
  });

  it('tells the proposed changes note by note, at the opening they belong to', () => {
    const answer = e.answer.kind === 'reached' ? e.answer.point : null;
    expect(plain(view.proposal.heading)).toBe(
      `Cents from found, ${answer!.frontMm.toFixed(1)} mm front = ${answer!.equivalentParallelMm.toFixed(1)} mm parallel`,
    );
    expect(view.proposal.changes[0]).toMatchObject({
      label: 'F4',
      change: `+${answer!.notes[0]!.fromPresentCents.toFixed(1)}`,
      plusMinus: e.budgets.changeCents[0]!.plusMinus.toFixed(1),
    });
  });

  it('has a table row for every point of the curve and a column for every note', () => {
    expect(view.tableRows).toHaveLength(e.curve.length);
    for (const row of view.tableRows) expect(row.cells).toHaveLength(e.governed.length);
    expect(view.tableHead).toHaveLength(2 + e.governed.length);
  });

  it('says what the front reading is worth and what the tilt takes', () => {
    const { present, presentParallel } = e;
    const tilt = plain(view.answer.tilt);
    expect(tilt).toContain(`is worth ${present.equivalentParallelMm.toFixed(1)} mm`);
    expect(tilt).toContain(`not ${Math.round(100 * presentParallel.ventShare)} %`);
    expect(present.equivalentParallelMm).toBeLessThan(present.centreMm);
    // The rule's own stated error, for usual keys.
    const byRule = Number(/becomes ([\d.]+) mm/.exec(plain(view.answer.rule))![1]);
    expect(Math.abs(byRule / present.equivalentParallelMm - 1)).toBeLessThan(0.09);
    expect(view.chart.parallel.share).toEqual(e.parallelCurve.map((p) => 100 * p.ventShare));
    view.chart.parallel.share.forEach((share, i) => expect(share).toBeGreaterThan(view.chart.share.y[i]));
  });

  it('says in words where a pad lies outside what its model holds for', () => {
    const wide = report('e', { e: { rimMm: 6 } });
    expect(view.warnings).toEqual([]);
    expect(makeKeyStudyView(studyArrived(studyAsked(fresh, 1), 1, wide)).study!.warnings.join(' ')).toMatch(
      /rim thickness is 6\.00 mm; solved flows cover/,
    );
  });
});

describe('the store', () => {
  it('tells its listeners of changes only, and stops when asked', () => {
    const store = makeStore(1);
    const seen: number[] = [];
    const stop = store.subscribe(() => seen.push(store.get()));
    store.update((n) => n + 1);
    store.update((n) => n);
    stop();
    store.update((n) => n + 1);
    expect(seen).toEqual([2]);
  });
});
