import type { Answers, Outcome, RegulationRequest } from '../../src/ui/shell/physics-protocol.ts';
import { REGULATION_WORK } from '../../src/ui/shell/regulation-work.ts';
import type { LeakFault } from '../../src/ui/state/leak-fault.ts';
import { ALTO, onTheBench } from './demo.ts';

/** Two papers all round under the F♯ auxiliary pad. */
export const TWO_PAPERS: LeakFault = {
  pad: 'f-sharp-auxiliary',
  source: { kind: 'seat' },
  shape: 'ring',
  arcDeg: 90,
  gapMm: 0.05,
};

const asFound = { id: 1, documents: ALTO, airC: 26.85, a4Hz: 440 };

type Kind = RegulationRequest['kind'];

/** A request of each kind about the demo alto. */
export const REGULATION_REQUESTS: { readonly [K in Kind]: Extract<RegulationRequest, { kind: K }> } = {
  follow: { ...asFound, kind: 'follow', proposed: onTheBench('alto').proposed.document },
  leak: { ...asFound, kind: 'leak', fault: TWO_PAPERS, limit: { fingeringId: 'D4', lostDb: 3 } },
  'height or leak': { ...asFound, kind: 'height or leak', fingeringId: 'E4' },
  'leak map': { ...asFound, kind: 'leak map', gapMm: 0.05 },
  'pad change': { ...asFound, kind: 'pad change', thickerMm: { e: 0.2 }, seating: 'levelled' },
};

/** What the worker answers such a request with. @throws Error where it refuses */
export function answerRegulation<K extends Kind>(kind: K, request = REGULATION_REQUESTS[kind]): Answers[K] {
  // Each kind's work takes its own kind of request; the compiler cannot follow the pair through a lookup.
  const work = REGULATION_WORK[kind] as (r: RegulationRequest) => Outcome<unknown>;
  const outcome = work(request);
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.value as Answers[K];
}
