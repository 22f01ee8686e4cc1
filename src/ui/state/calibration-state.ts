import { USUAL_UNKNOWNS } from '../../documents/calibrated.ts';
import type { CalibrationReport } from '../../documents/calibration-report.ts';
import { CALIBRATION_UNKNOWNS, type CalibrationUnknown } from '../../documents/pitch-log.ts';
import { reportFor, type AskedAnswer } from './asked-answer.ts';
import { calibrationSource } from './calibration-source.ts';
import { hornInHand, type BenchState } from './bench-state.ts';
import { withHorn } from './horns-on-bench.ts';
import { stepped } from './horn-on-bench.ts';

/** What the notes played say of the horn, and whether it is used. */
export type CalibrationState = AskedAnswer<CalibrationReport>;

/** The report of the horn in hand; null before the first, and where no take counts. */
export function calibrationReport(state: BenchState): CalibrationReport | null {
  if (calibrationSource(hornInHand(state).contents) === null) return null;
  return reportFor(state.calibration, state.hornId);
}

// Actions: each takes a state and gives the next.

/** Fits an unknown, or leaves it as written. */
export function fitUnknown(state: BenchState, unknown: CalibrationUnknown, on: boolean): BenchState {
  return withChoice(state, ({ unknowns, inUse }) => ({
    unknowns: CALIBRATION_UNKNOWNS.filter((each) => (each === unknown ? on : unknowns.includes(each))),
    inUse,
  }));
}

/** Works every pitch out with the calibration, or as described. */
export function useCalibration(state: BenchState, inUse: boolean): BenchState {
  return withChoice(state, ({ unknowns }) => ({ unknowns, inUse }));
}

interface Choice {
  readonly unknowns: readonly CalibrationUnknown[];
  readonly inUse: boolean;
}

function withChoice(state: BenchState, change: (choice: Choice) => Choice): BenchState {
  return withHorn(state, (horn) => {
    const { visit } = horn.contents;
    const { unknowns, inUse } = change(
      visit.document.calibration ?? { unknowns: USUAL_UNKNOWNS, inUse: false },
    );
    const document = { ...visit.document, calibration: { unknowns: [...unknowns], inUse } };
    return stepped(horn, { ...horn.contents, visit: { ...visit, document } }, null);
  });
}
