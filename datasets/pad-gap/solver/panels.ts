import { openingAngle } from './fan-map.ts';
import type { FlowCase } from './flow.ts';
import { gradedLines } from './graded-lines.ts';

/**
 * A second, independent way to the end length: boundary elements. Flat panels on every wetted face, one potential per panel,
 * the potential's integral equation met at panel centres, mirror symmetry used. It shares no mapping, no grid and no harmonic
 * with `flow.ts`; it is slower and rougher: it serves to check, and for the few positions no fan can reach.
 *
 * ½ φ(x) + Σ_j φ_j Ω_j(x)/4π = ∫_lid dS/(4π|x − y|), Ω the solid angle of a panel, positive where its normal (out of the metal)
 * points away from x. The lid pushes a unit upward speed.
 * **Source:** Green's third identity; solid angle of a triangle, van Oosterom & Strackee 1983; potential of a uniform
 * flat polygon, Wilton et al. 1984; all from memory.
 */

type Point = readonly [number, number, number];

interface Panel {
  corners: readonly [Point, Point, Point, Point];
  centre: Point;
  area: number;
  lid: boolean;
  body: number;
}

/** `across`: panels round half a turn; `finest`, `growth`: grading toward edges. */
export interface PanelSettings {
  across: number;
  finest: number;
  growth: number;
}

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const inner = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const norm = (a: Point): number => Math.sqrt(inner(a, a));

/** Signed solid angle of a triangle, positive when its right-hand normal points away from x. */
const solidAngle = (x: Point, a: Point, b: Point, c: Point): number => {
  const [ra, rb, rc] = [minus(a, x), minus(b, x), minus(c, x)];
  const [la, lb, lc] = [norm(ra), norm(rb), norm(rc)];
  const top = inner(ra, cross(rb, rc));
  const bottom = la * lb * lc + inner(ra, rb) * lc + inner(ra, rc) * lb + inner(rb, rc) * la;
  return 2 * Math.atan2(top, bottom);
};

/** ∫ dS/|x − y| over a flat triangle. */
const trianglePotential = (x: Point, corners: readonly [Point, Point, Point]): number => {
  const [a, b, c] = corners;
  const n = cross(minus(b, a), minus(c, a));
  const size = norm(n);
  if (size < 1e-14) return 0;
  const unit: Point = [n[0] / size, n[1] / size, n[2] / size];
  const height = inner(unit, minus(a, x));
  let sum = -Math.abs(height) * Math.abs(solidAngle(x, a, b, c));
  for (let k = 0; k < 3; k++) {
    const from = corners[k];
    const to = corners[(k + 1) % 3];
    const edge = minus(to, from);
    const length = norm(edge);
    if (length < 1e-14) continue;
    const along: Point = [edge[0] / length, edge[1] / length, edge[2] / length];
    const offset = inner(cross(along, unit), minus(from, x));
    if (Math.abs(offset) < 1e-12) continue;
    const [s0, s1] = [inner(along, minus(from, x)), inner(along, minus(to, x))];
    const [r0, r1] = [norm(minus(from, x)), norm(minus(to, x))];
    sum += offset * Math.log((r1 + s1) / (r0 + s0));
  }
  return sum;
};

const panelFrom = (corners: Panel['corners'], lid: boolean, body: number): Panel => {
  const [a, b, c, d] = corners;
  const first = norm(cross(minus(b, a), minus(c, a))) / 2;
  const second = norm(cross(minus(c, a), minus(d, a))) / 2;
  const area = first + second;
  const centre = [0, 1, 2].map(
    (k) => ((a[k] + b[k] + c[k]) * first + (a[k] + c[k] + d[k]) * second) / (3 * area),
  );
  return { corners, centre: [centre[0], centre[1], centre[2]], area, lid, body };
};

/** Half of a surface of revolution through the points of a profile, metal on the right when walking along it. */
const revolve = (
  profile: readonly (readonly [number, number])[],
  across: number,
  place: (p: Point) => Point,
  { lid, body }: { lid: boolean; body: number },
): Panel[] => {
  // Radius that gives the inscribed polygon the circle's area.
  const step = Math.PI / across;
  const swell = Math.sqrt(step / Math.sin(step));
  const at = (k: number, [r, z]: readonly [number, number]): Point =>
    place([r * swell * Math.cos(k * step), r * swell * Math.sin(k * step), z]);
  const panels: Panel[] = [];
  for (let i = 0; i + 1 < profile.length; i++) {
    for (let k = 0; k < across; k++) {
      const [p, q] = [profile[i], profile[i + 1]];
      panels.push(panelFrom([at(k, p), at(k, q), at(k + 1, q), at(k + 1, p)], lid, body));
    }
  }
  return panels;
};

const buildPanels = (input: FlowCase, settings: PanelSettings, lid: number, tail: number): Panel[] => {
  const { across, finest, growth } = settings;
  const { rim, pad, thick, height, hinge, rod } = input;
  const widest = Math.PI / across;
  const stay = (p: Point): Point => p;
  const line = (from: number, to: number, edges: [boolean, boolean]): number[] => {
    const keys = [
      { at: Math.min(from, to), edge: from < to ? edges[0] : edges[1] },
      { at: Math.max(from, to), edge: from < to ? edges[1] : edges[0] },
    ];
    // Smooth stretches need panels no longer than they are wide, or the flux along the bore is lost.
    const pieces = Math.ceil(Math.abs(to - from) / widest);
    for (let k = 1; k < pieces; k++) keys.push({ at: from + ((to - from) * k) / pieces, edge: false });
    const lines = gradedLines(keys, { finest, growth });
    return from < to ? lines : lines.reverse();
  };
  const outer = 1 + rim;
  // Chimney, walked from the lid's centre out, up, over the rim, down, and in along the bottom.
  const panels = [
    ...revolve(
      line(0, 1, [false, false]).map((r) => [r, -lid] as const),
      across,
      stay,
      { lid: true, body: 0 },
    ),
    ...revolve(
      line(-lid, 0, [false, true]).map((z) => [1, z] as const),
      across,
      stay,
      { lid: false, body: 0 },
    ),
    ...revolve(
      line(1, outer, [true, true]).map((r) => [r, 0] as const),
      across,
      stay,
      { lid: false, body: 0 },
    ),
    ...revolve(
      line(0, -tail, [true, false]).map((z) => [outer, z] as const),
      across,
      stay,
      { lid: false, body: 0 },
    ),
    ...revolve(
      [
        [outer, -tail],
        [outer / 2, -tail],
        [0, -tail],
      ],
      across,
      stay,
      { lid: false, body: 0 },
    ),
  ];
  if (height === Infinity) return panels;
  const angle = openingAngle(hinge, rod, height);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const swing = ([x, y, z]: Point): Point =>
    hinge === Infinity
      ? [x, y, z + height]
      : [(x + hinge) * c - (z - rod) * s - hinge, y, (x + hinge) * s + (z - rod) * c + rod];
  const metal = { lid: false, body: 1 };
  panels.push(
    ...revolve(
      line(pad, 0, [true, false]).map((r) => [r, 0] as const),
      across,
      swing,
      metal,
    ),
    ...revolve(
      line(thick, 0, [true, true]).map((z) => [pad, z] as const),
      across,
      swing,
      metal,
    ),
    ...revolve(
      line(0, pad, [false, true]).map((r) => [r, thick] as const),
      across,
      swing,
      metal,
    ),
  );
  return panels;
};

const mirror = ([x, y, z]: Point): Point => [x, -y, z];

/** Gaussian elimination with partial pivoting, in place. */
const solveDense = (size: number, matrix: Float64Array, x: Float64Array): void => {
  for (let k = 0; k < size; k++) {
    let pivot = k;
    for (let i = k + 1; i < size; i++) {
      if (Math.abs(matrix[i * size + k]) > Math.abs(matrix[pivot * size + k])) pivot = i;
    }
    if (pivot !== k) {
      for (let j = k; j < size; j++) {
        const keep = matrix[k * size + j];
        matrix[k * size + j] = matrix[pivot * size + j];
        matrix[pivot * size + j] = keep;
      }
      [x[k], x[pivot]] = [x[pivot], x[k]];
    }
    for (let i = k + 1; i < size; i++) {
      const factor = matrix[i * size + k] / matrix[k * size + k];
      if (factor === 0) continue;
      for (let j = k + 1; j < size; j++) matrix[i * size + j] -= factor * matrix[k * size + j];
      x[i] -= factor * x[k];
    }
  }
  for (let k = size - 1; k >= 0; k--) {
    let sum = x[k];
    for (let j = k + 1; j < size; j++) sum -= matrix[k * size + j] * x[j];
    x[k] = sum / matrix[k * size + k];
  }
};

/**
 * End length by boundary elements, free chimney only.
 * @returns length in hole radii and the number of panels
 */
export const solvePanels = (input: FlowCase, settings: PanelSettings): { length: number; panels: number } => {
  const lid = 2;
  const panels = buildPanels(input, settings, lid, 4);
  const size = panels.length;
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const x = panels[i].centre;
    const image = mirror(x);
    const seen = [0, 0];
    for (let j = 0; j < size; j++) {
      const { corners, lid: pushes, body } = panels[j];
      const [a, b, c, d] = corners;
      const own = i === j ? 0 : solidAngle(x, a, b, c) + solidAngle(x, a, c, d);
      const angle = own + solidAngle(image, a, b, c) + solidAngle(image, a, c, d);
      matrix[i * size + j] = angle / (4 * Math.PI);
      seen[body] += angle;
      if (pushes) {
        for (const from of [x, image]) {
          right[i] +=
            (trianglePotential(from, [a, b, c]) + trianglePotential(from, [a, c, d])) / (4 * Math.PI);
        }
      }
    }
    // A closed surface fills half the sky of a point on it: what is missing belongs to the panel's own neighbourhood.
    matrix[i * size + i] += 0.5 + (2 * Math.PI - seen[panels[i].body]) / (4 * Math.PI);
  }
  solveDense(size, matrix, right);
  let mean = 0;
  let area = 0;
  panels.forEach((panel, i) => {
    if (!panel.lid) return;
    mean += panel.area * right[i];
    area += panel.area;
  });
  return { length: mean / area - lid, panels: size };
};
