import type { Annotation, Data, Layout, LayoutAxis, Shape } from 'plotly.js-dist';
import { signedCents } from '../note-names.ts';
import type { ChartColours } from './chart-colours.ts';
import type { Figure } from './figure.ts';
import {
  placeDifferences,
  placeNumbers,
  placeSideLabels,
  sideStep,
  type DifferencePanelId,
  type DifferencePlace,
  type PictureSize,
  type SideBySideChartModel,
} from './side-by-side-chart.model.ts';
import { tenths } from '../../../documents/tenths.ts';

const SYMBOLS = ['circle', 'square', 'diamond'] as const;
const AXES: Readonly<Record<DifferencePanelId, 'y' | 'y2'>> = { pitch: 'y', strength: 'y2' };
/** Room a note's name needs, px. */
const NAME_PX = 21;

/** Colours of the columns after the reference. */
export function seriesColours({ proposed, enough, other }: ChartColours): readonly [string, string, string] {
  return [proposed, enough, other];
}

/** Every note of every column against the reference; filled where the difference can be shown, hollow where not. */
export function makeSideBySideFigure(
  model: SideBySideChartModel,
  colours: ChartColours,
  size: PictureSize,
): Figure {
  const place = placeDifferences(model, size);
  return {
    data: model.panels.flatMap(({ id }) =>
      model.series.map((_, i) => seriesTrace(model, id, i, colours, place)),
    ),
    layout: {
      width: size.width,
      height: size.height,
      margin: { l: place.left, r: place.right, t: place.top, b: place.bottom, pad: 0 },
      font: {
        family: "system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', Arial, sans-serif",
        size: 12,
        color: colours.ink,
      },
      paper_bgcolor: 'transparent',
      plot_bgcolor: colours.sheet,
      showlegend: false,
      dragmode: false,
      hovermode: 'closest',
      hoverlabel: {
        bgcolor: colours.sheet,
        bordercolor: colours.soft,
        font: { size: 13, color: colours.ink },
      },
      ...axesOf(model, colours, place),
      shapes: shapesOf(model, colours, place),
      annotations: [
        ...labelsOf(model, colours, place, size),
        ...numbersOf(model, colours, place),
        ...thresholdWords(model, colours),
      ],
    },
  };
}

function axesOf(model: SideBySideChartModel, colours: ChartColours, place: DifferencePlace): Partial<Layout> {
  const axis: Partial<LayoutAxis> = {
    fixedrange: true,
    zeroline: false,
    gridcolor: colours.grid,
    linecolor: colours.soft,
    tickcolor: colours.soft,
    ticks: 'outside',
    ticklen: 3,
    tickfont: { size: 11 },
  };
  const roomy = place.pxPerNote >= NAME_PX;
  const natural = model.ticks.filter(({ natural: plain }) => roomy || plain);
  const every = roomy ? 1 : place.pxPerNote < 12 ? 3 : 2;
  const ticks = natural.filter((_, i) => i % every === 0);
  const yAxis = (index: number): Partial<LayoutAxis> => ({
    ...axis,
    domain: [...place.domains[index]],
    range: [...model.panels[index].range],
    nticks: index === 0 ? 8 : 5,
    zeroline: true,
    zerolinecolor: colours.found,
    zerolinewidth: 2,
    title: { text: model.panels[index].title, font: { size: 12 }, standoff: 2 },
  });
  return {
    xaxis: {
      ...axis,
      range: [...model.xRange],
      anchor: model.panels.length === 1 ? 'y' : 'y2',
      tickmode: 'array',
      tickvals: ticks.map(({ x }) => x),
      ticktext: ticks.map(({ label }) => label),
      tickangle: 0,
    },
    yaxis: yAxis(0),
    ...(model.panels.length === 1 ? {} : { yaxis2: yAxis(1) }),
  };
}

function seriesTrace(
  model: SideBySideChartModel,
  panel: DifferencePanelId,
  index: number,
  colours: ChartColours,
  place: DifferencePlace,
): Data {
  const { letter, points } = model.series[index];
  const color = seriesColours(colours)[index];
  const there = points[panel].flatMap((point, i) =>
    point === null ? [] : [{ point, mark: model.marks[i] }],
  );
  const { unit } = model.panels.find(({ id }) => id === panel)!;
  const size = place.pxPerNote < 12 ? 6 : 8;
  return {
    type: 'scatter',
    mode: 'markers',
    name: `${panel} ${letter}`,
    x: there.map(({ mark }) => mark.x + sideStep(index, model.series.length)),
    y: there.map(({ point }) => point.value),
    ids: there.map(({ mark }) => mark.id),
    text: there.map(
      ({ point, mark }) =>
        `${letter} ${mark.label}: ${signedCents(point.value)} ± ${tenths(point.plusMinus)} ${unit}` +
        (point.shown ? '' : '<br>no difference that can be shown'),
    ),
    hovertemplate: '%{text}<extra></extra>',
    yaxis: AXES[panel],
    error_y: {
      type: 'data',
      array: there.map(({ point }) => point.plusMinus),
      color: `${color}99`,
      thickness: 1.25,
      width: place.pxPerNote < 12 ? 0 : 3,
    },
    marker: {
      symbol: SYMBOLS[index],
      opacity: 1,
      size: there.map(({ mark, point }) =>
        point.value === 0 && point.plusMinus === 0 ? 3 : mark.usual ? size : size - 2,
      ),
      color: there.map(({ point }) => (point.shown ? color : colours.sheet)),
      line: { color, width: 1.5 },
    },
  };
}

/** The rows' frames, and where a player begins to notice. */
function shapesOf(
  model: SideBySideChartModel,
  colours: ChartColours,
  place: DifferencePlace,
): Partial<Shape>[] {
  return model.panels.flatMap(({ id, noticedFrom, range }, i): Partial<Shape>[] => [
    {
      type: 'rect',
      layer: 'below',
      xref: 'paper',
      yref: 'paper',
      x0: 0,
      x1: 1,
      y0: place.domains[i][0],
      y1: place.domains[i][1],
      line: { color: colours.edge, width: 1 },
    },
    ...[noticedFrom, -noticedFrom]
      .filter((value) => value > range[0] && value < range[1])
      .map((value): Partial<Shape> => ({
        type: 'line',
        layer: 'below',
        xref: 'paper',
        yref: AXES[id],
        x0: 0,
        x1: 1,
        y0: value,
        y1: value,
        line: { color: colours.soft, width: 1.25, dash: 'dash' },
      })),
  ]);
}

type Note = Partial<Annotation>;

const PLAIN: Note = { showarrow: false, font: { size: 11 } };

/** Says what the dashed lines are, or that they lie beyond the picture. */
function thresholdWords({ panels }: SideBySideChartModel, { soft, sheet }: ChartColours): Note[] {
  return panels.map(({ id, noticedFrom, unit, range }): Note => {
    const above = noticedFrom < range[1];
    const inside = above || -noticedFrom > range[0];
    return {
      ...PLAIN,
      xref: 'paper',
      yref: inside ? AXES[id] : (`${AXES[id]} domain` as 'paper'),
      x: 0.004,
      y: inside ? (above ? noticedFrom : -noticedFrom) : 1,
      xanchor: 'left',
      yanchor: inside ? 'middle' : 'top',
      bgcolor: sheet,
      borderpad: 1,
      text: inside
        ? `a player notices from ${noticedFrom} ${unit}`
        : `a player notices from ${noticedFrom} ${unit}: beyond this picture`,
      font: { size: 11, color: soft },
    };
  });
}

function labelsOf(
  model: SideBySideChartModel,
  colours: ChartColours,
  place: DifferencePlace,
  size: PictureSize,
): Note[] {
  return placeSideLabels(model, place).map(({ series, text, y }): Note => ({
    ...PLAIN,
    xref: 'paper',
    yref: 'paper',
    x: 1,
    xshift: 6,
    xanchor: 'left',
    y: 1 - (y - place.top) / (size.height - place.top - place.bottom),
    yanchor: 'middle',
    text: `<b>${escaped(text)}</b>`,
    font: { size: 12, color: series < 0 ? colours.found : seriesColours(colours)[series] },
  }));
}

function numbersOf(model: SideBySideChartModel, colours: ChartColours, place: DifferencePlace): Note[] {
  const [, lower] = place.rows[0];
  const [upper] = place.rows[0];
  return placeNumbers(model, place, signedCents).map(({ series, x, y, text }): Note => ({
    ...PLAIN,
    xref: 'x',
    yref: 'y domain' as 'paper',
    x: model.xRange[0] + (x - place.left) / place.pxPerNote,
    y: (lower - y) / (lower - upper),
    yanchor: 'middle',
    text,
    bgcolor: colours.sheet,
    borderpad: 0,
    font: { size: 11, color: seriesColours(colours)[series] },
  }));
}

/** Names come from documents: the library reads some marks as markup. */
function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
