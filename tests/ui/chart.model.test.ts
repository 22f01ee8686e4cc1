import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeWords, spreadLabels, WORD_ROWS } from '../../src/ui/parts/chart/chart.model.ts';

const ROUNDING = 1e-9;

describe('labels at the lines’ ends', () => {
  const places = fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { minLength: 1, maxLength: 12 });

  it('never lie on one another and stay in the panel', () => {
    fc.assert(
      fc.property(places, (wanted) => {
        const got = spreadLabels(wanted, 15, 0, 200).toSorted((a, b) => a - b);
        expect(got[0]).toBeGreaterThanOrEqual(-ROUNDING);
        expect(got[got.length - 1]).toBeLessThanOrEqual(200 + ROUNDING);
        for (let i = 1; i < got.length; i++)
          expect(got[i] - got[i - 1]).toBeGreaterThanOrEqual(15 - ROUNDING);
      }),
      { seed: 7 },
    );
  });

  it('keep the lines’ order', () => {
    fc.assert(
      fc.property(places, (wanted) => {
        const got = spreadLabels(wanted, 15, 0, 200);
        wanted.forEach((a, i) =>
          wanted.forEach((b, j) => {
            if (a < b) expect(got[i]).toBeLessThan(got[j]);
          }),
        );
      }),
      { seed: 7 },
    );
  });

  it('stay where they are when nothing crowds them', () => {
    expect(spreadLabels([10, 50, 120], 15, 0, 200)).toEqual([10, 50, 120]);
  });

  it('close up evenly when there are more than the panel holds', () => {
    const got = spreadLabels(
      Array.from({ length: 9 }, () => 40),
      15,
      0,
      80,
    );
    got.forEach((y, i) => expect(y).toBeCloseTo(10 * i, 9));
  });
});

describe('the markers’ words', () => {
  const WIDTH = 700;
  const x = fc.double({ min: 60, max: 600, noNaN: true });

  it('never lie on one another, are never struck through, and stay in the picture', () => {
    fc.assert(
      fc.property(x, x, x, (a, b, c) => {
        const words = [
          { x: a, width: 130 },
          { x: b, width: 120 },
          { x: c, width: 110 },
        ];
        const places = placeWords(words, WIDTH);
        const spans = places.map(({ side, row }, i) => ({
          row,
          from: side === 'right' ? words[i].x : words[i].x - words[i].width,
          to: side === 'right' ? words[i].x + words[i].width : words[i].x,
        }));
        spans.forEach((span, i) => {
          expect(span.row).toBeLessThan(WORD_ROWS);
          expect(span.from).toBeGreaterThanOrEqual(0);
          expect(span.to).toBeLessThanOrEqual(WIDTH);
          spans.forEach((other, j) => {
            if (j === i) return;
            if (other.row === span.row) expect(span.from < other.to && other.from < span.to).toBe(false);
            const apart = Math.abs(words[j].x - words[i].x) > 2;
            if (apart && other.row > span.row) {
              expect(words[j].x > span.from && words[j].x < span.to).toBe(false);
            }
          });
        });
      }),
      { seed: 7 },
    );
  });
});
