import { describe, expect, it } from 'vitest';
import { compareSetups, makeAirColumn, ownPose, withOpening, type Setup } from '../../src/acoustics/index.ts';
import { reportComparison, type ComparedKeyReport } from '../../src/documents/comparison-report.ts';
import { feltWords } from '../../src/documents/felt-words.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';

/** A key that stands apart by this much, mm ± mm; its number says its stack. */
const key = (
  number: number,
  frontMm: number,
  frontPlusMinusMm = 0.3,
  restsOpen = true,
): ComparedKeyReport => ({
  ...{ number, id: `k${number}`, name: `K${number}`, restsOpen, setups: [null, null] },
  differences: [{ frontMm, frontPlusMinusMm, equivalentParallelMm: 0, ventShare: 0, ventSharePlusMinus: 0 }],
});
const felt = (...keys: readonly ComparedKeyReport[]): string | null => feltWords(keys, 0);

describe('what the fingers feel', () => {
  it('is a stack that stands lower as one, with the mean of its keys and of their ±', () => {
    expect(felt(key(6, -1.9), key(7, -2), key(9, -2.1), key(1, 0))).toBe(
      'the lower stack stands 2.0 ± 0.3 mm lower',
    );
    expect(felt(key(6, -1.9), key(7, -2), key(1, -2.1))).toBe('every key stands 2.0 ± 0.3 mm lower');
    expect(felt(key(12, 1), key(14, 1), key(17, 1), key(6, -2))).toBe(
      'the upper stack stands 1.0 ± 0.3 mm higher and K6 2.0 ± 0.3 mm lower',
    );
  });

  it('is told with its ends where the keys of a stack differ by more than their ±', () => {
    expect(felt(key(6, -1), key(7, -2), key(9, -2.8))).toBe(
      'the lower stack stands 1.0 to 2.8 mm lower (each ± 0.3 mm)',
    );
  });

  it('is no stack where one of its open keys stands the other way or as before; a shut key is none of it', () => {
    expect(felt(key(6, -2), key(7, -2), key(9, 2))).toMatch(/^K6 stands 2\.0 ± 0\.3 mm lower, K7 2\.0/);
    expect(felt(key(6, -2), key(7, -2), key(9, -2), key(10, 0))).toMatch(/^K6 stands .* K9 2\.0/);
    expect(felt(key(6, -2), key(7, -2), key(9, -2), key(8, 0, 0.3, false))).toMatch(/^the lower stack/);
  });

  it('counts the keys it does not name', () => {
    expect(felt(key(1, 1), key(2, 2), key(3, 3), key(20, 4), key(21, 5))).toBe(
      'K21 stands 5.0 ± 0.3 mm higher, K20 4.0 ± 0.3 mm higher, K3 3.0 ± 0.3 mm higher and 2 more keys',
    );
  });

  it('claims no more than the ± allow', () => {
    expect(felt(key(6, -0.6, 0.7))).toBe('no key can be shown to stand 0.5 mm higher or lower');
    expect(felt(key(6, -0.1, 0.3), key(1, 0, 0))).toBe('every key stands alike, within 0.5 mm');
    expect(felt()).toBeNull();
  });

  it('is found in two setups of a horn whose lower stack was lowered', () => {
    const { horn, setup } = demoHorn('alto');
    const stack = ['d', 'e', 'f'];
    const lowered = stack.reduce<Setup>((now, id) => {
      const { front } = ownPose(horn, setup, id);
      return withOpening(now, id, { at: 'front', height: front - 2e-3 });
    }, setup);
    const side = (label: string, of: Setup) => ({ label, horn, setup: of, air: makeAirColumn() });
    const { sentences, keys } = reportComparison(compareSetups([side('A', setup), side('B', lowered)]));
    // The arms of all three hold the auxiliary, so it comes down with them by its own ratio.
    expect(keys.find(({ id }) => id === 'f-sharp-auxiliary')!.differences[0]!.frontMm).toBeLessThan(0);
    expect(sentences[0]).toMatch(/^“B” beside “A”: the lower stack stands .* lower.*\. [A-Z]/);
  });
});
