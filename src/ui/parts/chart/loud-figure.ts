import type { Data, LayoutAxis } from 'plotly.js-dist';
import type { ChartColours } from './chart-colours.ts';
import type { Figure } from './figure.ts';

/** Strength of one note against the level of playing. */
export interface LoudChartModel {
  readonly pressuresKpa: readonly number[];
  /** % of the strength of soft playing */
  readonly found: readonly (number | null)[];
  /** null where nothing is proposed otherwise than found */
  readonly proposed: readonly (number | null)[] | null;
  /** the level the sentence tells of */
  readonly toldKpa: number;
  readonly summary: string;
}

export function makeLoudFigure(
  model: LoudChartModel,
  colours: ChartColours,
  size: { readonly width: number; readonly height: number },
): Figure {
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
  const line = (name: string, y: readonly (number | null)[], color: string, filled: boolean): Data => ({
    type: 'scatter',
    mode: 'lines+markers',
    name,
    x: [...model.pressuresKpa],
    y: [...y],
    line: { color, width: 2, dash: filled ? 'solid' : 'dot' },
    marker: { symbol: filled ? 'circle' : 'circle-open', size: 7, color, line: { color, width: 1.5 } },
    hovertemplate: '%{y:.0f} %',
    connectgaps: false,
  });
  return {
    data: [
      line('as found', model.found, colours.found, false),
      ...(model.proposed === null ? [] : [line('as proposed', model.proposed, colours.proposed, true)]),
    ],
    layout: {
      width: size.width,
      height: size.height,
      margin: { l: 50, r: 10, t: 8, b: 40, pad: 0 },
      font: {
        family: "system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', Arial, sans-serif",
        size: 12,
        color: colours.ink,
      },
      paper_bgcolor: 'transparent',
      plot_bgcolor: colours.sheet,
      showlegend: false,
      dragmode: false,
      hovermode: 'x unified',
      hoverlabel: { bgcolor: colours.sheet, bordercolor: colours.soft, font: { color: colours.ink } },
      xaxis: {
        ...axis,
        type: 'log',
        range: [Math.log10(0.085), Math.log10(7)],
        tickvals: [0.1, 0.3, 1, 3, 6],
        ticktext: ['0.1', '0.3', '1', '3', '6'],
        title: { text: 'peak pressure in the mouthpiece, kPa', font: { size: 12 }, standoff: 4 },
      },
      yaxis: {
        ...axis,
        range: [0, 105],
        tickvals: [0, 25, 50, 75, 100],
        title: { text: '% of soft strength', font: { size: 12 }, standoff: 2 },
      },
      shapes: [
        {
          type: 'line',
          xref: 'x',
          yref: 'paper',
          x0: model.toldKpa,
          x1: model.toldKpa,
          y0: 0,
          y1: 1,
          line: { color: colours.soft, width: 1, dash: 'dot' },
        },
      ],
    },
  };
}
