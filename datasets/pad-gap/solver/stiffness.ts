import type { FanMap } from './fan-map.ts';
import type { Grid } from './grid.ts';
import { gaussRule, interpolation, lobattoNodes } from './quadrature.ts';

/**
 * The flow's energy ∫ |grad u|² dV for u = Σ_m u_m(r, z) cos mφ, element by element.
 *
 * Where the fan map is at rest the harmonics do not mix, and each element has two small matrices, for the slopes in the
 * half-plane and for the slope round the axis. Where it acts, the energy is summed over points in the half-plane and round the
 * axis with the tensor A of `fan-map.ts`.
 */
export interface Stiffness {
  grid: Grid;
  /** cos mφ for m = 0…harmonics. */
  harmonics: number;
  /** (degree+1)⁴ entries each per element: half-plane slopes (with the outer boundary), and slope round the axis. */
  plane: Float64Array;
  round: Float64Array;
  /** Elements in which the map acts, and the weighted tensor at every point there: rr, rφ, rz, φφ, φz, zz. */
  active: Int32Array;
  isActive: Uint8Array;
  tensor: Float64Array;
  /** y ← K x for all harmonics at once; x and y hold harmonic after harmonic. */
  apply(x: Float64Array, y: Float64Array): void;
}

/** How finely to sum: harmonics kept, points round half a turn (even). */
export interface AzimuthPlan {
  harmonics: number;
  points: number;
}

/** Weight of harmonic m in ∫ cos² mφ dφ over a full turn. */
export const turnWeight = (m: number): number => (m === 0 ? 2 * Math.PI : Math.PI);

/**
 * Adds the outer boundary's share. Outside it the flow is that of a point source in the rim plane, with its mirror image if the
 * bottom is a wall: ∂u/∂n = −κ u with u = 1/r₁ + 1/r₂.
 */
const addOuterBoundary = (grid: Grid, far: number, closedBottom: boolean, plane: Float64Array): void => {
  const n = grid.degree + 1;
  const rule = gaussRule(n + 1);
  const { value } = interpolation(lobattoNodes(grid.degree), rule.points);
  const { r, z, column, row } = grid;
  const imageAt = 2 * grid.bottom;
  const decayAt = (radius: number, height: number, outward: (from: number) => number): number => {
    const near = Math.hypot(radius, height);
    if (!closedBottom) return outward(0) / near ** 2;
    const other = Math.hypot(radius, height - imageAt);
    return (outward(0) / near ** 3 + outward(imageAt) / other ** 3) / (1 / near + 1 / other);
  };
  const addFace = (
    e: number,
    fixed: number,
    from: number,
    to: number,
    vertical: boolean,
    node: (k: number) => number,
  ) => {
    for (let q = 0; q <= n; q++) {
      const along = from + ((rule.points[q] + 1) / 2) * (to - from);
      const radius = vertical ? fixed : along;
      const height = vertical ? along : fixed;
      const outward = (from: number): number => (vertical ? radius : Math.abs(height - from));
      const weight = ((rule.weights[q] * (to - from)) / 2) * radius * decayAt(radius, height, outward);
      for (let a = 0; a < n; a++) {
        for (let b = 0; b < n; b++) {
          plane[(e * n * n + node(a)) * n * n + node(b)] += weight * value[q * n + a] * value[q * n + b];
        }
      }
    }
  };
  for (let e = 0; e < column.length; e++) {
    const [r0, r1, z0, z1] = [r[column[e]], r[column[e] + 1], z[row[e]], z[row[e] + 1]];
    if (r1 >= far - 1e-9) addFace(e, r1, z0, z1, true, (k) => (n - 1) * n + k);
    if (z1 >= far - 1e-9) addFace(e, z1, r0, r1, false, (k) => k * n + n - 1);
    if (!closedBottom && r0 >= 1 && z0 <= grid.bottom + 1e-9) addFace(e, z0, r0, r1, false, (k) => k * n);
  }
};

/**
 * Sets up the energy.
 * @param far radius of the outer boundary; `closedBottom` true if the lower boundary is a wall (a body or a flange)
 * @returns the energy, or undefined if the map folds somewhere
 */
export const makeStiffness = (
  grid: Grid,
  map: FanMap | undefined,
  azimuth: AzimuthPlan,
  { far, closedBottom }: { far: number; closedBottom: boolean },
): Stiffness | undefined => {
  const n = grid.degree + 1;
  const nn = n * n;
  const { points: gauss, weights } = gaussRule(n);
  const { value: B, derivative: Dv } = interpolation(lobattoNodes(grid.degree), gauss);
  const count = grid.column.length;
  const { harmonics, points } = azimuth;
  const modes = harmonics + 1;
  const { r: rLines, z: zLines, column, row, nodes, nodeCount } = grid;
  const cosine = new Float64Array(points * modes);
  const sine = new Float64Array(points * modes);
  for (let k = 0; k < points; k++) {
    for (let m = 0; m < modes; m++) {
      cosine[k * modes + m] = Math.cos((m * Math.PI * (k + 0.5)) / points);
      sine[k * modes + m] = m * Math.sin((m * Math.PI * (k + 0.5)) / points);
    }
  }
  const isActive = new Uint8Array(count);
  if (map && !map.parallel) {
    for (let e = 0; e < count; e++) {
      const { chi, chiR, chiZ } = map.blend(
        (rLines[column[e]] + rLines[column[e] + 1]) / 2,
        (zLines[row[e]] + zLines[row[e] + 1]) / 2,
      );
      isActive[e] = chi !== 0 || chiR !== 0 || chiZ !== 0 ? 1 : 0;
    }
  }
  const active = Int32Array.from(Array.from(isActive.keys()).filter((e) => isActive[e] === 1));
  const perElement = nn * points * 6;
  const tensor = new Float64Array(active.length * perElement);
  const mean = new Float64Array(nn * 4);
  const plane = new Float64Array(count * nn * nn);
  const round = new Float64Array(count * nn * nn);
  let slot = 0;
  for (let e = 0; e < count; e++) {
    const hr = (rLines[column[e] + 1] - rLines[column[e]]) / 2;
    const hz = (zLines[row[e] + 1] - zLines[row[e]]) / 2;
    for (let p = 0; p < n; p++) {
      for (let q = 0; q < n; q++) {
        const r = rLines[column[e]] + hr * (1 + gauss[p]);
        const z = zLines[row[e]] + hz * (1 + gauss[q]);
        const weight = weights[p] * weights[q] * hr * hz * r;
        const g = (p * n + q) * 4;
        if (!map || isActive[e] === 0) {
          mean[g] = mean[g + 2] = weight;
          mean[g + 1] = 0;
          mean[g + 3] = weight / (r * r);
          continue;
        }
        mean.fill(0, g, g + 4);
        const { chi, chiR, chiZ } = map.blend(r, z);
        const steep = chiR * chiR + chiZ * chiZ;
        for (let k = 0; k < points; k++) {
          const c = Math.cos((Math.PI * (k + 0.5)) / points);
          const s = Math.sin((Math.PI * (k + 0.5)) / points);
          const { alongX, alongZ: wz } = map.stretch(r * c, z, chi);
          const wr = alongX * c;
          const wp = -alongX * s;
          const fold = 1 + wr * chiR + wz * chiZ;
          if (!(fold > 0)) return undefined;
          const w = (weight * 2 * Math.PI) / points;
          const t = slot * perElement + ((p * n + q) * points + k) * 6;
          tensor[t] = w * (fold - 2 * wr * chiR + (steep * wr * wr) / fold);
          tensor[t + 1] = w * (-wp * chiR + (steep * wr * wp) / fold);
          tensor[t + 2] = w * (-wr * chiZ - wz * chiR + (steep * wr * wz) / fold);
          tensor[t + 3] = w * (fold + (steep * wp * wp) / fold);
          tensor[t + 4] = w * (-wp * chiZ + (steep * wp * wz) / fold);
          tensor[t + 5] = w * (fold - 2 * wz * chiZ + (steep * wz * wz) / fold);
          mean[g] += tensor[t] / (2 * Math.PI);
          mean[g + 1] += tensor[t + 2] / (2 * Math.PI);
          mean[g + 2] += tensor[t + 5] / (2 * Math.PI);
          mean[g + 3] += tensor[t + 3] / (2 * Math.PI * r * r);
        }
      }
    }
    if (isActive[e] === 1) slot++;
    for (let a = 0; a < nn; a++) {
      for (let b = 0; b <= a; b++) {
        const [ai, aj, bi, bj] = [Math.floor(a / n), a % n, Math.floor(b / n), b % n];
        let sum = 0;
        let sumRound = 0;
        for (let p = 0; p < n; p++) {
          for (let q = 0; q < n; q++) {
            const g = (p * n + q) * 4;
            const ar = (Dv[p * n + ai] / hr) * B[q * n + aj];
            const az = (B[p * n + ai] * Dv[q * n + aj]) / hz;
            const br = (Dv[p * n + bi] / hr) * B[q * n + bj];
            const bz = (B[p * n + bi] * Dv[q * n + bj]) / hz;
            sum += mean[g] * ar * br + mean[g + 1] * (ar * bz + az * br) + mean[g + 2] * az * bz;
            sumRound += mean[g + 3] * B[p * n + ai] * B[q * n + aj] * B[p * n + bi] * B[q * n + bj];
          }
        }
        plane[(e * nn + a) * nn + b] = plane[(e * nn + b) * nn + a] = sum;
        round[(e * nn + a) * nn + b] = round[(e * nn + b) * nn + a] = sumRound;
      }
    }
  }
  addOuterBoundary(grid, far, closedBottom, plane);

  const local = new Float64Array(nn);
  const half = new Float64Array(nn);
  const halfSlope = new Float64Array(nn);
  const fields = [0, 1, 2].map(() => new Float64Array(nn * modes));
  const [fieldR, fieldP, fieldZ] = fields;
  const back = [0, 1, 2].map(() => new Float64Array(nn * modes));
  const [backR, backP, backZ] = back;

  const applyResting = (e: number, x: Float64Array, y: Float64Array): void => {
    for (let m = 0; m < modes; m++) {
      const offset = m * nodeCount;
      const weight = turnWeight(m);
      for (let b = 0; b < nn; b++) local[b] = weight * x[offset + nodes[e * nn + b]];
      for (let a = 0; a < nn; a++) {
        const at = (e * nn + a) * nn;
        let sum = 0;
        if (m === 0) for (let b = 0; b < nn; b++) sum += plane[at + b] * local[b];
        else for (let b = 0; b < nn; b++) sum += (plane[at + b] + m * m * round[at + b]) * local[b];
        y[offset + nodes[e * nn + a]] += sum;
      }
    }
  };

  const applyActive = (place: number, x: Float64Array, y: Float64Array): void => {
    const e = active[place];
    const r0 = rLines[column[e]];
    const hr = (rLines[column[e] + 1] - r0) / 2;
    const hz = (zLines[row[e] + 1] - zLines[row[e]]) / 2;
    for (let m = 0; m < modes; m++) {
      const offset = m * nodeCount;
      for (let b = 0; b < nn; b++) local[b] = x[offset + nodes[e * nn + b]];
      for (let p = 0; p < n; p++) {
        for (let j = 0; j < n; j++) {
          let v = 0;
          let s = 0;
          for (let i = 0; i < n; i++) {
            v += B[p * n + i] * local[i * n + j];
            s += Dv[p * n + i] * local[i * n + j];
          }
          half[p * n + j] = v;
          halfSlope[p * n + j] = s / hr;
        }
        const inverse = 1 / (r0 + hr * (1 + gauss[p]));
        for (let q = 0; q < n; q++) {
          let v = 0;
          let sr = 0;
          let sz = 0;
          for (let j = 0; j < n; j++) {
            v += B[q * n + j] * half[p * n + j];
            sr += B[q * n + j] * halfSlope[p * n + j];
            sz += Dv[q * n + j] * half[p * n + j];
          }
          const at = (p * n + q) * modes + m;
          fieldR[at] = sr;
          fieldP[at] = -v * inverse;
          fieldZ[at] = sz / hz;
        }
      }
    }
    backR.fill(0);
    backP.fill(0);
    backZ.fill(0);
    let t = place * perElement;
    for (let g = 0; g < nn; g++) {
      const base = g * modes;
      // Points φ and π − φ share their cosines up to the sign of the odd harmonics.
      for (let k = 0; k < points / 2; k++, t += 6) {
        const wave = k * modes;
        const mirror = t + 6 * (points - 1 - 2 * k);
        let [er, or, ep, op, ez, oz] = [0, 0, 0, 0, 0, 0];
        for (let m = 0; m < modes; m += 2) {
          er += fieldR[base + m] * cosine[wave + m];
          ep += fieldP[base + m] * sine[wave + m];
          ez += fieldZ[base + m] * cosine[wave + m];
        }
        for (let m = 1; m < modes; m += 2) {
          or += fieldR[base + m] * cosine[wave + m];
          op += fieldP[base + m] * sine[wave + m];
          oz += fieldZ[base + m] * cosine[wave + m];
        }
        const [ar, ap, az] = [er + or, op + ep, ez + oz];
        const [br, bp, bz] = [er - or, op - ep, ez - oz];
        const fr = tensor[t] * ar + tensor[t + 1] * ap + tensor[t + 2] * az;
        const fp = tensor[t + 1] * ar + tensor[t + 3] * ap + tensor[t + 4] * az;
        const fz = tensor[t + 2] * ar + tensor[t + 4] * ap + tensor[t + 5] * az;
        const hr2 = tensor[mirror] * br + tensor[mirror + 1] * bp + tensor[mirror + 2] * bz;
        const hp2 = tensor[mirror + 1] * br + tensor[mirror + 3] * bp + tensor[mirror + 4] * bz;
        const hz2 = tensor[mirror + 2] * br + tensor[mirror + 4] * bp + tensor[mirror + 5] * bz;
        const [sr, sp, sz, dr, dp, dz] = [fr + hr2, fp - hp2, fz + hz2, fr - hr2, fp + hp2, fz - hz2];
        for (let m = 0; m < modes; m += 2) {
          backR[base + m] += sr * cosine[wave + m];
          backP[base + m] += sp * sine[wave + m];
          backZ[base + m] += sz * cosine[wave + m];
        }
        for (let m = 1; m < modes; m += 2) {
          backR[base + m] += dr * cosine[wave + m];
          backP[base + m] += dp * sine[wave + m];
          backZ[base + m] += dz * cosine[wave + m];
        }
      }
      t += 3 * points;
    }
    for (let m = 0; m < modes; m++) {
      const offset = m * nodeCount;
      local.fill(0);
      for (let p = 0; p < n; p++) {
        const inverse = 1 / (r0 + hr * (1 + gauss[p]));
        for (let j = 0; j < n; j++) {
          let v = 0;
          let s = 0;
          for (let q = 0; q < n; q++) {
            const at = (p * n + q) * modes + m;
            v += (Dv[q * n + j] / hz) * backZ[at] - B[q * n + j] * inverse * backP[at];
            s += B[q * n + j] * backR[at];
          }
          for (let i = 0; i < n; i++) local[i * n + j] += B[p * n + i] * v + (Dv[p * n + i] / hr) * s;
        }
      }
      for (let b = 0; b < nn; b++) y[offset + nodes[e * nn + b]] += local[b];
    }
  };

  const apply = (x: Float64Array, y: Float64Array): void => {
    y.fill(0);
    for (let e = 0; e < count; e++) if (isActive[e] === 0) applyResting(e, x, y);
    for (let place = 0; place < active.length; place++) applyActive(place, x, y);
  };
  return { grid, harmonics, plane, round, active, isActive, tensor, apply };
};
