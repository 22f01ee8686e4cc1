import { dual, type Dual } from '../../numerics/dual.ts';

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

/** The same, moving along a direction; `bodyBelow` Infinity for a chimney standing free. */
export type MovingPad = Readonly<Record<keyof PadOverHole, Dual>>;

/** What a model computes, as lengths of the hole's own area, m. */
export interface PadLengths<T> {
  /** everything beyond the rim plane */
  readonly length: T;
  /** the same with no pad at all */
  readonly noPadLength: T;
  /** the part of `length` that lies in the thin gap between rim and pad, where the air rubs */
  readonly gapShare: T;
}

/** What can move: each slope is taken with everything else held. */
export const PAD_DIRECTIONS = [
  'centreHeight',
  'holeRadius',
  'padThickness',
  'padRadius',
  'hingeDistance',
  'hingeHeight',
  'rimThickness',
] as const;
export type PadDirection = (typeof PAD_DIRECTIONS)[number];

/** What a pad does to the hole's end, at low frequency and without friction. */
export interface PadEnd extends PadLengths<number> {
  /** slopes of the three lengths, no unit; each worked out when it is first read */
  readonly slopes: Readonly<Record<PadDirection, PadLengths<number>>>;
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

/** What a model brings besides its lengths, worked out only when somebody reads it. */
export interface PadEndRest {
  readonly equivalentParallel: () => number;
  readonly warnings: () => readonly string[];
}

/**
 * Makes a pad's end from a model's formula, differentiated along every direction. A pad that stands on its rim
 * shuts the hole: its length is infinite and nothing has a slope.
 */
export function makePadEnd(
  pad: PadOverHole,
  lengthsOf: (pad: MovingPad) => PadLengths<Dual>,
  rest: PadEndRest,
): PadEnd {
  if (!(pad.centreHeight > 0)) {
    const freeAlong = (direction: PadDirection): Dual =>
      lengthsOf(moving({ ...pad, centreHeight: Infinity }, direction)).noPadLength;
    return {
      length: Infinity,
      noPadLength: freeAlong('holeRadius').value,
      gapShare: 0,
      slopes: slopesWhenRead((direction) => ({
        length: 0,
        noPadLength: freeAlong(direction).slope,
        gapShare: 0,
      })),
      equivalentParallel: 0,
      get warnings() {
        return rest.warnings();
      },
    };
  }
  const along = (direction: PadDirection): PadLengths<Dual> => lengthsOf(moving(pad, direction));
  const byHeight = along('centreHeight');
  return {
    length: byHeight.length.value,
    noPadLength: byHeight.noPadLength.value,
    gapShare: byHeight.gapShare.value,
    slopes: slopesWhenRead((direction) =>
      slopesOf(direction === 'centreHeight' ? byHeight : along(direction)),
    ),
    get equivalentParallel() {
      return rest.equivalentParallel();
    },
    get warnings() {
      return rest.warnings();
    },
  };
}

type Slopes = PadEnd['slopes'];

/** Slopes that are worked out when first read, and kept. */
function slopesWhenRead(along: (direction: PadDirection) => PadLengths<number>): Slopes {
  const known = new Map<PadDirection, PadLengths<number>>();
  const read = (direction: PadDirection): PadLengths<number> => {
    const before = known.get(direction);
    if (before !== undefined) return before;
    const slopes = along(direction);
    known.set(direction, slopes);
    return slopes;
  };
  const properties = PAD_DIRECTIONS.map((direction) => [
    direction,
    { enumerable: true, get: () => read(direction) },
  ]);
  return Object.defineProperties({}, Object.fromEntries(properties) as PropertyDescriptorMap) as Slopes;
}

function moving(pad: PadOverHole, direction: PadDirection): MovingPad {
  const at = (key: keyof PadOverHole): Dual => dual(pad[key] ?? Infinity, key === direction ? 1 : 0);
  return {
    holeRadius: at('holeRadius'),
    rimThickness: at('rimThickness'),
    padRadius: at('padRadius'),
    padThickness: at('padThickness'),
    hingeDistance: at('hingeDistance'),
    hingeHeight: at('hingeHeight'),
    centreHeight: at('centreHeight'),
    bodyBelow: at('bodyBelow'),
  };
}

function slopesOf({ length, noPadLength, gapShare }: PadLengths<Dual>): PadLengths<number> {
  return { length: length.slope, noPadLength: noPadLength.slope, gapShare: gapShare.slope };
}

/**
 * A model whose pad part (length − noPadLength) is scaled, to see what its error does to an answer.
 *
 * @param factor 1 leaves it as it is
 */
export function scaledPadModel(model: PadModel, factor: number): PadModel {
  const scaled = (of: PadLengths<number>): PadLengths<number> => ({
    length: of.noPadLength + factor * (of.length - of.noPadLength),
    noPadLength: of.noPadLength,
    gapShare: factor * of.gapShare,
  });
  return {
    ...model,
    endOf: (pad) => {
      const end = model.endOf(pad);
      return {
        ...scaled(end),
        get equivalentParallel() {
          return end.equivalentParallel;
        },
        get warnings() {
          return end.warnings;
        },
        slopes: slopesWhenRead((direction) => scaled(end.slopes[direction])),
      };
    },
  };
}
