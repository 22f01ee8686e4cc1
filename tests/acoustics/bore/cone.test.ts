import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airAtTemperature,
  coneTwoPortAt,
  makeConePiece,
  makeTwoPort,
  REFERENCE_C,
  type Air,
  type TwoPort,
} from '../../../src/acoustics/index.ts';
import { inviscid } from '../lossless.ts';
import { LONG_ROUNDING, relative, ROUNDING } from '../tolerances.ts';

/** A cone from 2 to 40 mm has entries hundreds of times those of a tube: their digits go in the product. */
const STEEP_ROUNDING = 1e-8;
const air = airAtTemperature(REFERENCE_C);
const still = inviscid(air);
const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

function twoPortOf(length: number, r1: number, r2: number, f: number, with_: Air): TwoPort {
  const m = makeTwoPort();
  coneTwoPortAt(makeConePiece(length, r1, r2, with_), f, m, false);
  return m;
}

/** m·n as complex 2×2 matrices. */
function product(m: TwoPort, n: TwoPort): TwoPort {
  const out = makeTwoPort();
  for (const row of [0, 4]) {
    for (const column of [0, 2]) {
      for (const [i, j] of [
        [row, column],
        [row + 2, column + 4],
      ]) {
        out[row + column] += m[i] * n[j] - m[i + 1] * n[j + 1];
        out[row + column + 1] += m[i] * n[j + 1] + m[i + 1] * n[j];
      }
    }
  }
  return out;
}

/** Largest difference of two two-ports, each entry over the scale it has in a tube of impedance z. */
function apart(m: TwoPort, n: TwoPort, z: number): number {
  const scale = [1, z, 1 / z, 1];
  return Math.max(...scale.map((s, i) => Math.hypot(m[2 * i] - n[2 * i], m[2 * i + 1] - n[2 * i + 1]) / s));
}

/** Root of a real function between two ends, by plain bisection. */
function bisect(g: (x: number) => number, a: number, b: number): number {
  const sign = Math.sign(g(a));
  for (let i = 0; i < 100; i++) {
    const middle = 0.5 * (a + b);
    if (Math.sign(g(middle)) === sign) a = middle;
    else b = middle;
  }
  return 0.5 * (a + b);
}

describe('a cone without losses', () => {
  it.each([
    [0.1, 0.6],
    [0.3, 0.5],
    [0.05, 1],
  ])(
    'from %d to %d m from its apex, shut at the small end and open at the wide, obeys tan kL = −kx₁',
    (x1, x2) => {
      const L = x2 - x1;
      const slope = 0.03;
      for (let n = 1; n <= 4; n++) {
        // One root of tan kL = −kx₁ in each (n − ½, n)·π.
        const kL = bisect((s) => Math.sin(s) + (s * x1 * Math.cos(s)) / L, (n - 0.5) * Math.PI, n * Math.PI);
        const wanted = (kL * still.soundSpeed) / (2 * Math.PI * L);
        // Shut at x₁ and no pressure at x₂: u₁ = D·u₂ = 0.
        const found = bisect(
          (f) => twoPortOf(L, slope * x1, slope * x2, f, still)[6],
          0.98 * wanted,
          1.02 * wanted,
        );
        expect(relative(found, wanted)).toBeLessThan(LONG_ROUNDING);
      }
    },
  );

  it('complete to its apex resonates at n·c/2x₂', () => {
    const x2 = 0.7;
    const x1 = 1e-5;
    for (let n = 1; n <= 4; n++) {
      const wanted = (n * still.soundSpeed) / (2 * x2);
      const found = bisect(
        (f) => twoPortOf(x2 - x1, 0.03 * x1, 0.03 * x2, f, still)[6],
        0.95 * wanted,
        1.05 * wanted,
      );
      // What the missing tip leaves is of the order of its share.
      expect(relative(found, wanted)).toBeLessThan(x1 / x2);
    }
  });

  it('is the sum of its halves, wherever cut', () => {
    fc.assert(
      fc.property(
        between(0.01, 1),
        between(0.002, 0.04),
        between(0.002, 0.04),
        between(0.05, 0.95),
        between(20, 3000),
        (length, r1, r2, cut, f) => {
          const middle = r1 + cut * (r2 - r1);
          const whole = twoPortOf(length, r1, r2, f, still);
          const halves = product(
            twoPortOf(cut * length, r1, middle, f, still),
            twoPortOf((1 - cut) * length, middle, r2, f, still),
          );
          const z = (air.density * air.soundSpeed) / (Math.PI * r1 * r2);
          expect(apart(whole, halves, z) / (r1 / r2 + r2 / r1)).toBeLessThan(STEEP_ROUNDING);
        },
      ),
      { seed: 401, numRuns: 300 },
    );
  });
});

describe('a cylinder', () => {
  it('without losses, shut at one end, resonates at odd quarter waves', () => {
    for (let n = 1; n <= 4; n++) {
      const wanted = ((2 * n - 1) * still.soundSpeed) / (4 * 0.5);
      const found = bisect((f) => twoPortOf(0.5, 0.01, 0.01, f, still)[6], wanted * 0.9, wanted * 1.1);
      expect(relative(found, wanted)).toBeLessThan(LONG_ROUNDING);
    }
  });

  it('without losses, open at both ends, resonates at half waves', () => {
    for (let n = 1; n <= 4; n++) {
      const wanted = (n * still.soundSpeed) / (2 * 0.5);
      const found = bisect((f) => twoPortOf(0.5, 0.01, 0.01, f, still)[3], wanted * 0.9, wanted * 1.1);
      expect(relative(found, wanted)).toBeLessThan(LONG_ROUNDING);
    }
  });

  it('with losses is the sum of its halves, wherever cut', () => {
    fc.assert(
      fc.property(
        between(0.01, 0.8),
        between(0.0005, 0.03),
        between(0.05, 0.95),
        between(20, 3000),
        (length, r, cut, f) => {
          const whole = twoPortOf(length, r, r, f, air);
          const halves = product(
            twoPortOf(cut * length, r, r, f, air),
            twoPortOf((1 - cut) * length, r, r, f, air),
          );
          const size = Math.hypot(whole[0], whole[1]) + 1;
          const z = (air.density * air.soundSpeed) / (Math.PI * r * r);
          expect(apart(whole, halves, z) / size).toBeLessThan(LONG_ROUNDING);
        },
      ),
      { seed: 402, numRuns: 300 },
    );
  });

  it('is the limit of a cone whose radii meet', () => {
    const straight = twoPortOf(0.04, 0.01, 0.01, 500, air);
    const z = (air.density * air.soundSpeed) / (Math.PI * 1e-4);
    for (const taper of [1e-5, 1e-7, 1e-9]) {
      const cone = twoPortOf(0.04, 0.01, 0.01 * (1 + taper), 500, air);
      expect(apart(cone, straight, z)).toBeLessThan(3 * taper);
    }
  });
});

describe('a cone turned round', () => {
  it('has A and D changed over, B and C kept', () => {
    const there = twoPortOf(0.05, 0.008, 0.012, 700, air);
    const back = twoPortOf(0.05, 0.012, 0.008, 700, air);
    for (const [i, j] of [
      [0, 6],
      [1, 7],
      [2, 2],
      [3, 3],
      [4, 4],
      [5, 5],
    ]) {
      expect(Math.abs(there[i] - back[j])).toBeLessThan(ROUNDING * Math.max(1, Math.abs(there[i])));
    }
  });
});

describe('making a cone piece', () => {
  it.each([
    [0, 0.01, 0.01, 'length'],
    [NaN, 0.01, 0.01, 'length'],
    [0.1, -0.01, 0.01, 'bore radius'],
    [0.1, 0.01, NaN, 'bore radius'],
  ])('refuses length %d and radii %d, %d', (length, r1, r2, name) => {
    expect(() => makeConePiece(length, r1, r2, air)).toThrow(
      expect.objectContaining({ message: expect.stringContaining(`invalid ${name}`) as string }),
    );
  });
});
