import { answerAsked, answerTaken, differ } from '../state/asked-answer.ts';
import { dayInHand, documentsInHand, hornInHand, type BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { calibrationSource } from '../state/calibration-source.ts';
import type { ViewName } from '../state/view-names.ts';
import type { PhysicsClient, PhysicsListeners } from './physics-client.ts';

/** Views that show what the notes say. */
const NEEDS_CALIBRATION: readonly ViewName[] = ['played', 'scale'];

/** What is done with a calibration that was asked for. */
export function calibrationListeners(store: Store<BenchState>): Pick<PhysicsListeners, 'calibration'> {
  return {
    calibration: (id, outcome) =>
      store.update((state) => ({
        ...state,
        calibration: answerTaken(state.calibration, id, state.hornId, outcome),
      })),
  };
}

/** Follows the notes played with what they say of the horn. */
export function makeCalibrationFollower(
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
      if (!NEEDS_CALIBRATION.includes(state.view)) return;
      const source = calibrationSource(hornInHand(state).contents);
      if (source === null) return;
      const documents = documentsInHand(state);
      const { airC, a4Hz } = dayInHand(state);
      const wanted = [state.hornId, documents, source, airC, a4Hz];
      if (!differ(wanted, asked)) return;
      asked = wanted;
      const id = client.askCalibration({ documents, source, airC, a4Hz });
      store.update((s) => ({ ...s, calibration: answerAsked(s.calibration, id) }));
    },
  };
}
