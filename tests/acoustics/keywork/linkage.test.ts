import { describe, expect, it } from 'vitest';
import { linkLimit, standingPad, withOpening, type Keywork } from '../../../src/acoustics/index.ts';
import { demoHorn } from '../demo-horns.ts';
import { relative, ROUNDING } from '../tolerances.ts';

const keywork: Keywork = {
  rests: new Map([
    ['one', 'open'],
    ['two', 'open'],
    ['three', 'open'],
  ]),
  touches: [],
  links: [
    { driver: 'one', driven: 'three', effect: 'closes', ratio: 0.8 },
    { driver: 'two', driven: 'three', effect: 'closes', ratio: 0.5 },
    { driver: 'three', driven: 'one', effect: 'holds shut' },
  ],
};

describe('the limit that links put on a pad', () => {
  it('is the tightest of ratio times the driver’s opening', () => {
    expect(linkLimit(keywork, 'three', (id) => (id === 'one' ? 5 : 9))).toEqual({ front: 4, driver: 'one' });
    expect(linkLimit(keywork, 'three', (id) => (id === 'one' ? 5 : 7))).toEqual({
      front: 3.5,
      driver: 'two',
    });
  });

  it('is none where no arm with a known ratio drives the pad', () => {
    expect(linkLimit(keywork, 'one', () => 5)).toBeNull();
    expect(linkLimit(keywork, 'two', () => 5)).toBeNull();
  });
});

describe('a linked pad on the demo alto', () => {
  const { horn, setup } = demoHorn('alto');

  it('stands at its own stop as the horn left its maker', () => {
    for (const hole of horn.holes) {
      if (hole.hinge === null) continue;
      const standing = standingPad(horn, setup, hole.id);
      expect([hole.id, standing.ruledBy]).toEqual([hole.id, null]);
    }
  });

  it('is held down by a driver set low, by the ratio, through a chain of arms', () => {
    const low = withOpening(setup, 'f', { at: 'front', height: 0.004 });
    const ratio = (driver: string, driven: string): number =>
      horn.keywork.links.find((l) => l.driver === driver && l.driven === driven)!.ratio!;
    const auxiliary = standingPad(horn, low, 'f-sharp-auxiliary');
    expect(auxiliary.ruledBy?.driver).toBe('f');
    expect(relative(auxiliary.pose.front, 0.004 * ratio('f', 'f-sharp-auxiliary'))).toBeLessThan(ROUNDING);
    const bis = standingPad(horn, low, 'bis');
    expect(bis.ruledBy?.driver).toBe('f-sharp-auxiliary');
    expect(relative(bis.pose.front, auxiliary.pose.front * ratio('f-sharp-auxiliary', 'bis'))).toBeLessThan(
      ROUNDING,
    );
    expect(bis.ownFront).toBeGreaterThan(bis.pose.front);
  });
});
