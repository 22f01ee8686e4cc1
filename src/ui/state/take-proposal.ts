import { withHorn } from './horns-on-bench.ts';
import type { BenchState } from './bench-state.ts';
import { stepped } from './horn-on-bench.ts';
import { withoutProposals, withProposed } from './key-lengths.ts';

/** Written so many to the millimetre: finer than any reading. */
const PER_MM = 100;

/** Openings as they are written into the proposed setup, mm at the front by pad id. */
export function asWritten(frontsMm: Readonly<Record<string, number>>): Record<string, number> {
  return Object.fromEntries(
    Object.entries(frontsMm).map(([pad, mm]) => [pad, Math.round(mm * PER_MM) / PER_MM]),
  );
}

/** Takes these openings as what is proposed, and no others, as one step. @param frontsMm by pad id */
export function takeProposal(state: BenchState, frontsMm: Readonly<Record<string, number>>): BenchState {
  return withHorn(state, (horn) =>
    stepped(
      horn,
      Object.entries(asWritten(frontsMm)).reduce(
        (contents, [pad, mm]) => withProposed(contents, pad, mm),
        withoutProposals(horn.contents),
      ),
      null,
    ),
  );
}
