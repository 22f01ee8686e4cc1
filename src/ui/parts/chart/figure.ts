import type { Annotation, Config, Data, Layout, Shape } from 'plotly.js-dist';
import { parallelTraces, parallelWord } from './parallel-lines.ts';
import {
  placeWords,
  spreadLabels,
  WORD_ROWS,
  type ChartMarker,
  type ChartModel,
  type ProposedMark,
  type WordPlace,
} from './chart.model.ts';

/** Colours the figure takes from the page. */
export interface ChartColours {
  readonly ink: string;
  readonly soft: string;
  readonly edge: string;
  readonly grid: string;
  readonly found: string;
  readonly enough: string;
  readonly proposed: string;
  readonly band: string;
  readonly sheet: string;
  /** what lies under the line of a share */
  readonly filled: string;
  /** one more horn, where three are not enough */
  readonly other: string;
  /** lines that carry their names */
  readonly lines: readonly string[];
}

/** A figure as plotly takes it. */
export interface Figure {
  readonly data: Data[];
  readonly layout: Partial<Layout>;
}

export const CONFIG: Partial<Config> = {
  displaylogo: false,
  displayModeBar: false,
  responsive: false,
  scrollZoom: false,
  doubleClick: false,
};

const GLYPHS: Readonly<Record<ChartMarker['id'], string>> = { found: '●', enough: '▲', proposed: '◆' };
const DASHES = { found: 'dot', enough: 'dash', proposed: 'solid' } as const;
const ROW_PX = 17;
const TOP_PX = WORD_ROWS * ROW_PX + 5;
const BOTTOM_PX = 46;
const LEFT_PX = 58;
/** The share panel takes the lower part, the notes the upper. */
const SHARE_TOP = 0.27;
const NOTES_BOTTOM = 0.35;
const LABEL_GAP_PX = 15;
const LABEL_CHAR_PX = 7;
const NARROW_PX = 520;
const WORD_CHAR_PX = 7.4;

/** The whole figure at a size. */
export function makeFigure(
  model: ChartModel,
  proposed: ProposedMark,
  colours: ChartColours,
  size: { readonly width: number; readonly height: number },
): Figure {
  const right = rightMargin(model, size.width);
  const plotHeight = size.height - TOP_PX - BOTTOM_PX;
  const placed = placedMarkers(model, proposed, size.width);
  const font = { family: getFont(), size: 12, color: colours.ink };
  const axis = {
    fixedrange: true,
    zeroline: false,
    gridcolor: colours.grid,
    linecolor: colours.soft,
    tickcolor: colours.soft,
    ticks: 'outside',
    ticklen: 4,
  } as const;
  return {
    data: [
      ...model.lines.map((line): Data => ({
        type: 'scatter',
        mode: 'lines',
        name: line.label,
        x: [...line.x],
        y: [...line.y],
        line: {
          color: tintOf(line, colours),
          width: 2.25,
          dash: line.register === 1 ? 'solid' : 'dash',
        },
        hovertemplate: `%{y:.${model.yDigits}f}${model.ySuffix}`,
        connectgaps: false,
      })),
      {
        type: 'scatter',
        mode: 'lines',
        name: 'vent share',
        x: [...model.share.x],
        y: [...model.share.y],
        yaxis: 'y2',
        line: { color: colours.ink, width: 2.25 },
        fill: 'tozeroy',
        fillcolor: colours.filled,
        hovertemplate: '%{y:.0f} %',
      },
      ...proposedTraces(proposedPlaces(model, proposed), colours),
      ...parallelTraces(model, colours.soft, colours.lines),
    ],
    layout: {
      width: size.width,
      height: size.height,
      margin: { l: LEFT_PX, r: right, t: TOP_PX, b: BOTTOM_PX, pad: 0 },
      font,
      paper_bgcolor: 'transparent',
      plot_bgcolor: colours.sheet,
      showlegend: false,
      dragmode: false,
      hovermode: 'x unified',
      hoverlabel: { bgcolor: colours.sheet, bordercolor: colours.soft, font: { ...font, size: 13 } },
      xaxis: {
        ...axis,
        range: [...model.xRange],
        anchor: 'y2',
        title: { text: model.xTitle, standoff: 6 },
        hoverformat: `.${model.xDigits}f`,
        ticksuffix: '',
        unifiedhovertitle: { text: `%{x:.${model.xDigits}f}${model.xSuffix} at the front` },
      },
      yaxis: {
        ...axis,
        domain: [NOTES_BOTTOM, 1],
        range: [...model.yRange],
        title: { text: model.yTitle, standoff: 4 },
        nticks: 7,
      },
      yaxis2: {
        ...axis,
        domain: [0, SHARE_TOP],
        range: [...model.shareRange],
        title: { text: 'vent share', standoff: 4 },
        tickvals: [0, 50, 100],
        ticksuffix: ' %',
      },
      shapes: [
        ...placed.map((mark) => markerShape(mark, colours, plotHeight)),
        ...(model.band === null ? [] : [bandShape(model.band, colours)]),
        panelFrame(colours, NOTES_BOTTOM, 1),
        panelFrame(colours, 0, SHARE_TOP),
      ],
      annotations: [
        ...placed.map((mark) => markerWord(mark, model, colours)),
        ...lineLabels(model, colours, plotHeight, size.width),
        parallelWord(model, colours.soft),
      ],
    },
  };
}

/** What the slider moves, as changes to a drawn figure. */
export function proposedUpdate(
  model: ChartModel,
  proposed: ProposedMark,
  width: number,
): { readonly traces: number[]; readonly data: Data; readonly layout: Partial<Layout> } {
  const { notes, share } = proposedPlaces(model, proposed);
  const layout: Record<string, unknown> = {};
  // The markers come first in both lists, the proposed one before the others; their words make room for it.
  placedMarkers(model, proposed, width).forEach((mark, i) => {
    layout[`shapes[${i}].x0`] = mark.marker.x;
    layout[`shapes[${i}].x1`] = mark.marker.x;
    layout[`shapes[${i}].y0`] = lineTop(mark.place);
    const { x, text, xanchor, yshift } = wordAt(mark, model);
    layout[`annotations[${i}].x`] = x;
    layout[`annotations[${i}].text`] = text;
    layout[`annotations[${i}].xanchor`] = xanchor;
    layout[`annotations[${i}].yshift`] = yshift;
  });
  return {
    traces: [model.lines.length + 1, model.lines.length + 2],
    data: { x: [notes.x, share.x], y: [notes.y, share.y] } as Data,
    layout: layout as Partial<Layout>,
  };
}

/** Room for the longest line name. */
function rightMargin(model: ChartModel, width: number): number {
  const longest = Math.max(4, ...model.lines.map((line) => nameAt(line.label, width).length));
  return 18 + LABEL_CHAR_PX * longest;
}

/** A narrow picture has no room for the long way of saying which fingers. */
function nameAt(label: string, width: number): string {
  return width < NARROW_PX ? label.replace('one-and-one', '1+1') : label;
}

interface PlacedMarker {
  readonly marker: ChartMarker;
  readonly place: WordPlace;
}

/** The markers, the proposed one first, with a place for each word. */
function placedMarkers(model: ChartModel, proposed: ProposedMark, width: number): PlacedMarker[] {
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

const tintOf = ({ tint }: { readonly tint: number }, { lines }: ChartColours): string =>
  lines[tint % lines.length];

function getFont(): string {
  return "system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', Arial, sans-serif";
}

interface Places {
  readonly x: number[];
  readonly y: (number | null)[];
}

/** Where the proposed opening meets the lines: in the notes' panel and in the share's. */
function proposedPlaces(model: ChartModel, { at }: ProposedMark): { notes: Places; share: Places } {
  if (at === null) return { notes: { x: [], y: [] }, share: { x: [], y: [] } };
  return {
    notes: { x: model.lines.map(() => at.x), y: [...at.y] },
    share: { x: [at.x], y: [at.share] },
  };
}

function proposedTraces({ notes, share }: { notes: Places; share: Places }, colours: ChartColours): Data[] {
  const common = {
    type: 'scatter',
    mode: 'markers',
    marker: {
      symbol: 'diamond',
      size: 10,
      color: colours.proposed,
      line: { color: colours.sheet, width: 1.5 },
    },
    hoverinfo: 'skip',
  } as const;
  return [
    { ...common, name: 'proposed', ...notes },
    { ...common, name: 'proposed share', yaxis: 'y2', ...share },
  ];
}

function markerShape(
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
function lineTop({ row }: WordPlace): number {
  return row * ROW_PX + ROW_PX - 3;
}

function markerWord(mark: PlacedMarker, model: ChartModel, colours: ChartColours): Partial<Annotation> {
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

function wordAt(
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

function valueWords(marker: ChartMarker, model: ChartModel): string {
  return `${marker.x.toFixed(model.xDigits)}${model.xSuffix}`;
}

function bandShape(band: readonly [number, number], colours: ChartColours): Partial<Shape> {
  return {
    type: 'rect',
    layer: 'below',
    xref: 'x',
    yref: 'paper',
    x0: band[0],
    x1: band[1],
    y0: 0,
    y1: 1,
    fillcolor: colours.band,
    line: { width: 0 },
  };
}

function panelFrame(colours: ChartColours, y0: number, y1: number): Partial<Shape> {
  return {
    type: 'rect',
    layer: 'below',
    xref: 'paper',
    yref: 'paper',
    x0: 0,
    x1: 1,
    y0,
    y1,
    line: { color: colours.edge, width: 1 },
  };
}

/** Each line's name at its end, moved up or down just enough that none covers another. */
function lineLabels(
  model: ChartModel,
  colours: ChartColours,
  plotHeight: number,
  width: number,
): Partial<Annotation>[] {
  const panelPx = (1 - NOTES_BOTTOM) * plotHeight;
  const [low, high] = model.yRange;
  const px = (y: number): number => ((high - y) / (high - low)) * panelPx;
  const ends = model.lines.flatMap((line) => {
    const last = line.y.findLastIndex((value) => value !== null);
    return last < 0 ? [] : [{ line, x: line.x[last], y: line.y[last]! }];
  });
  const places = spreadLabels(
    ends.map((end) => px(end.y)),
    LABEL_GAP_PX,
    4,
    panelPx - 2,
  );
  return ends.map(({ line, x, y }, i) => ({
    x,
    y,
    xref: 'x',
    yref: 'y',
    ax: 14,
    ay: places[i] - px(y),
    xanchor: 'left',
    showarrow: true,
    arrowhead: 0,
    arrowwidth: 1,
    arrowcolor: tintOf(line, colours),
    standoff: 1,
    borderpad: 0,
    text: nameAt(line.label, width),
    font: { color: tintOf(line, colours), size: 12 },
  }));
}
