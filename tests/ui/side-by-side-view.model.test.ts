import { describe, expect, it } from 'vitest';
import { formatLength } from '../../src/documents/length-format.ts';
import { tenths } from '../../src/documents/tenths.ts';
import {
  placeDifferences,
  placeNumbers,
  placeSideLabels,
  sideStep,
  valuePx,
} from '../../src/ui/parts/chart/side-by-side-chart.model.ts';
import { signedCents } from '../../src/ui/parts/note-names.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { withProposed } from '../../src/ui/state/key-lengths.ts';
import { compareColumns } from '../../src/ui/state/side-by-side-answer.ts';
import { columnsOf, documentsOf, standingOf } from '../../src/ui/state/side-by-side-columns.ts';
import { sideArrived, sideAsked } from '../../src/ui/state/side-by-side-state.ts';
import { columnSources } from '../../src/ui/state/bench-state.ts';
import { makeComparisonView } from '../../src/ui/views/side-by-side/comparison-view.model.ts';
import { makeSideBySideView } from '../../src/ui/views/side-by-side/side-by-side-view.model.ts';
import { onTheBench, plain, TENOR } from './demo.ts';

const shelf = [{ id: 'demo-alto', label: 'Demo alto' }];
const untouched = makeBenchState(shelf, onTheBench('alto'));
const contents = withProposed(onTheBench('alto'), 'e', 5.5);
const state = makeBenchState(shelf, contents);

/** As the page stands once the physics has answered. */
function answered(of: BenchState): BenchState {
  const sources = columnSources(of);
  const documents = columnsOf(of.sideBySide.chosen, sources).map((column) => {
    const standing = standingOf(sources, column);
    return standing.kind === 'there' ? documentsOf(standing.source) : null;
  });
  const { airC, a4Hz } = contents.visit.document;
  const answer = compareColumns(documents, airC, a4Hz);
  return { ...of, sideBySide: sideArrived(sideAsked(of.sideBySide, 1), 1, answer) };
}

const shown = answered(state);
const report = shown.sideBySide.answer!.report!;
const view = makeSideBySideView(shown);
const comparison = view.comparison!;
const cell = (table: 'notes' | 'keys', row: string, title: string, at = 0): string => {
  const { groups, rows } = comparison[table];
  const group = groups.findIndex((g) => g.title.startsWith(title));
  return plain(rows.find(({ id }) => id === row)!.cells[group][at].text);
};

describe('the page side by side', () => {
  it('waits for the first answer, and then says what the player would notice', () => {
    const asked = { ...state, sideBySide: sideAsked(state.sideBySide, 1) };
    expect(makeSideBySideView(asked)).toMatchObject({ waiting: true, comparison: null, problem: null });
    expect(view.waiting).toBe(false);
    expect(comparison.sentences).toHaveLength(1);
    const core = report.sentences[0].split(': ').slice(1).join(': ');
    const said = plain(comparison.sentences[0]).replaceAll('\u2011', '-');
    expect(core).toMatch(/^E stands 2\.5 ± 0\.2 mm lower, /);
    expect(said).toBe(`B “Proposed, 2026-05-04” beside A “As found, 2026-05-04”: ${core}`);
  });

  it('says what to do instead of drawing a picture of nothing', () => {
    const unbegun = makeSideBySideView(untouched);
    expect(unbegun.sentences).toEqual(['As found stands alone: nothing is beside it yet.']);
    expect(unbegun.nothingApart).toMatchObject({
      words: expect.stringMatching(/^Nothing is proposed or set on this visit yet\. Propose an opening/),
      hasTables: false,
    });
    expect(unbegun.sureness).toBeNull();
    expect([view.nothingApart, view.hint]).toEqual([null, null]);
    const [first, second] = view.columns.map(({ column }) => column);
    const chosen = (of: BenchState, ...columns: (typeof first)[]) =>
      makeSideBySideView({ ...of, sideBySide: { ...of.sideBySide, chosen: columns } });
    expect(chosen(shown, first, first).nothingApart!.words).toMatch(/^A setup stands beside itself: choose/);
    const among = chosen(shown, first, first, second);
    expect([among.nothingApart, among.hint]).toEqual([null, expect.stringMatching(/beside itself/)]);
    const own = columnsOf(null, columnSources(untouched));
    expect(chosen(answered(untouched), ...own).nothingApart!.words).toMatch(/^All of them stand as found: /);
  });

  it('draws nothing of an answer that came before anything stood apart', () => {
    const before = answered(untouched).sideBySide;
    const now = { ...state, sideBySide: sideAsked(before, 2) };
    expect(makeSideBySideView(now)).toMatchObject({ waiting: true, comparison: null, nothingApart: null });
  });

  it('keeps the tables of two setups that play alike, and draws no picture of them', () => {
    const { id, document } = contents.asFound;
    const proposed = {
      ...contents.proposed,
      document: { ...contents.proposed.document, keys: document.keys },
    };
    const same = makeSideBySideView(answered(makeBenchState(shelf, { ...contents, proposed })));
    expect(id).not.toBe(proposed.id);
    expect(same.nothingApart).toEqual({
      words: 'All of them play alike: there is no difference to draw.',
      hasTables: true,
    });
  });

  it('says what is wrong with a column that cannot be read', () => {
    const horn = { ...contents.horn, document: { ...contents.horn.document, bellCorrectionMm: 1e6 } };
    const bad = makeSideBySideView(answered(makeBenchState(shelf, { ...contents, horn })));
    expect(bad.comparison).toBeNull();
    expect(bad.problem).toMatch(/^The first cannot be read/);
    expect(bad.columns[0].problem).toBe('invalid bell correction: 1000000 mm; expected -100 to 100 mm.');
  });

  it('has a table of notes with the report’s own numbers', () => {
    expect(comparison.notes.rows.map(({ id }) => id)).toEqual(report.notes.map((n) => n.fingering));
    for (const { fingering, setups, differences } of report.notes) {
      const d = differences[0]!;
      const same = d.cents === 0 && d.centsPlusMinus === 0;
      expect(cell('notes', fingering, 'Cents beside A').split(' ± ')[0]).toBe(
        same ? 'same' : signedCents(d.cents),
      );
      expect(cell('notes', fingering, 'Cents from', 1)).toBe(signedCents(setups[1].cents!));
      expect(cell('notes', fingering, 'Cutoff')).toBe(setups[0].cutoffHz?.toFixed(0) ?? '–');
    }
    const f4 = report.notes.find(({ fingering }) => fingering === 'F4')!.differences[0]!;
    expect(cell('notes', 'F4', 'Cents beside A')).toBe(
      `${signedCents(f4.cents)} ± ${tenths(f4.centsPlusMinus)}`,
    );
  });

  it('says in full that a difference inside its ± cannot be shown, in the table and in the sentence', () => {
    const little = answered(makeBenchState(shelf, withProposed(onTheBench('alto'), 'e', 8.1)));
    const { notes, sentences, chart } = makeSideBySideView(little).comparison!;
    const ids = little.sideBySide.answer!.report!.notes.map(({ fingering }) => fingering);
    const [difference, , who] = notes.rows[ids.indexOf('F4')].cells.map(([first]) => first);
    expect(difference).toMatchObject({
      text: expect.stringMatching(/^\+0\.1\u00a0±\u00a00\.\d$/),
      shown: false,
    });
    expect(who.text).toBe('no difference that can be shown');
    expect(plain(sentences[0])).toContain('The player would notice nothing; no difference can be shown');
    expect(chart.series[0].widest).toEqual([]);
    expect(chart.series[0].points.pitch.every((p) => p?.shown === false)).toBe(true);
    expect(cell('notes', 'B3', 'Who would notice')).toBe('no difference');
  });

  it('claims no difference that the shown digits do not have', () => {
    const strengths = comparison.notes.rows.map(({ cells }) => cells[1][0]);
    expect(strengths.some(({ text, shown: bold }) => text === '0.0' && bold === false)).toBe(true);
    for (const { text, shown: bold } of strengths) expect(bold && plain(text).startsWith('0.0')).toBe(false);
  });

  it('has a table of keys with openings, shares and vent share, in either unit and at any point', () => {
    const e = report.keys.find(({ id }) => id === 'e')!;
    const b = e.setups[1]!;
    expect(cell('keys', 'e', 'Opening at the front, mm', 1)).toBe('5.5');
    expect(cell('keys', 'e', 'Opening beside A')).toBe('−2.5 ± 0.2');
    expect(cell('keys', 'e', 'Opening as %', 1)).toBe((100 * b.frontOfDiameter).toFixed(0));
    expect(cell('keys', 'e', 'Worth a parallel', 1)).toBe(b.equivalentParallelMm.toFixed(1));
    expect(cell('keys', 'e', 'Vent share, %', 1)).toBe((100 * b.ventShare).toFixed(0));
    const group = comparison.keys.groups.findIndex(({ title }) => title === 'Vent share, %');
    expect(comparison.keys.rows.find(({ id }) => id === 'e')!.cells[group][1].plusMinus).toBe(
      `${Math.max(1, Math.round(100 * b.ventSharePlusMinus))}`,
    );
    const share = e.differences[0]!;
    expect(cell('keys', 'e', 'Vent share beside A')).toBe(
      `${signedCents(100 * share.ventShare)} ± ${tenths(100 * share.ventSharePlusMinus)}`,
    );
    expect(cell('keys', 'low-c', 'Opening beside A')).toBe('same');
    const inInch = makeComparisonView(shown.sideBySide.answer!, {
      order: 'difference',
      unit: 'thou',
      at: 'centre',
    }).keys;
    const row = inInch.rows.find(({ id }) => id === 'e')!;
    expect(inInch.groups[2].title).toBe('Opening at the centre, in');
    expect(`${row.cells[2][1].text} in`).toBe(formatLength(b.centreMm, 'thou'));
    expect(row.cells[3][1].text).toBe((100 * b.centreOfDiameter).toFixed(0));
  });

  it('names the key whose arm holds another below its own stop', () => {
    const at = comparison.keys.groups.findIndex(({ title }) => title.startsWith('Opening at'));
    const aux = comparison.keys.rows.find(({ id }) => id === 'f-sharp-auxiliary')!.cells[at];
    expect(aux.map(({ under }) => under)).toEqual([undefined, 'held by E']);
  });

  it('sorts by what differs most or from low to high, keys from the bell up', () => {
    const sorted = makeComparisonView(shown.sideBySide.answer!, { order: 'pitch', unit: 'mm', at: 'front' });
    const notes = sorted.notes.rows.map(({ id }) => id);
    expect(notes.slice(0, 3)).toEqual(['Bb3', 'B3', 'C4']);
    expect(notes.slice(-2)).toEqual(['F#6', 'F#6 front']);
    expect([...notes].sort()).toEqual(report.notes.map((n) => n.fingering).sort());
    const numbers = sorted.keys.rows.map(({ label }) => Number(label.split(' ')[0]));
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
    expect(comparison.keys.rows[0].id).toBe(report.keys[0].id);
  });

  it('says that a horn started from an example plays the example’s cents', () => {
    const origin = 'template' as const;
    const horn = { ...contents.horn, document: { ...contents.horn.document, origin } };
    const ofExample = makeSideBySideView(answered(makeBenchState(shelf, { ...contents, horn })));
    expect(ofExample.comparison!.cautions[0]).toContain('its cents are the example’s');
    expect(comparison.cautions).toEqual([]);
  });
});

const found = { horn: contents.horn.document, setup: contents.asFound.document };
const twin = { ...found, setup: { ...found.setup, name: 'Once more' } };
const answer = compareColumns([found, twin, TENOR], 26.85, 440);
const other = makeComparisonView(answer, { order: 'difference', unit: 'mm', at: 'front' });

describe('another horn beside it', () => {
  it('is called by horn and setup, each with its letter; where there is little room, by what tells it apart', () => {
    expect(other.chart.series.map(({ letter, name }) => `${letter} ${name}`)).toEqual([
      'B Once more',
      `C ${TENOR.horn.name}`,
    ]);
    expect(plain(other.sentences[0])).toMatch(/^B “Once more” beside A “As found, /);
    expect(plain(other.sentences[1])).toMatch(
      /^C “Larkfield tenor, demo” beside A “Larkfield alto, demo, As found, /,
    );
  });

  it('keeps its name when it is what the others are held against', () => {
    const turned = compareColumns([TENOR, found, twin], 26.85, 440);
    const { chart, sentences } = makeComparisonView(turned, { order: 'pitch', unit: 'mm', at: 'front' });
    expect(chart.reference).toEqual({ letter: 'A', name: TENOR.horn.name });
    expect(chart.series.map(({ name }) => name)).toEqual([found.setup.name, 'Once more']);
    expect(plain(sentences[1])).toMatch(/^C “.*, Once more” beside A “Larkfield tenor, demo”/);
  });

  it('has no strengths where it sounds at another pitch, and tells its holes', () => {
    const at = other.notes.groups.findIndex(({ title }) => title.startsWith('Strength'));
    for (const { cells } of other.notes.rows) expect(cells[at][1].text).toBe('–');
    expect(other.keys.groups.some(({ title }) => title.startsWith('Hole across'))).toBe(true);
    expect(comparison.keys.groups.some(({ title }) => title.startsWith('Hole across'))).toBe(false);
    expect(other.chart.panels.map(({ id }) => id)).toEqual(['pitch', 'strength']);
    const two = makeComparisonView(compareColumns([found, TENOR], 26.85, 440), {
      order: 'difference',
      unit: 'mm',
      at: 'front',
    });
    expect(two.chart.panels.map(({ id }) => id)).toEqual(['pitch']);
  });

  it('stands in the letters of the page where a column between could not be read', () => {
    const broken = { ...found, setup: { ...found.setup, keys: [] } };
    const gap = compareColumns([found, broken, TENOR], 26.85, 440);
    const told = makeComparisonView(gap, { order: 'difference', unit: 'mm', at: 'front' });
    expect(told.chart.series.map(({ letter }) => letter)).toEqual(['C']);
    expect(told.notes.groups[0].heads.map(({ letter }) => letter)).toEqual(['C']);
  });
});

describe('the picture of differences', () => {
  const { chart } = comparison;
  const size = { width: 900, height: 420 };

  it('has every fingering once, from low to high, with the report’s differences', () => {
    expect(chart.marks.map(({ x }) => x)).toEqual(chart.marks.map(({ x }) => x).sort((a, b) => a - b));
    expect(new Set(chart.marks.map(({ x }) => x)).size).toBe(report.notes.length);
    chart.marks.forEach(({ id }, i) => {
      const d = report.notes.find((n) => n.fingering === id)!.differences[0]!;
      expect(chart.series[0].points.pitch[i]).toMatchObject({ value: d.cents, plusMinus: d.centsPlusMinus });
      expect(chart.series[0].points.strength[i]).toMatchObject({ value: d.strengthDb });
    });
  });

  it('holds every whisker whole', () => {
    const another = other.chart;
    for (const { panels, series } of [chart, another]) {
      for (const { id, range } of panels) {
        for (const { points } of series) {
          for (const p of points[id]) {
            expect(p === null ? range[0] : p.value - p.plusMinus).toBeGreaterThanOrEqual(range[0]);
            expect(p === null ? range[1] : p.value + p.plusMinus).toBeLessThanOrEqual(range[1]);
          }
        }
      }
    }
  });

  it('numbers the widest notes, none over another and none outside', () => {
    const place = placeDifferences(chart, size);
    const numbers = placeNumbers(chart, place, signedCents);
    expect(numbers[0].text).toMatch(/^F♯6 front −/);
    for (const [i, a] of numbers.entries()) {
      expect(a.y).toBeGreaterThan(place.rows[0][0]);
      expect(a.y).toBeLessThan(place.rows[0][1]);
      for (const b of numbers.slice(i + 1)) {
        expect(Math.abs(a.x - b.x) > 30 || Math.abs(a.y - b.y) >= 13).toBe(true);
      }
    }
  });

  it('labels the reference and every column beside the row, apart from each other', () => {
    for (const width of [340, 900]) {
      const labels = placeSideLabels(chart, placeDifferences(chart, { width, height: 420 }));
      expect(labels.map(({ text }) => text[0])).toEqual(['A', 'B']);
      expect(Math.abs(labels[0].y - labels[1].y)).toBeGreaterThanOrEqual(16);
      expect(labels[1].text.length > 1).toBe(width === 900);
    }
  });

  it('stands columns side by side at a note, and values where they belong', () => {
    expect(sideStep(0, 1)).toBe(0);
    const steps = [0, 1, 2].map((i) => sideStep(i, 3));
    expect(steps[0]).toBe(-steps[2]);
    expect(Math.max(...steps.map(Math.abs))).toBeLessThan(0.5);
    const [pitch] = chart.panels;
    expect(valuePx(pitch, [10, 110], pitch.range[1])).toBe(10);
    expect(valuePx(pitch, [10, 110], pitch.range[0])).toBe(110);
  });
});
