import { describe, expect, it } from 'vitest';
import { barePlusMinus } from '../../src/documents/length-plus-minus.ts';
import { tenths } from '../../src/documents/tenths.ts';

describe('a ± that is something', () => {
  it('never reads as nothing, however small it is', () => {
    for (const size of [0.3, 0.04, 0.006, 0.004, 1e-7]) {
      for (const text of [barePlusMinus(size, 'mm'), barePlusMinus(size, 'thou'), tenths(size)]) {
        expect(Number(text.replace('<', ''))).toBeGreaterThan(0);
      }
    }
    expect(barePlusMinus(0.004, 'mm')).toBe('<0.01');
    expect(tenths(0.004)).toBe('<0.01');
  });

  it('is nothing only where nothing can be off', () => {
    expect([barePlusMinus(0, 'mm'), tenths(0)]).toEqual(['0.0', '0.0']);
  });
});
