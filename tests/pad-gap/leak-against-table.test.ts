import { describe, expect, it } from 'vitest';
import { readTable, type TableRow } from '../../datasets/pad-gap/table.ts';
import {
  airAtTemperature,
  leakAdmittanceAt,
  makeLeakSlit,
  ringGap,
  WIDEST_LEAK,
} from '../../src/acoustics/index.ts';

/** Air that does not rub: what is left is the length that the solved flows give. */
const air = { ...airAtTemperature(26.85), viscosity: 1e-16 };
const B = 0.01;

/** How far the leak may be off, low and high, as a share of the end length: its mouth has one constant for all pads. */
const NARROW = [-0.01, 0.03] as const;
const WIDE = [-0.02, 0.04] as const;

/** End length of a ring-shaped leak without friction, hole radii. */
function leakLength({ rim, pad, height }: TableRow): number {
  const slit = makeLeakSlit({ holeRadius: B, rimThickness: rim * B }, pad * B, ringGap(height * B));
  const y = new Float64Array(6);
  const f = 300;
  leakAdmittanceAt(slit, f, air, y);
  const impedance = -1 / y[1];
  return -(impedance * Math.PI * B * B) / (2 * Math.PI * f * air.density) / B;
}

const parallel = readTable().filter((r) => r.hinge === Infinity && r.body === Infinity && r.height >= 0.02);
const misses = (from: number, to: number): number[] =>
  parallel
    .filter((r) => r.height >= from && r.height <= to)
    .map((r) => Math.abs(leakLength(r)) / r.length - 1);

describe('a leak without friction, against solved flows of a parallel pad', () => {
  it('has their end length from 0.02 to 0.05 hole radii within −1 and +3 %', () => {
    const all = misses(0.02, 0.05);
    expect(all.length).toBeGreaterThan(150);
    expect(Math.min(...all)).toBeGreaterThan(NARROW[0]);
    expect(Math.max(...all)).toBeLessThan(NARROW[1]);
  });

  it('has it to the end of its range within −2 and +4 %', () => {
    const all = misses(0.05, WIDEST_LEAK);
    expect(all.length).toBeGreaterThan(100);
    expect(Math.min(...all)).toBeGreaterThan(WIDE[0]);
    expect(Math.max(...all)).toBeLessThan(WIDE[1]);
  });
});
