import { describe, expect, it } from 'vitest';
import {
  acceptEdit,
  chooseKey,
  documentsInHand,
  keepText,
  makeBenchState,
  propose,
  proposedMmOf,
  resetKey,
  studyArrived,
  studyAsked,
  studyFailed,
  takeHorn,
  type BenchState,
} from '../../src/ui/state/bench-state.ts';
import { makeStore } from '../../src/ui/state/bench-store.ts';
import { makeKeyStudyView } from '../../src/ui/views/key-study/key-study-view.model.ts';
import { ALTO, plain, report, TENOR } from './demo.ts';

const shelf = [
  { id: 'demo-alto', label: 'Demo alto' },
  { id: 'demo-tenor', label: 'Demo tenor' },
];
const fresh = makeBenchState(shelf, 'demo-alto', ALTO);
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
    state = keepText(state, 'chimneyMm', { text: 'tall', problem: 'invalid chimney height' });
    state = chooseKey(state, 'g');
    expect(makeKeyStudyView(state).fields.find((f) => f.id === 'padThicknessMm')!.text).toBe('4.1 mm');
    state = takeHorn(state, 'demo-tenor', TENOR);
    state = takeHorn(state, 'demo-alto', ALTO);
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
    const before = structuredClone(ALTO);
    let state = acceptEdit(fresh, 'openingMm', { openingMm: 9 }, '9');
    state = acceptEdit(state, 'hingeMm', { hingeMm: 25 }, '25');
    const changed = documentsInHand(state);
    expect(changed.setup.keys.find((k) => k.pad === 'e')!.openingMm).toBe(9);
    expect(changed.horn.holes.find((h) => h.id === 'e')!.key!.hingeMm).toBe(25);
    expect(ALTO).toEqual(before);
  });

  it('goes back to the document with one reset, for the key in hand alone', () => {
    let state = acceptEdit(fresh, 'rimMm', { rimMm: 1.4 }, '1.4');
    state = chooseKey(state, 'd');
    state = acceptEdit(state, 'rimMm', { rimMm: 1.6 }, '1.6');
    state = resetKey(state);
    const changed = documentsInHand(state);
    expect(changed.horn.holes.find((h) => h.id === 'd')!.rimMm).toBe(1);
    expect(changed.horn.holes.find((h) => h.id === 'e')!.rimMm).toBe(1.4);
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
    const tenor = takeHorn(studied(fresh), 'demo-tenor', TENOR);
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
      expect(line.y).toEqual(e.curve.map((p) => p.notes[i]!.cents));
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
    expect(view.proposal.changes[0]).toEqual({
      label: 'F4',
      change: `+${answer!.notes[0]!.cents.toFixed(1)}`,
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
