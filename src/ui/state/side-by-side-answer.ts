import { FEWEST_COMPARED, makeAirColumn } from '../../acoustics/index.ts';
import { compareLoaded } from '../../documents/compare-loaded.ts';
import type { ComparisonReport } from '../../documents/comparison-report.ts';
import { reportMatches, type MatchReports } from '../../documents/match-report.ts';
import { loadHorn, type HornAndSetup, type LoadedHorn } from '../../documents/to-acoustics.ts';

/** Columns held against the first, or what is wrong with each that could not be. */
export interface ComparedColumns {
  /** null where the reference or too many of the others cannot be read */
  readonly report: ComparisonReport | null;
  /** which of the columns the report's setups are, in its order */
  readonly columns: readonly number[];
  /** by column, null where it could be read */
  readonly problems: readonly (string | null)[];
  /** by column: how the horn on the bench is to be set to stand like it; null where either cannot be read */
  readonly matches: readonly (MatchReports | null)[];
  /** which columns are an example's bore and holes, not measured on the horn */
  readonly examples: readonly boolean[];
}

/** More issues of one document than these are counted. */
const TOLD_ISSUES = 3;

/**
 * Compares what can be compared, all in one air. A column that cannot be read is told and left out; without the
 * first there is nothing to hold the others against.
 *
 * @param columns the reference first; null for a column that is not there
 * @param bench   the horn in hand as found; null where no match is asked for
 */
export function compareColumns(
  columns: readonly (HornAndSetup | null)[],
  airC: number,
  a4Hz: number,
  bench: HornAndSetup | null = null,
): ComparedColumns {
  const problems: (string | null)[] = [];
  const good: { readonly column: number; readonly loaded: LoadedHorn }[] = [];
  columns.forEach((documents, column) => {
    const read = documents === null ? null : loadHorn(documents);
    problems.push(read === null || read.ok ? null : issueWords(read.issues.map(({ message }) => message)));
    if (read?.ok === true) good.push({ column, loaded: read.value });
  });
  const comparable = good.length >= FEWEST_COMPARED && good[0].column === 0;
  const report = comparable
    ? compareLoaded(
        good.map(({ loaded }) => loaded),
        { air: makeAirColumn({ mouthpieceC: airC }), a4Hz },
      )
    : null;
  const inHand = bench === null ? null : loadHorn(bench);
  const matches = columns.map((_, i) => {
    const like = good.find(({ column }) => column === i)?.loaded;
    return inHand?.ok !== true || like === undefined ? null : reportMatches(inHand.value, like);
  });
  return {
    report,
    matches,
    columns: comparable ? good.map(({ column }) => column) : [],
    problems,
    examples: columns.map((documents) => documents?.horn.origin === 'template'),
  };
}

function issueWords(messages: readonly string[]): string {
  const told = messages.slice(0, TOLD_ISSUES).map((m) => `${m.replace(/\.$/, '')}.`);
  const more = messages.length - told.length;
  return more > 0 ? `${told.join(' ')} And ${more} more.` : told.join(' ');
}
