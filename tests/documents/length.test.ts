import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLength } from '../../src/documents/length.ts';
import { relative, ROUNDING } from '../acoustics/tolerances.ts';
import { published } from '../published/published-values.ts';

const { mmPerInch } = published<{ mmPerInch: number }>('international-inch-1959/inch');

function mmOf(typed: string, assumed: 'mm' | 'thou' = 'mm'): number {
  const outcome = parseLength(typed, 'opening', assumed);
  return outcome.ok ? outcome.mm : NaN;
}

describe('a length as the bench writes it', () => {
  it.each([
    ['0.310 in', 0.31 * mmPerInch],
    ['.160"', 0.16 * mmPerInch],
    ['5/16', (5 / 16) * mmPerInch],
    ['5/32 in', (5 / 32) * mmPerInch],
    ['1 1/8 in', 1.125 * mmPerInch],
    ['310 thou', 0.31 * mmPerInch],
    ['7,9 mm', 7.9],
    ['7.9 mm', 7.9],
    ['7.9', 7.9],
    [' 7.9MM ', 7.9],
    ['0.79 cm', 7.9],
  ])('%s is read', (typed, mm) => {
    expect(relative(mmOf(typed), mm)).toBeLessThan(ROUNDING);
  });

  it('without a unit is in the unit of the bench', () => {
    expect(relative(mmOf('310', 'thou'), 0.31 * mmPerInch)).toBeLessThan(ROUNDING);
  });

  it.each(['', 'wide', '3 feet', '1/0', '-2 mm', '3 4 mm', '7.9.1', 'constructor', '2 constructor', '1e400'])(
    '“%s” is refused with a sentence',
    (typed) => {
      const outcome = parseLength(typed, 'opening', 'mm');
      expect(outcome.ok).toBe(false);
      if (!outcome.ok) expect(outcome.message).toMatch(/^invalid opening: .*expected/);
    },
  );

  it('is the same in millimetres, inches and thousandths', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2000 }), (thou) => {
        const mm = mmOf(`${thou} thou`);
        expect(relative(mmOf(`${(thou / 1000).toFixed(3)} in`), mm)).toBeLessThan(ROUNDING);
        expect(relative(mm, (thou / 1000) * mmPerInch)).toBeLessThan(ROUNDING);
      }),
      { seed: 1101, numRuns: 200 },
    );
  });

  it('in millimetres is the number typed, without dust', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99999 }), (microns) => {
        expect(mmOf(`${microns / 1000} mm`)).toBe(microns / 1000);
      }),
      { seed: 1103, numRuns: 300 },
    );
  });

  it('typed at random never throws', () => {
    fc.assert(
      fc.property(fc.string(), (typed) => {
        const outcome = parseLength(typed, 'opening', 'mm');
        expect(outcome.ok ? Number.isFinite(outcome.mm) : outcome.message.length > 0).toBe(true);
      }),
      { seed: 1102, numRuns: 500 },
    );
  });
});
