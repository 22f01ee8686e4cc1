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
  readonly instrument: 'alto' | 'tenor';
  readonly transposition: number;
  readonly neckEntrance: number;
  /** half-angle of the body cone, degrees */
  readonly halfAngle: number;
  readonly neckLength: number;
  /** first guess of the axis length from the neck's small end to the rim; solved for low B♭ */
  readonly length: number;
  readonly flareLength: number;
  readonly bellRim: number;
  /** window, chamber and bore of the mouthpiece in front of the neck: [length, start, end] */
  readonly mouthpiece: readonly (readonly [number, number, number])[];
  readonly reedVolumeMm3: number;
  readonly padThickness: number;
  readonly vents: {
    readonly body: number;
    readonly neck: number;
    readonly bodyHole: number;
    readonly neckHole: number;
  };
  readonly pads: readonly PadPlan[];
}

const pad = (
  number: number,
  hole: number,
  chimney: number,
  padDiameter: number,
  hinge: number,
  hingeHeight: number,
  front: number,
): PadPlan => ({ number, hole, chimney, pad: padDiameter, hinge, hingeHeight, front });

export const ALTO: HornPlan = {
  file: 'demo-alto.json',
  name: 'Larkfield alto, demo',
  instrument: 'alto',
  transposition: -9,
  neckEntrance: 12.3,
  halfAngle: 1.6,
  neckLength: 190,
  length: 1000,
  flareLength: 190,
  bellRim: 122,
  mouthpiece: [
    [28, 7, 14.5],
    [14, 15.5, 15.5],
    [10, 15.2, 15.2],
  ],
  reedVolumeMm3: 2000,
  padThickness: 4.1,
  vents: { body: 205, neck: 72, bodyHole: 2.4, neckHole: 2.0 },
  //   no. hole chimney pad hinge rod  front
  pads: [
    pad(1, 42, 5.0, 46.5, 45, 6.0, 10.0),
    pad(2, 42, 5.0, 46.5, 45, 6.0, 10.0),
    pad(3, 38, 5.0, 42.0, 34, 5.0, 9.5),
    pad(4, 38, 5.0, 42.0, 33, 4.0, 9.0),
    pad(5, 34.5, 4.6, 38.0, 31, 4.0, 8.0),
    pad(6, 32.5, 4.4, 36.0, 22.5, 1.0, 8.0),
    pad(7, 30.5, 4.2, 34.0, 21.5, 1.0, 8.0),
    pad(8, 17.5, 3.5, 20.5, 19, 3.0, 5.5),
    pad(9, 28.5, 4.0, 32.0, 20.5, 1.0, 7.8),
    pad(10, 26, 3.8, 29.5, 20.0, 1.0, 7.2),
    pad(11, 22, 3.6, 25.5, 19, 3.0, 6.2),
    pad(12, 23, 3.6, 26.5, 21, 3.5, 6.2),
    pad(13, 16, 3.4, 19.0, 18, 3.0, 5.2),
    pad(14, 19.5, 3.4, 23.0, 20, 3.5, 5.8),
    pad(15, 14.5, 3.2, 18.0, 19, 3.5, 5.0),
    pad(16, 13.5, 3.2, 16.5, 17, 3.0, 5.0),
    pad(17, 14.5, 3.2, 18.0, 19, 3.5, 5.0),
    pad(18, 8, 3.0, 11.0, 17, 3.5, 3.8),
    pad(19, 13, 3.2, 16.5, 18, 3.0, 5.5),
    pad(20, 13, 3.2, 16.5, 18, 3.0, 5.5),
    pad(21, 12.5, 3.2, 16.0, 18, 3.0, 5.5),
    pad(22, 12, 3.2, 15.5, 18, 3.0, 5.5),
    pad(25, 11.5, 3.2, 15.0, 18, 3.0, 5.5),
  ],
};

export const TENOR: HornPlan = {
  file: 'demo-tenor.json',
  name: 'Larkfield tenor, demo',
  instrument: 'tenor',
  transposition: -14,
  neckEntrance: 12.8,
  halfAngle: 1.52,
  neckLength: 250,
  length: 1370,
  flareLength: 250,
  bellRim: 152,
  mouthpiece: [
    [32, 8, 15.5],
    [20, 17.5, 17.5],
    [16, 16.4, 16.4],
  ],
  reedVolumeMm3: 3000,
  padThickness: 4.1,
  vents: { body: 275, neck: 98, bodyHole: 2.6, neckHole: 2.2 },
  pads: [
    pad(1, 49, 5.6, 53.5, 50, 6.0, 11.0),
    pad(2, 49, 5.6, 53.5, 50, 6.0, 11.0),
    pad(3, 45, 5.6, 49.0, 39, 5.0, 10.5),
    pad(4, 45, 5.6, 49.0, 38, 4.0, 10.0),
    pad(5, 40, 5.0, 44.0, 35, 4.0, 9.0),
    pad(6, 38, 4.8, 41.5, 25.5, 1.0, 9.0),
    pad(7, 36, 4.6, 39.5, 24.5, 1.0, 9.0),
    pad(8, 20, 3.8, 23.0, 21, 3.0, 6.5),
    pad(9, 34, 4.4, 37.5, 23.5, 1.0, 8.8),
    pad(10, 31, 4.2, 34.5, 22.5, 1.0, 8.2),
    pad(11, 26, 4.0, 29.5, 22, 3.0, 7.2),
    pad(12, 27.5, 4.0, 31.0, 24, 3.5, 7.2),
    pad(13, 18.5, 3.8, 21.5, 20, 3.0, 6.0),
    pad(14, 23, 3.8, 26.5, 22, 3.5, 6.8),
    pad(15, 17, 3.6, 20.5, 20, 3.5, 6.0),
    pad(16, 16, 3.6, 19.0, 19, 3.0, 5.8),
    pad(17, 17, 3.6, 20.5, 20, 3.5, 6.0),
    pad(18, 9.5, 3.4, 12.5, 18, 3.5, 4.6),
    pad(19, 15.5, 3.6, 19.0, 20, 3.0, 6.5),
    pad(20, 15.5, 3.6, 19.0, 20, 3.0, 6.5),
    pad(21, 15, 3.6, 18.5, 20, 3.0, 6.5),
    pad(22, 14.5, 3.6, 18.0, 20, 3.0, 6.5),
    pad(25, 14, 3.6, 17.5, 20, 3.0, 6.5),
  ],
};
