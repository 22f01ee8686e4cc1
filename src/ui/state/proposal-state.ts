import type { ProposalReport } from '../../documents/proposal-report.ts';
import type { VisitDocument } from '../../documents/visit-document.ts';
import { nothingAsked, type AskedAnswer } from './asked-answer.ts';
import { stepped, type HornOnBench } from './horn-on-bench.ts';

/** What came of the proposed setup; what is asked of it is the visit's. */
export interface ProposalState {
  readonly answer: AskedAnswer<ProposalReport>;
}

export function makeProposalState(hornId: string): ProposalState {
  return { answer: nothingAsked(hornId) };
}

/** Asks otherwise of the proposal, as one step. */
export function withAsked(horn: HornOnBench, ask: (visit: VisitDocument) => VisitDocument): HornOnBench {
  const { visit } = horn.contents;
  const document = ask(visit.document);
  if (document === visit.document) return horn;
  return stepped(horn, { ...horn.contents, visit: { ...visit, document } }, null);
}
