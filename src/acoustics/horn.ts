import { makeBore, radiusBefore, type Bore } from './bore/bore.ts';
import type { Hinge, Opening } from './keywork/hinge.ts';
import type { Keywork } from './keywork/linkage.ts';

/**
 * The four things every answer depends on, always in this order:
 *
 *   Horn       what was built: bore, holes, hinges, links
 *   Setup      what the bench can change: openings and pads
 *   Fingering  what the player does
 *   AirColumn  what the day does
 */

/** One tone hole or vent with its key's hinge. Metres. */
export interface ToneHole {
  /** our id, as in `e`, `bis`, `low-c-sharp` */
  readonly id: string;
  /** counted from the bell up */
  readonly number: number;
  /** the pad's name in the trade */
  readonly name: string;
  /** from the mouthpiece tip along the bore */
  readonly x: number;
  readonly boreRadius: number;
  readonly holeRadius: number;
  /** crown of the bore to the rim */
  readonly chimney: number;
  readonly rimThickness: number;
  /** null for a vent: a narrow tube whose small pad never limits it */
  readonly hinge: Hinge | null;
}

/** What was built. */
export interface Horn {
  readonly name: string;
  /** semitones from written to sounding pitch */
  readonly transposition: number;
  readonly bore: Bore;
  /** m from the mouthpiece tip to the neck's small end */
  readonly neckStart: number;
  /** m³ of air to be thought of beside the bore there, where a mouthpiece differs from the one measured */
  readonly extraMouthpieceVolume: number;
  /** m³ of air with the same compliance as the reed */
  readonly reedVolume: number;
  /** from the mouthpiece to the bell */
  readonly holes: readonly ToneHole[];
  readonly keywork: Keywork;
}

/** One key as set: its own stop's opening, and its pad. Metres. */
export interface KeySetup {
  readonly opening: Opening;
  readonly padRadius: number;
  readonly padThickness: number;
}

/** What the bench can change: one entry per hole with a hinge. */
export interface Setup {
  readonly keys: ReadonlyMap<string, KeySetup>;
}

/** The hole with this id. @throws RangeError where the horn has none */
export function holeOf(horn: Horn, id: string): ToneHole {
  const hole = horn.holes.find((h) => h.id === id);
  if (hole === undefined) {
    throw new RangeError(`invalid key: "${id}"; expected one of ${horn.holes.map((h) => h.id).join(', ')}`);
  }
  return hole;
}

/** A horn with its bell's end correction longer by so much, m. */
export function withBellLonger(horn: Horn, by: number): Horn {
  const { stations, referenceRadius, bellCorrection } = horn.bore;
  return { ...horn, bore: makeBore(stations, referenceRadius, bellCorrection + by) };
}

/**
 * A horn whose mouthpiece is pulled out by so much, m; negative, pushed on. The end of the mouthpiece's bore is
 * drawn longer as a cylinder, or cut shorter.
 *
 * @throws RangeError where it would be pushed on by half of the mouthpiece or more
 */
export function withMouthpiecePulled(horn: Horn, by: number): Horn {
  const { bore, neckStart } = horn;
  if (by === 0) return horn;
  if (!(by > -neckStart / 2 && by < neckStart)) {
    throw new RangeError(
      `invalid place of the mouthpiece: ${by * 1000} mm; expected ${(-neckStart / 2) * 1000} to ${neckStart * 1000} mm`,
    );
  }
  const cut = neckStart + Math.min(by, 0);
  const mouthpiece = bore.stations.filter(
    ({ x }, i) => x < cut || (x === cut && isOfMouthpiece(bore, i, cut)),
  );
  const end = { x: neckStart + by, radius: radiusBefore(bore, cut) };
  const rest = bore.stations
    .filter(({ x }, i) => x > neckStart || (x === neckStart && !isOfMouthpiece(bore, i, neckStart)))
    .map(({ x, radius }) => ({ x: x + by, radius }));
  return {
    ...horn,
    bore: makeBore([...mouthpiece, end, ...rest], bore.referenceRadius, bore.bellCorrection),
    neckStart: neckStart + by,
    holes: horn.holes.map((hole) => ({ ...hole, x: hole.x + by })),
  };
}

/** Of the stations at one place, those before the last belong to the mouthpiece's side. */
function isOfMouthpiece({ stations }: Bore, i: number, x: number): boolean {
  return stations[i + 1]?.x === x;
}

/** The key's entry in a setup. @throws RangeError where the setup has none */
export function keySetupOf(setup: Setup, id: string): KeySetup {
  const key = setup.keys.get(id);
  if (key === undefined)
    throw new RangeError(`invalid setup: no opening for "${id}"; expected one for every pad`);
  return key;
}

/** A setup with one key's opening changed. */
export function withOpening(setup: Setup, id: string, opening: Opening): Setup {
  const keys = new Map(setup.keys);
  keys.set(id, { ...keySetupOf(setup, id), opening });
  return { keys };
}
