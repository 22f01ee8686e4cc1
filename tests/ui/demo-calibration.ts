import {
  airWith,
  FINGERINGS,
  hornWith,
  makeAirColumn,
  playWholeHorn,
  type Amounts,
} from '../../src/acoustics/index.ts';
import { calibrateVisit, USUAL_UNKNOWNS } from '../../src/documents/calibrated.ts';
import { reportCalibration, type CalibrationReport } from '../../src/documents/calibration-report.ts';
import type { Take } from '../../src/documents/pitch-log.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';

const alto = demoHorn('alto');
const AIR = makeAirColumn({ mouthpieceC: 26.85 });
const SHOWN = FINGERINGS.filter(({ way }, i) => way === '' && i % 2 === 1);

/** Takes of the demo alto as it would be played with that much of what is unknown. */
export function takesWith(truth: Amounts, wrong: Readonly<Record<string, number>> = {}): Take[] {
  const horn = hornWith(alto.horn, truth);
  const notes = playWholeHorn(horn, alto.setup, airWith(AIR, truth), { fingerings: SHOWN, answers: false });
  return notes.flatMap(({ fingering: { id }, outcome }): Take[] =>
    outcome.found
      ? [{ fingering: id, cents: outcome.cents + (wrong[id] ?? 0), setup: 'as found', heard: 'tuner' }]
      : [],
  );
}

/** What takes say of the demo alto, as the worker tells it. */
export function calibrationOf(takes: readonly Take[], unknowns = USUAL_UNKNOWNS): CalibrationReport {
  const asSet = {
    kind: 'ventwright setup',
    version: 2,
    name: 'As set',
    origin: 'measured',
    keys: [],
  } as const;
  const day = { air: AIR, a4Hz: 440 };
  const visit = calibrateVisit(alto, { takes, unknowns, asSet: { ...asSet, keys: [] } }, day);
  if (!visit.ok) throw new Error(visit.issues[0].message);
  return reportCalibration(visit.value, day);
}
