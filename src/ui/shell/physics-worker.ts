import { makeAirColumn, studyVenting, ventingAt, type VentingContext } from '../../acoustics/index.ts';
import { loadHorn } from '../../documents/to-acoustics.ts';
import {
  makePointReport,
  makeStudyReport,
  type PointReport,
  type StudyReport,
} from '../state/study-report.ts';
import type {
  Outcome,
  PhysicsReply,
  PhysicsRequest,
  PointRequest,
  StudyRequest,
} from './physics-protocol.ts';

/** The key the last study prepared: points are asked of it. */
let prepared: { readonly id: number; readonly context: VentingContext } | null = null;

function study(request: StudyRequest): Outcome<StudyReport> {
  const read = loadHorn(request.document);
  if (!read.ok) return { ok: false, message: read.issues.map((issue) => issue.message).join(' ') };
  const air = makeAirColumn({ mouthpieceC: request.airC });
  const { horn, setup } = read.value;
  const result = studyVenting(horn, setup, request.keyId, air, { a4: request.a4Hz });
  prepared = { id: request.id, context: result.context };
  return { ok: true, value: makeStudyReport(result) };
}

function point(request: PointRequest): Outcome<PointReport> {
  if (prepared?.id !== request.studyId) return { ok: false, message: 'another key was taken up meanwhile' };
  return { ok: true, value: makePointReport(ventingAt(prepared.context, request.frontMm / 1000)) };
}

/** A wrong call is told as a sentence; anything else is a fault and is told with its name. */
function guarded<T>(work: () => Outcome<T>): Outcome<T> {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError) return { ok: false, message: error.message };
    return { ok: false, message: `the acoustics stopped: ${String(error)}` };
  }
}

addEventListener('message', (event: MessageEvent<PhysicsRequest>) => {
  const request = event.data;
  const reply: PhysicsReply =
    request.kind === 'study'
      ? { kind: 'study', id: request.id, outcome: guarded(() => study(request)) }
      : { kind: 'point', id: request.id, outcome: guarded(() => point(request)) };
  postMessage(reply);
});
