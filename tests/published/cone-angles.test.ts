import { describe, expect, it } from 'vitest';
import { radiusAt } from '../../src/acoustics/index.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { printedDecimals } from '../acoustics/tolerances.ts';
import { published } from './published-values.ts';

describe('the cone of the demo tenor', () => {
  it('has the half-angle of a tenor on the UNSW page, along its body', () => {
    const { tenorHalfAngleDeg } = published<{ tenorHalfAngleDeg: number }>('unsw/cone-angles');
    const { horn } = demoHorn('tenor');
    const [from, to] = [0.45, 0.6].map((share) => share * horn.bore.length);
    const angle = Math.atan((radiusAt(horn.bore, to) - radiusAt(horn.bore, from)) / (to - from));
    // Stored diameters are rounded to 0.01 mm: over 0.2 m that is less than the printed digit.
    expect(Math.abs((angle * 180) / Math.PI - tenorHalfAngleDeg)).toBeLessThan(printedDecimals(2));
  });
});
