import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  closingHeights,
  closingHeightsUnderPad,
  contactOffset,
  linkBetween,
  padStates,
  FINGERINGS,
  type Keywork,
  type LinkScrew,
} from '../../../src/acoustics/index.ts';
import { demoHorn } from '../demo-horns.ts';
import { relative, ROUNDING } from '../tolerances.ts';

const PAPER = 0.025e-3;

/** Two drivers on one pad, that pad on a third and over a spring-shut one. */
const keywork: Keywork = {
  rests: new Map([
    ['near', 'open'],
    ['far', 'open'],
    ['hub', 'open'],
    ['last', 'open'],
    ['sprung', 'closed'],
  ]),
  touches: [
    { id: 'N', closes: ['near'], opens: [] },
    { id: 'F', closes: ['far'], opens: [] },
    { id: 'S', closes: [], opens: [{ pad: 'sprung' }] },
  ],
  links: [
    { driver: 'near', driven: 'hub', effect: 'closes', ratio: 0.9 },
    { driver: 'far', driven: 'hub', effect: 'closes', ratio: 0.8 },
    { driver: 'hub', driven: 'last', effect: 'closes', ratio: 0.5 },
    { driver: 'hub', driven: 'sprung', effect: 'holds shut', ratio: 0.7 },
  ],
};

const screw = (driver: string, driven: string, left: number): LinkScrew => ({ driver, driven, left });
const down = (...touches: string[]): Set<string> => new Set(touches);

describe('pads shut through links', () => {
  it('all come home where every link shuts both at once', () => {
    const heights = closingHeights(keywork, down('N', 'F', 'S'), []);
    expect([...heights.values()].every((h) => h === 0)).toBe(true);
    expect([...heights.keys()].sort()).toEqual(['far', 'hub', 'last', 'near', 'sprung']);
  });

  it('hang by what a late link leaves, and by its ratio further down', () => {
    const heights = closingHeights(keywork, down('N', 'S'), [screw('near', 'hub', PAPER)]);
    expect(heights.get('near')).toBe(0);
    expect(relative(heights.get('hub')!, PAPER)).toBeLessThan(ROUNDING);
    expect(relative(heights.get('last')!, 0.5 * PAPER)).toBeLessThan(ROUNDING);
    expect(relative(heights.get('sprung')!, 0.7 * PAPER)).toBeLessThan(ROUNDING);
    expect(heights.has('far')).toBe(false);
  });

  it('are shut by whichever pressed driver shuts them best', () => {
    const heights = closingHeights(keywork, down('N', 'F'), [
      screw('near', 'hub', 4 * PAPER),
      screw('far', 'hub', PAPER),
    ]);
    expect(relative(heights.get('hub')!, PAPER)).toBeLessThan(ROUNDING);
    expect(closingHeights(keywork, down('N', 'F'), [screw('near', 'hub', 4 * PAPER)]).get('hub')).toBe(0);
  });

  it('keep their driver off where the link is early, and only that driver', () => {
    const heights = closingHeights(keywork, down('N', 'F'), [screw('near', 'hub', -PAPER)]);
    expect(relative(heights.get('near')!, PAPER)).toBeLessThan(ROUNDING);
    expect(heights.get('far')).toBe(0);
    expect(heights.get('hub')).toBe(0);
  });

  it('keep every driver off that meets them by way of another pad', () => {
    // The last pad is home one paper before the hub: hub, and by it near and far, stay off.
    const heights = closingHeights(keywork, down('N', 'F'), [screw('hub', 'last', -PAPER)]);
    expect(relative(heights.get('hub')!, PAPER)).toBeLessThan(ROUNDING);
    expect(relative(heights.get('near')!, PAPER / 0.9)).toBeLessThan(ROUNDING);
    expect(relative(heights.get('far')!, PAPER / 0.8)).toBeLessThan(ROUNDING);
    expect(heights.get('last')).toBe(0);
  });

  it('stay as high as their own arms keep them, also under a driver whose ratio is not known', () => {
    const links = keywork.links.map(({ ratio, ...link }) =>
      link.driver === 'near' || ratio === undefined ? link : { ...link, ratio },
    );
    const heights = closingHeights({ ...keywork, links }, down('N'), [screw('hub', 'last', -PAPER)]);
    expect(heights.get('hub')).toBe(PAPER);
  });

  it('shut by their spring whatever the arm over them leaves, unless their touch is down', () => {
    const late = [screw('hub', 'sprung', PAPER)];
    expect(closingHeights(keywork, down('N'), late).get('sprung')).toBe(0);
    expect(closingHeights(keywork, down('N', 'S'), late).get('sprung')).toBe(PAPER);
  });

  it('are what the bench finds when it presses one pad', () => {
    const late = [screw('hub', 'sprung', PAPER), screw('hub', 'last', 2 * PAPER)];
    const heights = closingHeightsUnderPad(keywork, 'hub', late);
    expect(heights.get('hub')).toBe(0);
    expect(heights.get('last')).toBe(2 * PAPER);
    expect(heights.get('sprung')).toBe(PAPER);
    expect(heights.has('near')).toBe(false);
  });

  it('never break the rule of stiff arms, nor sink below their rims', () => {
    const left = fc.double({ min: -1e-3, max: 1e-3, noNaN: true });
    fc.assert(
      fc.property(fc.array(left, { minLength: 4, maxLength: 4 }), (lefts) => {
        const screws = keywork.links.map((l, i) => screw(l.driver, l.driven, lefts[i]));
        const heights = closingHeights(keywork, down('N', 'F', 'S'), screws);
        for (const height of heights.values()) expect(height).toBeGreaterThanOrEqual(0);
        for (const link of keywork.links) {
          const allowed = link.ratio! * heights.get(link.driver)! + contactOffset(link, screws);
          expect(heights.get(link.driven)!).toBeLessThanOrEqual(allowed + 1e-15);
        }
      }),
      { seed: 6, numRuns: 500 },
    );
  });

  it('on the demo alto are exactly those that the fingering shuts', () => {
    const { horn } = demoHorn('alto');
    for (const { touches, id } of FINGERINGS) {
      const held = new Set(touches);
      const shut = [...padStates(horn.keywork, held)].filter(([, s]) => !s.open).map(([pad]) => pad);
      expect([id, [...closingHeights(horn.keywork, held, []).keys()].sort()]).toEqual([id, shut.sort()]);
    }
  });

  it('are refused where a screw has no link, or links run in a circle', () => {
    expect(() => closingHeights(keywork, down('N'), [screw('last', 'near', 0)])).toThrow(
      'invalid link: "last to near"; expected one of near to hub',
    );
    const round = {
      ...keywork,
      links: [...keywork.links, { driver: 'last', driven: 'near', effect: 'closes' as const }],
    };
    expect(() => closingHeights(round, down('N'), [])).toThrow('expected no link that drives its own driver');
    expect(linkBetween(keywork, 'near', 'hub').ratio).toBe(0.9);
  });
});
