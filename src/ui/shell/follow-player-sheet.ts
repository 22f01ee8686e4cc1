import { answerAsked, answerTaken, differ } from '../state/asked-answer.ts';
import { hornInHand, type BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { playerSheetQuestion } from '../state/player-sheet-state.ts';
import type { PhysicsClient, PhysicsListeners } from './physics-client.ts';

/** What is done with the numbers of the player’s sheet that came. */
export function playerSheetListeners(store: Store<BenchState>): Pick<PhysicsListeners, 'player sheet'> {
  return {
    'player sheet': (id, outcome) =>
      store.update((state) => {
        const { playerSheet, hornId } = state;
        const facts = answerTaken(playerSheet.facts, id, hornId, outcome);
        return { ...state, playerSheet: { ...playerSheet, facts } };
      }),
  };
}

/** Asks for the numbers of the player’s sheet while it is on screen. */
export function makePlayerSheetFollower(
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
      if (state.view !== 'player-sheet') return;
      const question = playerSheetQuestion(hornInHand(state).contents);
      const { setups, ...rest } = question;
      const wanted = [...Object.values(rest), ...Object.values(setups)];
      if (!differ(wanted, asked)) return;
      asked = wanted;
      const id = client.askPlayerSheet(question);
      store.update((s) => ({
        ...s,
        playerSheet: { ...s.playerSheet, facts: answerAsked(s.playerSheet.facts, id) },
      }));
    },
  };
}
