import type { Preference } from '../../documents/proposal-report.ts';
import type { BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { withLockToggled, withPreference } from '../state/proposal-state.ts';
import { takeProposal } from '../state/take-proposal.ts';

/** Everything a person can do about the proposed setup. */
export interface ProposalActs {
  prefer(preference: Preference): void;
  /** Locks a pad, or lets it move again. */
  toggleLock(pad: string): void;
  /** Takes these openings as what is proposed, and no others, as one step; mm at the front by pad id. */
  take(frontsMm: Readonly<Record<string, number>>): void;
}

export function makeProposalActs(store: Store<BenchState>): ProposalActs {
  return {
    prefer: (preference) =>
      store.update((state) => ({ ...state, proposal: withPreference(state.proposal, preference) })),
    toggleLock: (pad) =>
      store.update((state) => ({
        ...state,
        proposal: withLockToggled(state.proposal, state.hornId, pad),
      })),
    take: (frontsMm) => store.update((state) => takeProposal(state, frontsMm)),
  };
}
