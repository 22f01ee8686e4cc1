import { makeAirColumn } from '../../acoustics/index.ts';
import {
  calibrateVisit,
  hornInAir,
  type CalibratedVisit,
  type CalibrationSource,
  type HornInAir,
} from '../../documents/calibrated.ts';
import { reportCalibration } from '../../documents/calibration-report.ts';
import { loadHorn, type HornAndSetup, type LoadedHorn } from '../../documents/to-acoustics.ts';
import type { Answers, CalibrationRequest, Outcome } from './physics-protocol.ts';

/** What a fit depends on. */
type Fitting = Pick<CalibrationRequest, 'documents' | 'source' | 'airC' | 'a4Hz'>;

/** The last fit: views ask for the same one after another. Requests are copies, so what they say is compared. */
let last: { readonly of: string; readonly outcome: Outcome<CalibratedVisit> } | null = null;

function fitted(fitting: Fitting): Outcome<CalibratedVisit> {
  const { documents, source, airC, a4Hz } = fitting;
  const of = JSON.stringify([documents, source, airC, a4Hz]);
  if (last?.of !== of) last = { of, outcome: fit(fitting) };
  return last.outcome;
}

function fit({ documents, source, airC, a4Hz }: Fitting): Outcome<CalibratedVisit> {
  const found = loadHorn(documents);
  if (!found.ok) return { ok: false, message: found.issues.map(({ message }) => message).join(' ') };
  const day = { air: makeAirColumn({ mouthpieceC: airC }), a4Hz };
  const visit = calibrateVisit(found.value, source, day);
  return visit.ok ? visit : { ok: false, message: visit.issues.map(({ message }) => message).join(' ') };
}

/** What the worker does about calibration. */
export const CALIBRATION_WORK = {
  calibration: (request: CalibrationRequest): Outcome<Answers['calibration']> => {
    const visit = fitted(request);
    if (!visit.ok) return visit;
    const { airC, a4Hz } = request;
    const day = { air: makeAirColumn({ mouthpieceC: airC }), a4Hz };
    return { ok: true, value: reportCalibration(visit.value, day) };
  },
};

/** What a request says of the horn whose pitch is asked for. */
export interface AskedHorn {
  /** as found: what was played */
  readonly documents: HornAndSetup;
  readonly airC: number;
  readonly a4Hz: number;
  /** left out where none is in use */
  readonly calibration?: CalibrationSource;
}

/** A horn in its air as pitches are to be worked out: calibrated where that is in use. */
export function asAsked(
  loaded: LoadedHorn,
  { documents, airC, a4Hz, calibration }: AskedHorn,
): Outcome<HornInAir> {
  const air = makeAirColumn({ mouthpieceC: airC });
  if (calibration === undefined) return { ok: true, value: hornInAir(loaded, air, null) };
  const visit = fitted({ documents, source: calibration, airC, a4Hz });
  return visit.ok ? { ok: true, value: hornInAir(loaded, air, visit.value.calibration) } : visit;
}
