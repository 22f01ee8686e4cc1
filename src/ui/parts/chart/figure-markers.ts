import type { Annotation, Shape } from 'plotly.js-dist';
import type { ChartColours } from './chart-colours.ts';
import {
  placeWords,
  type ChartMarker,
  type ChartModel,
  type ProposedMark,
  type WordPlace,
} from './chart.model.ts';
import { LEFT_PX, rightMargin, ROW_PX, WORD_CHAR_PX } from './figure-room.ts';

const GLYPHS: Readonly<Record<ChartMarker['id'], string>> = { found: '●', enough: '▲', proposed: '◆' };
const DASHES = { found: 'dot', enough: 'dash', proposed: 'solid' } as const;

/** A marker, and where its word stands. */
export interface PlacedMarker {
  readonly marker: ChartMarker;
  readonly place: WordPlace;
}

/** The markers, the proposed one first, with a place for each word. */
export function placedMarkers(model: ChartModel, proposed: ProposedMark, width: number): PlacedMarker[] {
  const markers = [proposed.marker, ...model.fixedMarkers];
  const [low, high] = model.xRange;
  const plotWidth = width - LEFT_PX - rightMargin(model, width);
  const words = markers.map((marker) => ({
    x: LEFT_PX + ((marker.x - low) / (high - low)) * plotWidth,
    width: WORD_CHAR_PX * (marker.word.length + valueWords(marker, model).length + 4),
  }));
  const places = placeWords(words, width);
  return markers.map((marker, i) => ({ marker, place: places[i] }));
}

export function markerShape(
  { marker, place }: PlacedMarker,
  colours: ChartColours,
  plotHeight: number,
): Partial<Shape> {
  return {
    type: 'line',
    xref: 'x',
    yref: 'paper',
    ysizemode: 'pixel',
    yanchor: 1,
    x0: marker.x,
    x1: marker.x,
    y0: lineTop(place),
    y1: -plotHeight,
    line: {
      color: colours[marker.id],
      width: marker.id === 'proposed' ? 2.5 : 2,
      dash: DASHES[marker.id],
    },
  };
}

/** How far above the panels a marker's line runs, px: up to its word. */
export function lineTop({ row }: WordPlace): number {
  return row * ROW_PX + ROW_PX - 3;
}

export function markerWord(
  mark: PlacedMarker,
  model: ChartModel,
  colours: ChartColours,
): Partial<Annotation> {
  return {
    ...wordAt(mark, model),
    xref: 'x',
    y: 1,
    yref: 'paper',
    yanchor: 'bottom',
    showarrow: false,
    borderpad: 1,
    font: { color: colours[mark.marker.id], size: 12.5 },
  };
}

export function wordAt(
  { marker, place }: PlacedMarker,
  model: ChartModel,
): { x: number; text: string; xanchor: 'left' | 'right'; yshift: number } {
  const value = `<b>${valueWords(marker, model)}</b>`;
  const glyph = GLYPHS[marker.id];
  return {
    x: marker.x,
    xanchor: place.side === 'right' ? 'left' : 'right',
    yshift: place.row * ROW_PX - 1,
    text: place.side === 'right' ? `${glyph} ${value} ${marker.word}` : `${marker.word} ${value} ${glyph}`,
  };
}

export function valueWords(marker: ChartMarker, model: ChartModel): string {
  return `${marker.x.toFixed(model.xDigits)}${model.xSuffix}`;
}
