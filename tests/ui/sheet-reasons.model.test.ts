import { describe, expect, it } from 'vitest';
import { formatBoth } from '../../src/documents/length-format.ts';
import { makeBenchState, type BenchState } from '../../src/ui/state/bench-state.ts';
import { withSet } from '../../src/ui/state/key-lengths.ts';
import { hornFromDocument } from '../../src/documents/to-acoustics.ts';
import { ventingInputs } from '../../src/ui/state/reason-inputs.ts';
import { findEnough, makeSheetReport } from '../../src/ui/state/sheet-numbers.ts';
import { enoughArrived, enoughParts, sheetArrived, sheetAsked } from '../../src/ui/state/sheet-state.ts';
import type { Reason } from '../../src/ui/state/reasons.ts';
import { makeSheetView } from '../../src/ui/views/sheet/sheet-view.model.ts';
import { onTheBench, plain, preparedSheet } from './demo.ts';

const alto = onTheBench('alto');
const prepared = preparedSheet(alto);
const report = makeSheetReport(prepared);
const enough = findEnough(prepared, 'e');
if (enough.kind !== 'reached') throw new Error('the demo’s E key has an answer');

function answered(): BenchState {
  const state = makeBenchState([], alto);
  const arrived = sheetArrived(sheetAsked(state.sheet, 1, state.hornId), 1, report);
  const sheet = enoughArrived(arrived, 'e', { report: enough, parts: enoughParts(alto, 'e') });
  return { ...state, sheet };
}

const view = makeSheetView(answered());
const row = view.groups.flatMap(({ rows }) => rows).find(({ pad }) => pad === 'e')!;
const valueOf = (reason: Reason, label: string): string | undefined =>
  reason.inputs.find((input) => input.label === label)?.value;

describe('the reasons on the sheet', () => {
  it('carry the figures as the row says them, and the core’s own parts of the ±', () => {
    const key = report.keys.find(({ pad }) => pad === 'e')!;
    const { share, enough: point, lack } = row.reasons;
    expect(share!.figure).toBe(row.bar!.words);
    expect(share!.budget).toEqual({ parts: key.asSet.shareBudget, in: 'share' });
    expect(key.asSet.shareBudget.plusMinus).toBe(key.asSet.plusMinusShare);
    expect(point!.figure).toBe(row.standing!.at);
    expect(point!.budget).toEqual({ parts: enough.budget, in: 'mm' });
    expect(enough.budget!.plusMinus).toBeCloseTo(enough.plusMinusMm!, 12);
    expect(plain(view.answer.headline)).toContain(plain(lack!.figure));
    expect(view.answer.reasons).toEqual([lack]);
  });

  it('name what was read, with its ± and where it comes from', () => {
    const { share } = row.reasons;
    const read = alto.asFound.document.keys.find(({ pad }) => pad === 'e')!;
    const opening = share!.inputs.find(({ label }) => label.startsWith('opening as found'))!;
    expect(opening.value).toMatch(new RegExp(`^${read.openingMm!.toFixed(1)} mm \\(.* in\\) ± `));
    // The demo's lengths are as good as measured; an example's say that they are not.
    expect(opening.from).toBe('');
    const example = { ...alto.horn, document: { ...alto.horn.document, origin: 'template' as const } };
    expect(ventingInputs({ ...alto, horn: example }, 'e', 'mm')[0].from).toBe('from the example');
    expect(share!.inputs.map(({ label }) => label)).toEqual(
      expect.arrayContaining(['hole diameter', 'pad diameter', 'rod to pad centre', 'chimney']),
    );
    const boreMm = 2000 * hornFromDocument(alto.horn.document).holes.find(({ id }) => id === 'e')!.boreRadius;
    expect(valueOf(share!, 'bore at the hole')).toBe(formatBoth(boreMm, 'mm'));
    expect(valueOf(row.reasons.enough!, 'at the front')).toBe(formatBoth(enough.frontMm, 'mm'));
  });

  it('are of the opening as set once a key was set', () => {
    const set = withSet(alto, 'e', { mm: 9, at: 'front' });
    const state = makeBenchState([], set);
    const later = makeSheetReport(preparedSheet(set));
    const arrived = sheetArrived(sheetAsked(state.sheet, 1, state.hornId), 1, later);
    const rows = makeSheetView({ ...state, sheet: arrived }).groups.flatMap((group) => group.rows);
    const { inputs } = rows.find(({ pad }) => pad === 'e')!.reasons.share!;
    expect(inputs[0].label).toBe('opening as set at the front');
    expect(inputs[0].value).toMatch(/^9\.0 mm/);
  });
});
