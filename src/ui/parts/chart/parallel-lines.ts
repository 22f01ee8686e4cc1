import type { Annotation, Data } from 'plotly.js-dist';
import type { ChartModel } from './chart.model.ts';

/** The same pad, were it parallel to its rim: thin, faint lines behind what is. */
export function parallelTraces(
  { parallel, share }: ChartModel,
  soft: string,
  tints: readonly string[],
): Data[] {
  const common = {
    type: 'scatter',
    mode: 'lines',
    hoverinfo: 'skip',
    connectgaps: false,
  } as const;
  const x = [...share.x];
  const faint = (color: string) => ({ color, width: 1.25, dash: 'dot' }) as const;
  return [
    {
      ...common,
      x,
      name: 'vent share, parallel pad',
      yaxis: 'y2',
      y: [...parallel.share],
      line: faint(soft),
    },
    ...(parallel.note === null
      ? []
      : [
          {
            ...common,
            x,
            name: `${parallel.note.label}, parallel pad`,
            y: [...parallel.note.y],
            opacity: 0.75,
            line: faint(tints[parallel.note.tint % tints.length]),
          },
        ]),
  ];
}

/** Names the faint line, in the share panel where it stands clear above the other. */
export function parallelWord({ parallel, share }: ChartModel, soft: string): Partial<Annotation> {
  const at = Math.floor(share.x.length / 5);
  return {
    x: share.x[at],
    y: parallel.share[at],
    xref: 'x',
    yref: 'y2',
    xanchor: 'right',
    yanchor: 'bottom',
    showarrow: false,
    text: 'if parallel',
    font: { color: soft, size: 11.5 },
  };
}
