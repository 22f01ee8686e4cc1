import { dayInHand, documentsInHand, hornInHand, type BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { answerAsked, answerTaken, differ } from '../state/asked-answer.ts';
import { thickerBy } from '../state/pads-state.ts';
import type { PhysicsClient, PhysicsListeners } from './physics-client.ts';

/** What is done with answers about other pads. */
export function padsListeners(store: Store<BenchState>): Pick<PhysicsListeners, 'pad change'> {
  return {
    'pad change': (id, outcome) =>
      store.update((state) => {
        const { pads, hornId } = state;
        const change = answerTaken(pads.change, id, hornId, outcome);
        return { ...state, pads: { ...pads, change, toldPlan: pads.askedPlan } };
      }),
  };
}

/** Asks what other pads do, while that question is on screen. */
export function makePadsFollower(
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
      if (state.view !== 'pads' || state.pads.question !== 'change') return;
      const documents = documentsInHand(state);
      const { airC, a4Hz } = dayInHand(state);
      const { plan } = state.pads;
      const thickerMm = thickerBy(documents, plan, hornInHand(state).keyId);
      const wanted = [documents, thickerMm, plan.seating, airC, a4Hz];
      if (!differ(wanted, asked)) return;
      asked = wanted;
      if (Object.keys(thickerMm).length === 0) return;
      const { seating } = plan;
      const id = client.askRegulation({ kind: 'pad change', documents, thickerMm, seating, airC, a4Hz });
      store.update((s) => ({
        ...s,
        pads: { ...s.pads, askedPlan: plan, change: answerAsked(s.pads.change, id) },
      }));
    },
  };
}
