import type { PadModel } from '../holes/pad-models/pad-model.ts';
import { holeEnd, padEnd, standingPad } from '../holes/pad-over-hole.ts';
import type { Horn, Setup, ToneHole } from '../horn.ts';
import type { PadPose } from '../keywork/hinge.ts';
import type { Measured } from './noticed.ts';
import { standingPlusMinus, type KeyPlusMinus } from './readings-worth.ts';

/** Setups whose keys are compared. */
export interface KeysOf {
  readonly horn: Horn;
  readonly setup: Setup;
  readonly plusMinus?: ReadonlyMap<string, KeyPlusMinus>;
}

/** One key as it stands in one setup, links considered. */
export interface KeyInSetup {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  /** m */
  readonly holeDiameter: number;
  readonly pose: PadPose;
  /** m, how far the front opening may be off by the reading of the stop that decides it */
  readonly frontPlusMinus: number;
  /** m, the opening of a parallel pad with the same vent share */
  readonly equivalentParallel: number;
  readonly ventShare: number;
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
  readonly ventShare: number;
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
  return alignHoles(compared.map(({ horn }) => horn))
    .map((holes): ComparedKey => {
      const setups = holes.map((hole, i) => (hole === null ? null : keyIn(compared[i], hole, padModel)));
      const [first, ...others] = setups;
      return { setups, differences: others.map((other, i) => differenceOf(first, other, sameHorn[i])) };
    })
    .map((key) => ({ key, weight: Math.max(...key.differences.map((d) => Math.abs(d?.ventShare ?? 0))) }))
    .sort((a, b) => b.weight - a.weight)
    .map(({ key }) => key);
}

/** Rows of holes with hinges, bell first: one of each horn or null. */
function alignHoles(horns: readonly Horn[]): (ToneHole | null)[][] {
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

function keyIn({ horn, setup, plusMinus }: KeysOf, hole: ToneHole, model: PadModel): KeyInSetup {
  const { pose, ruledBy } = standingPad(horn, setup, hole.id);
  const end = padEnd(hole, setup, pose, model);
  return {
    id: hole.id,
    number: hole.number,
    name: hole.name,
    holeDiameter: 2 * hole.holeRadius,
    pose,
    frontPlusMinus: standingPlusMinus(horn, setup, hole.id, plusMinus ?? new Map()),
    equivalentParallel: end.equivalentParallel,
    ventShare: holeEnd(hole, end, pose.centre).ventShare,
    ruledBy: ruledBy?.driver ?? null,
    warnings: end.warnings,
  };
}

/** Of one horn, an opening that stands the same with the same ± is one reading, and no difference. */
function differenceOf(
  first: KeyInSetup | null,
  other: KeyInSetup | null,
  sameHorn: boolean,
): KeyDifference | null {
  if (first === null || other === null) return null;
  const value = other.pose.front - first.pose.front;
  const once = sameHorn && value === 0 && first.frontPlusMinus === other.frontPlusMinus;
  return {
    front: { value, plusMinus: once ? 0 : Math.hypot(first.frontPlusMinus, other.frontPlusMinus) },
    equivalentParallel: other.equivalentParallel - first.equivalentParallel,
    ventShare: other.ventShare - first.ventShare,
  };
}
