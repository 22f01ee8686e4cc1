import { reportProposal, type ProposalReport } from '../../documents/proposal-report.ts';
import { loadHorn } from '../../documents/to-acoustics.ts';
import { asAsked } from './calibration-work.ts';
import type { Outcome, ProposalRequest } from './physics-protocol.ts';

/** What the worker does to propose a setup. */
export const PROPOSAL_WORK = {
  proposal: ({ locked, prefer, standing, playedIn, ...asked }: ProposalRequest): Outcome<ProposalReport> => {
    const read = loadHorn(standing);
    if (!read.ok) return { ok: false, message: read.issues.map(({ message }) => message).join(' ') };
    const horn = asAsked(read.value, asked);
    if (!horn.ok) return horn;
    const { loaded, air, knowledge } = horn.value;
    const takes = asked.calibration?.takes ?? [];
    const { plusMinus, absolute } = knowledge;
    return {
      ok: true,
      value: reportProposal(loaded, {
        ...{ air, a4Hz: asked.a4Hz, locked, prefer },
        ...{ takes, playedIn, plusMinus, absolute },
      }),
    };
  },
};
