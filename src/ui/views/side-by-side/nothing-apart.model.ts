import type { ComparisonReport } from '../../../documents/comparison-report.ts';
import type { ColumnView } from './side-by-side-columns.model.ts';

/** What stands where the picture would be, as nothing is apart. */
export interface NothingApart {
  /** why, and what to do */
  readonly words: string;
  /** whether the columns are setups of their own, whose openings and pitches can still be read off */
  readonly hasTables: boolean;
}

/** What a person who may not have begun is told. */
const UNBEGUN =
  'Nothing is proposed or set on this visit yet. Propose an opening on the bench sheet, or choose another setup or horn above: every note is then drawn here.';

/**
 * @param isUnbegun whether nobody chose and nothing was proposed or set
 * @param report of these columns; null where there is none, or it is of columns before
 * @returns null where something is apart, or where that is not known yet
 */
export function nothingApart(
  columns: readonly ColumnView[],
  isUnbegun: boolean,
  report: ComparisonReport | null,
): NothingApart | null {
  if (isUnbegun) return { words: UNBEGUN, hasTables: false };
  const [first, ...others] = columns.map(standsAs);
  if (others.every((other) => other === first)) {
    const isTwice = columns.slice(1).some(({ column }) => column.setupId === columns[0].column.setupId);
    const why = isTwice ? 'A setup stands beside itself' : 'All of them stand as found';
    return {
      words: `${why}: choose another setup or horn in one of the columns, and every note is drawn here.`,
      hasTables: false,
    };
  }
  return report !== null && playAlike(report)
    ? { words: 'All of them play alike: there is no difference to draw.', hasTables: true }
    : null;
}

/** The setup a column comes to; a sparse one that says nothing stands as found. */
const standsAs = ({ column, nothingOwn }: ColumnView): string =>
  `${column.hornId} ${nothingOwn?.asId ?? column.setupId}`;

/** Whether no note differs from the first's at all. */
export function playAlike({ notes }: ComparisonReport): boolean {
  return notes.every(({ differences }) =>
    differences.every((d) => d !== null && d.cents === 0 && (d.strengthDb ?? 0) === 0),
  );
}
