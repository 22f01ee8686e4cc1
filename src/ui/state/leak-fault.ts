import {
  arcGap,
  findFingering,
  findLargestLeak,
  mapLeaks,
  ringGap,
  seatLeak,
  studyHeightOrLeak,
  studyLeak,
  type AirColumn,
  type Fingering,
  type Leaks,
} from '../../acoustics/index.ts';
import { reportHeightOrLeak, type HeightOrLeakReport } from '../../documents/height-or-leak-report.ts';
import {
  reportLargestLeak,
  reportLeak,
  reportLeakMap,
  type LargestLeakReport,
  type LeakMapReport,
  type LeakReport,
} from '../../documents/leak-report.ts';
import { plusMinusOf } from '../../documents/plus-minus.ts';
import { regulationFacts } from '../../documents/regulation-facts.ts';
import type { LoadedHorn } from '../../documents/to-acoustics.ts';

/** Where a pad leaks: at its own seat, or because a link leaves it, or its driver, off the rim. */
export type LeakSource =
  | { readonly kind: 'seat' }
  /** `driver` null: every link onto the pad at once */
  | { readonly kind: 'link'; readonly driver: string | null; readonly shuts: 'late' | 'early' };

/** What part of a seat stands off. */
export type LeakShape = 'ring' | 'front' | 'back';

/** One fault: a pad, why it leaks, and how wide. */
export interface LeakFault {
  readonly pad: string;
  readonly source: LeakSource;
  /** of the seat; links hang a pad on its hinge */
  readonly shape: LeakShape;
  /** of a seat that stands off at the front or back only */
  readonly arcDeg: number;
  readonly gapMm: number;
}

/** A fault on every note it touches, and how wide it may be before a note has lost too much. */
export interface LeakAnswer {
  readonly leak: LeakReport;
  readonly largest: LargestLeakReport;
}

/** The note whose loss sets a limit, and the loss. */
export interface LeakLimit {
  readonly fingeringId: string;
  readonly lostDb: number;
}

const PER_MM = 1e-3;

/** The leak that a fault is at a gap, m. */
export function leaksOf(
  { pad, source, shape, arcDeg }: LeakFault,
  drivers: readonly string[],
): (gap: number) => Leaks {
  if (source.kind === 'seat') {
    const seat = (gap: number) =>
      shape === 'ring' ? ringGap(gap) : arcGap(gap, (arcDeg * Math.PI) / 180, shape);
    return (gap) => seatLeak(pad, seat(gap));
  }
  const sign = source.shuts === 'late' ? 1 : -1;
  const faulty = source.driver === null ? drivers : [source.driver];
  return (gap) => ({
    seats: new Map(),
    screws: faulty.map((driver) => ({ driver, driven: pad, left: sign * gap })),
  });
}

/** Plays a fault. @throws RangeError for a pad, a link or a note that is not there */
export function answerLeak(
  loaded: LoadedHorn,
  fault: LeakFault,
  { fingeringId, lostDb }: LeakLimit,
  air: AirColumn,
  a4Hz: number,
): LeakAnswer {
  const { horn } = regulationFacts(loaded);
  const drivers = horn.keywork.links.filter((l) => l.driven === fault.pad).map((l) => l.driver);
  const leaksAt = leaksOf(fault, drivers);
  const options = { a4: a4Hz };
  const fingering = fingeringOf(fingeringId);
  const found = findLargestLeak(horn, loaded.setup, leaksAt, air, { fingering, lostDb, options });
  return {
    leak: reportLeak(horn, studyLeak(horn, loaded.setup, leaksAt(fault.gapMm * PER_MM), air, options)),
    largest: reportLargestLeak(horn, { fingering: fingering.id, lostDb }, found),
  };
}

/** The same fault at every place, on every note. */
export function answerLeakMap(
  loaded: LoadedHorn,
  gapMm: number,
  air: AirColumn,
  a4Hz: number,
): LeakMapReport {
  const { horn } = regulationFacts(loaded);
  return reportLeakMap(horn, mapLeaks(horn, loaded.setup, gapMm * PER_MM, air, { a4: a4Hz }));
}

/** Height beside leak for a note. @throws RangeError for a note that is not there */
export function answerHeightOrLeak(
  loaded: LoadedHorn,
  fingeringId: string,
  air: AirColumn,
  a4Hz: number,
): HeightOrLeakReport {
  const { horn } = regulationFacts(loaded);
  const fingering = fingeringOf(fingeringId);
  const options = { a4: a4Hz, plusMinus: plusMinusOf(loaded) };
  return reportHeightOrLeak(horn, fingering, studyHeightOrLeak(horn, loaded.setup, fingering, air, options));
}

function fingeringOf(id: string): Fingering {
  const fingering = findFingering(id);
  if (fingering === undefined) throw new RangeError(`invalid note: "${id}"; expected a fingering`);
  return fingering;
}
