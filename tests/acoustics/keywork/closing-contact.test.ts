import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closingContact, levelledTurn } from '../../../src/acoustics/index.ts';
import { LONG_ROUNDING, relative } from '../tolerances.ts';

const hinge = { distance: 0.0215, height: 0.001 };
const SEAT = 0.0162;
/** First order in Δ/L: what the bench formula leaves out at Δ = 0.01 mm. */
const FIRST_ORDER = 2e-3;

/** Height over the rim point at x of a face that leans by θ and stands Δ proud, by turning its points one by one. */
function faceHeight(x: number, angle: number, proud: number): number {
  // A point of the face at s, Δ + z_r below the rod's level when level: turned, it lies at
  //   x = s cos θ + (z_r + Δ) sin θ,  z = z_r + s sin θ − (z_r + Δ) cos θ. Find s for x by bisection.
  let low = -0.2;
  let high = 0.2;
  for (let i = 0; i < 200; i++) {
    const s = (low + high) / 2;
    if (s * Math.cos(angle) + (hinge.height + proud) * Math.sin(angle) < x) low = s;
    else high = s;
  }
  return hinge.height + low * Math.sin(angle) - (hinge.height + proud) * Math.cos(angle);
}

describe('a pad that meets its rim out of parallel', () => {
  it('touches at the back where it is too thick, at the front where it is too thin', () => {
    expect(closingContact(hinge, SEAT, 0.2e-3).touches).toBe('back');
    expect(closingContact(hinge, SEAT, -0.2e-3).touches).toBe('front');
    expect(closingContact(hinge, SEAT, 0)).toEqual({ touches: 'all round', angle: 0, gap: 0 });
    expect(closingContact({ distance: Infinity, height: 0 }, SEAT, 1e-3).touches).toBe('all round');
  });

  it('touches there and nowhere below the rim, and leaves that gap on the other side', () => {
    const proud = fc.double({ min: -1e-3, max: 1e-3, noNaN: true }).filter((x) => Math.abs(x) > 1e-6);
    fc.assert(
      fc.property(proud, (by) => {
        const { angle, gap, touches } = closingContact(hinge, SEAT, by);
        const [back, front] = [-SEAT, SEAT].map((r) => faceHeight(hinge.distance + r, angle, by));
        const [meets, gapes] = touches === 'back' ? [back, front] : [front, back];
        expect(Math.abs(meets)).toBeLessThan(1e-12);
        expect(relative(gapes, gap)).toBeLessThan(LONG_ROUNDING);
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it('leaves 2rΔ/(L − r) or 2rΔ/(L + r): the bench’s 2rΔ/L lies between', () => {
    const by = 0.01e-3;
    const flat = { ...hinge, height: 0 };
    const thick = closingContact(flat, SEAT, by).gap;
    const thin = closingContact(flat, SEAT, -by).gap;
    expect(relative(thick, (2 * SEAT * by) / (flat.distance - SEAT))).toBeLessThan(FIRST_ORDER);
    expect(relative(thin, (2 * SEAT * by) / (flat.distance + SEAT))).toBeLessThan(FIRST_ORDER);
    const bench = (2 * SEAT * by) / flat.distance;
    expect(thin).toBeLessThan(bench);
    expect(thick).toBeGreaterThan(bench);
  });

  it('is refused where the rod is under the pad, or where the pad cannot come over the rim', () => {
    expect(() => closingContact(hinge, 0.03, 1e-4)).toThrow('invalid hinge distance');
    expect(() => closingContact(hinge, SEAT, 0.02)).toThrow('expected one that this hinge can bring over it');
  });
});

describe('a levelled pad', () => {
  it('stops the key before its old place by Δt over the hinge distance, the rod level with the cup floor', () => {
    const turn = levelledTurn({ distance: 0.02, height: 0.004 }, 0.004, 0.3e-3);
    expect(relative(Math.sin(turn), 0.3e-3 / 0.02)).toBeLessThan(LONG_ROUNDING);
  });

  it('raises the cup floor’s centre by exactly Δt', () => {
    const turn = levelledTurn(hinge, 0.0041, -0.5e-3);
    const above = 0.0041 - hinge.height;
    const raised = hinge.distance * Math.sin(turn) + above * (Math.cos(turn) - 1);
    expect(relative(raised, -0.5e-3)).toBeLessThan(LONG_ROUNDING);
    expect(levelledTurn(hinge, 0.0041, 0)).toBe(0);
    expect(() => levelledTurn(hinge, 0.0041, 0.03)).toThrow('invalid change of thickness');
  });
});
