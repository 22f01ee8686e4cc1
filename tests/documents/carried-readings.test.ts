import { describe, expect, it } from 'vitest';
import { makeVisit, nextVisit, setupIn, type BenchContents } from '../../src/documents/bench-contents.ts';
import { dayBefore } from '../../src/documents/carried-readings.ts';
import { readWith } from '../../src/documents/schema-parts.ts';
import { setupSchema, type SetupDocument } from '../../src/documents/setup-document.ts';
import { knownSetupLength, withOpeningReading } from '../../src/documents/sheet-edits.ts';
import { demoDocument } from '../acoustics/demo-horns.ts';

const { horn, setup } = demoDocument('alto');
let count = 0;
const makeId = (): string => `id-${++count}`;
const on = (date: string): { date: string; airC: number; a4Hz: number } => ({ date, airC: 22, a4Hz: 442 });

const FIRST = makeVisit({ id: 'alto', document: horn }, setup, on('2024-05-31'), makeId);

/** A visit on which one key was read as set. */
const leftAt = (contents: BenchContents, pad: string, mm: number): BenchContents => {
  const document = withOpeningReading(
    contents.asSet.document,
    pad,
    { mm, at: 'front' },
    { origin: 'measured' },
  );
  return { ...contents, asSet: { ...contents.asSet, document } };
};

const dayOf = (document: SetupDocument, pad: string): string | null =>
  knownSetupLength(document, pad, 'openingMm')!.readOn;

describe('openings carried to the next visit', () => {
  const second = nextVisit(leftAt(FIRST, 'e', 9.1), on('2025-06-02'), makeId);

  it('stand as they were left, and say on which day they were read', () => {
    const { document } = second.asFound;
    expect(knownSetupLength(document, 'e', 'openingMm')).toMatchObject({ mm: 9.1, readOn: '2024-05-31' });
    for (const { pad, openingMm } of setup.keys) {
      if (pad !== 'e') expect(knownSetupLength(document, pad, 'openingMm')!.mm).toBe(openingMm);
      expect(dayOf(document, pad)).toBe('2024-05-31');
    }
    expect(readWith(setupSchema, document).ok).toBe(true);
  });

  it('keep the day they were read, however often they are carried on', () => {
    const third = nextVisit(leftAt(second, 'd', 8.4), on('2026-05-31'), makeId).asFound.document;
    expect([dayOf(third, 'd'), dayOf(third, 'e'), dayOf(third, 'f')]).toEqual([
      '2025-06-02',
      '2024-05-31',
      '2024-05-31',
    ]);
  });

  it('are of this visit once they are read again', () => {
    const again = withOpeningReading(
      second.asFound.document,
      'e',
      { mm: 9.1, at: 'front' },
      { origin: 'measured' },
    );
    expect(dayOf(again, 'e')).toBe(null);
    expect(dayOf(again, 'd')).toBe('2024-05-31');
  });

  it('say no day where they were never read: an example’s, or one checked off as asked', () => {
    const example = { ...FIRST, asFound: { ...FIRST.asFound, document: { ...setup, origin: 'template' } } };
    const asked = withOpeningReading(
      FIRST.asSet.document,
      'e',
      { mm: 9, at: 'front' },
      { origin: 'derived', plusMinusMm: 0.2 },
    );
    const contents = { ...example, asSet: { ...FIRST.asSet, document: asked } } as BenchContents;
    const next = nextVisit(contents, on('2025-06-02'), makeId).asFound.document;
    expect(next.keys.map(({ pad }) => dayOf(next, pad))).toEqual(next.keys.map(() => null));
  });

  it('are before a visit only where its day is a later one', () => {
    const read = knownSetupLength(second.asFound.document, 'e', 'openingMm')!;
    expect(dayBefore(read, { date: '2025-06-02' })).toBe('2024-05-31');
    expect(dayBefore(read, { date: '2024-05-31' })).toBe(null);
    expect(dayBefore({ ...read, readOn: null }, { date: '2025-06-02' })).toBe(null);
    expect(dayBefore({ ...read, origin: 'template' }, { date: '2025-06-02' })).toBe(null);
  });

  it('leave the same sound', () => {
    const bare = ({ keys }: SetupDocument): unknown =>
      keys.map(({ pad, openingMm, measuredAt, padThicknessMm }) => [
        pad,
        openingMm,
        measuredAt,
        padThicknessMm,
      ]);
    expect(bare(second.asFound.document)).toEqual(bare(setupIn(leftAt(FIRST, 'e', 9.1), 'asSet')));
  });

  it('refuse a day that is none, and say what was expected', () => {
    const key = {
      ...setup.keys[0],
      readings: { openingMm: { origin: 'measured' as const, readOn: 'last May' } },
    };
    const outcome = readWith(setupSchema, { ...setup, keys: [key] });
    expect(outcome.ok ? [] : outcome.issues).toEqual([
      {
        path: 'keys[0].readings.openingMm.readOn',
        code: 'invalid_format',
        message: 'invalid day of the reading: "last May"; expected a day such as 2026-05-31',
      },
    ]);
  });
});
