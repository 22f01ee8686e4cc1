import { describe, expect, it } from 'vitest';
import { usualFingerings } from '../../src/acoustics/index.ts';
import type { BudgetReport, NextReport } from '../../src/documents/uncertainty-report.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { withProposed } from '../../src/ui/state/key-lengths.ts';
import { compareColumns, type ComparedColumns } from '../../src/ui/state/side-by-side-answer.ts';
import { sideArrived, sideAsked } from '../../src/ui/state/side-by-side-state.ts';
import { makeDifferenceSureness } from '../../src/ui/views/side-by-side/difference-sureness.model.ts';
import { makeSideBySideView } from '../../src/ui/views/side-by-side/side-by-side-view.model.ts';
import { setupIn } from '../../src/documents/bench-contents.ts';
import { onTheBench, plain } from './demo.ts';

/** As found beside the E key at so many mm. */
function compared(frontMm: number): { state: BenchState; answer: ComparedColumns } {
  const contents = withProposed(onTheBench('alto'), 'e', frontMm);
  const { airC, a4Hz } = contents.visit.document;
  const columns = (['asFound', 'proposed'] as const).map((role) => ({
    horn: contents.horn.document,
    setup: setupIn(contents, role),
  }));
  const answer = compareColumns(columns, airC, a4Hz);
  const state = makeBenchState([{ id: 'demo-alto', label: 'Demo alto' }], contents);
  return { state: { ...state, sideBySide: sideArrived(sideAsked(state.sideBySide, 1), 1, answer) }, answer };
}

const { state, answer } = compared(5.5);
const report = answer.report!;
const most = makeSideBySideView(state).sureness!;
const sure = makeSideBySideView({ ...state, sideBySide: { ...state.sideBySide, noteId: 'F4' } }).sureness!;
const noteOf = (id: string) => report.notes.find(({ fingering }) => fingering === id)!.differences[0]!;

const isUsual = usualFingerings(report.notes.map(({ fingering, note }) => ({ id: fingering, note })));

describe('how sure a difference is', () => {
  it('asks of the note that differs most by its usual fingering unless another is picked', () => {
    const usual = report.notes.filter((_, i) => isUsual[i]);
    const cents = usual.map(({ differences }) => Math.abs(differences[0]?.cents ?? 0));
    expect(Math.abs(noteOf(most.noteId).cents)).toBe(Math.max(...cents));
    expect(plain(sure.heading)).toBe('F4, B beside A');
  });

  it('tells the core’s ± with its parts, and calls the columns by their letters', () => {
    const { cents, centsPlusMinus, budget } = noteOf('F4');
    expect(budget.plusMinus).toBe(centsPlusMinus);
    expect(plain(sure.told)).toBe(
      `${cents < 0 ? '−' : '+'}${Math.abs(cents).toFixed(1)} ± ${centsPlusMinus.toFixed(1)} cents.`,
    );
    expect(sure.panel.parts[0].label).toContain('of A “As found');
    expect(sure.panel.next[0].text).toContain('Measure the opening of the E key of A “As found');
  });

  it('leads to the field where the first column is the horn in hand as found, and only there', () => {
    expect(sure.panel.next[0].target).toEqual({ pad: 'e', field: 'openingMm' });
    const keys = new Set(['e']);
    const elsewhere = makeDifferenceSureness(report, answer.columns, null, 'mm', {
      keys,
      firstIsFound: false,
    });
    expect(elsewhere!.panel.next[0].target).toBeNull();
    const noKeys = { keys: new Set<string>(), firstIsFound: true };
    const other = makeDifferenceSureness(report, answer.columns, 'F4', 'mm', noKeys);
    expect(other!.panel.next.every(({ target }) => target === null)).toBe(true);
  });

  it('says that a difference inside its ± cannot be shown, of notes and of keys', () => {
    const near = compared(8.1);
    const view = makeSideBySideView(near.state);
    expect(plain(view.sureness!.told)).toMatch(/cents: no difference that can be shown\.$/);
    const { groups, rows } = view.comparison!.keys;
    const cells = rows.find(({ id }) => id === 'e')!.cells;
    for (const title of ['Opening beside A', 'Vent share beside A']) {
      const [cell] = cells[groups.findIndex((group) => group.title.startsWith(title))];
      expect(cell.under).toBe('cannot be shown');
      expect(cell.shown).toBe(false);
    }
  });

  it('has nothing to ask where nothing can be compared', () => {
    const notes = report.notes.map((note) => ({ ...note, differences: [null] }));
    const mendable = { keys: new Set<string>(), firstIsFound: true };
    expect(makeDifferenceSureness({ ...report, notes }, answer.columns, null, 'mm', mendable)).toBeNull();
  });
});

describe('the report of a difference', () => {
  it('has parts whose squares add up to its ±, but for those too small to list', () => {
    const all = ({ readings, padModel, wholeHorn }: BudgetReport): number =>
      Math.hypot(...readings.map(({ effect }) => effect), padModel, wholeHorn);
    for (const { differences } of report.notes) {
      const { budget, next } = differences[0]!;
      expect(all(budget)).toBeLessThanOrEqual(budget.plusMinus * (1 + 1e-12));
      expect(all(budget)).toBeGreaterThanOrEqual(0.9 * budget.plusMinus);
      expect(next.every((each: NextReport) => each.alone < budget.plusMinus)).toBe(true);
    }
  });
});
