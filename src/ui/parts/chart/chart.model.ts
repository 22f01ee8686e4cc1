/** One line of the upper panel. */
export interface ChartLine {
  readonly id: string;
  readonly label: string;
  /** 1 drawn solid, 2 dashed */
  readonly register: 1 | 2 | 3;
  /** which of the line colours; a note and its octave share one */
  readonly tint: number;
  readonly x: readonly number[];
  /** null where the resonance is lost */
  readonly y: readonly (number | null)[];
}

/** An upright line through both panels, told apart by dash, shape and word as well as colour. */
export interface ChartMarker {
  readonly id: 'found' | 'enough' | 'proposed';
  readonly word: string;
  readonly x: number;
}

/** The curve as the chart draws it. */
export interface ChartModel {
  readonly lines: readonly ChartLine[];
  readonly share: { readonly x: readonly number[]; readonly y: readonly number[] };
  /** the same for a pad that rises parallel to its rim: vent share, and the note that moves most (null: none) */
  readonly parallel: {
    readonly share: readonly number[];
    readonly note: {
      readonly label: string;
      readonly tint: number;
      readonly y: readonly (number | null)[];
    } | null;
  };
  readonly xTitle: string;
  readonly yTitle: string;
  readonly ySuffix: string;
  /** digits after the point of the upper panel's values */
  readonly yDigits: number;
  readonly xDigits: number;
  readonly xSuffix: string;
  readonly xRange: readonly [number, number];
  readonly yRange: readonly [number, number];
  readonly shareRange: readonly [number, number];
  /** the answer, if the pad model errs either way; null where there is none */
  readonly band: readonly [number, number] | null;
  readonly fixedMarkers: readonly ChartMarker[];
  /** the whole curve in words */
  readonly summary: string;
}

/** What moves with the slider. */
export interface ProposedMark {
  readonly marker: ChartMarker;
  /** where the marker meets each line, once the physics has answered; in the lines' order */
  readonly at: { readonly x: number; readonly y: readonly (number | null)[]; readonly share: number } | null;
}

/**
 * Moves labels apart so that none lies on another, each as near to its own place as the room allows.
 *
 * @param places where each label would like to be, px from the top
 * @param gap    px, the least distance between two
 * @param low    px, the highest place a label may take
 * @param high   px, the lowest
 * @returns one place per label, in the given order
 */
export function spreadLabels(places: readonly number[], gap: number, low: number, high: number): number[] {
  const order = places.map((_, i) => i).sort((a, b) => places[a] - places[b] || a - b);
  const tight = places.length > 1 ? Math.min(gap, (high - low) / (places.length - 1)) : gap;
  const out = places.slice();
  let floor = low;
  for (const i of order) {
    out[i] = Math.max(places[i], floor);
    floor = out[i] + tight;
  }
  let ceiling = high;
  for (const i of [...order].reverse()) {
    out[i] = Math.min(out[i], ceiling);
    ceiling = out[i] - tight;
  }
  return out;
}

/** A marker's word: which side of its line it stands on and in which row above the panels. */
export interface WordPlace {
  readonly side: 'left' | 'right';
  readonly row: number;
}

/** Rows there are for words above the panels. */
export const WORD_ROWS = 3;

/**
 * Finds places for the markers' words so that no word lies on another, none is struck through by another
 * marker's line, which runs up to its own word's row, and all stay inside the picture. Low rows are better.
 *
 * @param words each marker's place along the axis and its word's width, px
 * @param width px, the picture's
 */
export function placeWords(
  words: readonly { readonly x: number; readonly width: number }[],
  width: number,
): WordPlace[] {
  const options: WordPlace[] = [];
  for (let row = 0; row < WORD_ROWS; row++) options.push({ side: 'right', row }, { side: 'left', row });
  const span = (i: number, place: WordPlace): [number, number] =>
    place.side === 'right'
      ? [words[i].x, words[i].x + words[i].width]
      : [words[i].x - words[i].width, words[i].x];
  const costOf = (places: readonly WordPlace[]): number => {
    let cost = 0;
    places.forEach((place, i) => {
      const [from, to] = span(i, place);
      cost += place.row + 20 * (Math.max(-from, 0) + Math.max(to - width, 0));
      places.forEach((other, j) => {
        if (j === i) return;
        const [otherFrom, otherTo] = span(j, other);
        if (j > i && place.row === other.row && from < otherTo && otherFrom < to) cost += 1000;
        const apart = Math.abs(words[j].x - words[i].x) > 2;
        if (apart && other.row > place.row && words[j].x > from && words[j].x < to) cost += 300;
      });
    });
    return cost;
  };
  let best: WordPlace[] = [];
  let least = Infinity;
  const walk = (chosen: WordPlace[]): void => {
    if (chosen.length === words.length) {
      const cost = costOf(chosen);
      if (cost < least) {
        least = cost;
        best = chosen;
      }
      return;
    }
    for (const option of options) walk([...chosen, option]);
  };
  walk([]);
  return best;
}
