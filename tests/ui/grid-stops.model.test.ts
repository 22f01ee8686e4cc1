import { describe, expect, it } from 'vitest';
import { placeTo, type GridPlace } from '../../src/ui/parts/grid-stops.model.ts';

/** Three rows: the second has nothing in its middle, the third nothing at all beside its name. */
const PLACES: readonly GridPlace[] = [
  { row: 1, column: 0 },
  { row: 1, column: 2 },
  { row: 1, column: 4 },
  { row: 3, column: 0 },
  { row: 3, column: 4 },
  { row: 4, column: 0 },
];

describe('the arrows in a table', () => {
  it('go along the row and stop at its ends', () => {
    expect([0, 1, 2].map((at) => placeTo(PLACES, at, 'ArrowRight'))).toEqual([1, 2, null]);
    expect([0, 1, 2].map((at) => placeTo(PLACES, at, 'ArrowLeft'))).toEqual([null, 0, 1]);
    expect([placeTo(PLACES, 1, 'Home'), placeTo(PLACES, 1, 'End')]).toEqual([0, 2]);
  });

  it('go to the next row that holds something, as near to the column as can be', () => {
    expect([0, 1, 2, 4, 5].map((at) => placeTo(PLACES, at, 'ArrowDown'))).toEqual([3, 3, 4, 5, null]);
    expect([0, 3, 4, 5].map((at) => placeTo(PLACES, at, 'ArrowUp'))).toEqual([null, 0, 2, 3]);
  });

  it('reach every place from every other', () => {
    const reached = new Set([0]);
    for (let grown = true; grown;) {
      grown = false;
      for (const at of [...reached]) {
        for (const key of ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown']) {
          const to = placeTo(PLACES, at, key);
          if (to === null || reached.has(to)) continue;
          reached.add(to);
          grown = true;
        }
      }
    }
    expect(reached.size).toBe(PLACES.length);
  });

  it('leave other keys alone', () => {
    for (const key of ['Enter', 'a', 'PageDown', 'Tab', 'toString'])
      expect(placeTo(PLACES, 0, key)).toBe(null);
  });
});
