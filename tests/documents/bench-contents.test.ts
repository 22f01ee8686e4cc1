import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  contentsOf,
  contentsOrFirstVisit,
  makeVisit,
  recordsOf,
  setupIn,
  type BenchContents,
} from '../../src/documents/bench-contents.ts';
import { missingKeys } from '../../src/documents/complete-setup.ts';
import { HORN_FIELDS, keyedHoles } from '../../src/documents/horn-document.ts';
import { presentSetup, readLibrary, type VisitRecord } from '../../src/documents/library-file.ts';
import { SETUP_FIELDS } from '../../src/documents/setup-document.ts';
import {
  knownHornLength,
  knownSetupLength,
  withHornLength,
  withOpeningReading,
  withSetupLength,
} from '../../src/documents/sheet-edits.ts';
import { demoDocument, demoFile } from '../acoustics/demo-horns.ts';

function counter(): () => string {
  let n = 0;
  return () => `id-${++n}`;
}

const { horn, setup } = demoDocument('alto');
const record = { id: 'alto', document: horn };
const plan = { date: '2026-05-31', airC: 22, a4Hz: 442 };
const contents = makeVisit(record, setup, plan, counter());
const PADS = keyedHoles(horn).map((h) => h.id);

describe('a visit', () => {
  it('starts as found as the horn was left, with nothing proposed and nothing set', () => {
    expect(missingKeys(horn, contents.asFound.document)).toEqual([]);
    for (const role of ['asFound', 'proposed', 'asSet'] as const) {
      expect(setupIn(contents, role).keys).toEqual(setup.keys);
    }
    expect(contents.proposed.document.keys).toEqual([]);
  });

  it('reads as set over as found, key by key and field by field', () => {
    const asSet = withOpeningReading(contents.asSet.document, 'e', { mm: 9.1, at: 'front' });
    const now = { ...contents, asSet: { ...contents.asSet, document: asSet } };
    const e = setupIn(now, 'asSet').keys.find((k) => k.pad === 'e')!;
    expect([e.openingMm, e.measuredAt, e.padThicknessMm]).toEqual([9.1, 'front', 4.1]);
    expect(setupIn(now, 'asSet').keys.filter((k) => k.pad !== 'e')).toEqual(
      setup.keys.filter((k) => k.pad !== 'e'),
    );
  });

  it('comes back from its records, and the latest one is what comes back', () => {
    const next = makeVisit(
      record,
      setup,
      { ...plan, date: '2027-06-01' },
      (() => {
        const id = counter();
        return () => `next-${id()}`;
      })(),
    );
    const both = {
      horns: [record],
      setups: [...recordsOf(contents).setups, ...recordsOf(next).setups],
      visits: [next.visit, contents.visit],
    };
    expect(contentsOf(both, 'alto')).toEqual(next);
    expect(contentsOf(both, 'alto', contents.visit.id)).toEqual(contents);
    const sameDay = (startedMs: number, c: BenchContents): VisitRecord => ({
      ...c.visit,
      document: { ...c.visit.document, date: '2027-06-01', startedMs },
    });
    for (const visits of [
      [sameDay(2, contents), sameDay(1, next)],
      [sameDay(1, next), sameDay(2, contents)],
    ]) {
      expect(contentsOf({ ...both, visits }, 'alto')!.visit.id).toBe(contents.visit.id);
    }
    expect(contentsOf(both, 'tenor')).toBeNull();
    expect(contentsOf({ ...both, setups: [] }, 'alto')).toBeNull();
  });

  it('is made for a horn that never had one', () => {
    const { records } = readLibrary(demoFile('alto'), counter());
    const first = contentsOrFirstVisit(records, 'demo-alto', plan, counter())!;
    expect(first.asFound.document.keys).toEqual(presentSetup(records, records.horns[0]).keys);
    expect(contentsOrFirstVisit(records, 'nothing', plan, counter())).toBeNull();
  });

  it('fits a library file, and comes back from it', () => {
    const file = JSON.parse(
      JSON.stringify({ kind: 'ventwright library', version: 1, ...recordsOf(contents) }),
    ) as unknown;
    const { records, issues } = readLibrary(file, counter());
    expect(issues).toEqual([]);
    expect(contentsOf(records, 'alto')).toEqual(contents);
  });
});

describe('writing one length', () => {
  const lengths = fc.double({ min: 0.5, max: 5, noNaN: true });

  it('of the horn changes that length alone, and its reading', () => {
    fc.assert(
      fc.property(fc.constantFrom(...PADS), fc.constantFrom(...HORN_FIELDS), lengths, (pad, field, mm) => {
        const next = withHornLength(horn, pad, field, mm, { origin: 'measured', tool: 'rule' });
        expect(knownHornLength(next, pad, field)).toEqual({
          mm,
          origin: 'measured',
          tool: 'rule',
          plusMinusMm: 0.4,
          readOn: null,
        });
        for (const p of PADS)
          for (const f of HORN_FIELDS)
            if (p !== pad || f !== field)
              expect(knownHornLength(next, p, f)).toEqual(knownHornLength(horn, p, f));
      }),
      { seed: 1101, numRuns: 40 },
    );
  });

  it('of a setup changes that length alone, and taking it back leaves nothing behind', () => {
    const fields = SETUP_FIELDS.filter((f) => f !== 'openingMm');
    fc.assert(
      fc.property(fc.constantFrom(...PADS), fc.constantFrom(...fields), lengths, (pad, field, mm) => {
        const empty = contents.asSet.document;
        const next = withSetupLength(empty, pad, field, mm, { origin: 'derived' });
        expect(knownSetupLength(next, pad, field)?.mm).toBe(mm);
        expect(next.keys).toHaveLength(1);
        expect(withSetupLength(next, pad, field, null)).toEqual(empty);
      }),
      { seed: 1102, numRuns: 60 },
    );
  });

  it('of an opening carries its measuring point, and both go together', () => {
    const next = withOpeningReading(setup, 'e', { mm: 4.5, at: 'centre' });
    const e = next.keys.find((k) => k.pad === 'e')!;
    expect([e.openingMm, e.measuredAt]).toEqual([4.5, 'centre']);
    const gone = withOpeningReading(next, 'e', null).keys.find((k) => k.pad === 'e')!;
    expect('openingMm' in gone || 'measuredAt' in gone).toBe(false);
  });

  it('of a pad the horn has not, or away from where it must be, is a wrong call', () => {
    expect(() => withHornLength(horn, 'nothing', 'rimMm', 1)).toThrow(/invalid pad: "nothing"/);
    expect(() => withHornLength(horn, 'e', 'rimMm', null)).toThrow(/expected a length/);
    const bare = withHornLength(horn, 'e', 'cupFloorMm', null);
    expect(knownHornLength(bare, 'e', 'cupFloorMm')).toBeNull();
    expect(withHornLength(withHornLength(bare, 'e', 'cupFloorMm', 4), 'e', 'cupFloorMm', null)).toEqual(bare);
  });
});

describe('an origin', () => {
  it('is the document’s unless a reading says otherwise, and decides the ±', () => {
    const example = { ...horn, origin: 'template' as const };
    expect(knownHornLength(example, 'e', 'diameterMm')).toMatchObject({ origin: 'template', plusMinusMm: 2 });
    const read = withHornLength(example, 'e', 'diameterMm', 30.2, { origin: 'measured', tool: 'caliper' });
    expect(knownHornLength(read, 'e', 'diameterMm')).toMatchObject({ origin: 'measured', plusMinusMm: 0.1 });
    const told = withHornLength(example, 'e', 'diameterMm', 30.2, { origin: 'measured', plusMinusMm: 0.3 });
    expect(knownHornLength(told, 'e', 'diameterMm')?.plusMinusMm).toBe(0.3);
  });

  it('stays with a number that shows through from an example below', () => {
    const example = {
      ...contents,
      asFound: { ...contents.asFound, document: { ...setup, origin: 'template' as const } },
    };
    const asSet = withOpeningReading(
      contents.asSet.document,
      'e',
      { mm: 9, at: 'front' },
      { origin: 'measured' },
    );
    const now = setupIn({ ...example, asSet: { ...contents.asSet, document: asSet } }, 'asSet');
    expect(knownSetupLength(now, 'e', 'openingMm')?.origin).toBe('measured');
    expect(knownSetupLength(now, 'e', 'padThicknessMm')?.origin).toBe('template');
    expect(knownSetupLength(now, 'd', 'openingMm')?.origin).toBe('template');
  });
});
