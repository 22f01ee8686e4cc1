/** Where in a table something can be reached: its row and its column. */
export interface GridPlace {
  readonly row: number;
  readonly column: number;
}

/** Keys that go from place to place. */
const ALONG = ['ArrowLeft', 'ArrowRight', 'Home', 'End'] as const;
const ACROSS = ['ArrowUp', 'ArrowDown'] as const;

/**
 * The place a key leads to, by its number; null for a key that leads nowhere. Left and right go along the row, Home
 * and End to its ends; up and down go to the next row that holds something, as near to the column as can be.
 *
 * @param places row by row, each row from left to right
 */
export function placeTo(places: readonly GridPlace[], at: number, key: string): number | null {
  if (places[at] === undefined) return null;
  if ((ALONG as readonly string[]).includes(key)) return alongTo(places, at, key as (typeof ALONG)[number]);
  if ((ACROSS as readonly string[]).includes(key)) return acrossTo(places, at, key === 'ArrowDown' ? 1 : -1);
  return null;
}

function alongTo(places: readonly GridPlace[], at: number, key: (typeof ALONG)[number]): number | null {
  const { row } = places[at];
  const inRow = places.flatMap((place, i) => (place.row === row ? [i] : []));
  const here = inRow.indexOf(at);
  const to = { ArrowLeft: here - 1, ArrowRight: here + 1, Home: 0, End: inRow.length - 1 }[key];
  return inRow[to] ?? null;
}

function acrossTo(places: readonly GridPlace[], at: number, way: 1 | -1): number | null {
  const { row, column } = places[at];
  const rows = places.map((place) => place.row).filter((other) => (other - row) * way > 0);
  if (rows.length === 0) return null;
  const next = way > 0 ? Math.min(...rows) : Math.max(...rows);
  const off = (i: number): number => Math.abs(places[i].column - column);
  return places.reduce<number | null>(
    (best, place, i) => (place.row === next && (best === null || off(i) < off(best)) ? i : best),
    null,
  );
}
