import { withSetLike, type SetLike } from '../../documents/set-like.ts';
import { withHorn } from './horns-on-bench.ts';
import { hornInHand, type BenchState } from './bench-state.ts';
import { stepped } from './horn-on-bench.ts';
import { withoutProposals, withProposed } from './key-lengths.ts';
import type { ProposedOpenings } from './scale-report.ts';
import { chooseColumns, type Column } from './side-by-side-state.ts';

/** Written so many to the millimetre: finer than any reading. */
const PER_MM = 100;

/** Openings as they are written into the proposed setup, mm at the front by pad id. */
export function asWritten(frontsMm: Readonly<Record<string, number>>): Record<string, number> {
  return Object.fromEntries(
    Object.entries(frontsMm).map(([pad, mm]) => [pad, Math.round(mm * PER_MM) / PER_MM]),
  );
}

/**
 * Takes these openings as what is proposed, and no others, as one step.
 *
 * @param frontsMm by pad id
 * @param like the horn they are taken from; null for none
 */
export function takeProposal(
  state: BenchState,
  frontsMm: Readonly<Record<string, number>>,
  like: SetLike | null = null,
): BenchState {
  return withHorn(state, (horn) => {
    const taken = Object.entries(asWritten(frontsMm)).reduce(
      (contents, [pad, mm]) => withProposed(contents, pad, mm),
      withoutProposals(horn.contents),
    );
    const { visit } = taken;
    const document = withSetLike(visit.document, like);
    return stepped(
      horn,
      document === visit.document ? taken : { ...taken, visit: { ...visit, document } },
      null,
    );
  });
}

/** Openings that differ by less are the same, mm. */
const SAME_MM = 0.005;

/** Whether exactly these openings, as they are written, stand as proposed. */
export function isTaken(frontsMm: Readonly<Record<string, number>>, proposed: ProposedOpenings): boolean {
  const written = Object.entries(asWritten(frontsMm));
  return (
    written.length === Object.keys(proposed).length &&
    written.every(([pad, mm]) => Math.abs((proposed[pad] ?? Infinity) - mm) < SAME_MM)
  );
}

/**
 * Proposes the openings of a column side by side on the horn in hand, and no others, as one step; what that does
 * then stands beside it: as found, as proposed, and the column it was taken from. The visit keeps whose they are.
 */
export function takeLike(
  state: BenchState,
  frontsMm: Readonly<Record<string, number>>,
  column: Column,
  like: SetLike | null,
): BenchState {
  const taken = takeProposal(state, frontsMm, like);
  const { horn, asFound, proposed } = hornInHand(taken).contents;
  const own = [asFound, proposed].map(({ id }) => ({ hornId: horn.id, setupId: id }));
  return {
    ...taken,
    sideBySide: { ...chooseColumns(taken.sideBySide, [...own, column]), likeColumn: 2 },
  };
}
