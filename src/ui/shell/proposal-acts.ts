import { withLockToggled, withPreference, type Preference } from '../../documents/proposal-choices.ts';
import type { SetLike } from '../../documents/set-like.ts';
import { withHorn } from '../state/horns-on-bench.ts';
import type { BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { withAsked } from '../state/proposal-state.ts';
import type { Column } from '../state/side-by-side-state.ts';
import { takeLike, takeProposal } from '../state/take-proposal.ts';

/** Everything a person can do about the proposed setup. */
export interface ProposalActs {
  /** What it leans to, kept with the visit as one step. */
  prefer(preference: Preference): void;
  /** Locks a pad, or lets it move again, likewise. */
  toggleLock(pad: string): void;
  /** Takes these openings as what is proposed, and no others, as one step; mm at the front by pad id. */
  take(frontsMm: Readonly<Record<string, number>>): void;
  /** Takes the openings that a column side by side asks for, likewise, and sets what that does beside it. */
  takeLike(frontsMm: Readonly<Record<string, number>>, column: Column, like: SetLike | null): void;
}

export function makeProposalActs(store: Store<BenchState>): ProposalActs {
  const ask = (change: Parameters<typeof withAsked>[1]): void =>
    store.update((state) => withHorn(state, (horn) => withAsked(horn, change)));
  return {
    prefer: (preference) => ask((visit) => withPreference(visit, preference)),
    toggleLock: (pad) => ask((visit) => withLockToggled(visit, pad)),
    take: (frontsMm) => store.update((state) => takeProposal(state, frontsMm)),
    takeLike: (frontsMm, column, like) => store.update((state) => takeLike(state, frontsMm, column, like)),
  };
}
