import type { ProposalReport } from '../../src/documents/proposal-report.ts';
import type { ProposalRequest } from '../../src/ui/shell/physics-protocol.ts';
import { PROPOSAL_WORK } from '../../src/ui/shell/proposal-work.ts';
import { ALTO } from './demo.ts';

/** What the worker proposes for the demo alto. @throws Error where it refuses */
export function answerProposal(
  asked: Partial<Pick<ProposalRequest, 'locked' | 'prefer' | 'documents' | 'standing'>> = {},
): ProposalReport {
  const outcome = PROPOSAL_WORK.proposal({
    ...{ kind: 'proposal', id: 1, documents: ALTO, standing: asked.documents ?? ALTO, playedIn: 'as found' },
    ...{ airC: 26.85, a4Hz: 440, locked: [], prefer: 'balanced' },
    ...asked,
  });
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.value;
}
