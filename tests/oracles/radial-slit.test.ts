import { abs, add, complex, divide, subtract, type Complex } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { airAtTemperature, leakAdmittanceAt, makeLeakSlit, ringGap } from '../../src/acoustics/index.ts';
import { radialSlitImpedance } from './radial-slit.ts';

/** What stepping in 400 steps is good to. */
const STEPPED = 1e-8;
/** The gap's own volume, left out by the leak, as a share of what leak and chimney take up. */
const OWN_VOLUME = 3e-3;

const air = airAtTemperature(26.85);
const hole = { holeRadius: 0.013, rimThickness: 0.0011 };
const b = hole.holeRadius;
const r2 = b + hole.rimThickness;
const CHIMNEY = 0.004;

const one = (z: unknown): Complex => z as Complex;

/** The leak as the network has it, and as the oracle steps it, Pa⁻¹·s⁻¹·m³. */
function bothWays(gap: number, f: number, volume: boolean): { ours: Complex; theirs: Complex } {
  const y = new Float64Array(6);
  leakAdmittanceAt(makeLeakSlit(hole, r2, ringGap(gap)), f, air, y);
  // End corrections as inertances of the whole ring: the outer one loads the slit, the inner one stands before it.
  const inertance = (x: number): Complex => complex(0, f * air.density * x);
  const load = inertance((Math.log(r2 / gap) + 2.5) / (Math.PI * r2));
  const before = inertance((2 * (Math.log(b / gap) - 0.7104)) / (Math.PI * b));
  const slit = radialSlitImpedance({ gap, inner: b, outer: r2 }, f, air, load, volume);
  return { ours: complex(y[0], y[1]), theirs: one(divide(1, add(before, slit))) };
}

const size = (z: Complex): number => Number(abs(z));

describe('a ring that leaks, against the slit’s own equations stepped outwards', () => {
  const cases = [0.01, 0.025, 0.05, 0.1, 0.3].flatMap((gapMm) =>
    [120, 440, 1500].map((f): [number, number] => [gapMm * 1e-3, f]),
  );

  it.each(cases)('is the same at %f m and %f Hz', (gap, f) => {
    const { ours, theirs } = bothWays(gap, f, false);
    expect(size(one(subtract(ours, theirs))) / size(theirs)).toBeLessThan(STEPPED);
  });

  it.each(cases)('loses little by leaving out its volume at %f m and %f Hz', (gap, f) => {
    const { ours, theirs } = bothWays(gap, f, true);
    const chimney = (2 * Math.PI * f * Math.PI * b * b * CHIMNEY) / (air.density * air.soundSpeed ** 2);
    expect(size(one(subtract(ours, theirs))) / (size(theirs) + chimney)).toBeLessThan(OWN_VOLUME);
  });
});
