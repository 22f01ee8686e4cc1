import { prepareChangeBudgets, studyVenting, ventingAt, type VentingContext } from '../../acoustics/index.ts';
import type { HornInAir } from '../../documents/calibrated.ts';
import { findPlayerSheetFacts } from '../../documents/player-sheet-facts.ts';
import { loadHorn } from '../../documents/to-acoustics.ts';
import { buffersOf } from '../state/scale-report.ts';
import { makeSurenessOf, type SurenessOf } from '../state/scale-sureness.ts';
import { findEnough, makeSheetReport, prepareSheet, type PreparedSheet } from '../state/sheet-numbers.ts';
import { compareColumns } from '../state/side-by-side-answer.ts';
import { makePointReport, makeStudyReport } from '../state/study-report.ts';
import { moveScale, playLoud, prepareScale, type PreparedScale } from '../state/whole-scale.ts';
import { asAsked, CALIBRATION_WORK, type AskedHorn } from './calibration-work.ts';
import { PROPOSAL_WORK } from './proposal-work.ts';
import { REGULATION_WORK } from './regulation-work.ts';
import type { Answers, Outcome, PhysicsKind, PhysicsReply, PhysicsRequest } from './physics-protocol.ts';

/** The key the last study prepared: points are asked of it. */
let key: {
  readonly id: number;
  readonly context: VentingContext;
  readonly changesAt: ReturnType<typeof prepareChangeBudgets>;
} | null = null;

/** The horn the last scale prepared: moves and loud playing are asked of it. */
let scale: { readonly id: number; readonly prepared: PreparedScale; readonly surenessOf: SurenessOf } | null =
  null;

/** The sheet last prepared: where height stops helping is asked of it. */
let sheet: { readonly id: number; readonly prepared: PreparedSheet } | null = null;

type Requests = { readonly [Kind in PhysicsKind]: Extract<PhysicsRequest, { readonly kind: Kind }> };
type Work = { readonly [Kind in PhysicsKind]: (request: Requests[Kind]) => Outcome<Answers[Kind]> };

const WORK: Work = {
  ...CALIBRATION_WORK,
  ...REGULATION_WORK,
  ...PROPOSAL_WORK,
  study: ({ id, keyId, ...asked }) =>
    withHorn(asked, ({ loaded: { horn, setup }, air, knowledge }) => {
      const result = studyVenting(horn, setup, keyId, air, { a4: asked.a4Hz, ...knowledge });
      const { context } = result;
      key = { id, context, changesAt: prepareChangeBudgets(context, air, knowledge) };
      return makeStudyReport(result);
    }),
  point: ({ studyId, frontMm, sure }) => {
    if (key?.id !== studyId) return { ok: false, message: 'another key was taken up meanwhile' };
    const { context, changesAt } = key;
    const front = frontMm / 1000;
    const changes = sure ? changesAt(front) : null;
    return { ok: true, value: makePointReport(context, ventingAt(context, front), changes) };
  },
  scale: ({ id, ...asked }) =>
    withHorn(asked, ({ loaded, air, knowledge }) => {
      const { prepared, report } = prepareScale(loaded, air.mouthpieceC, asked.a4Hz);
      scale = { id, prepared, surenessOf: makeSurenessOf(prepared, knowledge) };
      return report;
    }),
  move: ({ scaleId, proposedMm }) => withScale(scaleId, (prepared) => moveScale(prepared, proposedMm)),
  loud: ({ scaleId, proposedMm, fingeringId }) =>
    withScale(scaleId, (prepared) => playLoud(prepared, proposedMm, fingeringId)),
  sure: ({ scaleId, proposedMm, from }) =>
    withScale(scaleId, (_, surenessOf) => surenessOf(proposedMm, from)),
  sheet: ({ id, documents, ...asked }) => {
    const found = { horn: documents.horn, setup: documents.setups.asFound };
    const outcome = prepareSheet(documents, asked.airC, asked.a4Hz, (loaded) =>
      asAsked(loaded, { ...asked, documents: found }),
    );
    if (!outcome.ok) return outcome;
    sheet = { id, prepared: outcome.value };
    return { ok: true, value: makeSheetReport(outcome.value) };
  },
  enough: ({ sheetId, pad }) =>
    sheet?.id === sheetId
      ? { ok: true, value: findEnough(sheet.prepared, pad) }
      : { ok: false, message: 'another sheet was taken up meanwhile' },
  compare: ({ columns, airC, a4Hz, bench }) => ({
    ok: true,
    value: compareColumns(columns, airC, a4Hz, bench),
  }),
  'player sheet': ({ question }) => findPlayerSheetFacts(question),
};

function withHorn<T>(asked: AskedHorn, work: (horn: HornInAir) => T): Outcome<T> {
  const read = loadHorn(asked.documents);
  if (!read.ok) return { ok: false, message: read.issues.map((issue) => issue.message).join(' ') };
  const horn = asAsked(read.value, asked);
  return horn.ok ? { ok: true, value: work(horn.value) } : horn;
}

function withScale<T>(id: number, work: (prepared: PreparedScale, surenessOf: SurenessOf) => T): Outcome<T> {
  return scale?.id === id
    ? { ok: true, value: work(scale.prepared, scale.surenessOf) }
    : { ok: false, message: 'another horn was taken up meanwhile' };
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
  const start = performance.now();
  // Each kind's work takes its own kind of request; the compiler cannot follow the pair through a lookup.
  const work = WORK[request.kind] as (r: PhysicsRequest) => Outcome<unknown>;
  const outcome = guarded(() => work(request));
  const { kind, id } = request;
  const reply = { kind, id, outcome, tookMs: performance.now() - start } as PhysicsReply;
  // What a moving hand waits for is handed over, not copied.
  const handed = reply.kind === 'move' && reply.outcome.ok ? buffersOf(reply.outcome.value) : [];
  postMessage(reply, { transfer: handed });
});
