import { gradedLines, type Grading, type KeyLine } from './graded-lines.ts';

/**
 * The half-plane (r, z) of the parallel picture cut into rectangles, without those filled by the chimney's wall, the pad and
 * the body; and the numbering of the nodes in an order that keeps the factorisation sparse.
 */

/** What the grid must resolve, in hole radii. `gap` undefined means no pad. */
export interface GridPlan {
  rim: number;
  pad: number;
  thick: number;
  gap: number | undefined;
  body: number;
  /** Depth of the lid in the chimney, and radius of the outer boundary. */
  lid: number;
  far: number;
  /** True: the rim is the edge of an infinite flange (a check case). */
  flanged: boolean;
  extra: { radial: KeyLine[]; axial: KeyLine[] };
}

export interface Grid {
  degree: number;
  r: number[];
  z: number[];
  /** Column and row of each rectangle. */
  column: Int32Array;
  row: Int32Array;
  /** (degree + 1)² node numbers of each rectangle, the axial index running fastest. */
  nodes: Int32Array;
  nodeCount: number;
  /** 1 for nodes on the axis. */
  onAxis: Uint8Array;
  /** Height where the body (or the far bottom) lies. */
  bottom: number;
}

const isOpen = (plan: GridPlan, r: number, z: number): boolean => {
  if (z < 0) {
    if (r < 1) return z > -plan.lid;
    if (plan.flanged || r < 1 + plan.rim) return false;
    return z > -Math.min(plan.body, plan.far);
  }
  if (plan.gap === undefined) return true;
  return !(r < plan.pad && z > plan.gap && z < plan.gap + plan.thick);
};

/** Nested dissection: cuts the lattice along whole element lines, the longer way first, and numbers the cut last. */
const dissect = (ir: Int32Array, iz: Int32Array, degree: number): Int32Array => {
  const order: number[] = [];
  const cut = (set: number[]): void => {
    let [r0, r1, z0, z1] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const n of set) {
      r0 = Math.min(r0, ir[n]);
      r1 = Math.max(r1, ir[n]);
      z0 = Math.min(z0, iz[n]);
      z1 = Math.max(z1, iz[n]);
    }
    const lines = (low: number, high: number): number =>
      Math.floor((high - 1) / degree) - Math.floor(low / degree);
    const alongR = lines(r0, r1) >= lines(z0, z1);
    const at = alongR ? ir : iz;
    const inside = Math.max(lines(r0, r1), lines(z0, z1));
    if (inside < 1) {
      // Nodes inside an element before those on its sides.
      const sides = set.filter((n) => ir[n] % degree === 0 || iz[n] % degree === 0);
      const inner = set.filter((n) => ir[n] % degree !== 0 && iz[n] % degree !== 0);
      order.push(...inner, ...sides);
      return;
    }
    const sorted = Int32Array.from(set, (n) => at[n]).sort();
    const low = alongR ? r0 : z0;
    const high = alongR ? r1 : z1;
    const wanted = Math.round(sorted[set.length >> 1] / degree) * degree;
    const first = (Math.floor(low / degree) + 1) * degree;
    const last = (Math.ceil(high / degree) - 1) * degree;
    const line = Math.min(last, Math.max(first, wanted));
    const less: number[] = [];
    const more: number[] = [];
    const on: number[] = [];
    for (const n of set) (at[n] < line ? less : at[n] > line ? more : on).push(n);
    if (less.length > 0) cut(less);
    if (more.length > 0) cut(more);
    order.push(...on);
  };
  cut(Array.from(ir.keys()));
  const position = new Int32Array(order.length);
  order.forEach((n, k) => (position[n] = k));
  return position;
};

/** Builds the grid. @param degree polynomial degree of the elements, at least 2 */
export const makeGrid = (plan: GridPlan, degree: number, grading: Grading): Grid => {
  const edge = (at: number): KeyLine => ({ at, edge: true });
  const plain = (at: number): KeyLine => ({ at, edge: false });
  const bottom = plan.flanged ? 0 : -Math.min(plan.body, plan.far);
  const radial = [plain(0), edge(1), plain(plan.far), ...plan.extra.radial];
  if (!plan.flanged) radial.push(edge(1 + plan.rim));
  const axial = [plain(-plan.lid), edge(0), plain(plan.far), plain(bottom), ...plan.extra.axial];
  if (plan.gap !== undefined) {
    radial.push(edge(plan.pad));
    axial.push(edge(plan.gap), edge(plan.gap + plan.thick));
  }
  const r = gradedLines(radial, grading);
  const z = gradedLines(axial, grading);
  const column: number[] = [];
  const row: number[] = [];
  for (let i = 0; i + 1 < r.length; i++) {
    for (let j = 0; j + 1 < z.length; j++) {
      if (!isOpen(plan, (r[i] + r[i + 1]) / 2, (z[j] + z[j + 1]) / 2)) continue;
      column.push(i);
      row.push(j);
    }
  }
  const tall = degree * (z.length - 1) + 1;
  const found = new Map<number, number>();
  const local = new Int32Array(column.length * (degree + 1) ** 2);
  let at = 0;
  for (let e = 0; e < column.length; e++) {
    for (let a = 0; a <= degree; a++) {
      for (let b = 0; b <= degree; b++) {
        const key = (column[e] * degree + a) * tall + row[e] * degree + b;
        let node = found.get(key);
        if (node === undefined) {
          node = found.size;
          found.set(key, node);
        }
        local[at++] = node;
      }
    }
  }
  const keys = Array.from(found.keys());
  const ir = Int32Array.from(keys, (key) => Math.floor(key / tall));
  const iz = Int32Array.from(keys, (key) => key % tall);
  const position = dissect(ir, iz, degree);
  const onAxis = new Uint8Array(keys.length);
  keys.forEach((_, n) => (onAxis[position[n]] = ir[n] === 0 ? 1 : 0));
  return {
    degree,
    r,
    z,
    column: Int32Array.from(column),
    row: Int32Array.from(row),
    nodes: local.map((n) => position[n]),
    nodeCount: keys.length,
    onAxis,
    bottom,
  };
};
