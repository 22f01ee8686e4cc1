/**
 * The motion of a pad about its rod: a true rotation.
 *
 *            rod ○ ┄┄┄┄┄┄┄ z = hinge.height
 *                 ╲
 *                  back ▁▁▁▁▁ centre ▁▁▁▁▁ front        face of the pad, radius d
 *      ─────────────█████               █████──────     rim plane, z = 0
 *                 s = L − d    s = L    s = L + d        distance from the rod along the closed face
 *
 * Closed, the face lies on the rim and its centre over the hole's. Opened by θ, the face point at s stands at
 *
 *   z(s) = z_r + s·sin θ − z_r·cos θ          height above the rim plane
 *   x(s) = s·cos θ + z_r·sin θ − L            sideways from the hole's centre, away from the rod
 *
 * All in metres and radians. The formulas are plain geometry.
 */

/** Where an opening is measured: the far edge, the middle, or the edge by the rod. */
export type MeasuringPoint = 'front' | 'centre' | 'back';

/** An opening is a height above the rim plane *at a place*; one without the other means nothing. */
export interface Opening {
  readonly at: MeasuringPoint;
  /** m, ≥ 0 */
  readonly height: number;
}

/** Where the rod lies. */
export interface Hinge {
  /** L, m, rod to pad centre along the rim plane; `Infinity` for a pad that rises parallel to the rim */
  readonly distance: number;
  /** z_r, m, rod above the rim plane; negative when the posts are so short that it lies below */
  readonly height: number;
}

/** A pad standing over its hole. Heights are those of the face above the rim plane, m. */
export interface PadPose {
  /** θ, rad */
  readonly angle: number;
  readonly front: number;
  readonly centre: number;
  readonly back: number;
  /** m, how far the face's centre has moved away from the rod, along the rim plane */
  readonly shift: number;
}

/** The widest swing considered, rad: beyond 80° the pad stands beside the hole, not over it. */
export const WIDEST_SWING = (80 * Math.PI) / 180;

const ROUNDING = 1e-12;

const SIGN = { front: 1, centre: 0, back: -1 } as const;

/** Distance s from the rod to a measuring point along the closed face, m. */
function reachFromRod(hinge: Hinge, padRadius: number, at: MeasuringPoint): number {
  return hinge.distance + SIGN[at] * padRadius;
}

/** Height of the face point at distance s, for a swing θ, m. */
function heightAt(hinge: Hinge, s: number, angle: number): number {
  return hinge.height + s * Math.sin(angle) - hinge.height * Math.cos(angle);
}

/**
 * The widest swing of this hinge as read at one measuring point, rad.
 *
 * Besides {@link WIDEST_SWING} two things end it: a rod below the rim plane makes the back edge dip under the
 * rim again, at tan(θ/2) = (L − d)/|z_r|; and no point rises further once it stands straight above the rod.
 */
function widestAngle(hinge: Hinge, padRadius: number, at: MeasuringPoint): number {
  const back = reachFromRod(hinge, padRadius, 'back');
  const dips = hinge.height < 0 ? 2 * Math.atan2(back, -hinge.height) : Infinity;
  const top = Math.PI / 2 + Math.atan2(hinge.height, reachFromRod(hinge, padRadius, at));
  return Math.min(WIDEST_SWING, dips, top);
}

/** The largest opening a hinge allows at a measuring point, m; infinite for a parallel pad. */
export function largestOpening(hinge: Hinge, padRadius: number, at: MeasuringPoint): number {
  if (hinge.distance === Infinity) return Infinity;
  return heightAt(hinge, reachFromRod(hinge, padRadius, at), widestAngle(hinge, padRadius, at));
}

/**
 * Pose of a pad from one opening and its measuring point.
 *
 * @param hinge     where the rod lies; its distance must be greater than the pad's radius
 * @param padRadius d, m, > 0
 * @param opening   0 up to {@link largestOpening}
 * @throws RangeError naming the value, where the rod is under the pad or the hinge does not swing so far
 */
export function makePadPose(hinge: Hinge, padRadius: number, opening: Opening): PadPose {
  const h = opening.height;
  if (!(padRadius > 0)) throw new RangeError(`invalid pad radius: ${mm(padRadius)} mm; expected more than 0`);
  if (!(h >= 0)) throw new RangeError(`invalid ${opening.at} opening: ${mm(h)} mm; expected 0 or more`);
  if (hinge.distance === Infinity) return { angle: 0, front: h, centre: h, back: h, shift: 0 };
  if (!(hinge.distance > padRadius)) {
    throw new RangeError(
      `invalid hinge distance: ${mm(hinge.distance)} mm; expected more than the pad's radius, ${mm(padRadius)} mm`,
    );
  }
  const largest = largestOpening(hinge, padRadius, opening.at);
  // A reading that comes back from bench units may stand a rounding above the limit it was given.
  if (!(h <= largest * (1 + ROUNDING))) {
    throw new RangeError(
      `invalid ${opening.at} opening: ${mm(h)} mm; expected at most ${mm(largest)} mm, as far as this hinge can swing the pad clear of the rim`,
    );
  }
  // Shut is shut, whatever the rounding of the formula below.
  if (h === 0) return poseAtAngle(hinge, padRadius, 0);
  // z(s) = h  ⇔  s·sin θ − z_r·cos θ = h − z_r  ⇔  A·sin(θ − φ) = h − z_r,  A = √(s²+z_r²), tan φ = z_r/s.
  const s = reachFromRod(hinge, padRadius, opening.at);
  const reach = Math.hypot(s, hinge.height);
  const angle =
    Math.atan2(hinge.height, s) + Math.asin(Math.min(1, (Math.min(h, largest) - hinge.height) / reach));
  return poseAtAngle(hinge, padRadius, angle);
}

/** Pose of a pad that has swung by θ about its rod. */
export function poseAtAngle(hinge: Hinge, padRadius: number, angle: number): PadPose {
  const at = (point: MeasuringPoint): number => heightAt(hinge, reachFromRod(hinge, padRadius, point), angle);
  return {
    angle,
    front: at('front'),
    centre: at('centre'),
    back: at('back'),
    shift: hinge.distance * (Math.cos(angle) - 1) + hinge.height * Math.sin(angle),
  };
}

function mm(metres: number): string {
  return String(Math.round(metres * 1e5) / 100);
}

/** How the centre rises per front as the pad swings on, no unit; 1 for a parallel pad. */
export function centrePerFront(hinge: Hinge, padRadius: number, pose: PadPose): number {
  if (hinge.distance === Infinity) return 1;
  return rise(hinge, hinge.distance, pose.angle) / rise(hinge, hinge.distance + padRadius, pose.angle);
}

/** What can be measured otherwise of a hinge and its pad. */
export const HINGE_LENGTHS = ['padRadius', 'hingeDistance', 'hingeHeight'] as const;
export type HingeLength = (typeof HINGE_LENGTHS)[number];

/** How front and centre of a pad move, no unit. */
export interface PoseSlope {
  readonly front: number;
  readonly centre: number;
}

/**
 * How a pose answers to its hinge and pad, the opening read at one point held:
 *
 *   δθ = −(sin θ·δs_at + (1 − cos θ)·δz_r)/(dz/dθ)_at,   δz(s) = sin θ·δs + (1 − cos θ)·δz_r + (dz/dθ)_s·δθ
 *
 * @param at where the opening was read
 */
export function poseSlopes(
  hinge: Hinge,
  padRadius: number,
  { angle }: PadPose,
  at: MeasuringPoint,
): Readonly<Record<HingeLength, PoseSlope>> {
  if (hinge.distance === Infinity) return { padRadius: STILL, hingeDistance: STILL, hingeHeight: STILL };
  const sin = Math.sin(angle);
  // 1 − cos θ without its loss of digits.
  const versine = 2 * Math.sin(angle / 2) ** 2;
  const along = (perRadius: number, perDistance: number, perHeight: number): PoseSlope => {
    const stretch = (point: MeasuringPoint): number => perDistance + SIGN[point] * perRadius;
    const turn =
      -(sin * stretch(at) + versine * perHeight) / rise(hinge, reachFromRod(hinge, padRadius, at), angle);
    const moved = (point: MeasuringPoint): number =>
      point === at
        ? 0
        : sin * stretch(point) +
          versine * perHeight +
          rise(hinge, reachFromRod(hinge, padRadius, point), angle) * turn;
    return { front: moved('front'), centre: moved('centre') };
  };
  return { padRadius: along(1, 0, 0), hingeDistance: along(0, 1, 0), hingeHeight: along(0, 0, 1) };
}

const STILL: PoseSlope = Object.freeze({ front: 0, centre: 0 });

/** dz/dθ of the face point at distance s. */
function rise(hinge: Hinge, s: number, angle: number): number {
  return s * Math.cos(angle) + hinge.height * Math.sin(angle);
}
