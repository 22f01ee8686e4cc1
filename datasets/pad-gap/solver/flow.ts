import { fanLines, makeFanMap, type FanShape, type PadCase } from './fan-map.ts';
import type { Grading } from './graded-lines.ts';
import { makeGrid, type Grid } from './grid.ts';
import { gaussRule, interpolation, lobattoNodes } from './quadrature.ts';
import { analyse, factorise, solveInPlace, type Factor, type UpperPattern } from './sparse-cholesky.ts';
import { makeStiffness, turnWeight, type Stiffness } from './stiffness.ts';

/**
 * Low-frequency flow out of a chimney under a pad: the end length δ, in hole radii, that stands for the inertia of everything
 * beyond the rim plane.
 *
 * u is harmonic outside metal, its normal slope is zero on metal, it vanishes far away, and a unit of upward speed enters at the
 * lid z = −lid, so that far down the chimney u = δ − z and δ = (mean of u over the lid) − lid. With u restricted to
 * polynomials and harmonics the energy principle makes every computed δ a lower bound, up to the outer boundary and summation.
 * **Source:** Kelvin's and Dirichlet's principles; the discretisation is ours.
 */

/** How finely to compute. */
export interface FlowSettings extends Grading {
  degree: number;
  harmonics: number;
  lid: number;
  far: number;
  /** Residual, relative to the load, at which the iteration stops. */
  tolerance: number;
}

export const usualSettings: FlowSettings = {
  degree: 4,
  finest: 0.05,
  growth: 3,
  harmonics: 10,
  lid: 2.5,
  far: 10,
  tolerance: 1e-6,
};

export interface FlowAnswer {
  /** End length in hole radii. */
  length: number;
  iterations: number;
  unknowns: number;
  /** Share of the flux that crosses the outer boundary, 1 if none is lost. */
  fluxOut: number;
}

/** What stands beyond the rim plane: a pad over a free or a bodied chimney, or no pad, or an infinite flange. */
export interface FlowCase extends Omit<PadCase, 'height'> {
  /** Height of the face's centre; Infinity for no pad. */
  height: number;
  flanged?: boolean;
  /** Shape of the fan map, if not the gentlest. */
  fan?: FanShape;
}

const patternOf = (grid: Grid): { upper: UpperPattern; place: Int32Array } => {
  const nn = (grid.degree + 1) ** 2;
  const { nodes, nodeCount } = grid;
  const columns: Map<number, number>[] = Array.from({ length: nodeCount }, () => new Map<number, number>());
  const count = grid.column.length;
  for (let e = 0; e < count; e++) {
    for (let a = 0; a < nn; a++) {
      for (let b = 0; b < nn; b++) {
        const i = nodes[e * nn + a];
        const j = nodes[e * nn + b];
        if (i <= j) columns[j].set(i, 0);
      }
    }
  }
  const start = new Int32Array(nodeCount + 1);
  for (let j = 0; j < nodeCount; j++) start[j + 1] = start[j] + columns[j].size;
  const index = new Int32Array(start[nodeCount]);
  columns.forEach((rows, j) => {
    const sorted = Int32Array.from(rows.keys()).sort();
    sorted.forEach((i, k) => {
      index[start[j] + k] = i;
      rows.set(i, start[j] + k);
    });
  });
  const place = new Int32Array(count * nn * nn).fill(-1);
  for (let e = 0; e < count; e++) {
    for (let a = 0; a < nn; a++) {
      for (let b = 0; b < nn; b++) {
        const i = nodes[e * nn + a];
        const j = nodes[e * nn + b];
        if (i <= j) place[(e * nn + a) * nn + b] = columns[j].get(i) ?? -1;
      }
    }
  }
  return { upper: { size: nodeCount, start, index }, place };
};

/** One factor per harmonic of the energy averaged round the axis: exact when parallel, a preconditioner when hinged. */
const factorsOf = ({ grid, harmonics, plane, round }: Stiffness): Factor[] => {
  const { upper, place } = patternOf(grid);
  const pattern = analyse(upper);
  return Array.from({ length: harmonics + 1 }, (_, m) => {
    const value = new Float64Array(upper.index.length);
    for (let t = 0; t < place.length; t++) {
      if (place[t] >= 0) value[place[t]] += turnWeight(m) * (plane[t] + m * m * round[t]);
    }
    if (m > 0) {
      // A harmonic that turns with the azimuth vanishes on the axis.
      for (let j = 0; j < upper.size; j++) {
        for (let p = upper.start[j]; p < upper.start[j + 1]; p++) {
          const i = upper.index[p];
          if (grid.onAxis[i] || grid.onAxis[j]) value[p] = i === j ? 1 : 0;
        }
      }
    }
    return factorise(upper, pattern, value);
  });
};

/** Load of a unit upward speed over the lid. */
const lidLoad = (grid: Grid, lid: number): Float64Array => {
  const n = grid.degree + 1;
  const rule = gaussRule(n);
  const { value } = interpolation(lobattoNodes(grid.degree), rule.points);
  const load = new Float64Array(grid.nodeCount);
  for (let e = 0; e < grid.column.length; e++) {
    const r0 = grid.r[grid.column[e]];
    const r1 = grid.r[grid.column[e] + 1];
    if (r1 > 1 + 1e-9 || Math.abs(grid.z[grid.row[e]] + lid) > 1e-9) continue;
    for (let q = 0; q < n; q++) {
      const r = r0 + ((rule.points[q] + 1) / 2) * (r1 - r0);
      const weight = 2 * Math.PI * r * ((rule.weights[q] * (r1 - r0)) / 2);
      for (let a = 0; a < n; a++) load[grid.nodes[e * n * n + a * n]] += weight * value[q * n + a];
    }
  }
  return load;
};

const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
};

/** Conjugate gradients, preconditioned by the factors. Returns the answer and how many steps it took. */
const iterate = (stiffness: Stiffness, factors: Factor[], load: Float64Array, tolerance: number) => {
  const { grid, harmonics } = stiffness;
  const size = grid.nodeCount;
  const total = size * (harmonics + 1);
  const precondition = (x: Float64Array): Float64Array => {
    const y = x.slice();
    for (let m = 0; m <= harmonics; m++) solveInPlace(factors[m], y.subarray(m * size, (m + 1) * size));
    return y;
  };
  const pin = (x: Float64Array): void => {
    for (let m = 1; m <= harmonics; m++)
      for (let i = 0; i < size; i++) if (grid.onAxis[i]) x[m * size + i] = 0;
  };
  const residual = new Float64Array(total);
  residual.set(load);
  const u = new Float64Array(total);
  let z = precondition(residual);
  const direction = z.slice();
  let rz = dot(residual, z);
  const goal = rz * tolerance * tolerance;
  const image = new Float64Array(total);
  let iterations = 0;
  while (rz > goal && iterations < 400) {
    stiffness.apply(direction, image);
    pin(image);
    const step = rz / dot(direction, image);
    for (let i = 0; i < total; i++) {
      u[i] += step * direction[i];
      residual[i] -= step * image[i];
    }
    z = precondition(residual);
    const next = dot(residual, z);
    const keep = next / rz;
    for (let i = 0; i < total; i++) direction[i] = z[i] + keep * direction[i];
    rz = next;
    iterations++;
  }
  return { u, iterations };
};

/**
 * Computes the end length of one case.
 * @returns the answer, or undefined if the pad cannot take that position by swinging about its rod
 */
export const solveFlow = (
  input: FlowCase,
  settings: FlowSettings = usualSettings,
): FlowAnswer | undefined => {
  const noPad = input.height === Infinity;
  const map = noPad ? undefined : makeFanMap(input, input.fan);
  if (!noPad && !map) return undefined;
  const { degree, lid, far, tolerance } = settings;
  const hinged = map !== undefined && !map.parallel;
  const harmonics = hinged ? settings.harmonics : 0;
  const flanged = input.flanged ?? false;
  const grid = makeGrid(
    {
      rim: input.rim,
      pad: input.pad,
      thick: input.thick,
      gap: map?.gap,
      body: input.body,
      lid,
      far,
      flanged,
      extra: map ? fanLines(map, input.thick) : { radial: [], axial: [] },
    },
    degree,
    settings,
  );
  const closedBottom = flanged || input.body <= far;
  const azimuth = { harmonics, points: 2 * Math.ceil(0.75 * (harmonics + 1)) };
  const stiffness = makeStiffness(grid, map, azimuth, { far, closedBottom });
  if (!stiffness) return undefined;
  const factors = factorsOf(stiffness);
  const load = lidLoad(grid, lid);
  let u: Float64Array;
  let iterations = 0;
  if (hinged) ({ u, iterations } = iterate(stiffness, factors, load, tolerance));
  else {
    u = load.slice();
    solveInPlace(factors[0], u);
  }
  let compliance = 0;
  for (let i = 0; i < grid.nodeCount; i++) compliance += load[i] * u[i];
  return {
    length: compliance / Math.PI - lid,
    iterations,
    unknowns: grid.nodeCount * (harmonics + 1),
    fluxOut: fluxThrough(stiffness, u) / Math.PI,
  };
};

/** Flux through the outer boundary: the energy's share of a constant trial potential, which no inner element feels. */
const fluxThrough = ({ grid, plane, isActive }: Stiffness, u: Float64Array): number => {
  const nn = (grid.degree + 1) ** 2;
  let sum = 0;
  for (let e = 0; e < grid.column.length; e++) {
    if (isActive[e] === 1) continue;
    for (let a = 0; a < nn; a++) {
      let row = 0;
      for (let b = 0; b < nn; b++) row += plane[(e * nn + b) * nn + a];
      sum += row * u[grid.nodes[e * nn + a]];
    }
  }
  return 2 * Math.PI * sum;
};
