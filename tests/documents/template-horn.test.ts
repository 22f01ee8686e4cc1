import { describe, expect, it } from 'vitest';
import { contentsOf, setupIn } from '../../src/documents/bench-contents.ts';
import { missingKeys } from '../../src/documents/complete-setup.ts';
import { HORN_FIELDS, keyedHoles } from '../../src/documents/horn-document.ts';
import { libraryFile, readLibrary, type LibraryRecords } from '../../src/documents/library-file.ts';
import { SETUP_FIELDS } from '../../src/documents/setup-document.ts';
import { knownHornLength, knownSetupLength, withHornLength } from '../../src/documents/sheet-edits.ts';
import { isInstrument, nameOrOwn, templateRecords, type NewHorn } from '../../src/documents/template-horn.ts';
import { loadHorn } from '../../src/documents/to-acoustics.ts';
import { DEMO_NAMES, demoFile, type DemoName } from '../acoustics/demo-horns.ts';

const BLANK: NewHorn = { name: '', maker: '', serial: '', owner: '', player: '', date: '2026-05-31' };
const TOLD: NewHorn = {
  name: ' Evening horn ',
  maker: 'Larkfield (invented)',
  serial: '1234',
  owner: 'Ada Moss',
  player: 'Ben Moss',
  date: '2026-05-31',
};
const DAY = { airC: 22, a4Hz: 442 };

function counter(): () => string {
  let n = 0;
  return () => `id-${++n}`;
}

function example(name: DemoName): LibraryRecords {
  return readLibrary(demoFile(name), counter()).records;
}

function started(name: DemoName, told: NewHorn = TOLD): LibraryRecords {
  const outcome = templateRecords(example(name), told, DAY, counter());
  if (!outcome.ok) throw new Error(outcome.issues[0].message);
  return outcome.value;
}

describe('a horn started from an example', () => {
  it('carries what was told of it, and a first visit on the day', () => {
    const records = started('alto');
    const { name, maker, serial, owner } = records.horns[0].document;
    expect([name, maker, serial, owner]).toEqual([
      'Evening horn',
      'Larkfield (invented)',
      '1234',
      'Ada Moss',
    ]);
    const contents = contentsOf(records, records.horns[0].id)!;
    const { date, player, airC, a4Hz } = contents.visit.document;
    expect([date, player, airC, a4Hz]).toEqual(['2026-05-31', 'Ben Moss', 22, 442]);
    expect(contents.proposed.document.keys).toEqual([]);
    expect(contents.asSet.document.keys).toEqual([]);
  });

  it('has no number that counts as measured, and says how far each may be off', () => {
    for (const name of DEMO_NAMES) {
      const records = started(name);
      const contents = contentsOf(records, records.horns[0].id)!;
      const setup = setupIn(contents, 'asFound');
      const { document: horn } = contents.horn;
      for (const { id } of keyedHoles(horn)) {
        const known = [
          ...HORN_FIELDS.map((field) => knownHornLength(horn, id, field)),
          ...SETUP_FIELDS.map((field) => knownSetupLength(setup, id, field)),
        ].filter((length) => length !== null);
        expect(known.length).toBeGreaterThanOrEqual(8);
        expect(known.every((k) => k.origin === 'template' && k.plusMinusMm > 0)).toBe(true);
      }
      expect(horn.links.every((l) => l.travelRatio === undefined || l.ratioOrigin === 'template')).toBe(true);
    }
  });

  it('forgets that somebody once measured the example', () => {
    const file = example('alto');
    const measured = withHornLength(file.horns[0].document, 'e', 'diameterMm', 30.1, { origin: 'measured' });
    const records = { ...file, horns: [{ ...file.horns[0], document: { ...measured, owner: 'Nobody' } }] };
    const outcome = templateRecords(records, BLANK, DAY, counter());
    expect(outcome.ok && outcome.value.horns[0].document.owner).toBeUndefined();
    expect(outcome.ok && knownHornLength(outcome.value.horns[0].document, 'e', 'diameterMm')).toMatchObject({
      mm: 30.1,
      origin: 'template',
    });
  });

  it('is whole: it can be computed at once, and its file comes back without an issue', () => {
    for (const name of DEMO_NAMES) {
      const records = started(name);
      const contents = contentsOf(records, records.horns[0].id)!;
      expect(missingKeys(contents.horn.document, contents.asFound.document)).toEqual([]);
      expect(loadHorn({ horn: contents.horn.document, setup: setupIn(contents, 'asSet') }).ok).toBe(true);
      const read = readLibrary(JSON.parse(JSON.stringify(libraryFile(records))), counter());
      expect(read.issues).toEqual([]);
      expect(read.records).toEqual(records);
    }
  });

  it('keeps the example’s setup beside what was found, by its own name', () => {
    const records = started('tenor');
    expect(records.setups.map((s) => s.document.name)).toEqual([
      'Example tenor',
      'As found, 2026-05-31',
      'Proposed, 2026-05-31',
      'As set, 2026-05-31',
    ]);
    expect(new Set(records.setups.map((s) => s.id)).size).toBe(4);
  });
});

describe('what is told of a new horn', () => {
  it('may be nothing at all but the day', () => {
    const { document } = started('baritone', BLANK).horns[0];
    expect([document.name, document.maker]).toEqual(['Baritone', 'unknown']);
    expect('serial' in document || 'owner' in document).toBe(false);
    expect('player' in started('baritone', BLANK).visits[0].document).toBe(false);
  });

  it('names the horn where no name was given', () => {
    expect(nameOrOwn({ ...TOLD, name: '' }, 'alto')).toBe('Larkfield (invented) alto 1234');
    expect(nameOrOwn({ ...BLANK, owner: 'Ada Moss' }, 'alto')).toBe('Alto of Ada Moss');
    expect(nameOrOwn({ ...BLANK, maker: 'Larkfield', owner: 'Ada' }, 'tenor')).toBe('Larkfield tenor of Ada');
    expect(nameOrOwn({ ...BLANK, maker: 'x'.repeat(300) }, 'tenor')).toHaveLength(200);
  });

  it('is refused field by field, all at once', () => {
    const long = 'x'.repeat(201);
    const outcome = templateRecords(
      example('alto'),
      { ...TOLD, maker: long, player: long, date: 'tomorrow' },
      DAY,
      counter(),
    );
    expect(outcome.ok ? [] : outcome.issues.map((i) => [i.path, i.message])).toEqual([
      ['maker', 'invalid maker: 201 letters; expected at most 200'],
      ['player', 'invalid player: 201 letters; expected at most 200'],
      ['date', 'invalid date: "tomorrow"; expected a day such as 2026-05-31'],
    ]);
    const noDay = templateRecords(example('alto'), { ...TOLD, date: '' }, DAY, counter());
    expect(noDay.ok ? [] : noDay.issues.map((i) => i.path)).toEqual(['date']);
  });

  it('names one of four instruments', () => {
    expect(DEMO_NAMES.every(isInstrument)).toBe(true);
    expect(isInstrument('trumpet')).toBe(false);
  });
});
