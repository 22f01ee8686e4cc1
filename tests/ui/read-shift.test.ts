import { describe, expect, it } from 'vitest';
import { readShift } from '../../src/ui/state/read-shift.ts';

const valueOf = (text: string, unit: 'mm' | 'thou' = 'mm'): number | string => {
  const read = readShift(text, 'shift of all keys', unit);
  return read.ok ? read.value : read.message;
};

describe('how much higher or lower, as it is typed', () => {
  it('is a length with its way, by sign or by word', () => {
    for (const [text, mm] of [
      ['1 mm lower', -1],
      ['−1', -1],
      ['-1 mm', -1],
      ['– 0,5', -0.5],
      ['+0.5mm', 0.5],
      ['0.5 higher', 0.5],
      ['2 up', 2],
      ['2mm down', -2],
      ['0', 0],
      ['1/16 lower', -25.4 / 16],
    ] as const)
      expect([text, valueOf(text)]).toEqual([text, mm]);
    expect(valueOf('-40', 'thou')).toBe(-1.016);
  });

  it('is refused in a sentence without its way, with two of them, or too far', () => {
    for (const text of ['1 mm', '1', '−1 lower', 'lower', '', '1 mm sideways']) {
      expect(valueOf(text)).toBe(
        `invalid shift of all keys: “${text}”; expected a length and which way, such as 1 mm lower, +0.5 mm or −0.020 in`,
      );
    }
    expect(valueOf('25 mm lower')).toBe(
      'invalid shift of all keys: 25.0 mm (0.984 in); expected at most 20.0 mm (0.787 in) either way',
    );
  });
});
