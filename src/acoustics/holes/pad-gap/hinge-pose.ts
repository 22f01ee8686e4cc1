import {
  asinOf,
  atan2Of,
  dual,
  hypotOf,
  linear,
  minus,
  over,
  plus,
  sinOf,
  times,
  type Dual,
} from '../../numerics/dual.ts';

/**
 * Where a pad stands when its key has swung about the rod, from the height of its face's centre; the geometry
 * is that of keywork/hinge.ts, in hole radii and with derivatives.
 *
 *   x = −L + s cos θ + z_r sin θ       z = z_r + s sin θ − z_r cos θ       (centre s = L)
 */
export interface GapPose {
  /** θ, rad */
  readonly angle: Dual;
  /** sideways place of the face's centre, towards the front positive */
  readonly shift: Dual;
}

const PARALLEL: GapPose = { angle: dual(0), shift: dual(0) };

/** Kept clear of the angle at which a rod below the rim stops lifting the pad, where the angle's slope is infinite. */
const MARGIN = 0.1;

/** Sideways place of the centre at an angle; 1 − cos θ written so that a far rod loses no digits. */
function shiftAt(hinge: Dual, rod: Dual, angle: Dual): Dual {
  const half = sinOf(linear(angle, 0.5));
  return minus(times(rod, sinOf(angle)), linear(times(hinge, times(half, half)), 2));
}

/** Height above the rim plane, at an angle, of the face point at distance `along` from the rod. */
function faceHeightAt(along: Dual, rod: Dual, angle: Dual): Dual {
  const half = sinOf(linear(angle, 0.5));
  return plus(times(along, sinOf(angle)), linear(times(rod, times(half, half)), 2));
}

/**
 * The widest angle the pad can take: a quarter turn, or just before a rod below the rim stops lifting it, or
 * where the edge on the rod's side comes back down to the rim plane.
 */
function widestAngle(hinge: Dual, rod: Dual, pad: Dual): Dual {
  const top = linear(atan2Of(rod, hinge), 1, Math.PI / 2 - MARGIN);
  const turned = top.value < Math.PI / 2 ? top : dual(Math.PI / 2);
  if (rod.value >= 0) return turned;
  const dips = linear(atan2Of(minus(hinge, pad), linear(rod, -1)), 2);
  return dips.value < turned.value ? dips : turned;
}

/** How high the face's centre can rise on its hinge, hole radii; Infinity for a parallel pad. */
export function highestCentre(hinge: Dual, rod: Dual, pad: Dual): Dual {
  if (hinge.value === Infinity) return dual(Infinity);
  return faceHeightAt(hinge, rod, widestAngle(hinge, rod, pad));
}

/**
 * The pose that puts the face's centre at a height: the smallest θ with L sin θ + z_r (1 − cos θ) = height;
 * where no angle reaches it, the last pose that can be reached.
 *
 * @param hinge  L, positive or Infinity
 * @param rod    z_r
 * @param pad    pad radius, below L
 * @param height ≥ 0
 */
export function gapPoseAt(hinge: Dual, rod: Dual, pad: Dual, height: Dual): GapPose {
  if (hinge.value === Infinity) return PARALLEL;
  const widest = widestAngle(hinge, rod, pad);
  const reached = height.value <= faceHeightAt(hinge, rod, widest).value;
  const angle = reached
    ? plus(asinOf(over(minus(height, rod), hypotOf(hinge, rod))), atan2Of(rod, hinge))
    : widest;
  return { angle, shift: shiftAt(hinge, rod, angle) };
}
