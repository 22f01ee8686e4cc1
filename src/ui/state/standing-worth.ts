import {
  DEFAULT_PAD_MODEL,
  holeEnd,
  holeOf,
  keySetupOf,
  largestOpening,
  padEnd,
  standingPad,
  type Horn,
  type KeySetup,
  type PadPose,
  type Setup,
  type ToneHole,
} from '../../acoustics/index.ts';

/** A horn in one setup, SI. */
export interface HornInSetup {
  readonly horn: Horn;
  readonly setup: Setup;
}

/** How far the four readings that vent share rests on may be off, m. */
export interface FourReadings {
  readonly opening: number;
  readonly holeRadius: number;
  readonly padRadius: number;
  readonly hingeDistance: number;
}

/** A key as it stands, and how far that may be off by its readings. */
export interface StandingWorth {
  readonly pose: PadPose;
  /** 0…1 */
  readonly ventShare: number;
  /** set where a link holds the key lower than its own stop */
  readonly ruledBy: { readonly driver: string; readonly front: number } | null;
  /** what its own stop would give, m at the front */
  readonly ownFront: number;
  /** of the front opening, m; null where the readings leave no room to tell */
  readonly frontPlusMinus: number | null;
  /** of the vent share; likewise */
  readonly sharePlusMinus: number | null;
}

/** A reading is tried this much of its ± either way, until the key can stand so. */
const TRIED: readonly number[] = [1, 0.5, 0.25, 0.1];

/**
 * A key as it stands, links considered, and the ± of its front opening and vent share: the key is worked out
 * again with each reading off by its ± either way, and the larger of the two changes is added as a square: a key
 * that stands just where an arm would stop it can only be lower than read.
 *
 * An opening's ± is that of the stop which rules, its own or a driver's. Where a key could not stand with a
 * reading so far off, less is tried and scaled up.
 *
 * @param id         of a pad with a hinge
 * @param readingsOf how far a pad's readings may be off
 */
export function standingWorth(
  at: HornInSetup,
  id: string,
  readingsOf: (pad: string) => FourReadings,
): StandingWorth {
  const { pose, ownFront, ruledBy } = standingPad(at.horn, at.setup, id);
  const own = readingsOf(id);
  const stop = stopThatRules(at, id);
  const moves: readonly (readonly [number, (by: number) => HornInSetup])[] = [
    [readingsOf(stop).opening, (by) => withKey(at, stop, (key) => ({ opening: moved(key, by) }))],
    [own.holeRadius, (by) => withHole(at, id, ({ holeRadius }) => ({ holeRadius: holeRadius + by }))],
    [own.padRadius, (by) => withKey(at, id, ({ padRadius }) => ({ padRadius: padRadius + by }))],
    [
      own.hingeDistance,
      (by) => withHole(at, id, ({ hinge }) => ({ hinge: { ...hinge!, distance: hinge!.distance + by } })),
    ],
  ];
  const ventShare = shareOf(at, id);
  const here = { front: pose.front, share: ventShare };
  const changes = moves.map(([plusMinus, move]) =>
    largestChange(id, here, plusMinus, (by) => {
      const there = move(by);
      return [stop, id].every((pad) => canStand(there, pad)) ? there : null;
    }),
  );
  return {
    pose,
    ventShare,
    ruledBy,
    ownFront,
    frontPlusMinus: together(changes.map((change) => change?.front ?? null)),
    sharePlusMinus: together(changes.map((change) => change?.share ?? null)),
  };
}

/** Vent share of a key as it stands, 0…1. */
export function shareOf({ horn, setup }: HornInSetup, id: string): number {
  const hole = holeOf(horn, id);
  const { pose } = standingPad(horn, setup, id);
  const end = holeEnd(hole, padEnd(hole, setup, pose, DEFAULT_PAD_MODEL), pose.centre);
  return end.ventShare;
}

/** How far a key can be from where it was read to be. */
interface Apart {
  readonly front: number;
  readonly share: number;
}

/** The larger change of a reading off one way or the other; null where the key could stand with neither. */
function largestChange(
  id: string,
  here: Apart,
  plusMinus: number,
  move: (by: number) => HornInSetup | null,
): Apart | null {
  if (plusMinus === 0) return { front: 0, share: 0 };
  for (const part of TRIED) {
    const there = [move(-part * plusMinus), move(part * plusMinus)].filter((at) => at !== null);
    if (there.length < 2) continue;
    const fronts = there.map(({ horn, setup }) => standingPad(horn, setup, id).pose.front);
    const shares = there.map((at) => shareOf(at, id));
    const largest = (values: number[], from: number): number =>
      Math.max(...values.map((value) => Math.abs(value - from))) / part;
    return { front: largest(fronts, here.front), share: largest(shares, here.share) };
  }
  return null;
}

/** Independent errors add as squares; one that is not known leaves the sum unknown. */
function together(parts: readonly (number | null)[]): number | null {
  return parts.includes(null) ? null : Math.hypot(...parts.map((part) => part ?? 0));
}

/** The key whose own stop decides how a key stands. */
function stopThatRules({ horn, setup }: HornInSetup, id: string): string {
  const { ruledBy } = standingPad(horn, setup, id);
  return ruledBy === null ? id : stopThatRules({ horn, setup }, ruledBy.driver);
}

function canStand({ horn, setup }: HornInSetup, id: string): boolean {
  const { hinge, holeRadius, boreRadius } = holeOf(horn, id);
  const { padRadius, opening } = keySetupOf(setup, id);
  return (
    hinge !== null &&
    holeRadius > 0 &&
    holeRadius <= boreRadius &&
    padRadius > holeRadius &&
    hinge.distance > padRadius &&
    opening.height >= 0 &&
    opening.height <= largestOpening(hinge, padRadius, opening.at)
  );
}

const moved = ({ opening }: KeySetup, by: number): KeySetup['opening'] => ({
  ...opening,
  height: opening.height + by,
});

function withKey(at: HornInSetup, id: string, change: (key: KeySetup) => Partial<KeySetup>): HornInSetup {
  const key = keySetupOf(at.setup, id);
  return { ...at, setup: { keys: new Map(at.setup.keys).set(id, { ...key, ...change(key) }) } };
}

function withHole(at: HornInSetup, id: string, change: (hole: ToneHole) => Partial<ToneHole>): HornInSetup {
  const holes = at.horn.holes.map((hole) => (hole.id === id ? { ...hole, ...change(hole) } : hole));
  return { ...at, horn: { ...at.horn, holes } };
}
