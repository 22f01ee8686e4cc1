import { readFileSync } from 'node:fs';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solvePlan } from '../../datasets/horns/make.ts';
import { ALTO, TENOR } from '../../datasets/horns/plans.ts';
import { publishedSchemas, type HornDocument } from '../../src/documents/horn-document.ts';
import { loadHorn, loadSetup } from '../../src/documents/to-acoustics.ts';
import { demoDocument, demoHorn } from '../acoustics/demo-horns.ts';
import { relative, ROUNDING } from '../acoustics/tolerances.ts';

const stored = (file: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../datasets/schemas/${file}`, import.meta.url), 'utf8')) as unknown;

function validator(file: string): ValidateFunction {
  return new Ajv2020({ allErrors: true, strict: false }).compile(stored(file) as object);
}

/** A demo document changed by hand; loosely typed, as files are. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- a broken document has no type
function changed(change: (document: any) => void, name: 'alto' | 'tenor' = 'alto'): unknown {
  const document = structuredClone(demoDocument(name));
  change(document);
  return document;
}

function issuesOf(input: unknown): readonly { path: string; code: string; message: string }[] {
  const outcome = loadHorn(input);
  return outcome.ok ? [] : outcome.issues;
}

describe('the published schemas', () => {
  it.each(Object.entries(publishedSchemas()))('%s is what the code generates', (file, schema) => {
    expect(stored(file)).toEqual(JSON.parse(JSON.stringify(schema)));
  });

  it.each(['alto', 'tenor'] as const)(
    'accept the demo %s and its setup, by a validator of other make',
    (name) => {
      const document = demoDocument(name) as HornDocument;
      const horn = validator('horn-1.schema.json');
      expect([horn(document), horn.errors]).toEqual([true, null]);
      const setup = validator('setup-1.schema.json');
      expect([setup(document.setup), setup.errors]).toEqual([true, null]);
    },
  );

  it('and the loader refuse the same faults of shape', () => {
    const horn = validator('horn-1.schema.json');
    for (const broken of [
      changed((d) => delete d.name),
      changed((d) => (d.version = 2)),
      changed((d) => (d.holes[3].diameterMm = 'wide')),
      changed((d) => (d.holes[3].diameterMm = -1)),
      changed((d) => (d.setup.keys[0].measuredAt = 'side')),
      changed((d) => (d.colour = 'gold')),
      changed((d) => (d.bore[0].points = [])),
    ]) {
      expect(horn(broken)).toBe(false);
      expect(loadHorn(broken).ok).toBe(false);
    }
  });

  it('carry a unit in every numeric field’s name, save counts and versions', () => {
    const plain = new Set(['version', 'number', 'travelRatio', 'transpositionSemitones']);
    const unit = /(Mm|Mm3|C|Semitones)$/;
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
  it.each([ALTO, TENOR])('$file is what its maker script solves', (plan) => {
    const made = JSON.parse(JSON.stringify(solvePlan(plan))) as HornDocument;
    const kept = demoDocument(plan.instrument) as HornDocument;
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
    const { document, horn, setup } = demoHorn('alto');
    const written = document.holes.find((h) => h.id === 'e')!;
    const hole = horn.holes.find((h) => h.id === 'e')!;
    expect(relative(hole.holeRadius, written.diameterMm / 2000)).toBeLessThan(ROUNDING);
    expect(relative(hole.chimney, written.chimneyMm / 1000)).toBeLessThan(ROUNDING);
    expect(relative(hole.hinge!.distance, written.key!.hingeMm / 1000)).toBeLessThan(ROUNDING);
    const mouthpiece = document.mouthpiece.pieces.reduce((s, p) => s + p.lengthMm, 0);
    expect(relative(hole.x, (mouthpiece + written.positionMm) / 1000)).toBeLessThan(ROUNDING);
    expect(relative(horn.reedVolume, document.mouthpiece.reedVolumeMm3 * 1e-9)).toBeLessThan(ROUNDING);
    const key = document.setup.keys.find((k) => k.pad === 'e')!;
    expect(relative(setup.keys.get('e')!.opening.height, key.openingMm / 1000)).toBeLessThan(ROUNDING);
    expect(relative(setup.keys.get('e')!.padRadius, key.padDiameterMm / 2000)).toBeLessThan(ROUNDING);
  });

  it('lists every fault of shape at once, each with its path and a sentence', () => {
    const issues = issuesOf(
      changed((d) => {
        d.holes[0].diameterMm = -3;
        d.holes[5].chimneyMm = 'tall';
        delete d.maker;
        d.setup.keys[2].measuredAt = 'side';
        d.colour = 'gold';
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
        d.bore[1].points[1].positionMm = 10;
        d.holes[1].id = d.holes[0].id;
        d.touches[0].closes.push('thumb-rest');
        d.links[0].driven = 'nothing';
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
        for (const [driver, driven] of pairs) d.links.push({ driver, driven, effect: 'closes' });
      }),
    );
    expect(issues.map((i) => i.code)).toEqual(['loop']);
    expect(issues[0].message).toMatch(/no loop/);
  });

  it('refuses a hole wider than its bore, naming the pad and the bore there', () => {
    const issues = issuesOf(
      changed((d) => {
        d.holes[0].diameterMm = 70;
        d.setup.keys[0].padDiameterMm = 75;
      }),
    );
    expect(issues.some((i) => /^holes\[\d+\]/.test(i.path) && /bore/.test(i.message))).toBe(true);
  });

  it('never throws, whatever it is given', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 5 }), (input) => {
        const outcome = loadHorn(input);
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
  const { document } = demoHorn('alto');

  it('accepts the horn’s own', () => {
    expect(loadSetup(document.setup, document).ok).toBe(true);
  });

  it('lists a strange pad, one set twice, one forgotten and one too small for its hole', () => {
    const setup = structuredClone(document.setup);
    setup.keys[0].pad = 'nothing';
    setup.keys[1] = { ...setup.keys[2] };
    setup.keys[3].padDiameterMm = 3;
    const outcome = loadSetup(setup, document);
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    const codes = outcome.issues.map((i) => i.code);
    for (const code of ['reference', 'duplicate', 'missing', 'range']) expect(codes).toContain(code);
  });
});
