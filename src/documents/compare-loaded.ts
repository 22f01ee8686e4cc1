import {
  compareSetups,
  type AirColumn,
  type Compared,
  type CompareOptions,
  type PlusMinus,
} from '../acoustics/index.ts';
import { reportComparison, type ComparisonReport } from './comparison-report.ts';
import { plusMinusOf } from './plus-minus.ts';
import type { LoadedHorn } from './to-acoustics.ts';

/** What is the same for everything compared. */
export interface ComparedDay extends CompareOptions {
  /** one air for all, so that what differs is the horns and not the day */
  readonly air: AirColumn;
  /** sounding A4 */
  readonly a4Hz?: number;
}

/** A horn as set up, and which of its openings were moved on by a known amount since they were read. */
export interface LoadedToCompare extends LoadedHorn {
  readonly readAs?: NonNullable<PlusMinus['readAs']>;
}

/**
 * Two to four horns as set up, side by side in one air, each reading with its ±.
 *
 * @throws RangeError for another number of them
 */
export function compareLoaded(loaded: readonly LoadedToCompare[], day: ComparedDay): ComparisonReport {
  const { air, a4Hz, ...options } = day;
  const labels = labelsOf(loaded);
  const compared = loaded.map((each, i): Compared => ({
    label: labels[i],
    horn: each.horn,
    setup: each.setup,
    air,
    ...(a4Hz === undefined ? {} : { a4: a4Hz }),
    plusMinus: each.readAs === undefined ? plusMinusOf(each) : { ...plusMinusOf(each), readAs: each.readAs },
  }));
  const comparison = compareSetups(compared, options);
  const report = reportComparison(comparison);
  if (comparison.sameHorn.every(Boolean)) return report;
  const examples = loaded.flatMap(({ documents }, i) =>
    documents.horn.origin === 'template'
      ? [
          `“${labels[i]}” has an example’s bore and hole places: its pitches are the example’s, and the ± beside another horn does not count how far this horn differs from it.`,
        ]
      : [],
  );
  return { ...report, warnings: [...examples, ...report.warnings] };
}

/** By setup where the horn is one, else by horn and setup, with a count where that would leave two alike. */
function labelsOf(loaded: readonly LoadedHorn[]): string[] {
  const horns = loaded.map(({ documents }) => documents.horn.name);
  const setups = loaded.map(({ documents }) => documents.setup.name);
  const oneHorn = new Set(horns).size === 1;
  const seen = new Map<string, number>();
  return horns.map((horn, i) => {
    const name = oneHorn ? setups[i] : `${horn}, ${setups[i]}`;
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return count === 1 ? name : `${name} (${count})`;
  });
}
