import { describe, expect, it } from 'vitest';
import { recordsOf, type BenchContents } from '../../src/documents/bench-contents.ts';
import { layered } from '../../src/documents/complete-setup.ts';
import type { LibraryRecords } from '../../src/documents/library-file.ts';
import { withProposed, withSet } from '../../src/ui/state/key-lengths.ts';
import {
  columnsOf,
  documentsOf,
  recordsOfHorn,
  sourceOf,
  standingOf,
  type ColumnSources,
} from '../../src/ui/state/side-by-side-columns.ts';
import { nextColumn, setupOffers, usualSetup } from '../../src/ui/state/side-by-side-offers.ts';
import {
  chooseColumns,
  hornFetched,
  hornForgotten,
  makeSideBySideState,
  type Column,
} from '../../src/ui/state/side-by-side-state.ts';
import { onTheBench } from './demo.ts';

const alto = onTheBench('alto');
const tenor = onTheBench('tenor');
const proposing = withProposed(alto, 'e', 5.5);
const setting = withSet(proposing, 'f', { mm: 7, at: 'centre' });

const sources = (bench: BenchContents, of: Partial<ColumnSources> = {}): ColumnSources => ({
  bench,
  opened: { [bench.horn.id]: { contents: bench } },
  fetched: {},
  ...of,
});
const ids = (columns: readonly Column[]): (string | null)[] => columns.map(({ setupId }) => setupId);
const fetchedTenor = { [tenor.horn.id]: { kind: 'fetched', records: recordsOf(tenor) } } as const;

/** An earlier visit of the alto, as a library has it. */
const earlier: LibraryRecords = {
  horns: [alto.horn],
  setups: [
    { ...alto.asFound, id: 'then', document: { ...alto.asFound.document, name: 'Then' } },
    { ...alto.proposed, id: 'meant' },
    { ...setting.asSet, id: 'done' },
    { ...setting.asSet, id: 'trial', document: { ...setting.asSet.document, name: 'A trial' } },
  ],
  visits: [
    {
      id: 'before',
      hornId: alto.horn.id,
      document: {
        ...alto.visit.document,
        date: '2025-02-03',
        player: 'Ada',
        asFound: 'then',
        proposed: 'meant',
        asSet: 'done',
      },
    },
  ],
};

describe('what stands side by side', () => {
  it('is the visit on the bench, what is empty left out, as long as nobody chose', () => {
    expect(ids(columnsOf(null, sources(alto)))).toEqual([alto.asFound.id, alto.proposed.id]);
    expect(ids(columnsOf(null, sources(proposing)))).toEqual([alto.asFound.id, alto.proposed.id]);
    expect(ids(columnsOf(null, sources(setting)))).toEqual([
      alto.asFound.id,
      alto.proposed.id,
      alto.asSet.id,
    ]);
    const done = withSet(proposing, 'e', { mm: 5.5, at: 'front' });
    expect(ids(columnsOf(null, sources(done)))).toEqual([alto.asFound.id, alto.asSet.id]);
    const only = withSet(alto, 'f', { mm: 7, at: 'front' });
    expect(ids(columnsOf(null, sources(only)))).toEqual([alto.asFound.id, alto.asSet.id]);
  });

  it('stays at two to four', () => {
    const side = makeSideBySideState();
    const [one, two] = columnsOf(null, sources(alto));
    expect(chooseColumns(side, [one, two]).chosen).toEqual([one, two]);
    for (const wrong of [[one], [one, two, one, two, one]]) expect(chooseColumns(side, wrong)).toBe(side);
    expect(chooseColumns(chooseColumns(side, [one, two]), null).chosen).toBeNull();
  });

  it('takes a horn as it was left where no setup of it was chosen, once it is known', () => {
    const chosen = [
      { hornId: alto.horn.id, setupId: alto.asFound.id },
      { hornId: tenor.horn.id, setupId: null },
    ];
    expect(ids(columnsOf(chosen, sources(alto)))[1]).toBeNull();
    expect(ids(columnsOf(chosen, sources(alto, { fetched: fetchedTenor })))[1]).toBe(tenor.asFound.id);
    expect(usualSetup(earlier, alto.horn.id)).toBe('done');
  });
});

describe('a column', () => {
  it('reads a visit’s sparse setup over its own as found, not over another visit’s', () => {
    const { asFound, asSet } = setting;
    const stored: LibraryRecords = {
      ...earlier,
      setups: [asFound, setting.proposed, asSet, ...earlier.setups],
      visits: [...earlier.visits, alto.visit],
    };
    const done = sourceOf(stored, { hornId: alto.horn.id, setupId: 'done' })!;
    expect(done.role).toBe('asSet');
    expect(done.under?.name).toBe('Then');
    expect(documentsOf(done).setup).toEqual(layered(asSet.document, earlier.setups[0].document));
    const found = sourceOf(stored, { hornId: alto.horn.id, setupId: asFound.id })!;
    expect(documentsOf(found)).toEqual({ horn: alto.horn.document, setup: asFound.document });
    const trial = sourceOf(stored, { hornId: alto.horn.id, setupId: 'trial' })!;
    expect([trial.visit, trial.under?.name]).toEqual([null, asFound.document.name]);
  });

  it('gives the same parts for the same records, so that nothing is asked twice', () => {
    const of = sources(setting, {
      fetched: { [alto.horn.id]: { kind: 'fetched', records: earlier } },
    });
    for (const setupId of ['trial', 'done', alto.asSet.id]) {
      const [a, b] = [0, 1].map(() =>
        sourceOf(recordsOfHorn(of, alto.horn.id)!, { hornId: alto.horn.id, setupId })!,
      );
      expect([a.horn.document, a.setup.document, a.under]).toStrictEqual([
        b.horn.document,
        b.setup.document,
        b.under,
      ]);
      expect(a.under).toBe(b.under);
    }
  });

  it('shows what is on the bench over what was stored of it', () => {
    const of = sources(setting, {
      fetched: { [alto.horn.id]: { kind: 'fetched', records: recordsOf(alto) } },
    });
    const records = recordsOfHorn(of, alto.horn.id)!;
    expect(records.setups).toHaveLength(3);
    expect(records.setups.find(({ id }) => id === alto.asSet.id)).toBe(setting.asSet);
  });

  it('says what is on its way and what is gone', () => {
    const far = { hornId: tenor.horn.id, setupId: tenor.asFound.id };
    expect(standingOf(sources(alto), far).kind).toBe('on its way');
    expect(standingOf(sources(alto, { fetched: fetchedTenor }), far).kind).toBe('there');
    const refusal = { kind: 'failed', message: 'This horn could not be fetched.' } as const;
    expect(standingOf(sources(alto, { fetched: { [far.hornId]: refusal } }), far)).toEqual({
      kind: 'missing',
      message: refusal.message,
    });
    const gone = standingOf(sources(alto, { fetched: fetchedTenor }), { ...far, setupId: 'gone' });
    expect(gone).toMatchObject({ kind: 'missing', message: expect.stringContaining('choose another') });
  });

  it('is fetched again after the library changed', () => {
    const side = hornFetched(makeSideBySideState(), 'x', { kind: 'failed', message: 'no' });
    expect(hornForgotten(side, 'x').fetched).toEqual({});
    expect(hornForgotten(side, 'y')).toBe(side);
  });
});

describe('what can be chosen', () => {
  it('is listed visit by visit, the latest first, and what belongs to no visit last', () => {
    const of = sources(setting, {
      fetched: { [alto.horn.id]: { kind: 'fetched', records: earlier } },
    });
    const groups = setupOffers(recordsOfHorn(of, alto.horn.id)!, alto.horn.id);
    expect(groups.map(({ title }) => title)).toEqual([
      'Visit of 2026-05-04',
      'Visit of 2025-02-03, Ada',
      'Other setups',
    ]);
    expect(groups[1].offers.map(({ label }) => label)).toEqual([
      'as found, 2025-02-03',
      'proposed (nothing yet), 2025-02-03',
      'as set, 2025-02-03',
    ]);
    expect(groups[2].offers).toEqual([{ id: 'trial', label: 'A trial' }]);
  });

  it('begins a further column with a horn that is in none yet, else with a setup that says something', () => {
    const horns = [alto, tenor].map(({ horn }) => ({ id: horn.id, label: horn.document.name }));
    const two = columnsOf(null, sources(proposing));
    const other = { hornId: tenor.horn.id, setupId: null };
    expect(nextColumn(two, recordsOf(proposing), horns)).toEqual(other);
    const three = [...two, other];
    expect(nextColumn(three.slice(1), recordsOf(proposing), horns).setupId).toBe(alto.asFound.id);
    expect(nextColumn(three, recordsOf(setting), horns).setupId).toBe(alto.asSet.id);
    expect(nextColumn(two, recordsOf(proposing), horns.slice(0, 1)).setupId).toBe(alto.asSet.id);
  });
});
