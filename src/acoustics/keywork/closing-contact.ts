import type { Hinge } from './hinge.ts';

/**
 * Where a pad touches first, and what is left on the other side.
 *
 * A cup is parallel to its rim at one place of its swing only. A pad that stands Δ proud of the rim there meets
 * it before, still leaning back on its rod: the back touches and the front gapes. One that is Δ short meets it
 * beyond: the front touches and the back gapes.
 *
 *   face over the rim point at x from the rod, leaning by θ     z = z_r + x tan θ − (z_r + Δ)/cos θ
 *   touching at x_c = L ∓ r                                     x_c sin θ + z_r cos θ = z_r + Δ
 *   gap on the other side                                       2r tan |θ|  ≈  2r|Δ|/(L ∓ r)
 *
 * r is the seat's radius, L and z_r as in hinge.ts; − for a pad too thick, + for one too thin.
 *
 * **Source:** plain geometry.
 */
export interface ClosingContact {
  readonly touches: 'back' | 'front' | 'all round';
  /** θ, rad, how far the cup leans when the pad first touches; positive for a pad too thick */
  readonly angle: number;
  /** m, what is left on the other side */
  readonly gap: number;
}

/** m: less than this is all round. */
const TOUCHING = 1e-9;

/**
 * @param seatRadius r, m, below the hinge's distance
 * @param proud      Δ, m, how far the pad reaches below the rim plane when the cup is parallel to it
 * @throws RangeError where the rod is under the pad, or the pad so thick that it never comes over the rim
 */
export function closingContact(hinge: Hinge, seatRadius: number, proud: number): ClosingContact {
  if (Math.abs(proud) < TOUCHING || hinge.distance === Infinity) {
    return { touches: 'all round', angle: 0, gap: 0 };
  }
  if (!(hinge.distance > seatRadius)) {
    throw new RangeError(
      `invalid hinge distance: ${hinge.distance * 1000} mm; expected more than the seat's radius, ${seatRadius * 1000} mm`,
    );
  }
  const place = hinge.distance - Math.sign(proud) * seatRadius;
  const share = (hinge.height + proud) / Math.hypot(place, hinge.height);
  if (!(Math.abs(share) <= 1)) {
    throw new RangeError(
      `invalid pad: ${(proud * 1000).toFixed(2)} mm proud of the rim; expected one that this hinge can bring over it`,
    );
  }
  const angle = Math.asin(share) - Math.atan2(hinge.height, place);
  return {
    touches: proud > 0 ? 'back' : 'front',
    angle,
    gap: 2 * seatRadius * Math.tan(Math.abs(angle)),
  };
}

/**
 * How far round a key stops before its old place when its pad is thicker by Δt and is levelled in the cup, so
 * that it seats flat again, rad; negative for a thinner pad. The cup floor's centre then stands Δt higher:
 *
 *   L sin θ₀ + (t − z_r)(cos θ₀ − 1) = Δt
 *
 * @param thickness t, m, of the old pad
 * @param thicker   Δt, m
 */
export function levelledTurn(hinge: Hinge, thickness: number, thicker: number): number {
  if (hinge.distance === Infinity || thicker === 0) return 0;
  const above = thickness - hinge.height;
  const share = (thicker + above) / Math.hypot(hinge.distance, above);
  if (!(Math.abs(share) <= 1)) {
    throw new RangeError(
      `invalid change of thickness: ${(thicker * 1000).toFixed(2)} mm; expected one that this hinge can take up`,
    );
  }
  return Math.asin(share) - Math.atan2(above, hinge.distance);
}
