import { keyedHoles } from '../../../../documents/horn-document.ts';
import { reportPadFit, type PadFitReport, type PadFitsReport } from '../../../../documents/pad-fit-report.ts';
import { regulationFacts } from '../../../../documents/regulation-facts.ts';
import { stockFromDocument, type StockDocument } from '../../../../documents/stock-document.ts';
import { loadHorn, type HornAndSetup } from '../../../../documents/to-acoustics.ts';
import { memoLast } from '../../../state/memo-last.ts';

/** What fits every cup, and cups for which nothing can be said. */
export interface FittedCups {
  readonly fits: readonly PadFitReport[];
  readonly order: PadFitsReport['order'];
  readonly caution: string;
  /** by pad id, why a cup was left out */
  readonly problems: ReadonlyMap<string, string>;
  /** keys the horn has */
  readonly keys: number;
}

/** Why nothing at all can be said. */
export type FittedOutcome =
  { readonly ok: true; readonly value: FittedCups } | { readonly ok: false; readonly message: string };

/** Fits every cup whose floor is known from the stock; one bad cup does not hide the others. */
export const fitCups = memoLast((documents: HornAndSetup, stock: StockDocument): FittedOutcome => {
  const read = loadHorn(documents);
  if (!read.ok) return { ok: false, message: read.issues.map((issue) => issue.message).join(' ') };
  const loaded = read.value;
  const drawer = stockFromDocument(stock);
  const problems = new Map<string, string>();
  const good = regulationFacts(loaded).cups.filter((known) => {
    try {
      reportPadFit(loaded, [known], drawer);
      return true;
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      problems.set(known.cup.pad, error.message);
      return false;
    }
  });
  const { cups: fits, order, caution } = reportPadFit(loaded, good, drawer);
  return {
    ok: true,
    value: { fits, order, caution, problems, keys: keyedHoles(documents.horn).length },
  };
});
