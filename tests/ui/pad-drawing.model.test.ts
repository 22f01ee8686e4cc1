import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makePadPose } from '../../src/acoustics/index.ts';
import { frontMmAt, makePadDrawing, placeDrawing } from '../../src/ui/parts/pad-drawing.model.ts';
import { report } from './demo.ts';

const { geometry, reachMm, present } = report('e');
const openings = { frontMm: 9.8, foundFrontMm: present.frontMm, reachMm };

/** Turns a point as the browser does with `rotate(degrees x y)`. */
function turned(turn: string, x: number, y: number): { x: number; y: number } {
  const [degrees, cx, cy] = /rotate\((\S+) (\S+) (\S+)\)/.exec(turn)!.slice(1).map(Number);
  const a = (degrees * Math.PI) / 180;
  return {
    x: cx + (x - cx) * Math.cos(a) - (y - cy) * Math.sin(a),
    y: cy + (x - cx) * Math.sin(a) + (y - cy) * Math.cos(a),
  };
}

const ROUNDING_MM = 1e-9;

describe('the side drawing', () => {
  it('turns the pad about the rod so that each gap is the pose’s, to scale', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: reachMm, noNaN: true }), (frontMm) => {
        const drawing = makePadDrawing(geometry, { ...openings, frontMm }, 'mm');
        const pose = makePadPose(
          { distance: geometry.hingeMm / 1000, height: geometry.hingeHeightMm / 1000 },
          geometry.padRadiusMm / 1000,
          { at: 'front', height: frontMm / 1000 },
        );
        const r = geometry.padRadiusMm;
        expect(-turned(drawing.turn, r, 0).y).toBeCloseTo(pose.front * 1000, 9);
        expect(-turned(drawing.turn, 0, 0).y).toBeCloseTo(pose.centre * 1000, 9);
        expect(-turned(drawing.turn, -r, 0).y).toBeCloseTo(pose.back * 1000, 9);
        for (const gap of drawing.gaps) {
          const s = { front: r, centre: 0, back: -r }[gap.at];
          const face = turned(drawing.turn, s, 0);
          expect(Math.abs(gap.x - face.x)).toBeLessThan(ROUNDING_MM);
          expect(Math.abs(gap.yFace - face.y)).toBeLessThan(ROUNDING_MM);
        }
      }),
      { seed: 7, numRuns: 50 },
    );
  });

  it('lays the ghost where the key was found', () => {
    const drawing = makePadDrawing(geometry, openings, 'mm');
    expect(-turned(drawing.ghostTurn, geometry.padRadiusMm, 0).y).toBeCloseTo(present.frontMm, 9);
  });

  it('reads a drag back as the opening under the finger', () => {
    for (const frontMm of [0.5, 4, 9.8, 15]) {
      const { grip } = makePadDrawing(geometry, { ...openings, frontMm }, 'mm');
      expect(frontMmAt(geometry, grip.x, grip.y)).toBeCloseTo(frontMm, 9);
    }
  });

  it('writes the gaps in the unit chosen', () => {
    const inch = makePadDrawing(geometry, openings, 'thou');
    expect(inch.gaps.find((g) => g.at === 'front')!.value).toBe('0.386 in');
  });

  it('keeps its frame while the pad moves', () => {
    const low = makePadDrawing(geometry, { ...openings, frontMm: 1 }, 'mm');
    const high = makePadDrawing(geometry, { ...openings, frontMm: 15 }, 'mm');
    for (const part of ['leftMm', 'topMm', 'widthMm', 'heightMm'] as const)
      expect(low[part]).toBe(high[part]);
  });

  it.each(['e', 'small-c', 'low-b-flat', 'palm-f', 'g'])(
    'lies inside any frame, words apart, for %s',
    (keyId) => {
      const study = report(keyId);
      const drawing = makePadDrawing(
        study.geometry,
        { frontMm: study.present.frontMm, foundFrontMm: study.present.frontMm, reachMm: study.reachMm },
        'thou',
      );
      for (const frame of [
        { width: 440, height: 180 },
        { width: 380, height: 400 },
        { width: 370, height: 270 },
      ]) {
        const place = placeDrawing(drawing, frame);
        expect(place.x + drawing.leftMm * place.pxPerMm).toBeGreaterThanOrEqual(-1e-6);
        expect((drawing.widthMm + drawing.leftMm) * place.pxPerMm + place.x).toBeLessThanOrEqual(
          frame.width + 1e-6,
        );
        expect(drawing.heightMm * place.pxPerMm).toBeLessThanOrEqual(frame.height);
        const xs = place.labels.map((l) => l.x);
        expect(xs[1] - xs[0]).toBeGreaterThanOrEqual(70);
        expect(xs[2] - xs[1]).toBeGreaterThanOrEqual(70);
        for (const { x, y } of place.labels) {
          expect(x).toBeGreaterThanOrEqual(33);
          expect(x).toBeLessThanOrEqual(frame.width - 33);
          expect(y + 18).toBeLessThanOrEqual(frame.height);
        }
      }
    },
  );
});
