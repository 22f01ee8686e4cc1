/** One fingering's place on the scale. */
export interface ScaleMark {
  readonly id: string;
  /** `B♭4 bis` */
  readonly label: string;
  /** the note's usual fingering, or another way */
  readonly usual: boolean;
  /** in semitones along the axis; other ways stand a little to the right of their note */
  readonly x: number;
}

export type ScalePanelId = 'pitch' | 'move' | 'strength' | 'cutoff';

/** One row of the chart. */
export interface ScalePanel {
  readonly title: string;
  readonly range: readonly [number, number];
  /** as found, in the marks' order; null where there is none */
  readonly found: readonly (number | null)[];
}

/** Every note as found: what a moving key does not change. */
export interface ScaleChartModel {
  readonly marks: readonly ScaleMark[];
  readonly ticks: readonly { readonly x: number; readonly label: string; readonly natural: boolean }[];
  readonly xRange: readonly [number, number];
  readonly panels: Readonly<Record<ScalePanelId, ScalePanel>>;
  /** cents as played as found, in the marks' order; null where a note was not, or nothing was */
  readonly played: readonly (number | null)[] | null;
  /** the whole picture in words */
  readonly summary: string;
}

/** What moves with a key, in the marks' order. */
export interface ScaleLive {
  readonly values: Readonly<Record<ScalePanelId, readonly (number | null)[]>>;
  /** how far each may be off either way; null where that is not known */
  readonly plusMinus: Readonly<Record<'pitch' | 'move', readonly (number | null)[]>>;
  /** which of the marks is picked, or −1 */
  readonly picked: number;
  /** how much the key in hand moves each mark, 0…1 for showing */
  readonly lit: readonly number[];
  /** whether anything is proposed otherwise than found */
  readonly moved: boolean;
}

/** Where the panels lie in a picture of a size, px. */
export interface ScalePlace {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** from the top, [upper edge, lower edge] */
  readonly panels: Readonly<Record<ScalePanelId, readonly [number, number]>>;
  readonly pxPerNote: number;
}

const NARROW_PX = 560;
const TOP_PX = 26;
const BOTTOM_PX = 24;
const RIGHT_PX = 8;

/** Shares of the height between the margins, from below, as the drawing library counts. */
export const SCALE_DOMAINS: Readonly<Record<ScalePanelId, readonly [number, number]>> = {
  pitch: [0.585, 1],
  move: [0.335, 0.55],
  strength: [0.17, 0.3],
  cutoff: [0, 0.13],
};

export function placeScale(
  model: ScaleChartModel,
  size: { readonly width: number; readonly height: number },
): ScalePlace {
  const left = size.width < NARROW_PX ? 54 : 62;
  const plotHeight = size.height - TOP_PX - BOTTOM_PX;
  const edges = ([low, high]: readonly [number, number]): readonly [number, number] => [
    TOP_PX + (1 - high) * plotHeight,
    TOP_PX + (1 - low) * plotHeight,
  ];
  const [from, to] = model.xRange;
  return {
    left,
    right: RIGHT_PX,
    top: TOP_PX,
    bottom: BOTTOM_PX,
    panels: {
      pitch: edges(SCALE_DOMAINS.pitch),
      move: edges(SCALE_DOMAINS.move),
      strength: edges(SCALE_DOMAINS.strength),
      cutoff: edges(SCALE_DOMAINS.cutoff),
    },
    pxPerNote: (size.width - left - RIGHT_PX) / (to - from),
  };
}

/** px from the left of a place along the scale. */
export function xPx(model: ScaleChartModel, place: ScalePlace, x: number): number {
  return place.left + (x - model.xRange[0]) * place.pxPerNote;
}

/** px from the top of a value in its panel, and whether it lies beyond an edge, where it is drawn then. */
export function yPx(
  model: ScaleChartModel,
  place: ScalePlace,
  panel: ScalePanelId,
  value: number,
): { readonly y: number; readonly beyond: 'above' | 'below' | null } {
  const [low, high] = model.panels[panel].range;
  const [upper, lower] = place.panels[panel];
  if (value > high) return { y: upper, beyond: 'above' };
  if (value < low) return { y: lower, beyond: 'below' };
  return { y: lower - ((value - low) / (high - low)) * (lower - upper), beyond: null };
}

/** The mark nearest to a place in the picture. */
export function nearestMark(model: ScaleChartModel, place: ScalePlace, px: number): number {
  let nearest = -1;
  let least = Infinity;
  model.marks.forEach((mark, i) => {
    const distance = Math.abs(xPx(model, place, mark.x) - px);
    if (distance < least) {
      least = distance;
      nearest = i;
    }
  });
  return nearest;
}

/**
 * A range in whole steps around values, so that a moving value changes it seldom.
 *
 * @param least how narrow it may be
 */
export function steppedRange(values: readonly number[], step: number, least: number): [number, number] {
  if (values.length === 0) return [0, least];
  let low = Math.floor((Math.min(...values) - 0.25 * step) / step) * step;
  let high = Math.ceil((Math.max(...values) + 0.25 * step) / step) * step;
  while (high - low < least) {
    high += step;
    if (high - low < least) low -= step;
  }
  return [low, high];
}
