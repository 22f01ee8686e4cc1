import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLink, ratioFromArms } from '../../../src/acoustics/index.ts';
import { LONG_ROUNDING, relative, ROUNDING } from '../tolerances.ts';

const arms = { driverArm: 0.014, driverFront: 0.0385, drivenArm: 0.012, drivenFront: 0.0347 };

describe('the ratio of a link from its arms', () => {
  it('is one lever over the other', () => {
    // A driver that turns by a small angle, by hand.
    const turn = 1e-4;
    const contact = arms.driverArm * turn;
    const driven = (contact / arms.drivenArm) * arms.drivenFront;
    expect(relative(ratioFromArms(arms), driven / (arms.driverFront * turn))).toBeLessThan(ROUNDING);
  });

  it('of a chain of two links is the product, and there and back is one', () => {
    const back = {
      ...{ driverArm: arms.drivenArm, driverFront: arms.drivenFront },
      ...{ drivenArm: arms.driverArm, drivenFront: arms.driverFront },
    };
    expect(relative(ratioFromArms(arms) * ratioFromArms(back), 1)).toBeLessThan(ROUNDING);
  });

  it('refuses a length that is none', () => {
    expect(() => ratioFromArms({ ...arms, drivenArm: 0 })).toThrow(
      'invalid driven key’s rod to contact: 0 mm; expected more than 0 mm',
    );
    expect(() => ratioFromArms({ ...arms, driverFront: NaN })).toThrow(RangeError);
  });
});

describe('a link fitted to readings', () => {
  const ratio = fc.double({ min: 0.2, max: 3, noNaN: true });
  const left = fc.double({ min: -1e-3, max: 1e-3, noNaN: true });
  const fronts = fc.uniqueArray(fc.integer({ min: 4, max: 40 }), { minLength: 3, maxLength: 8 });

  it('gives back the ratio and closing point they were made with', () => {
    fc.assert(
      fc.property(ratio, left, fronts, (k, screw, quarters) => {
        const offset = screw >= 0 ? screw : screw * k;
        const readings = quarters.map((q) => ({ driver: q * 0.25e-3, driven: k * q * 0.25e-3 + offset }));
        const fit = fitLink(readings);
        if (!fit.found) throw new Error(fit.reason);
        expect(relative(fit.ratio, k)).toBeLessThan(LONG_ROUNDING);
        expect(Math.abs(fit.left - screw)).toBeLessThan(LONG_ROUNDING);
        expect(fit.worst).toBeLessThan(LONG_ROUNDING);
      }),
      { seed: 66, numRuns: 300 },
    );
  });

  it('says how far the readings stray from the line', () => {
    const fit = fitLink([
      { driver: 2e-3, driven: 2e-3 },
      { driver: 4e-3, driven: 4.3e-3 },
      { driver: 6e-3, driven: 6e-3 },
    ]);
    expect(fit.found && fit.worst).toBeCloseTo(0.2e-3, 9);
  });

  it('gives none from one reading, from a driver that hardly moved, or from a pad that goes the other way', () => {
    const one = { driver: 2e-3, driven: 2e-3 };
    expect(fitLink([one])).toEqual({ found: false, reason: 'two readings are needed; there is one' });
    expect(fitLink([one, { driver: 2.2e-3, driven: 2.2e-3 }])).toMatchObject({ found: false });
    expect(fitLink([one, { driver: 4e-3, driven: 1e-3 }])).toEqual({
      ...{ found: false, reason: 'the driven pad does not rise with the driver' },
    });
  });
});
