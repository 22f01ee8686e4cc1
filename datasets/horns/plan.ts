/**
 * Plans of the demo horns: everything about them that is chosen. All of it is invented, within the ranges of
 * common practice (no source); the places of the holes and the shape of the neck and mouthpiece are solved.
 */

/** One pad of a plan. Millimetres. */
export interface PadPlan {
  readonly number: number;
  readonly hole: number;
  readonly chimney: number;
  /** pad diameter */
  readonly pad: number;
  /** rod to pad centre */
  readonly hinge: number;
  /** rod above the rim plane */
  readonly hingeHeight: number;
  /** opening at the front */
  readonly front: number;
}

/** A horn before its places are solved. Millimetres. */
export interface HornPlan {
  readonly file: string;
  readonly name: string;
  readonly instrument: 'soprano' | 'alto' | 'tenor' | 'baritone';
  readonly transposition: number;
  readonly neckEntrance: number;
  /** half-angle of the body cone, degrees */
  readonly halfAngle: number;
  readonly neckLength: number;
  /** first guess of the axis length from the neck's small end to the rim; solved for low B♭ */
  readonly length: number;
  /** a horn in one line from neck to bell, without a bow */
  readonly straight?: true;
  readonly flareLength: number;
  readonly bellRim: number;
  /** window, chamber and bore of the mouthpiece in front of the neck: [length, start, end] */
  readonly mouthpiece: readonly (readonly [number, number, number])[];
  readonly reedVolumeMm3: number;
  /** how far the solver may take neck, mouthpiece and vents, as a share of what it may on an alto */
  readonly freedom: number;
  readonly padThickness: number;
  readonly vents: {
    readonly body: number;
    readonly neck: number;
    readonly bodyHole: number;
    readonly neckHole: number;
  };
  readonly pads: readonly PadPlan[];
  /** by pad number, degrees round the bore from the line of the stacks, positive to the player's right; for drawing only */
  readonly around: Readonly<Record<number, number>>;
}

/** One line of a plan's table. */
export const pad = (
  number: number,
  hole: number,
  chimney: number,
  padDiameter: number,
  hinge: number,
  hingeHeight: number,
  front: number,
): PadPlan => ({ number, hole, chimney, pad: padDiameter, hinge, hingeHeight, front });
