import { describe, expect, it } from 'vitest';
import {
  changePads,
  closingHeightsUnderPad,
  holeOf,
  keySetupOf,
  makeAirColumn,
  ownPose,
  playWholeHorn,
  withOpening,
  type PadChangeOptions,
} from '../../../src/acoustics/index.ts';
import { demoHorn, fingeringOf } from '../demo-horns.ts';
import { LONG_ROUNDING, relative } from '../tolerances.ts';

const { horn, setup } = demoHorn('alto');
const air = makeAirColumn();
const few: PadChangeOptions = { fingerings: ['D4', 'F4', 'G4', 'B4', 'E5'].map(fingeringOf) };
const change = (pads: Record<string, number>, options: PadChangeOptions = {}) =>
  changePads(horn, setup, new Map(Object.entries(pads).map(([id, mm]) => [id, mm * 1e-3])), air, {
    ...few,
    ...options,
  });

/** The bench's first-order rule against the true turn: the open key leans by 12°, 1 − cos θ is 2 %. */
const FIRST_ORDER = 0.03;
/** The first-order answer of the whole horn against the change itself, for 0.02 mm. */
const LINEAR = 0.01;

describe('a thicker pad at the same stop', () => {
  it('levelled, takes Δt at the centre, (L + d)/L of it at the front, (L − d)/L at the back', () => {
    const { pads } = change({ e: 0.1 });
    const { before, after } = pads[0];
    const { distance } = holeOf(horn, 'e').hinge!;
    const { padRadius } = keySetupOf(setup, 'e');
    expect(relative(before.centre - after.centre, 0.1e-3)).toBeLessThan(FIRST_ORDER);
    expect(relative(before.front - after.front, (0.1e-3 * (distance + padRadius)) / distance)).toBeLessThan(
      FIRST_ORDER,
    );
    expect(relative(before.back - after.back, (0.1e-3 * (distance - padRadius)) / distance)).toBeLessThan(
      FIRST_ORDER,
    );
  });

  it('dropped in, takes Δt off along the face’s own normal, and gapes at the front when shut', () => {
    const { pads, setup: changed } = change({ e: 0.3 }, { seating: 'dropped in' });
    const { before, after, contact } = pads[0];
    for (const at of ['front', 'centre', 'back'] as const) {
      expect(relative(before[at] - after[at], 0.3e-3 * Math.cos(before.angle))).toBeLessThan(LONG_ROUNDING);
    }
    expect(pads[0].restored).toEqual(change({ e: 0.3 }).pads[0].restored);
    expect(contact).toMatchObject({ touches: 'back' });
    expect(contact.gap).toBeGreaterThan(0.3e-3);
    expect(relative(ownPose(horn, changed, 'e').centre, after.centre)).toBeLessThan(LONG_ROUNDING);
  });

  it('vents less, plays flatter and weaker; a thinner one the other way', () => {
    for (const [by, sign] of [
      [0.5, -1],
      [-0.5, 1],
    ] as const) {
      const { pads, change: done } = change({ e: by });
      expect(Math.sign(pads[0].ventAfter - pads[0].ventBefore)).toBe(sign);
      const f4 = done.notes.find((n) => n.fingering.id === 'F4')!.change!;
      expect(Math.sign(f4.cents)).toBe(sign);
      expect(Math.sign(f4.heightDb)).toBe(sign);
    }
  });

  it('does to first order what the whole horn answers, dropped in', () => {
    const { change: done } = change({ e: 0.02 }, { seating: 'dropped in' });
    const whole = playWholeHorn(horn, setup, air, few);
    done.notes.forEach(({ change: moved }, i) => {
      const { outcome } = whole[i];
      if (!outcome.found) throw new Error('played');
      const { cents } = outcome.answers!.keys.find((k) => k.id === 'e')!.padThickness;
      expect(Math.abs(moved!.cents - cents * 0.02e-3)).toBeLessThan(
        LINEAR * Math.abs(cents * 0.02e-3) + 1e-5,
      );
    });
  });

  it('changes nothing where it is the same pad, and comes back when changed back', () => {
    const same = change({ e: 0, a: 0 });
    expect(same.links).toEqual([]);
    for (const { change: moved } of same.change.notes)
      expect(Math.abs(moved!.cents)).toBeLessThan(LONG_ROUNDING);
    const there = change({ e: 0.4 });
    const back = changePads(horn, there.setup, new Map([['e', -0.4e-3]]), air, few);
    // The turn is reckoned from the thickness of the pad that is taken out: second order in Δt.
    expect(Math.abs(back.pads[0].after.front - ownPose(horn, setup, 'e').front)).toBeLessThan(1e-5);
  });
});

describe('the stop that restores the venting', () => {
  it('gives the old vent share back, and very nearly the old notes', () => {
    const { pads, setup: changed } = change({ e: 0.5 }, { footPerFront: new Map([['e', 0.25]]) });
    const { restored, ventBefore, after } = pads[0];
    const set = withOpening(changed, 'e', { at: 'front', height: restored!.front });
    const again = changePads(horn, set, new Map([['e', 0]]), air, few);
    expect(relative(again.pads[0].ventAfter, ventBefore)).toBeLessThan(1e-6);
    expect(restored!.raise).toBeCloseTo(restored!.front - after.front, 12);
    expect(relative(restored!.thinnerCork!, restored!.raise * 0.25)).toBeLessThan(LONG_ROUNDING);
    const f4 = (s: typeof setup): number => {
      const [note] = playWholeHorn(horn, s, air, { fingerings: [fingeringOf('F4')], answers: false });
      return note.outcome.found ? note.outcome.cents : NaN;
    };
    // Thickness itself shapes the flow round the pad a little.
    expect(Math.abs(f4(set) - f4(setup))).toBeLessThan(0.05);
    expect(Math.abs(f4(changed) - f4(setup))).toBeGreaterThan(0.5);
  });

  it('is not told for a foot whose leverage is not known', () => {
    expect(change({ e: 0.5 }).pads[0].restored!.thinnerCork).toBeNull();
  });
});

describe('pads of a whole horn', () => {
  const all = Object.fromEntries(horn.holes.filter((h) => h.hinge !== null).map((h) => [h.id, 0.5]));
  const done = change(all);

  it('are listed from the bell up, every one lower', () => {
    expect(done.pads).toHaveLength(Object.keys(all).length);
    expect(done.pads.map((p) => p.pad)[0]).toBe('low-b-flat');
    for (const { before, after } of done.pads) expect(after.front).toBeLessThan(before.front);
  });

  it('put links out by what their keys now shut earlier, which the screws then take away', () => {
    // E and F♯ auxiliary both shut earlier; what is left is the difference.
    const link = done.links.find((l) => l.driver === 'e' && l.driven === 'f-sharp-auxiliary')!;
    const lone = change({ 'f-sharp-auxiliary': 0.5 }).links.find((l) => l.driver === 'e')!;
    expect(Math.abs(link.left)).toBeLessThan(Math.abs(lone.left));
    // The driven pad alone thicker is home first and keeps the driver off.
    expect(lone.left).toBeLessThan(0);
    const heights = closingHeightsUnderPad(horn.keywork, 'e', [lone]);
    expect(relative(heights.get('e')!, -lone.left)).toBeLessThan(LONG_ROUNDING);
    const driver = change({ e: 0.5 }).links.find((l) => l.driver === 'e')!;
    // The driver alone thicker is home k times too early for the driven pad.
    const { before, after } = change({ e: 0.5 }).pads[0];
    const ratio = horn.keywork.links.find((l) => l.driver === 'e')!.ratio!;
    expect(relative(driver.left, ratio * (before.front - after.front))).toBeLessThan(FIRST_ORDER);
  });

  it('are refused where they are none, or on a vent', () => {
    expect(() => change({ e: -5 })).toThrow('invalid pad thickness of e: -0.90 mm; expected more than 0 mm');
    expect(() => change({ 'neck-vent': 0.1 })).toThrow(RangeError);
    expect(() => change({ nowhere: 0.1 })).toThrow(RangeError);
  });

  it('thicker than their back edge rises are told', () => {
    const { warnings } = change(
      { 'small-c': 1.1e3 * ownPose(horn, setup, 'small-c').back },
      { seating: 'dropped in' },
    );
    expect(warnings).toEqual([
      'small C stays on its rim at the back when it opens: the new pad is thicker than that edge rises.',
    ]);
  });

  it('too thick to open at all stand shut', () => {
    const { pads, warnings } = change({ 'small-c': 6, e: 0.1 });
    expect(warnings).toEqual(['small C no longer opens: the new pad takes up all of its opening.']);
    expect(pads[1].after.front).toBe(0);
    expect(pads[1].ventAfter).toBe(0);
  });
});
