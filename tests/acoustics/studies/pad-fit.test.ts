import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  closingContact,
  fitPads,
  holeOf,
  orderPads,
  USUAL_STOCK,
  type CupToFit,
} from '../../../src/acoustics/index.ts';
import { demoHorn } from '../demo-horns.ts';

const { horn } = demoHorn('alto');
const MM = 1e-3;
const MICROMETRE = 1e-6;
const cup = (pad: string, floorMm: number, more: Partial<CupToFit> = {}): CupToFit => ({
  ...{ pad, floor: floorMm * MM, padDiameter: 34 * MM },
  ...more,
});
const fit = (one: CupToFit, stock = USUAL_STOCK) => fitPads(horn, [one], stock)[0];

describe('a pad for a cup', () => {
  it('fills it: pad and bed, less the seat, are the floor’s height', () => {
    const floors = fc.double({ min: 1, max: 9, noNaN: true });
    fc.assert(
      fc.property(floors, (floorMm) => {
        const found = fit(cup('e', floorMm));
        const pad = found.fits ? found.choice : found.nearest;
        const proud = pad.thickness + pad.bed - USUAL_STOCK.seat - floorMm * MM;
        expect(Math.abs(proud - (found.fits ? 0 : found.leftOver))).toBeLessThan(1e-12);
        expect(pad.bed).toBeGreaterThan(USUAL_STOCK.bed.least - 2e-9);
        expect(pad.bed).toBeLessThan(USUAL_STOCK.bed.most + 2e-9);
        if (!found.fits) expect(Math.abs(found.leftOver)).toBeGreaterThan(0);
      }),
      { seed: 9, numRuns: 400 },
    );
  });

  it('is the thickest that leaves the bed in range for the whole batch', () => {
    // 4.572 mm on 0.528, 4.064 on 1.036 (too much bed), 5.08 on 0.02 (too little).
    const found = fit(cup('e', 4.9));
    if (!found.fits) throw new Error('fits');
    expect(found.choice.thickness).toBeCloseTo(4.572e-3, 9);
    expect(found.wholeBatch).toBe(true);
    expect(found.others).toEqual([]);
  });

  it('is the thicker of two that fit alike, the other named beside it', () => {
    const stock = { ...USUAL_STOCK, thicknesses: [4.2 * MM, 4.5 * MM] };
    const found = fit(cup('e', 4.7), stock);
    if (!found.fits) throw new Error('fits');
    expect([found.choice, ...found.others].map((p) => Math.round(p.thickness / MICROMETRE))).toEqual([
      4500, 4200,
    ]);
  });

  it('says so where only a part of the batch fits', () => {
    // 4.064 mm leaves 0.236 of bed: a pad 0.1 mm thicker would leave 0.136.
    const stock = { ...USUAL_STOCK, thicknesses: [4.064 * MM] };
    expect(fit(cup('e', 4.1), stock)).toMatchObject({ fits: true, wholeBatch: false });
    expect(fit(cup('e', 4.2), stock)).toMatchObject({ fits: true, wholeBatch: true });
  });

  it('names what would touch first, and the thickness wanted, where nothing fits', () => {
    const low = fit(cup('e', 2));
    if (low.fits) throw new Error('fits');
    expect(low.leftOver).toBeGreaterThan(0);
    expect(low.contact.touches).toBe('back');
    expect(low.contact).toEqual(closingContact(holeOf(horn, 'e').hinge!, 16.25 * MM, low.leftOver));
    expect(low.wanted.from / MM).toBeCloseTo(1.2, 9);
    expect(low.wanted.to / MM).toBeCloseTo(2, 9);
    const deep = fit(cup('e', 7.5));
    if (deep.fits) throw new Error('fits');
    expect(deep.leftOver).toBeLessThan(0);
    expect(deep.contact.touches).toBe('front');
    expect(deep.nearest.thickness).toBeCloseTo(5.08e-3, 9);
  });

  it('of a batch with a tolerance touches at the back when thick and at the front when thin', () => {
    const found = fit(cup('e', 4.9));
    if (!found.fits) throw new Error('fits');
    expect([found.thickest.touches, found.thinnest.touches]).toEqual(['back', 'front']);
    expect(found.thickest.gap).toBeGreaterThan(found.thinnest.gap);
  });

  it('is the largest size that goes into the cup, or the size the horn has', () => {
    const size = (one: CupToFit): number => {
      const found = fit(one);
      return (found.fits ? found.choice : found.nearest).diameter;
    };
    expect(Math.abs(size(cup('e', 4.9, { cupDiameter: 34.4 * MM })) - 34 * MM)).toBeLessThan(MICROMETRE);
    expect(Math.abs(size(cup('e', 4.9, { cupDiameter: 34.5 * MM })) - 34.5 * MM)).toBeLessThan(MICROMETRE);
    expect(Math.abs(size(cup('e', 4.9, { padDiameter: 34.2 * MM })) - 34 * MM)).toBeLessThan(MICROMETRE);
  });

  it('reckons with a seat of its own', () => {
    const soft = fit(cup('e', 4.9, { seat: 0.5 * MM }));
    if (!soft.fits) throw new Error('fits');
    expect((soft.choice.bed + soft.choice.thickness) / MM).toBeCloseTo(5.4, 9);
  });

  it('is refused for cups and stocks that are none', () => {
    expect(() => fit(cup('e', 0))).toThrow('invalid cup floor of E: 0 mm; expected more than 0 mm');
    expect(() => fit(cup('nowhere', 4))).toThrow('invalid key');
    expect(() => fit(cup('e', 4), { ...USUAL_STOCK, thicknesses: [] })).toThrow(
      'invalid stock: no thickness',
    );
    expect(() => fit(cup('e', 4), { ...USUAL_STOCK, bed: { least: 1 * MM, most: 0.5 * MM } })).toThrow(
      'invalid adhesive bed: 1 to 0.5 mm',
    );
  });
});

describe('the order list', () => {
  const cups = [
    cup('e', 4.9),
    cup('d', 4.95),
    cup('f', 4.4, { padDiameter: 32 * MM }),
    cup('g', 1.5, { padDiameter: 26.5 * MM }),
    cup('a', 4.95, { padDiameter: 23 * MM }),
  ];
  const fits = fitPads(horn, cups, USUAL_STOCK);
  const lines = orderPads(fits);

  it('groups pads of one size and thickness, large ones first, and leaves out what nothing fits', () => {
    expect(lines.map((l) => l.pads)).toEqual([['e', 'd'], ['f'], ['a']]);
    expect(lines.map((l) => Math.round(l.diameter / MM))).toEqual([34, 32, 23]);
  });

  it('holds every cup that something fits, once', () => {
    const fitting = fits.filter((f) => f.fits).map((f) => f.pad);
    expect(lines.flatMap((l) => l.pads).sort()).toEqual(fitting.sort());
  });
});
