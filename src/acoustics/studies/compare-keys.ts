import type { AirColumn } from '../air/air.ts';
import type { PadModel } from '../holes/pad-models/pad-model.ts';
import { holeEnd, padEnd, standingPad } from '../holes/pad-over-hole.ts';
import type { Horn, Setup, ToneHole } from '../horn.ts';
import type { PadPose } from '../keywork/hinge.ts';
import type { Measured } from './noticed.ts';
import { EXACT, prepareReadings, type PlusMinus, type Readings, type Slopes } from './readings.ts';
import { budgetOf, differenceBudget, frontSlopes, shareSlopes } from './uncertainty.ts';

/** Setups whose keys are compared. */
export interface KeysOf {
  readonly horn: Horn;
  readonly setup: Setup;
  readonly air: AirColumn;
  readonly plusMinus?: PlusMinus;
}

/** One key as it stands in one setup, links considered. */
export interface KeyInSetup {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  /** m */
  readonly holeDiameter: number;
  readonly pose: PadPose;
  /** m, how far the front opening may be off by the readings of the stop and links that decide it */
  readonly frontPlusMinus: number;
  /** m, the opening of a parallel pad with the same vent share */
  readonly equivalentParallel: number;
  readonly ventShare: Measured;
  /** whose arm holds it below its own stop; null where none does */
  readonly ruledBy: string | null;
  /** sentences, where the pad lies outside its model's range */
  readonly warnings: readonly string[];
}

/** One key against the reference. */
export interface KeyDifference {
  /** m */
  readonly front: Measured;
  /** m */
  readonly equivalentParallel: number;
  readonly ventShare: Measured;
}

/** One key in every setup. */
export interface ComparedKey {
  /** in the order of the setups; null where that horn has no such key */
  readonly setups: readonly (KeyInSetup | null)[];
  /** of every setup after the first against the first; null where either has no such key */
  readonly differences: readonly (KeyDifference | null)[];
}

/**
 * Every key of every setup, aligned by id and failing that by number; the vent share that differs most first.
 *
 * @param sameHorn of each setup after the first, whether it is of the first one's horn
 */
export function compareKeys(
  compared: readonly KeysOf[],
  sameHorn: readonly boolean[],
  padModel: PadModel,
): ComparedKey[] {
  const columns = compared.map((of): Column => ({
    of,
    readings: prepareReadings(of.horn, of.setup, of.air, of.plusMinus ?? EXACT),
    padModel,
  }));
  return alignHoles(compared.map(({ horn }) => horn))
    .map((holes): ComparedKey => {
      const keys = holes.map((hole, i) => (hole === null ? null : standingKey(columns[i], hole)));
      const [first, ...others] = keys;
      return {
        setups: keys.map((key) => key?.shown ?? null),
        differences: others.map((other, i) => differenceOf(first, other, sameHorn[i])),
      };
    })
    .map((key) => ({
      key,
      weight: Math.max(...key.differences.map((d) => Math.abs(d?.ventShare.value ?? 0))),
    }))
    .sort((a, b) => b.weight - a.weight)
    .map(({ key }) => key);
}

/** Rows of holes with hinges, bell first: one of each horn or null. */
export function alignHoles(horns: readonly Horn[]): (ToneHole | null)[][] {
  const rows: (ToneHole | null)[][] = [];
  horns.forEach((horn, column) => {
    const keyed = horn.holes.filter((hole) => hole.hinge !== null).reverse();
    const free = (row: readonly (ToneHole | null)[]): boolean => row[column] === null;
    const has = (row: readonly (ToneHole | null)[], same: (hole: ToneHole) => boolean): boolean =>
      row.some((hole) => hole !== null && same(hole));
    const byNumber: ToneHole[] = [];
    for (const hole of keyed) {
      const row = rows.find((r) => free(r) && has(r, ({ id }) => id === hole.id));
      if (row === undefined) byNumber.push(hole);
      else row[column] = hole;
    }
    for (const hole of byNumber) {
      const row = rows.find((r) => free(r) && has(r, ({ number }) => number === hole.number));
      if (row === undefined) rows.push(horns.map((_, i) => (i === column ? hole : null)));
      else row[column] = hole;
    }
  });
  return rows;
}

/** One setup, its readings ready. */
interface Column {
  readonly of: KeysOf;
  readonly readings: Readings;
  readonly padModel: PadModel;
}

/** A key as it stands, and how front and vent share answer to what was read. */
interface StandingKey {
  readonly column: Column;
  readonly shown: KeyInSetup;
  readonly front: Slopes;
  readonly share: Slopes;
}

function standingKey(column: Column, hole: ToneHole): StandingKey {
  const { of, readings, padModel } = column;
  const { horn, setup } = of;
  const { pose, ruledBy } = standingPad(horn, setup, hole.id);
  const end = padEnd(hole, setup, pose, padModel);
  const front = frontSlopes(hole.id);
  const share = shareSlopes(horn, setup, hole.id, padModel);
  const plusMinus = (slopes: Slopes): number => budgetOf(readings, slopes, padModel).plusMinus;
  const shown: KeyInSetup = {
    id: hole.id,
    number: hole.number,
    name: hole.name,
    holeDiameter: 2 * hole.holeRadius,
    pose,
    frontPlusMinus: plusMinus(front),
    equivalentParallel: end.equivalentParallel,
    ventShare: { value: holeEnd(hole, end, pose.centre).ventShare, plusMinus: plusMinus(share) },
    ruledBy: ruledBy?.driver ?? null,
    warnings: end.warnings,
  };
  return { column, shown, front, share };
}

/** Of one horn, what was read once for both is no difference. */
function differenceOf(
  first: StandingKey | null,
  other: StandingKey | null,
  sameHorn: boolean,
): KeyDifference | null {
  if (first === null || other === null) return null;
  const plusMinus = (slopes: (key: StandingKey) => Slopes): number => {
    const [a, b] = [first, other].map((key) => ({ ...key.column, slopes: slopes(key) }));
    return differenceBudget(a, b, sameHorn ? 'same horn' : 0).plusMinus;
  };
  return {
    front: { value: other.shown.pose.front - first.shown.pose.front, plusMinus: plusMinus((k) => k.front) },
    equivalentParallel: other.shown.equivalentParallel - first.shown.equivalentParallel,
    ventShare: {
      value: other.shown.ventShare.value - first.shown.ventShare.value,
      plusMinus: plusMinus((k) => k.share),
    },
  };
}
