import type { Preference, ProposalReport } from '../../documents/proposal-report.ts';
import { nothingAsked, type AskedAnswer } from './asked-answer.ts';

/** The proposed setup: what is asked of it, and what came of it. */
export interface ProposalState {
  readonly prefer: Preference;
  /** pads whose stop is not to move, by horn id */
  readonly locked: Readonly<Record<string, readonly string[]>>;
  readonly answer: AskedAnswer<ProposalReport>;
}

export function makeProposalState(hornId: string): ProposalState {
  return { prefer: 'balanced', locked: {}, answer: nothingAsked(hornId) };
}

const NONE: readonly string[] = [];

/** The pads locked on a horn; the same list as long as none changes. */
export function lockedOn({ locked }: ProposalState, hornId: string): readonly string[] {
  return locked[hornId] ?? NONE;
}

// Each takes what is known of the proposal and gives the next.

export function withPreference(proposal: ProposalState, prefer: Preference): ProposalState {
  return { ...proposal, prefer };
}

/** Locks a pad on a horn, or lets it move again. */
export function withLockToggled(proposal: ProposalState, hornId: string, pad: string): ProposalState {
  const locked = lockedOn(proposal, hornId);
  const next = locked.includes(pad) ? locked.filter((each) => each !== pad) : [...locked, pad];
  return { ...proposal, locked: { ...proposal.locked, [hornId]: next } };
}
