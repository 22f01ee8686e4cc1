import { writeFileSync } from 'node:fs';
import { endLengthOf, publishedOpenLength, publishedParallelPad } from './plain.ts';
import { solveRow } from './solver/row.ts';
import { readTable, type TableRow } from './table.ts';

/** Draws notes/physics/hinged-pad.svg: model, solved flow and published fit. Run with `npx tsx datasets/pad-gap/draw.ts`. */

interface Axes {
  left: number;
  top: number;
  width: number;
  height: number;
  x: { from: number; to: number; ticks: number[]; label: string; log?: boolean };
  y: { from: number; to: number; ticks: number[]; label: string };
}

const colours = { parallel: '#1b6ca8', usual: '#2e8b57', short: '#c0392b', published: '#777777' };

const placeIn = ({ left, top, width, height, x, y }: Axes) => {
  const along = (v: number): number =>
    x.log ? Math.log(v / x.from) / Math.log(x.to / x.from) : (v - x.from) / (x.to - x.from);
  return (px: number, py: number): [number, number] => [
    left + width * along(px),
    top + height * (1 - (py - y.from) / (y.to - y.from)),
  ];
};

const text = (x: number, y: number, words: string, extra = ''): string =>
  `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" ${extra}>${words}</text>`;

const frame = (axes: Axes, title: string): string => {
  const at = placeIn(axes);
  const { left, top, width, height, x, y } = axes;
  const parts = [
    `<rect x="${left}" y="${top}" width="${width}" height="${height}" fill="none" stroke="#333"/>`,
  ];
  for (const tick of x.ticks) {
    const [px] = at(tick, y.from);
    parts.push(`<path d="M${px.toFixed(1)} ${top + height}v-${height}" stroke="#e4e4e4"/>`);
    parts.push(text(px, top + height + 16, String(tick), 'text-anchor="middle"'));
  }
  for (const tick of y.ticks) {
    const [, py] = at(x.from, tick);
    parts.push(`<path d="M${left} ${py.toFixed(1)}h${width}" stroke="#e4e4e4"/>`);
    parts.push(text(left - 6, py + 4, String(tick), 'text-anchor="end"'));
  }
  parts.push(text(left + width / 2, top + height + 34, x.label, 'text-anchor="middle"'));
  parts.push(text(left, top - 24, title, 'font-weight="bold"'));
  parts.push(text(left, top - 8, y.label, 'fill="#444"'));
  return parts.join('');
};

const curve = (axes: Axes, points: [number, number][], style: string): string => {
  const at = placeIn(axes);
  const { from, to } = axes.y;
  const inside = points
    .filter(([, y]) => y >= from && y <= to)
    .map(([x, y]) =>
      at(x, y)
        .map((v) => v.toFixed(1))
        .join(' '),
    );
  return `<path d="M${inside.join('L')}" fill="none" ${style}/>`;
};

const dots = (
  axes: Axes,
  points: [number, number][],
  { colour, hollow }: { colour: string; hollow?: boolean },
): string => {
  const at = placeIn(axes);
  const { from, to } = axes.y;
  return points
    .filter(([, y]) => y >= from && y <= to)
    .map(([x, y]) => at(x, y))
    .map(
      ([x, y]) =>
        `<circle cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" r="2.6" fill="${hollow ? 'none' : colour}" stroke="${colour}"/>`,
    )
    .join('');
};

const shape = { rim: 0.1, pad: 1.2, thick: 0.25, rod: 0, body: Infinity };
const modelAt = (row: Omit<TableRow, 'kind' | 'length' | 'error'>): number =>
  endLengthOf({
    holeRadius: 1,
    rimThickness: row.rim,
    padRadius: row.pad,
    padThickness: row.thick,
    hingeDistance: row.hinge,
    hingeHeight: row.rod,
    centreHeight: row.height,
    ...(row.body < Infinity ? { bodyBelow: row.body } : {}),
  }).length;

const spread = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from * (to / from) ** (i / (count - 1)));

const lengths: Axes = {
  left: 60,
  top: 60,
  width: 380,
  height: 340,
  x: {
    from: 0.03,
    to: 2,
    ticks: [0.03, 0.1, 0.3, 1, 2],
    label: 'opening at the pad centre, hole radii',
    log: true,
  },
  y: { from: 0.5, to: 4, ticks: [0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4], label: 'end length, hole radii' },
};
const hinges: [number, string, string][] = [
  [Infinity, colours.parallel, 'parallel'],
  [1.6, colours.usual, 'hinge at 1.6'],
  [1.24, colours.short, 'hinge at 1.24'],
];
const parts: string[] = [frame(lengths, 'Rim 0.1, pad radius 1.2, rod at the rim plane')];
hinges.forEach(([hinge, colour, name], i) => {
  const reach = Math.min(2, hinge * 0.99);
  const heights = spread(0.03, reach, 80);
  parts.push(
    curve(
      lengths,
      heights.map((height) => [height, modelAt({ ...shape, hinge, height })]),
      `stroke="${colour}" stroke-width="1.6"`,
    ),
  );
  const solved = spread(0.03, Math.min(2, reach), 11).flatMap((height): [number, number][] => {
    const answer = solveRow({ ...shape, hinge, height });
    return answer ? [[height, answer.length]] : [];
  });
  parts.push(dots(lengths, solved, { colour }));
  parts.push(text(210, 88 + 18 * i, `● solved, — model: ${name}`, `fill="${colour}"`));
});
parts.push(
  curve(
    lengths,
    spread(0.03, 2, 80).map((height) => [
      height,
      publishedOpenLength(0.1) + publishedParallelPad(height, 0.1, 1.2),
    ]),
    `stroke="${colours.published}" stroke-dasharray="5 4"`,
  ),
  text(210, 88 + 54, '- - published fit, parallel', `fill="${colours.published}"`),
);

const errors: Axes = {
  left: 510,
  top: 60,
  width: 380,
  height: 340,
  x: { ...lengths.x },
  y: { from: -8, to: 8, ticks: [-8, -6, -4, -2, 0, 2, 4, 6, 8], label: 'departure from the solved flow, %' },
};
const table = readTable();
const held = table.filter((row) => row.kind === 'heldParallel' || row.kind === 'heldHinged');
const parallelRows = held.filter((row) => row.kind === 'heldParallel');
parts.push(
  frame(errors, 'Cases the model has not seen, whole range'),
  dots(
    errors,
    parallelRows.map((row) => [
      row.height,
      100 *
        ((publishedOpenLength(row.rim) + publishedParallelPad(row.height, row.rim, row.pad)) / row.length -
          1),
    ]),
    { colour: colours.published, hollow: true },
  ),
  dots(
    errors,
    held.map((row) => [row.height, 100 * (modelAt(row) / row.length - 1)]),
    { colour: colours.short },
  ),
  text(540, 88, '○ published fit, parallel pads (±8 % shown)', `fill="${colours.published}"`),
  text(540, 106, '● model, parallel and hinged pads', `fill="${colours.short}"`),
);

const rule: Axes = {
  left: 960,
  top: 60,
  width: 380,
  height: 340,
  x: { from: 0.2, to: 1, ticks: [0.2, 0.4, 0.6, 0.8, 1], label: 'pad radius ÷ hinge distance' },
  y: {
    from: 0.7,
    to: 1,
    ticks: [0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1],
    label: 'equivalent parallel opening ÷ centre opening',
  },
};
parts.push(frame(rule, 'The simple rule'));
[0.2, 0.4, 0.8].forEach((height, i) => {
  const colour = [colours.short, colours.usual, colours.parallel][i];
  const points = Array.from({ length: 60 }, (_, k): [number, number] => {
    const ratio = 0.2 + (0.775 * k) / 59;
    const { equivalentParallel } = endLengthOf({
      holeRadius: 1,
      rimThickness: shape.rim,
      padRadius: shape.pad,
      padThickness: shape.thick,
      hingeDistance: shape.pad / ratio,
      hingeHeight: 0,
      centreHeight: height,
    });
    return [ratio, equivalentParallel / height];
  });
  parts.push(curve(rule, points, `stroke="${colour}" stroke-width="1.6"`));
  parts.push(text(980, 330 + 18 * i, `— centre opening ${height}`, `fill="${colour}"`));
});
parts.push(
  curve(
    rule,
    spread(0.2, 1, 60).map((r) => [r, 1 - (r * r) / 6]),
    `stroke="${colours.published}" stroke-dasharray="5 4"`,
  ),
  text(980, 384, '- - rule: 1 − ratio²/6', `fill="${colours.published}"`),
);

const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1370 450" font-family="sans-serif" font-size="12" role="img" aria-label="End length under a pad: model, solved flow and published fit">
<rect width="1370" height="450" fill="#fff"/>
${parts.join('\n')}
</svg>
`;
writeFileSync(new URL('../../notes/physics/hinged-pad.svg', import.meta.url), svg);
