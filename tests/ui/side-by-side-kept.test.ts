import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recordsOf } from '../../src/documents/bench-contents.ts';
import { onBench, stepped } from '../../src/ui/state/horn-on-bench.ts';
import { withProposed } from '../../src/ui/state/key-lengths.ts';
import { keptShelf, LONGEST_SHELF, readShelf, shelfInLibrary } from '../../src/ui/state/shelf.ts';
import { keptSide, readKeptSide } from '../../src/ui/state/side-by-side-kept.ts';
import { chooseColumns, hornFetched, makeSideBySideState } from '../../src/ui/state/side-by-side-state.ts';
import { onTheBench } from './demo.ts';

const SEED = 20261130;
const alto = onTheBench('alto');
const chosen = [
  { hornId: alto.horn.id, setupId: alto.asFound.id },
  { hornId: 'another', setupId: 'its setup' },
];
const side = chooseColumns(makeSideBySideState(), chosen);
const throughText = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe('columns kept over a reload', () => {
  it('come back as they were chosen, with their order', () => {
    const kept = keptSide({ ...side, order: 'pitch' }, {});
    expect(readKeptSide(throughText(kept))).toEqual({ chosen, order: 'pitch' });
    expect(readKeptSide(throughText(keptSide(makeSideBySideState(), {})))).toEqual({
      chosen: null,
      order: 'difference',
    });
  });

  it('are the horn alone where the library has no such setup and nothing was done to the horn', () => {
    const opened = { [alto.horn.id]: onBench(alto) };
    const empty = { kind: 'fetched', records: { horns: [], setups: [], visits: [] } } as const;
    const missing = hornFetched(side, alto.horn.id, empty);
    expect(keptSide(missing, opened).chosen![0]).toEqual({ hornId: alto.horn.id, setupId: null });
    const stored = hornFetched(side, alto.horn.id, { kind: 'fetched', records: recordsOf(alto) });
    const touched = { [alto.horn.id]: stepped(onBench(alto), withProposed(alto, 'e', 6), null) };
    for (const [state, horns] of [
      [side, opened],
      [stored, opened],
      [missing, touched],
    ] as const)
      expect(keptSide(state, horns).chosen).toEqual(chosen);
  });

  it('are the visit on the bench again where what was kept makes no sense, whatever it is', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const { chosen: columns } = readKeptSide(value);
        expect(columns === null || columns.length > 1).toBe(true);
        readShelf(value);
      }),
      { seed: SEED },
    );
    expect(readKeptSide({ chosen: [chosen[0]] }).chosen).toBeNull();
    expect(readKeptSide({ chosen: [chosen[0], { hornId: 3, setupId: null }] }).chosen).toBeNull();
  });
});

describe('the head’s list of horns', () => {
  const brought = [{ id: 'demo-alto', label: 'Demo alto' }];
  const own = Array.from({ length: LONGEST_SHELF + 3 }, (_, i) => ({ id: `h${i}`, label: `Horn ${i}` }));

  it('is kept without what comes with the workbench, the last horns first to stay', () => {
    expect(keptShelf([...brought, ...own.slice(0, 2)], brought)).toEqual(own.slice(0, 2));
    expect(readShelf(throughText(keptShelf([...brought, ...own], brought)))).toEqual(own.slice(3));
  });

  it('takes names from the library and drops what is gone, but nothing that is on the bench', () => {
    const shelf = [...brought, ...own.slice(0, 3)];
    const next = shelfInLibrary(shelf, [{ id: 'h1', name: 'Renamed' }], new Set(['demo-alto', 'h2']));
    expect(next).toEqual([...brought, { id: 'h1', label: 'Renamed' }, own[2]]);
  });
});
