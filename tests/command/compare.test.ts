import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ComparisonReport } from '../../src/documents/comparison-report.ts';
import { compareLoaded } from '../../src/documents/compare-loaded.ts';
import { plusMinusOf } from '../../src/documents/plus-minus.ts';
import { makeAirColumn } from '../../src/acoustics/index.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { run as runProgram } from './run.ts';

const run = (...words: readonly string[]) => runProgram(['compare', ...words]);

const ALTO = 'datasets/horns/demo-alto.json';
const TENOR = 'datasets/horns/demo-tenor.json';

/** mm the E key is raised to, with a ± of its own. */
const E_MM = 9.5;
const E_PLUS_MINUS_MM = 0.15;

describe('compare', () => {
  let folder = '';
  let raised = '';
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'compare-'));
    raised = join(folder, 'raised.json');
    const setup = {
      kind: 'ventwright setup',
      version: 2,
      name: 'E raised',
      origin: 'measured',
      airC: 20,
      keys: [
        {
          pad: 'e',
          openingMm: E_MM,
          measuredAt: 'front',
          readings: { openingMm: { origin: 'measured', plusMinusMm: E_PLUS_MINUS_MM } },
        },
      ],
    };
    writeFileSync(raised, JSON.stringify(setup));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it('sets a horn as it stands beside the same with another setup, in one air, each reading with its ±', () => {
    const { code, out } = run(ALTO, '--setup', raised, '--json');
    expect(code).toBe(0);
    const report = JSON.parse(out) as ComparisonReport;
    expect(report.setups.map((s) => s.sameHornAsFirst)).toEqual([true, true]);
    expect(report.setups[1].label).toBe('E raised');
    expect(report.setups[1].mouthpieceAirC).toBe(report.setups[0].mouthpieceAirC);
    const [first] = report.keys;
    expect(first.id).toBe('e');
    expect(first.setups[1]!.frontMm).toBeCloseTo(E_MM, 9);
    expect(first.setups[1]!.frontPlusMinusMm).toBeCloseTo(E_PLUS_MINUS_MM, 9);
    const f4 = report.notes.find(({ fingering }) => fingering === 'F4')!.differences[0]!;
    expect(f4.cents).toBeGreaterThan(0);
    expect(f4.centsPlusMinus).toBeGreaterThan(0);
    expect(report.sentences[0]).toMatch(/^“E raised” beside “/);
  });

  it('sets horn beside horn, as the core does, and says that examples are examples', () => {
    const { code, out } = run(ALTO, TENOR, '--json');
    expect(code).toBe(0);
    const report = JSON.parse(out) as ComparisonReport;
    const loaded = [demoHorn('alto'), demoHorn('tenor')];
    const airC = loaded[0].documents.setup.airC;
    const air = makeAirColumn(airC === undefined ? {} : { mouthpieceC: airC });
    expect(report).toEqual(compareLoaded(loaded, { air, a4Hz: 440 }));
    expect(report.setups.map((s) => s.sameHornAsFirst)).toEqual([true, false]);
    const examples = loaded.filter(({ documents }) => documents.horn.origin === 'template').length;
    expect(report.warnings.filter((w) => w.includes('example’s bore'))).toHaveLength(examples);
  });

  it('prints a sentence and two tables without --json', () => {
    const { code, out } = run(ALTO, '--setup', raised, '--setup', raised);
    expect(code).toBe(0);
    expect(out.split('\n')[0]).toMatch(/^“E raised” beside/);
    expect(out.split('\n')[1]).toMatch(/^“E raised \(2\)” beside/);
    expect(out).toMatch(/^note +A cents +B cents +C cents/m);
    expect(out).toMatch(/^7 E +\d/m);
  });

  it('wants two to four', () => {
    expect(run(ALTO)).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringContaining('expected 2 to 4') as string,
    });
    expect(run()).toMatchObject({
      code: 2,
      err: expect.stringContaining('at least one horn file') as string,
    });
  });
});

describe('the ± of a horn’s readings', () => {
  it('has every hole of the horn, a hole’s radius at half of its diameter’s', () => {
    const loaded = demoHorn('alto');
    const by = plusMinusOf(loaded).keys;
    expect([...by.keys()].sort()).toEqual(loaded.horn.holes.map(({ id }) => id).sort());
    for (const hole of loaded.horn.holes) {
      const { opening, holeRadius } = by.get(hole.id)!;
      expect(holeRadius).toBeGreaterThan(0);
      expect(opening === undefined).toBe(hole.hinge === null);
    }
    const { horn, setup } = loaded.documents;
    const measured = {
      ...loaded,
      documents: {
        setup,
        horn: {
          ...horn,
          holes: horn.holes.map((hole) =>
            hole.id === 'e'
              ? { ...hole, readings: { diameterMm: { origin: 'measured' as const, plusMinusMm: 0.08 } } }
              : hole,
          ),
        },
      },
    };
    expect(plusMinusOf(measured).keys.get('e')!.holeRadius).toBeCloseTo(0.04e-3, 12);
  });
});
