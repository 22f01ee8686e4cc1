import { makeAirColumn } from '../../acoustics/index.ts';
import { reportProposal, type ProposalReport } from '../../documents/proposal-report.ts';
import { loadHorn } from '../../documents/to-acoustics.ts';
import type { Outcome, ProposalRequest } from './physics-protocol.ts';

/** What the worker does to propose a setup. */
export const PROPOSAL_WORK = {
  proposal: ({ documents, airC, a4Hz, locked, prefer }: ProposalRequest): Outcome<ProposalReport> => {
    const read = loadHorn(documents);
    if (!read.ok) return { ok: false, message: read.issues.map(({ message }) => message).join(' ') };
    const air = makeAirColumn({ mouthpieceC: airC });
    return { ok: true, value: reportProposal(read.value, { air, a4Hz, locked, prefer }) };
  },
};
