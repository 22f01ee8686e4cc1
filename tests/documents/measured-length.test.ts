import { describe, expect, it } from 'vitest';
import { parseMeasuredLength } from '../../src/documents/measured-length.ts';

/** mm: inches are turned into millimetres by the definition, but for rounding. */
const ROUNDING_MM = 1e-12;

const read = (typed: string, assumed: 'mm' | 'thou' = 'mm') =>
  parseMeasuredLength(typed, 'rim thickness', assumed);

describe('a length with its ±', () => {
  it('is read however the ± is written', () => {
    for (const typed of ['1.0 ± 0.1', '1,0±0,1 mm', '1 mm +/- 0.1', '1.0 +- 0.1 mm']) {
      expect(read(typed)).toEqual({ ok: true, mm: 1, plusMinusMm: 0.1 });
    }
  });

  it('has one unit where one is written, and each its own where both are', () => {
    const inches = read('0.310 in ± 0.004');
    expect(inches).toMatchObject({ ok: true });
    expect(inches.ok && Math.abs(inches.mm - 7.874)).toBeLessThan(ROUNDING_MM);
    expect(inches.ok && Math.abs(inches.plusMinusMm! - 0.1016)).toBeLessThan(ROUNDING_MM);
    expect(read('310 ± 4', 'thou')).toEqual(inches);
    expect(read('1 in ± 0.1 mm')).toEqual({ ok: true, mm: 25.4, plusMinusMm: 0.1 });
  });

  it('may come without one', () => {
    expect(read('1.0')).toEqual({ ok: true, mm: 1, plusMinusMm: null });
  });

  it('is refused with a sentence that names what is wrong', () => {
    const message = (typed: string): string => {
      const outcome = read(typed);
      return outcome.ok ? '' : outcome.message;
    };
    expect(message('1.0 ± wide')).toMatch(/^invalid ± of the rim thickness: “wide”/);
    expect(message('1.0 ±')).toMatch(/^invalid ± of the rim thickness/);
    expect(message('tall ± 0.1')).toMatch(/^invalid rim thickness/);
    expect(message('1.0 ± 200')).toBe('invalid ± of the rim thickness: 200 mm; expected 0 to 100 mm');
  });
});
