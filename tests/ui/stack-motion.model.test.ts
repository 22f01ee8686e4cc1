import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  closingHeightsUnderPad,
  makePadPose,
  standingFronts,
  type Keywork,
  type Link,
  type LinkScrews,
} from '../../src/acoustics/index.ts';
import { loadHorn } from '../../src/documents/to-acoustics.ts';
import { makeStackDrawing, placeStack } from '../../src/ui/parts/stack-drawing.model.ts';
import { frontsUnderPress } from '../../src/ui/parts/stack-motion.model.ts';
import { ALTO } from './demo.ts';

/** m: sums and products of a few lengths. */
const ROUNDING = 1e-12;

const read = loadHorn(ALTO);
if (!read.ok) throw new Error(read.issues[0].message);
const { horn, setup } = read.value;
const { links } = horn.keywork;
const drivers = [...new Set(links.map((l) => l.driver))];

/** Screws of any link, late or early by up to a fifth of a millimetre. */
const anyScrews = fc
  .array(fc.double({ min: -0.2e-3, max: 0.2e-3, noNaN: true }), {
    minLength: links.length,
    maxLength: links.length,
  })
  .map((lefts): LinkScrews => links.map(({ driver, driven }, i) => ({ driver, driven, left: lefts[i] })));

function pressedBy(driver: string, screws: LinkScrews, pressed: number, keywork: Keywork = horn.keywork) {
  const standing = standingFronts({ ...horn, keywork }, setup, screws);
  const home = closingHeightsUnderPad(keywork, driver, screws);
  const ends = { standing: (pad: string) => standing(pad).standsFront, home };
  return { fronts: frontsUnderPress(keywork, screws, driver, ends, pressed), ends };
}

describe('a stack under a finger', () => {
  it('stands as the links let it stand before it is pressed', () => {
    fc.assert(
      fc.property(fc.constantFrom(...drivers), anyScrews, (driver, screws) => {
        const { fronts, ends } = pressedBy(driver, screws, 0);
        for (const [pad, front] of fronts) expect(front).toBeCloseTo(ends.standing(pad), 12);
      }),
      { seed: 6 },
    );
  });

  it('ends where closing leaves it', () => {
    fc.assert(
      fc.property(fc.constantFrom(...drivers), anyScrews, (driver, screws) => {
        const { fronts, ends } = pressedBy(driver, screws, 1);
        for (const [pad, front] of fronts) expect(front).toBeCloseTo(ends.home.get(pad) ?? 0, 12);
      }),
      { seed: 7 },
    );
  });

  it('never rises while the finger goes down, and never lifts a pad off its arm', () => {
    const shares = fc.tuple(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.constantFrom(...drivers), anyScrews, shares, (driver, screws, [a, b]) => {
        const high = pressedBy(driver, screws, Math.min(a, b)).fronts;
        const low = pressedBy(driver, screws, Math.max(a, b)).fronts;
        for (const [pad, front] of low) {
          const before = high.get(pad);
          if (front !== null && before !== null && before !== undefined) {
            expect(front).toBeLessThanOrEqual(before + ROUNDING);
          }
        }
      }),
      { seed: 8 },
    );
  });

  it('cannot be told half way where the ratio of a link is not known', () => {
    const unknown: Keywork = {
      ...horn.keywork,
      links: links.map((l): Link =>
        l.driver === 'e' ? { driver: l.driver, driven: l.driven, effect: l.effect } : l,
      ),
    };
    const half = pressedBy('e', [], 0.5, unknown).fronts;
    expect(half.get('e')).toBeGreaterThan(0);
    expect(half.get('f-sharp-auxiliary')).toBeNull();
    expect(half.get('bis')).toBeNull();
    expect(pressedBy('e', [], 1, unknown).fronts.get('f-sharp-auxiliary')).toBe(0);
  });
});

describe('the drawing of two linked keys', () => {
  const geometryOf = (pad: string) => {
    const hole = horn.holes.find((h) => h.id === pad)!;
    const key = setup.keys.get(pad)!;
    return {
      hingeMm: hole.hinge!.distance * 1000,
      hingeHeightMm: hole.hinge!.height * 1000,
      padRadiusMm: key.padRadius * 1000,
      padThicknessMm: key.padThickness * 1000,
      holeRadiusMm: hole.holeRadius * 1000,
      chimneyMm: hole.chimney * 1000,
      rimMm: hole.rimThickness * 1000,
      boreRadiusMm: hole.boreRadius * 1000,
    };
  };
  const [driver, driven] = [geometryOf('e'), geometryOf('f-sharp-auxiliary')];
  const drawn = (driverMm: number, drivenMm: number, lostMm = 0, ratio: number | null = 0.927) =>
    makeStackDrawing(
      {
        driver: { name: 'E', geometry: driver, standsMm: 8, nowMm: driverMm },
        driven: { name: 'F♯ auxiliary', geometry: driven, standsMm: 7.2, nowMm: drivenMm },
        ratio,
        lostMm,
      },
      'mm',
    );

  it('turns each key about its own rod by the angle its opening has', () => {
    const { driverTurn } = drawn(4, 3);
    const hinge = { distance: driver.hingeMm / 1000, height: driver.hingeHeightMm / 1000 };
    const { angle } = makePadPose(hinge, driver.padRadiusMm / 1000, { at: 'front', height: 0.004 });
    const [degrees, x] = driverTurn.match(/-?\d+(\.\d+)?/g)!.map(Number);
    expect(degrees).toBeCloseTo((-angle * 180) / Math.PI, 9);
    expect(x).toBeCloseTo(-driver.hingeMm, 9);
  });

  it('brings the screw onto the driven key’s arm, and short of it by the lost motion', () => {
    const touching = drawn(4, 3.708).screw!;
    const short = drawn(4, 3.708, 0.5).screw!;
    expect(touching.tip.y).toBeGreaterThan(touching.head.y);
    expect(short.head).toEqual(touching.head);
    expect(touching.tip.y - short.tip.y).toBeGreaterThan(0.3);
    expect(touching.tip.y - short.tip.y).toBeLessThan(0.7);
  });

  it('gives the arms the ratio of the link', () => {
    const { driverArm, drivenArm, drivenAt, driverAt } = drawn(0, 0);
    const tipOf = (path: string): number => Number(/H (-?[\d.]+)$/.exec(path)![1]);
    const span = drivenAt - driverAt + driver.hingeMm + driven.hingeMm;
    const a = tipOf(driverArm!) + driver.hingeMm;
    const ratio =
      ((driven.hingeMm + driven.padRadiusMm) / (driver.hingeMm + driver.padRadiusMm)) * (a / (span - a));
    expect(ratio).toBeCloseTo(0.927, 9);
    // The driven arm runs on beneath the screw, towards the driver.
    expect(tipOf(drivenArm!) + driven.hingeMm).toBeGreaterThan(span - a);
  });

  it('has no arm where the ratio is not known', () => {
    const { driverArm, drivenArm, screw } = drawn(8, 7.2, 0, null);
    expect([driverArm, drivenArm, screw]).toEqual([null, null, null]);
  });

  it('fits any frame with its words below it', () => {
    const drawing = drawn(8, 7.2);
    for (const frame of [
      { width: 820, height: 270 },
      { width: 340, height: 220 },
      { width: 300, height: 600 },
    ]) {
      const { x, y, pxPerMm, wordsY } = placeStack(drawing, frame);
      expect(x + drawing.leftMm * pxPerMm).toBeGreaterThanOrEqual(-ROUNDING);
      expect(x + (drawing.leftMm + drawing.widthMm) * pxPerMm).toBeLessThanOrEqual(frame.width + 1e-9);
      expect(y + drawing.topMm * pxPerMm).toBeGreaterThanOrEqual(0);
      expect(wordsY + 19).toBeLessThanOrEqual(frame.height);
    }
  });
});
