import { describe, expect, it } from 'vitest';
import {
  centsBetween,
  DEFAULT_PAD_MODEL,
  DEFAULT_THRESHOLDS,
  findDiminishingReturn,
  findResonances,
  FINGERINGS,
  heldDownBy,
  LEAST_OPENING,
  makeAirColumn,
  makeNetwork,
  makePadPose,
  noteFrequency,
  padStates,
  prepareVenting,
  resonanceNear,
  studyVenting,
  ventingAt,
  withOpening,
  type Horn,
  type Setup,
} from '../../../src/acoustics/index.ts';
import { demoHorn } from '../demo-horns.ts';
import { POLISHED_CENTS, relative, ROUNDING } from '../tolerances.ts';

const air = makeAirColumn();
/** m, the grid the brute-force search looks on. */
const GRID = 0.02e-3;
/** m, how fine the study itself ends, and the grid around it. */
const FOUND_WITHIN = GRID + 1e-5;

/** Front opening of a key with its driven pads' limits left alone: set at the front, in a copy of the setup. */
function frequencyAt(
  horn: Horn,
  setup: Setup,
  id: string,
  front: number,
  fingeringId: string,
  near: number,
): number {
  const fingering = FINGERINGS.find((f) => f.id === fingeringId)!;
  // Links that read this key's opening would move other pads with it; the study moves this key alone.
  const alone: Horn = {
    ...horn,
    keywork: {
      ...horn.keywork,
      links: horn.keywork.links.map(({ driver, driven, effect }) => ({ driver, driven, effect })),
    },
  };
  const network = makeNetwork(alone, withOpening(setup, id, { at: 'front', height: front }), fingering, air);
  const found = findResonances(network, near * 0.93, near * 1.07).map((r) => r.frequency);
  return found.reduce((a, b) => (Math.abs(b - near) < Math.abs(a - near) ? b : a), Infinity);
}

/** End length and vent share by the definition, from the pad model and a hole's own lengths. */
function shareAt(horn: Horn, setup: Setup, id: string, front: number): number {
  const hole = horn.holes.find((h) => h.id === id)!;
  const key = setup.keys.get(id)!;
  const pose = makePadPose(hole.hinge!, key.padRadius, { at: 'front', height: front });
  const end = DEFAULT_PAD_MODEL.endOf({
    holeRadius: hole.holeRadius,
    rimThickness: hole.rimThickness,
    padRadius: key.padRadius,
    padThickness: key.padThickness,
    hingeDistance: hole.hinge!.distance,
    hingeHeight: hole.hinge!.height,
    centreHeight: pose.centre,
  });
  const b = hole.holeRadius;
  const d = b / hole.boreRadius;
  const inner = b * (0.822 - 0.095 * d - 1.566 * d ** 2 + 2.138 * d ** 3 - 1.64 * d ** 4 + 0.502 * d ** 5);
  const fixed = inner + hole.chimney + ((b * d) / 8) * (1 + 0.207 * d ** 3);
  return (fixed + end.noPadLength) / (fixed + end.length);
}

describe.each(['alto', 'tenor'] as const)('the venting study of the demo %s', (name) => {
  const { horn, setup } = demoHorn(name);

  it.each(['e', 'f', 'g', 'low-c'])(
    'of %s finds the point of diminishing return that brute force finds',
    (id) => {
      const context = prepareVenting(horn, setup, id, air);
      const outcome = findDiminishingReturn(context);
      const { step, cents, share } = DEFAULT_THRESHOLDS;
      const last = context.reach - step;
      let least = last;
      // From the top down: the lowest opening above which every step buys less than both thresholds.
      for (let front = last; front > LEAST_OPENING; front -= GRID) {
        const buys = context.governed.map((note) =>
          Math.abs(
            centsBetween(
              frequencyAt(horn, setup, id, front, note.fingering.id, note.present.frequency),
              frequencyAt(horn, setup, id, front + step, note.fingering.id, note.present.frequency),
            ),
          ),
        );
        const gained = shareAt(horn, setup, id, front + step) - shareAt(horn, setup, id, front);
        if (Math.max(0, ...buys) >= cents || gained >= share) break;
        least = front;
      }
      if (outcome.kind === 'none in reach') expect(least).toBe(last);
      else expect(Math.abs(outcome.at.pose.front - least)).toBeLessThan(FOUND_WITHIN);
    },
  );

  it('follows each governed note to where a search from nothing finds it', () => {
    const context = prepareVenting(horn, setup, 'e', air);
    expect(context.governed.length).toBeGreaterThan(0);
    for (const front of [0.001, 0.003, context.reach * 0.9]) {
      const point = ventingAt(context, front);
      context.governed.forEach((note, i) => {
        const direct = frequencyAt(horn, setup, 'e', front, note.fingering.id, note.present.frequency);
        const followed = point.notes[i];
        expect(followed).not.toBeNull();
        expect(Math.abs(centsBetween(direct, followed!.frequency))).toBeLessThan(POLISHED_CENTS);
      });
      expect(relative(point.ventShare, shareAt(horn, setup, 'e', front))).toBeLessThan(ROUNDING);
    }
  });

  it('has a vent share that rises with opening, stays under one and vanishes when shut', () => {
    const context = prepareVenting(horn, setup, 'e', air);
    expect(ventingAt(context, 0).ventShare).toBe(0);
    let last = 0;
    for (let front = LEAST_OPENING; front < context.reach; front += 0.5e-3) {
      const { ventShare } = ventingAt(context, front);
      expect(ventShare).toBeGreaterThan(last);
      expect(ventShare).toBeLessThan(1);
      last = ventShare;
    }
  });

  it('lists as governed exactly the notes whose pitch half and one and a half openings part by over a cent', () => {
    const open = horn.holes.filter((hole) => hole.hinge !== null);
    let [governed, left] = [0, 0];
    for (const { id } of open) {
      const context = prepareVenting(horn, setup, id, air);
      const present = Math.min(Math.max(context.standing.pose.front, LEAST_OPENING), context.reach / 1.5);
      const byHand = FINGERINGS.filter((f) => {
        const state = padStates(horn.keywork, new Set(f.touches)).get(id)!;
        if (f.register === 3 || !state.open || state.front !== undefined) return false;
        const now = resonanceNear(
          makeNetwork(horn, setup, f, air),
          noteFrequency(f.note, horn.transposition),
        );
        if (!now.found) return false;
        const near = now.resonance.frequency;
        const parted = centsBetween(
          frequencyAt(horn, setup, id, 0.5 * present, f.id, near),
          frequencyAt(horn, setup, id, 1.5 * present, f.id, near),
        );
        return Math.abs(parted) > 1;
      }).map((f) => f.id);
      expect(context.governed.map((g) => g.fingering.id)).toEqual(byHand);
      governed += byHand.length;
      left += FINGERINGS.length - byHand.length;
    }
    expect(open.length).toBeGreaterThan(20);
    expect(Math.min(governed, left)).toBeGreaterThan(50);
  });
});

describe('what a key governs', () => {
  const { horn, setup } = demoHorn('alto');

  it('is nothing for a threshold no pad reaches, and the study says so', () => {
    const study = studyVenting(horn, setup, 'low-b-flat', air, { governsCents: 1e4 });
    expect(study.context.governed).toEqual([]);
    expect(study.warnings.some((w) => w.startsWith('No note moves'))).toBe(true);
  });

  it('includes the note of the first open hole, in both registers', () => {
    const ids = prepareVenting(horn, setup, 'e', air).governed.map((g) => g.fingering.id);
    expect(ids).toContain('F4');
    expect(ids).toContain('F5');
    expect(ids).not.toContain('C#5');
    expect(ids).not.toContain('E4');
  });

  it('is refused for a vent and for an unknown key', () => {
    expect(() => prepareVenting(horn, setup, 'neck-vent', air)).toThrow(/vent/);
    expect(() => prepareVenting(horn, setup, 'seventh', air)).toThrow(/invalid key/);
  });
});

describe('the outcomes of the study', () => {
  const { horn, setup } = demoHorn('alto');

  it('is none in reach, with a reason, where the study may not look far enough', () => {
    const study = studyVenting(horn, setup, 'e', air, { reach: 0.002 });
    expect(study.diminishingReturn.kind).toBe('none in reach');
    if (study.diminishingReturn.kind === 'none in reach') {
      expect(study.diminishingReturn.reason).toMatch(/still (moves|buys)/);
    }
  });

  it('is set by a link where a low driver holds the pad under the point', () => {
    const free = studyVenting(horn, setup, 'bis', air).diminishingReturn;
    expect(free.kind).toBe('reached');
    const low = withOpening(setup, 'f', { at: 'front', height: 0.0015 });
    const study = studyVenting(horn, low, 'bis', air, { reach: 0.008 });
    expect(study.diminishingReturn).toMatchObject({ kind: 'set by a link', driver: 'f-sharp-auxiliary' });
    if (study.diminishingReturn.kind === 'set by a link') {
      expect(study.diminishingReturn.linkFront).toBeLessThan(study.diminishingReturn.at.pose.front);
    }
  });

  it('asks more front opening of a key with more tilt', () => {
    const at = (share: number): number => {
      const tilted: Horn = {
        ...horn,
        holes: horn.holes.map((h) =>
          h.id === 'e' ? { ...h, hinge: { ...h.hinge!, distance: share * h.hinge!.distance } } : h,
        ),
      };
      const outcome = studyVenting(tilted, setup, 'e', air, { reach: 0.02 }).diminishingReturn;
      return outcome.kind === 'none in reach' ? NaN : outcome.at.pose.front;
    };
    const fronts = [4, 2, 1.3, 1, 0.85].map(at);
    for (let i = 1; i < fronts.length; i++) expect(fronts[i]).toBeGreaterThan(fronts[i - 1]);
  });

  it('gives finite numbers for every pad of both horns', () => {
    for (const which of ['alto', 'tenor'] as const) {
      const demo = demoHorn(which);
      for (const hole of demo.horn.holes) {
        if (hole.hinge === null) continue;
        const study = studyVenting(demo.horn, demo.setup, hole.id, air, { points: 9 });
        for (const point of study.curve) {
          expect(Number.isFinite(point.ventShare)).toBe(true);
          for (const note of point.notes) {
            if (note !== null) expect(Object.values(note).every(Number.isFinite)).toBe(true);
          }
        }
      }
    }
  });

  it('names every pad this key’s arms would hold down, and from where', () => {
    const held = heldDownBy(horn, setup, 'f');
    expect(held.map((h) => h.driven)).toEqual(['f-sharp-auxiliary']);
    const below = held[0].below;
    const just = (share: number) =>
      prepareVenting(
        horn,
        withOpening(setup, 'f', { at: 'front', height: share * below }),
        'f-sharp-auxiliary',
        air,
      ).standing.ruledBy;
    expect(just(1.001)).toBeNull();
    expect(just(0.999)?.driver).toBe('f');
  });
});

describe('what tilt costs', () => {
  it.each(['e', 'd', 'f', 'g'] as const)(
    'the front reading of the %s key flatters it: a parallel pad at that front vents more, one at the equivalent opening the same',
    (id) => {
      const { horn, setup } = demoHorn('alto');
      const { present, presentParallel, curve, parallelCurve } = studyVenting(horn, setup, id, air, {
        points: 9,
      });
      expect(presentParallel.ventShare).toBeGreaterThan(present.ventShare);
      curve.forEach((point, i) => expect(parallelCurve[i].ventShare).toBeGreaterThan(point.ventShare));
      expect(present.end.equivalentParallel).toBeLessThan(present.pose.centre);
    },
  );
});
