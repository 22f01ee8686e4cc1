import { makeAirColumn } from '../../acoustics/index.ts';
import { loadHorn, loadSetupOver, type HornAndSetup, type LoadedHorn } from '../../documents/to-acoustics.ts';
import type { ReadOutcome } from '../../documents/schema-parts.ts';
import { reportFollowed } from '../state/followed-report.ts';
import { answerHeightOrLeak, answerLeak, answerLeakMap } from '../state/leak-fault.ts';
import { answerPadChange } from '../state/pad-change-answer.ts';
import type {
  Answers,
  FollowRequest,
  HeightOrLeakRequest,
  LeakMapRequest,
  LeakRequest,
  Outcome,
  PadChangeRequest,
} from './physics-protocol.ts';

/** What the worker does about links and leaks. */
export const REGULATION_WORK = {
  follow: ({ documents, proposed, airC, a4Hz }: FollowRequest): Outcome<Answers['follow']> =>
    withLoaded(loadHorn(documents), (found) =>
      withLoaded(loadSetupOver(found, proposed), (then) => ({
        ok: true,
        value: reportFollowed(found, then, makeAirColumn({ mouthpieceC: airC }), a4Hz),
      })),
    ),
  leak: ({ documents, fault, limit, airC, a4Hz }: LeakRequest): Outcome<Answers['leak']> =>
    withFound(documents, (loaded) =>
      answerLeak(loaded, fault, limit, makeAirColumn({ mouthpieceC: airC }), a4Hz),
    ),
  'leak map': ({ documents, gapMm, airC, a4Hz }: LeakMapRequest): Outcome<Answers['leak map']> =>
    withFound(documents, (loaded) =>
      answerLeakMap(loaded, gapMm, makeAirColumn({ mouthpieceC: airC }), a4Hz),
    ),
  'height or leak': ({
    documents,
    fingeringId,
    airC,
    a4Hz,
  }: HeightOrLeakRequest): Outcome<Answers['height or leak']> =>
    withFound(documents, (loaded) =>
      answerHeightOrLeak(loaded, fingeringId, makeAirColumn({ mouthpieceC: airC }), a4Hz),
    ),
  'pad change': ({
    documents,
    thickerMm,
    seating,
    airC,
    a4Hz,
  }: PadChangeRequest): Outcome<Answers['pad change']> =>
    withFound(documents, (loaded) =>
      answerPadChange(loaded, { thickerMm, seating }, makeAirColumn({ mouthpieceC: airC }), a4Hz),
    ),
};

function withFound<T>(documents: HornAndSetup, work: (loaded: LoadedHorn) => T): Outcome<T> {
  return withLoaded(loadHorn(documents), (loaded) => ({ ok: true, value: work(loaded) }));
}

function withLoaded<T>(read: ReadOutcome<LoadedHorn>, work: (loaded: LoadedHorn) => Outcome<T>): Outcome<T> {
  if (!read.ok) return { ok: false, message: read.issues.map((issue) => issue.message).join(' ') };
  return work(read.value);
}
