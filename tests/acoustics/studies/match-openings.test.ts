import { describe, expect, it } from 'vitest';
import {
  DEFAULT_PAD_MODEL,
  holeEnd,
  holeOf,
  keySetupOf,
  largestOpening,
  matchOpenings,
  ownPose,
  padEnd,
  standingPad,
  withOpening,
  type Horn,
  type MatchedPad,
  type Setup,
} from '../../../src/acoustics/index.ts';
import { demoHorn } from '../demo-horns.ts';
import { seededNormal } from '../seeded.ts';
import { relative, ROUNDING } from '../tolerances.ts';

const alto = demoHorn('alto');
const tenor = demoHorn('tenor');
const SEED = 4711;
/** m, what the search for a share ends at. */
const FOUND = 1e-6;

/** Every pad that can be set, set as wanted. */
const setAs = (setup: Setup, pads: readonly MatchedPad[]): Setup =>
  pads.reduce(
    (now, { id, front }) => (front === null ? now : withOpening(now, id, { at: 'front', height: front })),
    setup,
  );

function shareOf(horn: Horn, setup: Setup, id: string): number {
  const { pose } = standingPad(horn, setup, id);
  const hole = holeOf(horn, id);
  return holeEnd(hole, padEnd(hole, setup, pose, DEFAULT_PAD_MODEL), pose.centre).ventShare;
}

/** The alto with every own stop somewhat lower, each by another share. */
const lowered = ((): Setup => {
  const random = seededNormal(SEED);
  return matchOpenings(alto, alto, 'front').reduce((now, { id }) => {
    const { front } = ownPose(alto.horn, alto.setup, id);
    return withOpening(now, id, { at: 'front', height: front * Math.exp(-0.2 * Math.abs(random())) });
  }, alto.setup);
})();

describe('a horn set like another', () => {
  it('like itself stands as it stands', () => {
    for (const { id, front, against } of matchOpenings(alto, alto, 'front')) {
      expect([front, against]).toEqual([standingPad(alto.horn, alto.setup, id).pose.front, null]);
    }
    for (const { id, front } of matchOpenings(alto, alto, 'vent share')) {
      expect(Math.abs(front! - standingPad(alto.horn, alto.setup, id).pose.front)).toBeLessThan(FOUND);
    }
  });

  it('by its fronts stands pad for pad as the other stands, links followed', () => {
    const pads = matchOpenings(alto, { ...alto, setup: lowered }, 'front');
    const set = setAs(alto.setup, pads);
    expect(pads.every(({ against }) => against === null)).toBe(true);
    for (const { id } of pads) {
      const [is, wanted] = [set, lowered].map((of) => standingPad(alto.horn, of, id).pose.front);
      expect(relative(is, wanted)).toBeLessThan(ROUNDING);
    }
  });

  it('by its vent shares vents pad for pad what the other vents, under holes and hinges of its own', () => {
    const pads = matchOpenings(tenor, { horn: alto.horn, setup: lowered }, 'vent share');
    const set = setAs(tenor.setup, pads);
    const isFree = (id: string): boolean => standingPad(tenor.horn, set, id).ruledBy === null;
    const reached = pads.filter(({ id, against }) => against === null && isFree(id));
    expect(reached.length).toBeGreaterThan(15);
    for (const { id } of reached) {
      const wanted = shareOf(alto.horn, lowered, id);
      const is = shareOf(tenor.horn, set, id);
      expect(is).toBeGreaterThanOrEqual(wanted);
      const below = { at: 'front', height: standingPad(tenor.horn, set, id).pose.front - FOUND } as const;
      expect(shareOf(tenor.horn, withOpening(set, id, below), id)).toBeLessThan(wanted);
    }
  });

  it('leaves a key that the other horn has not', () => {
    const holes = alto.horn.holes.filter(({ number }) => number !== 25);
    const pads = matchOpenings(alto, { ...alto, horn: { ...alto.horn, holes } }, 'front');
    expect(pads.filter(({ front }) => front === null)).toMatchObject([
      { id: 'high-f-sharp', against: { by: 'absent' } },
    ]);
  });

  it('leaves a key whose hinge or venting ends before', () => {
    const hinge = holeOf(alto.horn, 'e').hinge!;
    const most = largestOpening(hinge, keySetupOf(alto.setup, 'e').padRadius, 'front');
    const lifted = {
      horn: {
        ...alto.horn,
        holes: alto.horn.holes.map((hole) =>
          hole.id === 'e' ? { ...hole, hinge: { distance: Infinity, height: 0 } } : hole,
        ),
      },
      setup: withOpening(alto.setup, 'e', { at: 'front', height: 1.01 * most }),
    };
    const e = matchOpenings(alto, lifted, 'front').find(({ id }) => id === 'e')!;
    expect(e).toMatchObject({ front: null, against: { by: 'stop', most } });
    const wide = {
      ...alto.horn,
      holes: alto.horn.holes.map((hole) =>
        hole.id === 'e' ? { ...hole, holeRadius: 0.4 * hole.holeRadius } : hole,
      ),
    };
    const share = matchOpenings(alto, { ...alto, horn: wide }, 'vent share').find(({ id }) => id === 'e')!;
    expect(share).toMatchObject({ front: null, against: { by: 'stop' } });
  });

  it('names the arm that holds a pad lower than it is wanted, with all the rest set', () => {
    const loose = { ...alto.horn, keywork: { ...alto.horn.keywork, links: [] } };
    const raised = withOpening(alto.setup, 'f-sharp-auxiliary', { at: 'front', height: 9e-3 });
    const pads = matchOpenings(alto, { horn: loose, setup: raised }, 'front');
    const { front, against } = pads.find(({ id }) => id === 'f-sharp-auxiliary')!;
    const { pose, ruledBy } = standingPad(alto.horn, setAs(alto.setup, pads), 'f-sharp-auxiliary');
    expect(front).toBe(9e-3);
    expect(against).toEqual({ by: 'arm', driver: ruledBy!.driver, lets: pose.front });
  });
});
