import { MODERN_AROUND } from './keywork.ts';
import { pad, type HornPlan } from './plan.ts';

/**
 * The soprano, invented but for the cone's half-angle, as published, and the reed's compliance, second-hand.
 * The neck's small end is as wide as leaves 5.1 cm³ of the cone's tip missing (5 to 5.5 by a text read, not
 * noted which). The mouthpiece is narrow at both ends of its chamber, for the octaves' sake: see the README.
 *
 * **Source:** UNSW, half-angle.
 */
export const SOPRANO: HornPlan = {
  file: 'demo-soprano.json',
  name: 'Larkfield soprano, demo',
  instrument: 'soprano',
  transposition: -2,
  neckEntrance: 10.6,
  halfAngle: 1.74,
  neckLength: 100,
  length: 630,
  straight: true,
  flareLength: 90,
  bellRim: 86,
  mouthpiece: [
    [22, 4, 10],
    [9, 14.5, 14.5],
    [20, 9, 9],
  ],
  reedVolumeMm3: 1500,
  freedom: 0.35,
  padThickness: 3.6,
  vents: { body: 139, neck: 64, bodyHole: 1.6, neckHole: 1.3 },
  //   no. hole chimney pad hinge rod  front
  pads: [
    pad(1, 30, 3.8, 34.0, 32, 4.0, 6.8),
    pad(2, 29, 3.8, 33.0, 32, 4.0, 6.8),
    pad(3, 26, 3.6, 29.5, 26, 3.5, 6.4),
    pad(4, 26, 3.6, 29.5, 25, 3.0, 6.2),
    pad(5, 23.5, 3.4, 26.5, 23, 3.0, 5.5),
    pad(6, 22, 3.2, 25.0, 16.5, 0.8, 5.6),
    pad(7, 20.5, 3.0, 23.5, 15.5, 0.8, 5.5),
    pad(8, 12, 2.8, 14.5, 14, 2.2, 4.0),
    pad(9, 19, 3.0, 21.0, 15.0, 0.8, 5.4),
    pad(10, 17.5, 2.8, 19.5, 14.5, 0.8, 5.0),
    pad(11, 15, 2.8, 18.0, 14, 2.2, 4.4),
    pad(12, 15.5, 2.8, 18.5, 15, 2.4, 4.4),
    pad(13, 11, 2.6, 13.5, 13, 2.2, 3.7),
    pad(14, 13, 2.6, 16.0, 14.5, 2.4, 4.1),
    pad(15, 10, 2.5, 12.5, 13.5, 2.4, 3.6),
    pad(16, 9.5, 2.5, 12.0, 12.5, 2.2, 3.5),
    pad(17, 10, 2.5, 12.5, 13.5, 2.4, 3.6),
    pad(18, 6, 2.4, 8.5, 12, 2.4, 2.7),
    pad(19, 9, 2.5, 11.5, 13, 2.2, 3.8),
    pad(20, 9, 2.5, 11.5, 13, 2.2, 3.8),
    pad(21, 8.5, 2.5, 11.0, 13, 2.2, 3.8),
    pad(22, 8.5, 2.5, 11.0, 13, 2.2, 3.8),
    pad(25, 8, 2.5, 10.5, 13, 2.2, 3.8),
  ],
  around: MODERN_AROUND,
};
