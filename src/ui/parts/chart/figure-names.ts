import type { Annotation } from 'plotly.js-dist';
import { tintOf, type ChartColours } from './chart-colours.ts';
import { spreadLabels, type ChartModel } from './chart.model.ts';
import { LABEL_GAP_PX, nameAt, NOTES_BOTTOM } from './figure-room.ts';

/** Each line's name at its end, moved up or down just enough that none covers another. */
export function lineLabels(
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
