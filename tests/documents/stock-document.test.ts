import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitPads, USUAL_STOCK } from '../../src/acoustics/index.ts';
import {
  readStock,
  STOCK_FIELDS,
  stockFromDocument,
  usualStock,
  type StockDocument,
} from '../../src/documents/stock-document.ts';
import { readWith } from '../../src/documents/schema-parts.ts';
import { visitSchema } from '../../src/documents/visit-document.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';

const validator = (file: string) =>
  new Ajv2020({ allErrors: true, strict: false, formats: { date: true } }).compile(
    JSON.parse(readFileSync(new URL(`../../datasets/schemas/${file}`, import.meta.url), 'utf8')) as object,
  );

const messages = (input: unknown): string[] => {
  const read = readStock(input);
  return read.ok ? [] : read.issues.map((issue) => issue.message);
};

describe('a stock document', () => {
  it('to begin with is the usual stock and fits its published schema', () => {
    const { thicknesses, bed, ...rest } = stockFromDocument(usualStock());
    thicknesses.forEach((t, i) => expect(t).toBeCloseTo(USUAL_STOCK.thicknesses[i], 9));
    expect(bed.least).toBeCloseTo(USUAL_STOCK.bed.least, 9);
    expect(bed.most).toBeCloseTo(USUAL_STOCK.bed.most, 9);
    expect(rest.tolerance).toBeCloseTo(USUAL_STOCK.tolerance, 9);
    expect(rest.seat).toBeCloseTo(USUAL_STOCK.seat, 9);
    const valid = validator('stock-1.schema.json');
    expect([valid(usualStock()), valid.errors]).toEqual([true, null]);
    expect(readStock(usualStock())).toEqual({ ok: true, value: usualStock() });
  });

  it('says field, value, unit and what was expected, of every fault at once', () => {
    expect(messages({ ...usualStock(), toleranceMm: 4, seatMm: 'soft' })).toEqual([
      'invalid ± of a batch’s thickness: 4 mm; expected 0 to 1 mm',
      'invalid seat depth, rim into the closed pad: "soft" mm; expected 0 to 3 mm',
    ]);
    expect(messages({ ...usualStock(), leastBedMm: 0.8, mostBedMm: 0.4 })).toEqual([
      'invalid greatest bed of adhesive: 0.4 mm; expected at least the least, 0.8 mm',
    ]);
    expect(messages({ ...usualStock(), thicknessesMm: [4.1, 4.6, 4.1] })).toEqual([
      'invalid pad thickness: 4.1 mm; expected one the stock has not yet',
    ]);
    expect(messages({ ...usualStock(), thicknessesMm: [] })).toEqual([
      'expected at least one thickness of pads',
    ]);
    expect(messages({ ...usualStock(), version: 7 })[0]).toContain('written by a newer Ventwright');
  });

  it('that is read is one that pads can be fitted from, whatever its numbers', () => {
    const { horn } = demoHorn('alto');
    const hundredths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 100);
    const number = hundredths(-2, 110);
    const stock = fc.record({
      thicknessesMm: fc.array(hundredths(40, 1210), { maxLength: 4 }),
      ...(Object.fromEntries(STOCK_FIELDS.map((field) => [field, number])) as Record<
        (typeof STOCK_FIELDS)[number],
        typeof number
      >),
    });
    let accepted = 0;
    fc.assert(
      fc.property(stock, hundredths(100, 800), (numbers, floorMm) => {
        const read = readStock({ ...usualStock(), ...numbers } satisfies StockDocument);
        if (!read.ok) return;
        accepted++;
        const [fit] = fitPads(
          horn,
          [{ pad: 'low-b', floor: floorMm / 1000, padDiameter: 0.045 }],
          stockFromDocument(read.value),
        );
        expect(Object.values(fit.fits ? fit.choice : fit.nearest).every(Number.isFinite)).toBe(true);
      }),
      { seed: 6, numRuns: 3000 },
    );
    expect(accepted).toBeGreaterThan(20);
  });
});

describe('a visit', () => {
  const visit = {
    kind: 'ventwright visit',
    version: 1,
    date: '2026-05-31',
    airC: 25,
    a4Hz: 440,
    asFound: 'a',
    proposed: 'b',
    asSet: 'c',
  };

  it('keeps the seats that leak and the work done, and is valid without either', () => {
    const valid = validator('visit-1.schema.json');
    const worked = {
      ...visit,
      leakingSeats: [{ pad: 'e' }, { pad: 'f', gapMm: 0.05 }],
      work: [
        { move: 'seat e', valueMm: 0, read: false },
        { move: 'link e > bis', valueMm: -0.05, read: true },
      ],
    };
    for (const document of [visit, worked]) {
      expect(readWith(visitSchema, document)).toEqual({ ok: true, value: document });
      expect([valid(document), valid.errors]).toEqual([true, null]);
    }
    const bad = readWith(visitSchema, { ...visit, work: [{ move: 'seat e', valueMm: 90, read: true }] });
    expect(bad.ok ? [] : bad.issues.map((i) => [i.path, i.message])).toEqual([
      ['work[0].valueMm', 'invalid value after the move: 90 mm; expected -10 to 60 mm'],
    ]);
  });
});
