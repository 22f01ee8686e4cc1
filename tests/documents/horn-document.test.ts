import { readFileSync } from 'node:fs';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solvePlan } from '../../datasets/horns/make.ts';
import { PLANS } from '../../datasets/horns/plans.ts';
import { hornSchema } from '../../src/documents/horn-document.ts';
import { publishedSchemas } from '../../src/documents/published-schemas.ts';
import { loadHorn, readSetupDocument } from '../../src/documents/to-acoustics.ts';
import { demoDocument, demoFile, demoHorn } from '../acoustics/demo-horns.ts';
import { relative, ROUNDING } from '../acoustics/tolerances.ts';

const stored = (file: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../datasets/schemas/${file}`, import.meta.url), 'utf8')) as unknown;

function validator(file: string): ValidateFunction {
  return new Ajv2020({ allErrors: true, strict: false, formats: { date: true } }).compile(
    stored(file) as object,
  );
}

/** A demo document changed by hand; loosely typed, as files are. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- a broken document has no type
function changed(change: (documents: any) => void): { horn: unknown; setup: unknown } {
  const documents = structuredClone(demoDocument('alto'));
  change(documents);
  return documents;
}

function issuesOf(input: {
  horn: unknown;
  setup: unknown;
}): readonly { path: string; code: string; message: string }[] {
  const outcome = loadHorn(input);
  return outcome.ok ? [] : outcome.issues;
}

describe('the published schemas', () => {
  it.each(Object.entries(publishedSchemas()))('%s is what the code generates', (file, schema) => {
    expect(stored(file)).toEqual(JSON.parse(JSON.stringify(schema)));
  });

  it.each(['soprano', 'alto', 'tenor', 'baritone'] as const)(
    'accept the demo %s’s file, horn and setup, by a validator of other make',
    (name) => {
      const { horn, setup } = demoDocument(name);
      for (const [schema, document] of [
        ['library-1', demoFile(name)],
        ['horn-2', horn],
        ['setup-2', setup],
      ] as const) {
        const valid = validator(`${schema}.schema.json`);
        expect([valid(document), valid.errors]).toEqual([true, null]);
      }
    },
  );

  it('and the loader refuse the same faults of shape', () => {
    const horn = validator('horn-2.schema.json');
    const setup = validator('setup-2.schema.json');
    for (const broken of [
      changed((d) => delete d.horn.name),
      changed((d) => (d.horn.version = 1)),
      changed((d) => (d.horn.holes[3].diameterMm = 'wide')),
      changed((d) => (d.horn.holes[3].diameterMm = -1)),
      changed((d) => (d.setup.keys[0].measuredAt = 'side')),
      changed((d) => (d.horn.colour = 'gold')),
      changed((d) => (d.horn.bore[0].points = [])),
    ]) {
      expect(horn(broken.horn) && setup(broken.setup)).toBe(false);
      expect(loadHorn(broken).ok).toBe(false);
    }
  });

  it('carry a unit in every numeric field’s name, save counts and versions', () => {
    const plain = new Set(['version', 'number', 'travelRatio', 'transpositionSemitones']);
    const unit = /(Mm|Mm3|C|Deg|Hz|Ms|Semitones|Cents|Percent)$|^cents$/;
    const visit = (node: unknown, key: string): void => {
      if (typeof node !== 'object' || node === null) return;
      const { type } = node as { type?: unknown };
      if (type === 'number' || type === 'integer')
        expect([key, plain.has(key) || unit.test(key)]).toEqual([key, true]);
      for (const [name, child] of Object.entries(node)) {
        if (name === 'properties') for (const [k, v] of Object.entries(child as object)) visit(v, k);
        else visit(child, key);
      }
    };
    for (const schema of Object.values(publishedSchemas())) visit(schema, '');
  });
});

describe('the demo horns', () => {
  it.each(PLANS)('$file is what its maker script solves', (plan) => {
    const made = hornSchema.parse(JSON.parse(JSON.stringify(solvePlan(plan).horn)));
    const kept = demoDocument(plan.instrument).horn;
    /** mm: places are stored to 0.01, and another machine's last bit may tip one over. */
    const STORED_MM = 0.0101;
    expect(made.holes.map((h) => [h.number, h.id])).toEqual(kept.holes.map((h) => [h.number, h.id]));
    made.holes.forEach((h, i) => {
      expect(Math.abs(h.positionMm - kept.holes[i].positionMm)).toBeLessThan(STORED_MM);
    });
    made.bore.forEach((section, i) =>
      section.points.forEach((point, k) => {
        expect(Math.abs(point.positionMm - kept.bore[i].points[k].positionMm)).toBeLessThan(STORED_MM);
        expect(Math.abs(point.diameterMm - kept.bore[i].points[k].diameterMm)).toBeLessThan(STORED_MM);
      }),
    );
    expect({ ...made, bore: [], holes: [], mouthpiece: null }).toEqual({
      ...kept,
      bore: [],
      holes: [],
      mouthpiece: null,
    });
  });
});

describe('reading a horn', () => {
  it('turns bench units into SI', () => {
    const { documents, horn, setup } = demoHorn('alto');
    const written = documents.horn.holes.find((h) => h.id === 'e')!;
    const hole = horn.holes.find((h) => h.id === 'e')!;
    expect(relative(hole.holeRadius, written.diameterMm / 2000)).toBeLessThan(ROUNDING);
    expect(relative(hole.chimney, written.chimneyMm / 1000)).toBeLessThan(ROUNDING);
    expect(relative(hole.hinge!.distance, written.key!.hingeMm / 1000)).toBeLessThan(ROUNDING);
    const mouthpiece = documents.horn.mouthpiece.pieces.reduce((s, p) => s + p.lengthMm, 0);
    expect(relative(hole.x, (mouthpiece + written.positionMm) / 1000)).toBeLessThan(ROUNDING);
    expect(relative(horn.reedVolume, documents.horn.mouthpiece.reedVolumeMm3 * 1e-9)).toBeLessThan(ROUNDING);
    const key = documents.setup.keys.find((k) => k.pad === 'e')!;
    expect(relative(setup.keys.get('e')!.opening.height, key.openingMm / 1000)).toBeLessThan(ROUNDING);
    expect(relative(setup.keys.get('e')!.padRadius, key.padDiameterMm / 2000)).toBeLessThan(ROUNDING);
  });

  it('lists every fault of shape at once, each with its path and a sentence', () => {
    const issues = issuesOf(
      changed((d) => {
        d.horn.holes[0].diameterMm = -3;
        d.horn.holes[5].chimneyMm = 'tall';
        delete d.horn.maker;
        d.setup.keys[2].measuredAt = 'side';
        d.horn.colour = 'gold';
      }),
    );
    expect(issues.map((i) => i.path).sort()).toEqual(
      ['', 'holes[0].diameterMm', 'holes[5].chimneyMm', 'maker', 'setup.keys[2].measuredAt'].sort(),
    );
    for (const { message, code } of issues) {
      expect(message).toMatch(/^(invalid|missing|unknown) .+/);
      expect(code.length).toBeGreaterThan(0);
    }
    expect(issues.find((i) => i.path === 'holes[0].diameterMm')!.message).toBe(
      'invalid hole diameter: -3 mm; expected 0.5 to 100 mm',
    );
  });

  it('lists every fault of sense at once', () => {
    const issues = issuesOf(
      changed((d) => {
        d.horn.bore[1].points[1].positionMm = 10;
        d.horn.holes[1].id = d.horn.holes[0].id;
        d.horn.touches[0].closes.push('thumb-rest');
        d.horn.links[0].driven = 'nothing';
        d.setup.keys[4].openingMm = 59;
        d.setup.keys.pop();
      }),
    );
    const codes = new Set(issues.map((i) => i.code));
    for (const code of ['order', 'duplicate', 'reference', 'range', 'missing']) expect(codes).toContain(code);
    expect(issues.every((i) => i.path.length > 0 && i.message.length > 10)).toBe(true);
  });

  it.each([
    ['back to itself', [['e', 'e']]],
    ['round two pads', [['bis', 'a']]],
    ['round three pads', [['bis', 'd'], ['bis', 'f']]], // prettier-ignore
  ])('refuses links that lead %s', (_, pairs) => {
    const issues = issuesOf(
      changed((d) => {
        for (const [driver, driven] of pairs) d.horn.links.push({ driver, driven, effect: 'closes' });
      }),
    );
    expect(issues.map((i) => i.code)).toEqual(['loop']);
    expect(issues[0].message).toMatch(/no loop/);
  });

  it('refuses a hole wider than its bore, naming the pad and the bore there', () => {
    const issues = issuesOf(
      changed((d) => {
        d.horn.holes[0].diameterMm = 70;
        d.setup.keys[0].padDiameterMm = 75;
      }),
    );
    expect(issues.some((i) => /^holes\[\d+\]/.test(i.path) && /bore/.test(i.message))).toBe(true);
  });

  it('never throws, whatever it is given', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 5 }), (input) => {
        const outcome = loadHorn({ horn: input, setup: input });
        expect(outcome.ok).toBe(false);
        if (!outcome.ok) expect(outcome.issues.length).toBeGreaterThan(0);
      }),
      { seed: 1001, numRuns: 300 },
    );
  });

  it('never throws on a good document with one value gone wild', () => {
    const paths: (string | number)[][] = [];
    const walk = (node: unknown, path: (string | number)[]): void => {
      if (typeof node === 'object' && node !== null) {
        for (const [k, v] of Object.entries(node)) walk(v, [...path, Array.isArray(node) ? Number(k) : k]);
      }
      if (path.length > 0) paths.push(path);
    };
    walk(demoDocument('alto'), []);
    const wild = fc.oneof(
      fc.constantFrom<unknown>(null, '', 'e', [], {}, true, 0, -1, 1e9, 1e-9, Number.MAX_VALUE),
      fc.double(),
      fc.string(),
    );
    fc.assert(
      fc.property(fc.constantFrom(...paths), wild, (path, value) => {
        const outcome = loadHorn(
          changed((d) => {
            let at = d;
            for (const step of path.slice(0, -1)) at = at[step];
            at[path[path.length - 1]] = value;
          }),
        );
        if (!outcome.ok) {
          for (const i of outcome.issues) expect(i.message.length).toBeGreaterThan(5);
        }
      }),
      { seed: 1002, numRuns: 400 },
    );
  });
});

describe('reading a setup', () => {
  const { horn, setup } = demoDocument('alto');

  it('accepts the horn’s own, and a part of it', () => {
    expect(readSetupDocument(setup, horn).ok).toBe(true);
    expect(readSetupDocument({ ...setup, keys: [{ pad: 'e', adhesiveBedMm: 0.5 }] }, horn).ok).toBe(true);
  });

  it('lists a strange pad, one set twice, one too small for its hole and an opening without its place', () => {
    const changed = structuredClone(setup);
    changed.keys[0].pad = 'nothing';
    changed.keys[1] = { ...changed.keys[2] };
    changed.keys[3].padDiameterMm = 3;
    delete changed.keys[4].measuredAt;
    const outcome = readSetupDocument(changed, horn);
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    expect(outcome.issues.map((i) => [i.path, i.code])).toEqual([
      ['keys[0].pad', 'reference'],
      ['keys[2].pad', 'duplicate'],
      ['keys[3].padDiameterMm', 'range'],
      ['keys[4].measuredAt', 'missing'],
    ]);
  });

  it('is missed, key by key, where the sound needs more', () => {
    const issues = issuesOf({ horn, setup: { ...setup, keys: setup.keys.slice(2) } });
    expect(issues.map((i) => i.message)).toEqual([
      'the setup has no opening for pad 1 (low-b-flat)',
      'the setup has no opening for pad 2 (low-b)',
    ]);
  });
});
