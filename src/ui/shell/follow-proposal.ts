import { lockedOn, preferenceOf } from '../../documents/proposal-choices.ts';
import { answerAsked, answerTaken, differ } from '../state/asked-answer.ts';
import { dayInHand, documentsInHand, hornInHand, type BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { calibrationInUse } from '../state/calibration-source.ts';
import { playedInStanding, standingDocuments } from '../state/stands-now.ts';
import type { PhysicsClient, PhysicsListeners } from './physics-client.ts';

/** What is done with a proposal that came. */
export function proposalListeners(store: Store<BenchState>): Pick<PhysicsListeners, 'proposal'> {
  return {
    proposal: (id, outcome) =>
      store.update((state) => {
        const { proposal, hornId } = state;
        const answer = answerTaken(proposal.answer, id, hornId, outcome);
        return { ...state, proposal: { ...proposal, answer } };
      }),
  };
}

/** Asks for the proposed setup while it is on screen. */
export function makeProposalFollower(
  store: Store<BenchState>,
  client: PhysicsClient,
): { follow(): void; forget(): void } {
  let asked: readonly unknown[] = [];
  return {
    forget: () => {
      asked = [];
    },
    follow: () => {
      const state = store.get();
      if (state.view !== 'proposal') return;
      const { contents } = hornInHand(state);
      const documents = documentsInHand(state);
      const standing = standingDocuments(contents);
      const visit = dayInHand(state);
      const { airC, a4Hz } = visit;
      const [locked, prefer] = [lockedOn(visit), preferenceOf(visit)];
      const calibration = calibrationInUse(contents);
      const wanted = [standing, airC, a4Hz, locked, prefer, calibration];
      if (!differ(wanted, asked)) return;
      asked = wanted;
      const id = client.askProposal({
        ...{ documents, standing, playedIn: playedInStanding(contents), airC, a4Hz, locked, prefer },
        ...(calibration === null ? {} : { calibration }),
      });
      store.update((s) => ({
        ...s,
        proposal: { ...s.proposal, answer: answerAsked(s.proposal.answer, id) },
      }));
    },
  };
}
