import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keyedHoles, type HornDocument } from '../../src/documents/horn-document.ts';
import { makeHornPicture, type HornPicture } from '../../src/ui/parts/horn-picture.model.ts';
import {
  padAt,
  placeHornPicture,
  spreadAlong,
  type Box,
  type PadPlace,
} from '../../src/ui/parts/horn-picture-place.model.ts';
import { DEMO_NAMES, demoDocument } from '../acoustics/demo-horns.ts';

const ALTO = demoDocument('alto');
const EMPTY = { ...ALTO.setup, keys: [] };

/** Far below a pixel, far above rounding. */
const ROUNDING_PX = 1e-6;
const ROUNDING_DIGITS = 9;

const BELL_RIM_MM = ALTO.horn.bore.at(-1)!.points.at(-1)!.positionMm;

/** Horns with any number of pads anywhere along and round the alto's bore. */
const anyHorn = fc
  .array(
    fc.record({
      positionMm: fc.double({ min: 0, max: 1050, noNaN: true }),
      aroundDeg: fc.option(fc.double({ min: -180, max: 180, noNaN: true }), { nil: undefined }),
      diameterMm: fc.double({ min: 0.5, max: 60, noNaN: true }),
      name: fc.oneof(fc.constantFrom('E', 'F♯ auxiliary'), fc.string({ minLength: 1, maxLength: 40 })),
    }),
    { minLength: 1, maxLength: 40 },
  )
  .map((holes): HornDocument => {
    const [{ aroundDeg: _around, readings: _readings, ...like }] = keyedHoles(ALTO.horn);
    return {
      ...ALTO.horn,
      holes: holes.map(({ aroundDeg, ...hole }, i) => ({
        ...like,
        ...hole,
        id: `pad-${i}`,
        number: i + 1,
        ...(aroundDeg === undefined ? {} : { aroundDeg }),
      })),
    };
  });

const anyWidth = fc.integer({ min: 240, max: 1900 });

function overlap(a: Box, b: Box): boolean {
  return (
    a.left + a.width > b.left + ROUNDING_PX &&
    b.left + b.width > a.left + ROUNDING_PX &&
    a.top + a.height > b.top + ROUNDING_PX &&
    b.top + b.height > a.top + ROUNDING_PX
  );
}

const padNamed = (pads: readonly PadPlace[], id: string): PadPlace => pads.find((p) => p.pad.id === id)!;

describe('the wall laid flat', () => {
  it('keeps every pad’s place along the bore, its arc round it, and its size', () => {
    for (const name of DEMO_NAMES) {
      const { horn, setup } = demoDocument(name);
      const picture = makeHornPicture(horn, setup);
      expect(picture.pads).toHaveLength(keyedHoles(horn).length);
      for (const pad of picture.pads) {
        const hole = horn.holes.find((h) => h.id === pad.id)!;
        const key = setup.keys.find((k) => k.pad === pad.id)!;
        expect([pad.xMm, pad.holeMm, pad.padMm]).toEqual([
          hole.positionMm,
          hole.diameterMm,
          key.padDiameterMm,
        ]);
        // Between two points of the bore the arc is that of a radius between theirs.
        const points = horn.bore.flatMap((s) => s.points);
        const after = points.findIndex((p) => p.positionMm >= hole.positionMm);
        const arc = (diameterMm: number): number =>
          Math.abs(((diameterMm / 2) * hole.aroundDeg! * Math.PI) / 180);
        expect(Math.abs(pad.yMm)).toBeGreaterThanOrEqual(arc(points[after - 1].diameterMm) - ROUNDING_PX);
        expect(Math.abs(pad.yMm)).toBeLessThanOrEqual(arc(points[after].diameterMm) + ROUNDING_PX);
        expect(Math.sign(pad.yMm)).toBe(Math.sign(hole.aroundDeg!));
      }
    }
  });

  it('is as wide as the bore is round, and stops in the flare below the last pad', () => {
    for (const name of DEMO_NAMES) {
      const { horn, setup } = demoDocument(name);
      const picture = makeHornPicture(horn, setup);
      const points = horn.bore.flatMap((s) => s.points);
      for (const { xMm, halfMm } of picture.edge.slice(0, -1)) {
        const radii = points.filter((p) => p.positionMm === xMm).map((p) => (p.diameterMm / 2) * Math.PI);
        expect(radii).toContain(halfMm);
      }
      const last = Math.max(...picture.pads.map((p) => p.xMm + p.padMm / 2));
      expect(picture.cut).toBe(true);
      expect(picture.lengthMm).toBeGreaterThan(last);
      expect(picture.lengthMm).toBeLessThan(points[points.length - 1].positionMm);
      expect(picture.halfMm).toBeLessThan((points[points.length - 1].diameterMm / 2) * Math.PI);
    }
  });

  it('leaves no pad and no vent outside', () => {
    fc.assert(
      fc.property(anyHorn, (horn) => {
        const picture = makeHornPicture(horn, EMPTY);
        for (const { xMm, yMm, padMm } of picture.pads) {
          // A pad that hangs over the bell's rim is drawn over it.
          expect(Math.min(BELL_RIM_MM, xMm + padMm / 2)).toBeLessThanOrEqual(picture.lengthMm);
          expect(Math.abs(yMm) + padMm / 2).toBeLessThanOrEqual(picture.halfMm);
        }
      }),
      { seed: 1301, numRuns: 100 },
    );
  });

  it('grows with the horn and changes in nothing else', () => {
    const twice = (horn: HornDocument): HornDocument => ({
      ...horn,
      bore: horn.bore.map((s) => ({
        ...s,
        points: s.points.map((p) => ({ positionMm: 2 * p.positionMm, diameterMm: 2 * p.diameterMm })),
      })),
      holes: horn.holes.map((h) => ({
        ...h,
        positionMm: 2 * h.positionMm,
        diameterMm: 2 * h.diameterMm,
      })),
    });
    const small = makeHornPicture(ALTO.horn, EMPTY);
    const large = makeHornPicture(twice(ALTO.horn), EMPTY);
    for (const [i, pad] of large.pads.entries()) {
      expect(pad.xMm).toBeCloseTo(2 * small.pads[i].xMm, ROUNDING_DIGITS);
      expect(pad.yMm).toBeCloseTo(2 * small.pads[i].yMm, ROUNDING_DIGITS);
    }
  });

  it('puts holes of unknown place on the line of the stacks, and says so', () => {
    const holes = ALTO.horn.holes.map(({ aroundDeg: _, ...hole }) => hole);
    const picture = makeHornPicture({ ...ALTO.horn, holes }, ALTO.setup);
    expect(picture.knowsAround).toBe(false);
    expect(picture.pads.every((pad) => pad.yMm === 0)).toBe(true);
    expect(makeHornPicture(ALTO.horn, ALTO.setup).knowsAround).toBe(true);
  });

  it('says of each pad what it shows, in the bench’s unit', () => {
    const options = { selected: 'e', ventShareOf: (id: string) => (id === 'e' ? 0.824 : null) };
    const saidIn = (unit: 'mm' | 'thou'): HornPicture['pads'][number] =>
      makeHornPicture(ALTO.horn, ALTO.setup, { ...options, unit }).pads.find((p) => p.id === 'e')!;
    const e = ALTO.setup.keys.find((k) => k.pad === 'e')!;
    expect(saidIn('mm').said).toBe(
      `7, E, rests open, hole 30.5 mm, pad ${e.padDiameterMm!.toFixed(1)} mm, vent share 82 %`,
    );
    expect(saidIn('thou').said).toContain('hole 1.201 in');
    expect(saidIn('mm').selected).toBe(true);
    const others = makeHornPicture(ALTO.horn, ALTO.setup, options).pads.filter((p) => p.id !== 'e');
    expect(others.some((p) => p.selected || p.said.includes('vent share'))).toBe(false);
  });
});

describe('a picture in its frame', () => {
  it('never lets two labels touch, nor one leave the picture', () => {
    fc.assert(
      fc.property(anyHorn, anyWidth, (horn, width) => {
        const place = placeHornPicture(makeHornPicture(horn, EMPTY), width);
        const labels = place.pads.map((p) => p.label);
        for (const [i, a] of labels.entries()) {
          expect(Math.min(a.left, a.top)).toBeGreaterThanOrEqual(-ROUNDING_PX);
          expect(a.left + a.width).toBeLessThanOrEqual(place.width + ROUNDING_PX);
          expect(a.top + a.height).toBeLessThanOrEqual(place.height + ROUNDING_PX);
          expect(labels.slice(i + 1).some((b) => overlap(a, b))).toBe(false);
        }
      }),
      { seed: 1302, numRuns: 200 },
    );
  });

  it('keeps labels off the wall’s pads', () => {
    fc.assert(
      fc.property(anyHorn, anyWidth, (horn, width) => {
        const { pads } = placeHornPicture(makeHornPicture(horn, EMPTY), width);
        for (const { label } of pads) {
          for (const { x, y, padPx } of pads) {
            const box = { left: x - padPx / 2, top: y - padPx / 2, width: padPx, height: padPx };
            expect(overlap(label, box)).toBe(false);
          }
        }
      }),
      { seed: 1303, numRuns: 60 },
    );
  });

  it('shows the demo horns with every name at each of the three sizes, no wider than the frame', () => {
    for (const name of DEMO_NAMES) {
      const { horn, setup } = demoDocument(name);
      for (const width of [1240, 780, 358]) {
        const place = placeHornPicture(makeHornPicture(horn, setup), width);
        expect([name, width, place.width <= width + ROUNDING_PX]).toEqual([name, width, true]);
        expect(place.pads.every((p) => p.name !== '' && !p.name.includes('…'))).toBe(true);
      }
    }
  });

  it('is to one scale along and round', () => {
    fc.assert(
      fc.property(anyHorn, anyWidth, (horn, width) => {
        const picture = makeHornPicture(horn, EMPTY);
        const place = placeHornPicture(picture, width);
        const [first] = place.pads;
        for (const { pad, x, y, padPx, holePx } of place.pads) {
          const mm = Math.hypot(pad.xMm - first.pad.xMm, pad.yMm - first.pad.yMm);
          expect(Math.hypot(x - first.x, y - first.y)).toBeCloseTo(mm * place.pxPerMm, 6);
          expect(padPx / pad.padMm).toBeCloseTo(place.pxPerMm, ROUNDING_DIGITS);
          expect(holePx / pad.holeMm).toBeCloseTo(place.pxPerMm, ROUNDING_DIGITS);
        }
      }),
      { seed: 1304, numRuns: 60 },
    );
  });

  it('is turned, not mirrored, where it stands upright', () => {
    const picture = makeHornPicture(ALTO.horn, ALTO.setup);
    // Twice the area of a triangle of pads, with its sense of turning.
    const sense = (width: number): number => {
      const { pads } = placeHornPicture(picture, width);
      const [a, b, c] = ['d', 'side-f-sharp', 'palm-e-flat'].map((id) => padNamed(pads, id));
      return Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
    };
    expect(placeHornPicture(picture, 358).upright).toBe(true);
    expect(placeHornPicture(picture, 1240).upright).toBe(false);
    expect(sense(358)).toBe(sense(1240));
  });

  it('leads each label to the edge of its own pad', () => {
    const { pads } = placeHornPicture(makeHornPicture(ALTO.horn, ALTO.setup), 1240);
    for (const { leader, x, y, padPx } of pads) {
      const [toX, toY] = /L (\S+) (\S+)$/.exec(leader)!.slice(1).map(Number);
      expect(Math.hypot(toX - x, toY - y)).toBeCloseTo(padPx / 2, 6);
    }
  });

  it('fills a hole to its vent share: half full at its middle, and not at all where nothing is known', () => {
    const shareOf = (id: string): number | null => ({ e: 0.5, d: 0.8 })[id] ?? null;
    const { pads } = placeHornPicture(makeHornPicture(ALTO.horn, ALTO.setup, { ventShareOf: shareOf }), 1240);
    const level = (id: string): number => Number(/^M \S+ (\S+)/.exec(padNamed(pads, id).levelPath!)![1]);
    const e = padNamed(pads, 'e');
    const d = padNamed(pads, 'd');
    expect(level('e')).toBeCloseTo(e.y, 6);
    expect(level('d')).toBeCloseTo(d.y - 0.3 * d.holePx, 6);
    expect(padNamed(pads, 'f').levelPath).toBeNull();
  });

  it('finds the pad under a finger, or the nearest within reach', () => {
    const place = placeHornPicture(makeHornPicture(ALTO.horn, ALTO.setup), 1240);
    for (const { pad, x, y } of place.pads) expect(padAt(place, x, y, 30)?.id).toBe(pad.id);
    const lowest = padNamed(place.pads, 'low-b-flat');
    expect(padAt(place, lowest.x, lowest.y + lowest.padPx / 2 + 10, 30)?.id).toBe('low-b-flat');
    expect(padAt(place, 0, 0, 30)).toBeNull();
  });
});

describe('labels in a row', () => {
  const row = fc
    .array(fc.double({ min: -50, max: 650, noNaN: true }), { minLength: 1, maxLength: 10 })
    .map((targets) => targets.sort((a, b) => a - b));
  const SIZE = 60;
  const ROOM = 600;
  const cost = (places: readonly number[], targets: readonly number[]): number =>
    places.reduce((sum, p, i) => sum + (p - targets[i]) ** 2, 0);

  it('stay where they want to be if they do not touch there', () => {
    expect(spreadAlong([100, 200, 300], SIZE, ROOM)).toEqual([100, 200, 300]);
  });

  it('give way evenly where two want the same place', () => {
    expect(spreadAlong([200, 200], SIZE, ROOM)).toEqual([170, 230]);
  });

  it('fit, and no other row that fits is nearer', () => {
    const gaps = fc.array(fc.double({ min: 0, max: 40, noNaN: true }), { minLength: 11, maxLength: 11 });
    fc.assert(
      fc.property(row, gaps, (targets, more) => {
        const places = spreadAlong(targets, SIZE, ROOM);
        places.forEach((p, i) => {
          expect(p).toBeGreaterThanOrEqual(i === 0 ? SIZE / 2 : places[i - 1] + SIZE - ROUNDING_PX);
          expect(p).toBeLessThanOrEqual(ROOM - SIZE / 2 + ROUNDING_PX);
        });
        const used = more.slice(0, targets.length).reduce((a, b) => a + b, 0);
        const free = ROOM - targets.length * SIZE;
        const squeeze = Math.min(1, free / Math.max(used, ROUNDING_PX));
        let at = -SIZE / 2;
        const other = targets.map((_, i) => (at += SIZE + more[i] * squeeze));
        expect(cost(places, targets)).toBeLessThanOrEqual(cost(other, targets) + ROUNDING_PX);
      }),
      { seed: 1305, numRuns: 300 },
    );
  });
});
