import type { KeyLine } from './graded-lines.ts';

/**
 * The opening fan: a change of coordinates that carries the easy flow (pad parallel to the rim) to the real one (pad swung
 * about a rod), so that one grid serves both and the azimuth needs only a few harmonics.
 *
 * ```
 *        z                       every point of the gap lies on the circle about the rod on which
 *        |   ____________        some point of the pad's face travels as the key opens:
 *   rod  |  /   pad      /           real(x) = turn[χ θ](x − χ H ẑ)
 *    o   | /____________/        χ = 0 on the chimney, at the lid and far away, 1 on the pad, z/H in the gap.
 *  ------+==|==========|==---
 *           |   hole   |
 * ```
 * The derivative of that map is turn·(I + W nᵀ) with n = grad χ and W = θ·(speed per radian at x − χHẑ) − H ẑ, a rotation times
 * a rank-one change, so the flow's coefficient tensor has a closed form:
 * A = D I − (W nᵀ + n Wᵀ) + |n|² W Wᵀ/D, D = 1 + W·n; D > 0 is exactly "the map does not fold".
 * **Source:** ours.
 *
 * All lengths in hole radii. The hole's centre is the origin, the rod is the line x = −hinge, z = rod.
 */

/** Geometry of one case, in hole radii. */
export interface PadCase {
  /** Rim thickness w/b. */
  rim: number;
  /** Pad radius d/b. */
  pad: number;
  /** Pad thickness/b. */
  thick: number;
  /** Height of the face's centre h/b. */
  height: number;
  /** Rod to pad centre along the rim plane, Infinity for a parallel pad. */
  hinge: number;
  /** Rod above the rim plane. */
  rod: number;
  /** Plane body this far below the rim, Infinity for a free chimney. */
  body: number;
}

/**
 * Angle that lifts the face's centre to the wanted height: the smallest θ in 0…π/2 with rod(1 − cos θ) + hinge sin θ = height.
 * @returns radians; 0 for a parallel pad; NaN if no angle below π/2 reaches that height
 */
export const openingAngle = (hinge: number, rod: number, height: number): number => {
  if (hinge === Infinity) return 0;
  const reach = Math.hypot(hinge, rod);
  const angle = Math.asin((height - rod) / reach) + Math.atan2(rod, hinge);
  return angle >= 0 && angle <= Math.PI / 2 ? angle : NaN;
};

/**
 * Shape of χ outside the gap: falls like (pad/r)^power to zero at r = side, and linearly over `above` over the pad; and the gap
 * of the parallel picture as a multiple of angle × hinge.
 */
export interface FanShape {
  power: number;
  side: number;
  above: number;
  scale: number;
}

export interface FanMap {
  angle: number;
  /** Gap of the parallel picture. */
  gap: number;
  parallel: boolean;
  shape: FanShape;
  /** χ, its radial and axial slope at (r, z) of the parallel picture. */
  blend(r: number, z: number): { chi: number; chiR: number; chiZ: number };
  /** W in the x and z directions. */
  stretch(x: number, z: number, chi: number): { alongX: number; alongZ: number };
}

const blendOf = (pad: number, gap: number, thick: number, { power, side, above }: FanShape) => {
  const roof = gap + thick;
  return (r: number, z: number): { chi: number; chiR: number; chiZ: number } => {
    if (z <= 0 || z >= roof + above || r >= side) return { chi: 0, chiR: 0, chiZ: 0 };
    const up = z < gap ? z / gap : z <= roof ? 1 : 1 - (z - roof) / above;
    const upSlope = z < gap ? 1 / gap : z <= roof ? 0 : -1 / above;
    if (r <= pad) return { chi: up, chiR: 0, chiZ: upSlope };
    const s = (r - pad) / (side - pad);
    const fall = (pad / r) ** power;
    const out = fall * (1 - s * s);
    const outSlope = -(power / r) * out - (fall * 2 * s) / (side - pad);
    return { chi: up * out, chiR: up * outSlope, chiZ: upSlope * out };
  };
};

const mapOf = (geometry: PadCase, angle: number, shape: FanShape): FanMap => {
  const { hinge, rod, pad, thick } = geometry;
  const parallel = hinge === Infinity;
  const gap = parallel ? geometry.height : shape.scale * angle * hinge;
  return {
    angle,
    gap,
    parallel,
    shape,
    blend: blendOf(pad, gap, thick, shape),
    stretch: (x, z, chi) =>
      parallel
        ? { alongX: 0, alongZ: 0 }
        : { alongX: angle * (rod - (z - gap * chi)), alongZ: angle * (x + hinge) - gap },
  };
};

/** Samples the map and returns its worst stretch: Infinity where it folds, else the largest of |A| and |A⁻¹| seen. */
const roughness = (map: FanMap, pad: number, thick: number): number => {
  const roof = map.gap + thick;
  const { side, above } = map.shape;
  let worst = 1;
  for (const t of [1e-6, 0.1, 0.25, 0.5, 0.75, 0.9, 1 - 1e-6]) {
    for (const z of [t * map.gap, map.gap + t * thick, roof + t * t * above]) {
      for (const s of [0.02, 0.3, 0.6, 0.9, 0.999]) {
        for (const r of [s * pad, pad + s ** 3 * (side - pad)]) {
          if (r < pad && z > map.gap && z < roof) continue;
          const { chi, chiR, chiZ } = map.blend(r, z);
          for (let k = 0; k <= 8; k++) {
            const cosine = Math.cos((Math.PI * k) / 8);
            const { alongX, alongZ } = map.stretch(r * cosine, z, chi);
            const fold = 1 + alongX * cosine * chiR + alongZ * chiZ;
            if (fold <= 0.002) return Infinity;
            const square = 3 + 2 * (fold - 1) + (alongX ** 2 + alongZ ** 2) * (chiR ** 2 + chiZ ** 2);
            worst = Math.max(worst, square / fold);
          }
        }
      }
    }
  }
  return worst;
};

/** True if the pad can take this position by swinging less than a quarter turn, its near edge above the rim plane. */
export const isReachable = ({ hinge, rod, pad, height }: PadCase): boolean => {
  const angle = openingAngle(hinge, rod, height);
  if (!(angle >= 0)) return false;
  return hinge === Infinity || rod * (1 - Math.cos(angle)) + (hinge - pad) * Math.sin(angle) > 0;
};

/**
 * The gentlest fan for a geometry.
 * @param forced take this shape instead of searching (to show that the answer does not depend on it)
 * @returns the map, or undefined if the position cannot be reached by swinging, the near edge is at or under the rim plane,
 * or every fan tried folds (a few extreme positions with the pad opened very wide)
 */
export const makeFanMap = (geometry: PadCase, forced?: FanShape): FanMap | undefined => {
  const { hinge, rod, pad, height, thick } = geometry;
  if (!isReachable(geometry)) return undefined;
  const angle = openingAngle(hinge, rod, height);
  if (hinge === Infinity) return mapOf(geometry, 0, { power: 1, side: 4, above: 4, scale: 1 });
  if (forced) return mapOf(geometry, angle, forced);
  let best: FanMap | undefined;
  let least = Infinity;
  // The plain scale almost always serves; the others are for wide openings about a low rod.
  for (const scales of [[1], [0.4, 0.7, 1.5]]) {
    for (const scale of scales) {
      for (const power of [0.35, 0.6, 1, 1.5, 2]) {
        for (const side of [2.5, 4, 6]) {
          for (const above of [3, 6]) {
            const map = mapOf(geometry, angle, { power, side, above, scale });
            const rough = roughness(map, pad, thick);
            if (rough < least) {
              least = rough;
              best = map;
            }
          }
        }
      }
    }
    if (best) break;
  }
  return best;
};

/** Grid lines the fan needs where its slope jumps. */
export const fanLines = (map: FanMap, thick: number): { radial: KeyLine[]; axial: KeyLine[] } =>
  map.parallel
    ? { radial: [], axial: [] }
    : {
        radial: [{ at: map.shape.side, edge: false }],
        axial: [{ at: map.gap + thick + map.shape.above, edge: false }],
      };
