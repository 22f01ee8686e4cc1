import type { BenchContents } from '../../documents/bench-contents.ts';
import type { SetupDocument } from '../../documents/setup-document.ts';
import type { HornAndSetup } from '../../documents/to-acoustics.ts';
import { foundDocuments, openingAt } from './key-lengths.ts';
import { memoLast } from './memo-last.ts';
import type { ProposedOpenings } from './scale-report.ts';

/** The openings a sparse setup says, mm at the front by pad id. @param found what they are read over */
export function frontsOf(found: HornAndSetup, { keys }: SetupDocument): ProposedOpenings {
  const fronts: Record<string, number> = {};
  for (const { pad, openingMm, measuredAt } of keys) {
    if (openingMm === undefined || measuredAt === undefined) continue;
    fronts[pad] = openingAt(found, pad, { mm: openingMm, at: measuredAt }, 'front');
  }
  return fronts;
}

const memo = memoLast(frontsOf);

/** What is proposed, mm at the front by pad id: the same object as long as nothing of it changes. */
export function proposedFronts(contents: BenchContents): ProposedOpenings {
  return memo(foundDocuments(contents), contents.proposed.document);
}
