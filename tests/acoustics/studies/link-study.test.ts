import { describe, expect, it } from 'vitest';
import {
  askOpening,
  followOpenings,
  makeAirColumn,
  standingPad,
  studyLinks,
  sufferingNotes,
  withOpening,
  type LinkScrew,
  type Setup,
} from '../../../src/acoustics/index.ts';
import { demoHorn } from '../demo-horns.ts';
import { LONG_ROUNDING, relative, ROUNDING } from '../tolerances.ts';

const { horn, setup } = demoHorn('alto');
const PAPER = 0.025e-3;
const AUXILIARY = 'f-sharp-auxiliary';

const front = (id: string, mm: number, on: Setup = setup): Setup =>
  withOpening(on, id, { at: 'front', height: mm * 1e-3 });
const ratioOf = (driver: string, driven: string): number =>
  horn.keywork.links.find((l) => l.driver === driver && l.driven === driven)!.ratio!;

describe('the links of a setup', () => {
  it('stand as the pads of the whole horn do', () => {
    for (const there of [setup, front('e', 5), front('a', 3, front('f', 6))]) {
      for (const { pad, ownFront, standsFront, ruledBy } of studyLinks(horn, there).pads) {
        const standing = standingPad(horn, there, pad);
        expect(relative(standsFront, standing.pose.front)).toBeLessThan(LONG_ROUNDING);
        expect(relative(ownFront, standing.ownFront)).toBeLessThan(LONG_ROUNDING);
        expect(ruledBy).toBe(standing.ruledBy?.driver ?? null);
      }
    }
  });

  it('lose the motion that their driver makes before the driven pad stirs', () => {
    const { links, pads } = studyLinks(horn, setup, { touchPerFront: new Map([['e', 1.5]]) });
    for (const { link, driverFront, allows, lostAtFront, rules } of links) {
      expect(relative(driverFront, standingPad(horn, setup, link.driver).pose.front)).toBeLessThan(
        LONG_ROUNDING,
      );
      if (link.ratio === undefined) continue;
      const driven = pads.find((p) => p.pad === link.driven)!;
      // With the driver brought down by what is lost, arm and pad just meet.
      expect(relative(allows! - link.ratio * lostAtFront!, driven.standsFront)).toBeLessThan(LONG_ROUNDING);
      expect(rules && lostAtFront! > 0).toBe(false);
    }
    const e = links.find((l) => l.link.driver === 'e')!;
    expect(e.lostAtTouch).toBeCloseTo(1.5 * e.lostAtFront!, 12);
    expect(links.find((l) => l.link.driver === 'f')!.lostAtTouch).toBeNull();
  });

  it('let the tighter of two masters rule, and the other lose motion', () => {
    const { pads, links } = studyLinks(horn, front('a', 4.5));
    expect(pads.find((p) => p.pad === 'bis')).toMatchObject({ ruledBy: 'a' });
    const other = links.find((l) => l.link.driver === AUXILIARY && l.link.driven === 'bis')!;
    expect(other.rules).toBe(false);
    expect(other.lostAtFront).toBeGreaterThan(0);
  });

  it('say nothing of a link whose ratio is not known', () => {
    const lock = studyLinks(horn, setup).links.find((l) => l.link.driven === 'low-c-sharp')!;
    expect(lock).toMatchObject({ allows: null, lostAtFront: null, lostAtTouch: null, rules: false });
  });

  it('let a late screw open the pad by what it leaves, and an early one shut it by k times that', () => {
    const low = front('e', 6);
    const at = (left: number): number => {
      const screws: LinkScrew[] = [{ driver: 'e', driven: AUXILIARY, left }];
      return studyLinks(horn, low, { screws }).pads.find((p) => p.pad === AUXILIARY)!.standsFront;
    };
    expect(Math.abs(at(PAPER) - at(0) - PAPER)).toBeLessThan(ROUNDING);
    expect(Math.abs(at(0) - at(-PAPER) - ratioOf('e', AUXILIARY) * PAPER)).toBeLessThan(ROUNDING);
  });

  it('say what shuts together, through every arm', () => {
    const screws = [{ driver: 'e', driven: AUXILIARY, left: 2 * PAPER }];
    const { together } = studyLinks(horn, setup, { screws });
    const e = together.find((t) => t.driver === 'e')!;
    expect(e.driverLeft).toBe(0);
    const left = (pad: string): number => e.driven.find((d) => d.pad === pad)!.left;
    expect(relative(left(AUXILIARY), 2 * PAPER)).toBeLessThan(ROUNDING);
    expect(relative(left('bis'), 2 * PAPER * ratioOf(AUXILIARY, 'bis'))).toBeLessThan(ROUNDING);
    expect(together.find((t) => t.driver === 'f')!.driven.every((d) => d.left === 0)).toBe(true);
    const early = studyLinks(horn, setup, { screws: [{ ...screws[0], left: -PAPER }] }).together;
    expect(early.find((t) => t.driver === 'e')!.driverLeft).toBe(PAPER);
  });
});

describe('an opening asked of a driven pad', () => {
  it('is had once every stop is raised as it says, and not a hair before', () => {
    const low = front('d', 6, front('e', 6, front('f', 6, front('a', 4))));
    const asked = 4.8e-3;
    const { stops } = askOpening(horn, low, 'bis', asked);
    expect(stops[0].pad).toBe('bis');
    expect(stops.map((s) => s.pad).sort()).toEqual(['a', 'bis', 'd', 'e', 'f', AUXILIARY].sort());
    const raised = (share: number): Setup =>
      stops.reduce((s, { pad, ownFront, raise }) => front(pad, (ownFront + share * raise) * 1e3, s), low);
    expect(standingPad(horn, raised(1), 'bis').pose.front).toBeGreaterThan(asked - 1e-12);
    expect(standingPad(horn, raised(0.999), 'bis').pose.front).toBeLessThan(asked - 1e-9);
  });

  it('or once the arm’s ratio is changed as it says', () => {
    const low = front('a', 4);
    const { ratios } = askOpening(horn, low, 'bis', 4.8e-3);
    expect(ratios.map((r) => r.driver)).toEqual(['a']);
    const links = horn.keywork.links.map((l) =>
      l.driver === 'a' && l.driven === 'bis' ? { ...l, ratio: ratios[0].needed } : l,
    );
    const there = standingPad({ ...horn, keywork: { ...horn.keywork, links } }, low, 'bis');
    expect(relative(there.pose.front, 4.8e-3)).toBeLessThan(LONG_ROUNDING);
  });

  it('needs nothing where it is had already, and is refused where it is none', () => {
    const { stops, ratios } = askOpening(horn, setup, 'bis', 3e-3);
    expect(stops.every((s) => s.raise === 0)).toBe(true);
    expect(ratios).toEqual([]);
    expect(() => askOpening(horn, setup, 'bis', 0)).toThrow('invalid opening: 0 mm');
  });
});

describe('a lower stack set lower', () => {
  const air = makeAirColumn();
  const low = ['d', 'e', 'f'].reduce((s, id) => front(id, 5.5, s), setup);
  const followed = followOpenings(horn, setup, low, air);

  it('takes F♯ auxiliary, G♯, bis with it, and no pad that hangs on none of its arms', () => {
    const moved = followed.pads.map((p) => p.pad);
    expect(moved).toEqual(['d', 'e', 'f', AUXILIARY, 'g-sharp', 'bis']);
    const bis = followed.pads.find((p) => p.pad === 'bis')!;
    expect(bis.before.ruledBy).toBeNull();
    expect(bis.after.ruledBy).toBe(AUXILIARY);
    expect(bis.after.ventShare).toBeLessThan(bis.before.ventShare);
  });

  it('makes the notes under those pads suffer, the most hurt first', () => {
    const suffer = sufferingNotes(followed);
    const ids = suffer.map((n) => n.fingering.id);
    // B opens first at bis, G at F♯ auxiliary, F at E.
    for (const id of ['B4', 'G4', 'F4']) expect(ids).toContain(id);
    for (const id of ['C#4', 'D6']) expect(ids).not.toContain(id);
    const hurt = suffer.map(({ change }) => Math.max(-change!.heightDb, -change!.cents / 10));
    expect([...hurt].sort((a, b) => b - a)).toEqual(hurt);
  });

  it('changes nothing where nothing is set otherwise', () => {
    const same = followOpenings(horn, setup, setup, air);
    expect(same.pads).toEqual([]);
    expect(sufferingNotes(same)).toEqual([]);
    for (const { change } of same.notes) expect(Math.abs(change!.cents)).toBeLessThan(LONG_ROUNDING);
  });
});
