import type { CalibrationUnknown } from '../../documents/pitch-log.ts';
import type { BenchState } from '../state/bench-state.ts';
import type { Store } from '../state/bench-store.ts';
import { fitUnknown, useCalibration } from '../state/calibration-state.ts';

/** Everything a person can do about calibration. */
export interface CalibrationActs {
  /** Fits an unknown to the notes, or leaves it as written. */
  fit(unknown: CalibrationUnknown, on: boolean): void;
  /** Works every pitch out with what the notes say, or as written. */
  use(inUse: boolean): void;
}

export function makeCalibrationActs(store: Store<BenchState>): CalibrationActs {
  return {
    fit: (unknown, on) => store.update((state) => fitUnknown(state, unknown, on)),
    use: (inUse) => store.update((state) => useCalibration(state, inUse)),
  };
}
