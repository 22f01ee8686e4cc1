import type { Data, Layout, LayoutAxis } from 'plotly.js-dist';
import type { ChartColours } from './chart-colours.ts';
import type { Figure } from './figure.ts';
import { placeScale, SCALE_DOMAINS, type ScaleChartModel, type ScalePanelId } from './scale-chart.model.ts';

type AxisId = 'y' | 'y2' | 'y3' | 'y4';

const PANELS: readonly { readonly id: ScalePanelId; readonly axis: AxisId }[] = [
  { id: 'pitch', axis: 'y' },
  { id: 'move', axis: 'y2' },
  { id: 'strength', axis: 'y3' },
  { id: 'cutoff', axis: 'y4' },
];

/** Room a note's name needs, px. */
const NAME_PX = 21;

/** The frame and the horn as found; what moves is drawn over it. */
export function makeScaleFigure(
  model: ScaleChartModel,
  colours: ChartColours,
  size: { readonly width: number; readonly height: number },
): Figure {
  const place = placeScale(model, size);
  const roomy = place.pxPerNote >= NAME_PX;
  const font = { family: "system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', Arial, sans-serif" };
  const ticks = model.ticks.filter(({ natural }) => roomy || natural);
  const kept = roomy ? ticks : ticks.filter((_, i) => i % (place.pxPerNote < 12 ? 3 : 2) === 0);
  const axis: Partial<LayoutAxis> = {
    fixedrange: true,
    zeroline: false,
    gridcolor: colours.grid,
    linecolor: colours.soft,
    tickcolor: colours.soft,
    ticks: 'outside',
    ticklen: 3,
    tickfont: { size: 11 },
    title: { font: { size: 12 }, standoff: 2 },
  };
  const yAxis = (id: ScalePanelId, nticks: number): Partial<LayoutAxis> => ({
    ...axis,
    domain: [...SCALE_DOMAINS[id]],
    range: [...model.panels[id].range],
    nticks,
    title: { text: model.panels[id].title, font: { size: 12 }, standoff: 2 },
    ...(id === 'pitch' || id === 'move'
      ? { zeroline: true, zerolinecolor: colours.soft, zerolinewidth: 1.5 }
      : {}),
  });
  const layout: Partial<Layout> = {
    width: size.width,
    height: size.height,
    margin: { l: place.left, r: place.right, t: place.top, b: place.bottom, pad: 0 },
    font: { ...font, size: 12, color: colours.ink },
    paper_bgcolor: 'transparent',
    plot_bgcolor: colours.sheet,
    showlegend: false,
    dragmode: false,
    hovermode: false,
    xaxis: {
      ...axis,
      range: [...model.xRange],
      anchor: 'y4',
      tickmode: 'array',
      tickvals: kept.map(({ x }) => x),
      ticktext: kept.map(({ label }) => label),
      tickangle: 0,
      tickfont: { size: roomy ? 10.5 : 11 },
    },
    yaxis: yAxis('pitch', 6),
    yaxis2: yAxis('move', 4),
    yaxis3: yAxis('strength', 3),
    yaxis4: yAxis('cutoff', 3),
    shapes: PANELS.map(({ id }) => ({
      type: 'rect',
      layer: 'below',
      xref: 'paper',
      yref: 'paper',
      x0: 0,
      x1: 1,
      y0: SCALE_DOMAINS[id][0],
      y1: SCALE_DOMAINS[id][1],
      line: { color: colours.edge, width: 1 },
    })),
  };
  return {
    data: [
      ...PANELS.flatMap(({ id, axis: y }) => foundTraces(model, id, y, colours)),
      ...playedTrace(model, colours),
    ],
    layout,
  };
}

/** The rows' ranges, as a change to a drawn figure. */
export function scaleRangesUpdate({ panels }: ScaleChartModel): Partial<Layout> {
  const update: Record<string, unknown> = {};
  PANELS.forEach(({ id }, i) => {
    update[`yaxis${i === 0 ? '' : i + 1}.range`] = [...panels[id].range];
  });
  return update as Partial<Layout>;
}

/** Notes as they were played, as crosses; nothing where none was. */
function playedTrace({ marks, played }: ScaleChartModel, colours: ChartColours): Data[] {
  if (played === null) return [];
  return [
    {
      type: 'scatter',
      mode: 'markers',
      name: 'pitch as played',
      x: marks.map(({ x }) => x),
      y: [...played],
      hoverinfo: 'skip',
      marker: { symbol: 'x-thin', size: 7, line: { color: colours.ink, width: 1.75 } },
    },
  ];
}

/** Two traces: usual fingerings as rings, other ways as small open diamonds. */
function foundTraces(model: ScaleChartModel, id: ScalePanelId, axis: AxisId, colours: ChartColours): Data[] {
  return [true, false].map((usual): Data => {
    const shown = model.marks.flatMap((mark, i) => (mark.usual === usual ? [i] : []));
    return {
      type: 'scatter',
      mode: 'markers',
      name: `${id} as found, ${usual ? 'usual' : 'other'} fingerings`,
      x: shown.map((i) => model.marks[i].x),
      y: shown.map((i) => model.panels[id].found[i]),
      // Nothing has moved as found; the row only shows its frame.
      opacity: id === 'move' ? 0 : 1,
      ids: shown.map((i) => model.marks[i].id),
      yaxis: axis,
      hoverinfo: 'skip',
      marker: {
        symbol: usual ? 'circle-open' : 'diamond-open',
        size: usual ? (id === 'pitch' ? 9 : 7) : 6,
        color: colours.found,
        line: { color: colours.found, width: usual ? 1.75 : 1.25 },
      },
    };
  });
}
