import type { Config, Data, Layout, Shape } from 'plotly.js-dist';
import { parallelTraces, parallelWord } from './parallel-lines.ts';
import { tintOf, type ChartColours } from './chart-colours.ts';
import type { ChartModel, ProposedMark } from './chart.model.ts';
import { lineTop, markerShape, markerWord, placedMarkers, wordAt } from './figure-markers.ts';
import { lineLabels } from './figure-names.ts';
import { BOTTOM_PX, LEFT_PX, NOTES_BOTTOM, rightMargin, SHARE_TOP, TOP_PX } from './figure-room.ts';

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
