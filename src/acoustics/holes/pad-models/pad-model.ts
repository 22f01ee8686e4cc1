/**
 * The seam where models of a pad over a hole go in: one file per member, listed in `index.ts`.
 *
 *              ◀──────── 2d ────────▶
 *              ▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁     pad, thickness padThickness
 *                     ↕ centreHeight
 *        ▔▔▔▔▔▔▌                ▐▔▔▔▔▔▔   rim plane, rim thickness w
 *              ▌◀──── 2b ──────▶▐
 *        ┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄   body, bodyBelow under the rim plane
 */

/** A pad standing over its hole, metres. */
export interface PadOverHole {
  /** b */
  readonly holeRadius: number;
  /** w */
  readonly rimThickness: number;
  /** d */
  readonly padRadius: number;
  readonly padThickness: number;
  /** L, rod to pad centre along the rim plane; Infinity for a pad that stays parallel */
  readonly hingeDistance: number;
  /** z_r, rod above the rim plane */
  readonly hingeHeight: number;
  /** height of the face's own centre above the rim plane, ≥ 0 */
  readonly centreHeight: number;
  /** a plane body this far below the rim plane; left out for a chimney standing free */
  readonly bodyBelow?: number;
}

/** What a pad does to the hole's end, at low frequency. */
export interface PadEnd {
  /** m, everything beyond the rim plane as a length of the hole's own area; Infinity at zero opening */
  readonly length: number;
  /** m, the same with no pad at all */
  readonly noPadLength: number;
  /** d length/d centreHeight, no unit, ≤ 0; −Infinity at zero opening */
  readonly slope: number;
  /** ∂length/∂holeRadius, all else held, no unit */
  readonly holeRadiusSlope: number;
  /** ∂noPadLength/∂holeRadius, no unit */
  readonly noPadHoleRadiusSlope: number;
  /** ∂length/∂padThickness, the face held where it is, no unit */
  readonly padThicknessSlope: number;
  /** m, the opening of a parallel pad with the same end length */
  readonly equivalentParallel: number;
  /** sentences for the technician, where an input lies outside the model's range */
  readonly warnings: readonly string[];
}

/** One model of the pad over the hole. */
export interface PadModel {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  /** how far the pad's part of the end length may be off, as a share of it */
  readonly relativeError: number;
  endOf(pad: PadOverHole): PadEnd;
}

/**
 * A model whose pad part (length − noPadLength) is scaled, to see what its error does to an answer.
 *
 * @param factor 1 leaves it as it is
 */
export function scaledPadModel(model: PadModel, factor: number): PadModel {
  return {
    ...model,
    endOf: (pad) => {
      const end = model.endOf(pad);
      return {
        ...end,
        length: end.noPadLength + factor * (end.length - end.noPadLength),
        slope: factor * end.slope,
        holeRadiusSlope: end.noPadHoleRadiusSlope + factor * (end.holeRadiusSlope - end.noPadHoleRadiusSlope),
        padThicknessSlope: factor * end.padThicknessSlope,
      };
    },
  };
}
