import type { BenchContents } from '../../documents/bench-contents.ts';
import { USUAL_UNKNOWNS, type CalibrationSource } from '../../documents/calibrated.ts';
import type { CalibrationUnknown, Take } from '../../documents/pitch-log.ts';
import { SETUP_VERSION, type SetupDocument } from '../../documents/setup-document.ts';
import { memoLast } from './memo-last.ts';

const NO_TAKES: readonly Take[] = [];

/** Where nothing was played as set, what is set changes no fit. */
const NOTHING_SET: SetupDocument = {
  kind: 'ventwright setup',
  version: SETUP_VERSION,
  name: 'as found',
  origin: 'measured',
  keys: [],
};

const sourceMemo = memoLast(
  (
    takes: readonly Take[],
    unknowns: readonly CalibrationUnknown[],
    asSet: SetupDocument,
  ): CalibrationSource | null =>
    takes.some(({ leftOut }) => leftOut !== true) ? { takes, unknowns, asSet } : null,
);

/** What is fitted to what; the same object as long as neither changes, and null where no take counts. */
export function calibrationSource({ visit, asSet }: BenchContents): CalibrationSource | null {
  const { played, calibration } = visit.document;
  const takes = played ?? NO_TAKES;
  const isPlayedAsSet = takes.some(({ setup }) => setup === 'as set');
  return sourceMemo(
    takes,
    calibration?.unknowns ?? USUAL_UNKNOWNS,
    isPlayedAsSet ? asSet.document : NOTHING_SET,
  );
}

/** What every pitch is worked out with; null where none is in use. */
export function calibrationInUse(contents: BenchContents): CalibrationSource | null {
  return contents.visit.document.calibration?.inUse === true ? calibrationSource(contents) : null;
}

/** `as calibrated to 31 notes played`; null where pitches are as described. */
export function calibratedWords(contents: BenchContents): string | null {
  const source = calibrationInUse(contents);
  if (source === null) return null;
  const counted = source.takes.filter(({ leftOut }) => leftOut !== true);
  const notes = new Set(counted.map(({ fingering, setup }) => `${fingering} ${setup}`)).size;
  return `Pitches are as calibrated to ${notes} ${notes === 1 ? 'note' : 'notes'} played.`;
}
