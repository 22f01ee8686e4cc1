import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEEPEST, LONGEST_TEXT, readJsonText } from '../../src/documents/json-text.ts';
import {
  libraryFile,
  presentSetup,
  readLibrary,
  setupOfVisit,
  type LibraryReading,
} from '../../src/documents/library-file.ts';
import type { SetupDocument } from '../../src/documents/setup-document.ts';
import type { VisitDocument } from '../../src/documents/visit-document.ts';
import { demoDocument } from '../acoustics/demo-horns.ts';

const sample = (file: string): unknown =>
  JSON.parse(readFileSync(new URL(`samples/${file}`, import.meta.url), 'utf8')) as unknown;

/** Ids by count. */
function counter(): () => string {
  let n = 0;
  return () => `id-${++n}`;
}

const { horn, setup } = demoDocument('alto');
const asSet: SetupDocument = {
  kind: 'ventwright setup',
  version: 2,
  name: 'As set',
  origin: 'measured',
  keys: [{ pad: 'e', openingMm: 9.1, measuredAt: 'front' }],
};
const visit: VisitDocument = {
  kind: 'ventwright visit',
  version: 1,
  date: '2026-05-31',
  airC: 22,
  a4Hz: 442,
  asFound: 'found',
  proposed: 'wish',
  asSet: 'set',
};

/** A file with one horn, one visit and its setups; loosely typed, as files are. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- a broken file has no type
const file = (change: (file: any) => void = () => undefined): unknown => {
  const made = structuredClone(
    libraryFile({
      horns: [{ id: 'horn', document: horn }],
      setups: [
        { id: 'found', hornId: 'horn', document: setup },
        { id: 'wish', hornId: 'horn', document: { ...asSet, name: 'Proposed', keys: [] } },
        { id: 'set', hornId: 'horn', document: asSet },
      ],
      visits: [{ id: 'visit', hornId: 'horn', document: visit }],
    }),
  );
  change(made);
  return made;
};
const read = (input: unknown): LibraryReading => readLibrary(input, counter());

describe('a library file', () => {
  it('comes back as it was written', () => {
    const { records, issues } = read(file());
    expect(issues).toEqual([]);
    expect(libraryFile(records)).toEqual(file());
  });

  it('fits its published schema, by a validator of other make', () => {
    const schema = JSON.parse(
      readFileSync(new URL('../../datasets/schemas/library-1.schema.json', import.meta.url), 'utf8'),
    ) as object;
    const valid = new Ajv2020({ allErrors: true, strict: false, formats: { date: true } }).compile(schema);
    expect([valid(file()), valid.errors]).toEqual([true, null]);
    const strange = file((f) => (f.visits[0].document.date = '31.5.2026'));
    expect(valid(strange)).toBe(false);
    expect(read(strange).issues.map((i) => i.message)).toEqual([
      'invalid date: "31.5.2026"; expected a day such as 2026-05-31',
    ]);
  });

  it('tells how the horn stands now: as set over as found', () => {
    const { records } = read(file());
    const now = presentSetup(records, records.horns[0]);
    expect(now.keys).toHaveLength(setup.keys.length);
    const e = now.keys.find((k) => k.pad === 'e')!;
    expect([e.openingMm, e.padDiameterMm]).toEqual([
      9.1,
      setup.keys.find((k) => k.pad === 'e')!.padDiameterMm,
    ]);
    expect(setupOfVisit(records.setups, visit, 'asFound')).toEqual(setup);
  });

  it('keeps the good when one setup is bad, and names its place', () => {
    const { records, issues } = read(file((f) => (f.setups[2].document.keys[0].openingMm = -4)));
    expect(records.horns).toHaveLength(1);
    expect(records.setups.map((s) => s.id)).toEqual(['found', 'wish']);
    expect(records.visits).toEqual([]);
    expect(issues.map((i) => i.path)).toEqual([
      'setups[2].document.keys[0].openingMm',
      'visits[0].document.asSet',
    ]);
    expect(issues[0].message).toBe('invalid opening: -4 mm; expected 0 to 60 mm');
  });

  it('leaves out a horn that cannot be read, with what belongs to it', () => {
    const { records, issues } = read(file((f) => delete f.horns[0].document.bore));
    expect([records.horns, records.setups, records.visits]).toEqual([[], [], []]);
    expect(issues[0].path).toBe('horns[0].document.bore');
    expect(issues).toHaveLength(5);
  });

  it('says so when a document comes from a newer program', () => {
    const { issues } = read(file((f) => (f.horns[0].document.version = 3)));
    expect(issues[0].message).toBe(
      'this horn was written by a newer Ventwright, in version 3; this one reads up to version 2',
    );
  });

  it('leaves out a horn without one whole setup, and the second of two with one id', () => {
    const short = read(file((f) => (f.setups[0].document.keys.length = 3)));
    expect(short.records.horns).toEqual([]);
    expect(short.issues.some((i) => /says too little of/.test(i.message))).toBe(true);
    const twice = read(file((f) => f.horns.push(structuredClone(f.horns[0]))));
    expect(twice.records.horns).toHaveLength(1);
    expect(twice.issues.map((i) => i.code)).toEqual(['duplicate']);
  });
});

describe('an older sample', () => {
  it('of a horn with its setup inside becomes a horn, and a setup of it', () => {
    const { records, issues } = read(sample('horn-1.json'));
    expect(issues).toEqual([]);
    const { horns, setups } = records;
    expect([horns[0].id, setups[0].id, setups[0].hornId]).toEqual(['id-1', 'id-2', 'id-1']);
    const { remark } = sample('horn-1.json') as { remark: string };
    // Version 1 knew no place round the bore, no cups and no arms.
    const holes = horn.holes.map(({ aroundDeg, key, ...h }) => ({
      ...h,
      key: key === null ? null : { hingeMm: key.hingeMm, hingeHeightMm: key.hingeHeightMm },
    }));
    expect(horns[0].document).toEqual({ ...horn, holes, remark });
    expect(setups[0].document).toEqual(setup);
  });

  it('with a fault tells its place in the old shape', () => {
    const old = sample('horn-1.json') as { setup: { keys: { openingMm: number }[] } };
    old.setup.keys[3].openingMm = 300;
    expect(read(old).issues.map((i) => i.path)).toEqual(['setup.keys[3].openingMm']);
  });
});

describe('reading a file never throws', () => {
  it('whatever JSON it holds', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 5 }), (input) => {
        const { records, issues } = read(input);
        expect(records.horns).toEqual([]);
        expect(issues.length).toBeGreaterThan(0);
      }),
      { seed: 1003, numRuns: 300 },
    );
  });

  it('with one value gone wild, and lets no number through that is not finite', () => {
    const places: (string | number)[][] = [];
    const walk = (node: unknown, path: (string | number)[]): void => {
      if (typeof node === 'object' && node !== null) {
        for (const [k, v] of Object.entries(node)) walk(v, [...path, Array.isArray(node) ? Number(k) : k]);
      }
      if (path.length > 0) places.push(path);
    };
    walk(file(), []);
    const finite = (node: unknown): boolean =>
      typeof node === 'object' && node !== null
        ? Object.values(node).every(finite)
        : typeof node !== 'number' || Number.isFinite(node);
    const wild = fc.oneof(
      fc.constantFrom<unknown>(
        null,
        '',
        'e',
        [],
        {},
        true,
        0,
        -1,
        1e9,
        NaN,
        Infinity,
        -Infinity,
        '__proto__',
      ),
      fc.double(),
      fc.string(),
    );
    fc.assert(
      fc.property(fc.constantFrom(...places), wild, (place, value) => {
        const { records, issues } = read(
          file((f) => {
            let at = f;
            for (const step of place.slice(0, -1)) at = at[step];
            at[place[place.length - 1]] = value;
          }),
        );
        expect(finite(records)).toBe(true);
        for (const { message } of issues) expect(message.length).toBeGreaterThan(5);
      }),
      { seed: 1004, numRuns: 400 },
    );
  });
});

describe('reading text as JSON', () => {
  it('takes a byte-order mark', () => {
    expect(readJsonText('\uFEFF{"a":1}')).toEqual({ ok: true, value: { a: 1 } });
  });

  it.each([
    ['a text too long', ' '.repeat(LONGEST_TEXT + 1), 'the file is too long'],
    ['a text nested too deeply', '['.repeat(100_000) + ']'.repeat(100_000), 'nested too deeply'],
    ['what is no JSON', '{"a": 1,', 'not JSON'],
  ])('refuses %s with a sentence', (_, text, sentence) => {
    const outcome = readJsonText(text);
    expect(outcome.ok ? '' : outcome.issues[0].message).toContain(sentence);
  });

  it('counts brackets in texts as letters', () => {
    const text = JSON.stringify({ a: `${'['.repeat(DEEPEST + 5)}"\\` });
    expect(readJsonText(text).ok).toBe(true);
  });

  it('gives what the platform’s parser gives, or a sentence', () => {
    fc.assert(
      fc.property(fc.oneof(fc.json({ maxDepth: 8 }), fc.string()), (text) => {
        let wanted: unknown;
        try {
          wanted = JSON.parse(text);
        } catch {
          expect(readJsonText(text).ok).toBe(false);
          return;
        }
        expect(readJsonText(text)).toEqual({ ok: true, value: wanted });
      }),
      { seed: 1005, numRuns: 300 },
    );
  });
});
