import type { ComparisonReport } from '../../../documents/comparison-report.ts';
import { columnReason, type Reason, type ReasonKind } from '../../state/reasons.ts';
import { letterOf } from './letters.ts';

/** One cell of a table. */
export interface Cell {
  readonly text: string;
  /** its ±, which stands back on paper with many columns; left out where the text has it */
  readonly plusMinus?: string;
  /** a second, smaller line */
  readonly under?: string;
  /** a difference: whether it is greater than its ±; left out where the cell is none */
  readonly shown?: boolean;
  /** why it is what it is */
  readonly reason?: Reason;
}

/** Cells under one heading, one a column. */
export interface CellGroup {
  readonly title: string;
  /** one a column: its letter, and what its figures are; no reason for words */
  readonly heads: readonly { readonly letter: string; readonly reason: Reason | null }[];
  /** `difference`, `state` or `words`: how wide and how strong */
  readonly kind: 'difference' | 'difference aside' | 'state' | 'words';
}

export interface ComparisonRow {
  readonly id: string;
  readonly label: string;
  /** in the groups' order */
  readonly cells: readonly (readonly Cell[])[];
}

/** A table of what was compared: groups of columns, and rows. */
export interface ComparisonTable {
  readonly first: string;
  readonly groups: readonly CellGroup[];
  readonly rows: readonly ComparisonRow[];
}

export const NOT_SHOWN = 'no difference that can be shown';

/** Nothing to show. */
export const NOTHING: Cell = { text: '–', shown: false };
/** One reading in both. */
export const SAME: Cell = { text: 'same', shown: false };

/** A column of the page: its letter, and what its figures are figures of. */
export interface Head {
  readonly letter: string;
  readonly of: string;
  readonly remarks: readonly string[];
}

/** Heads of what stands in every column, and of what each differs by from the first. */
export function headsOf(
  { setups }: ComparisonReport,
  columns: readonly number[],
): { readonly states: readonly Head[]; readonly differences: readonly Head[] } {
  const states = setups.map(({ label }, i): Head => {
    const letter = letterOf(columns[i]);
    return { letter, of: `every row of ${letter} “${label}”`, remarks: [] };
  });
  const [first] = setups;
  const differences = states.slice(1).map(({ letter }, i): Head => ({
    letter,
    of: `every row, ${letter} “${setups[i + 1].label}” beside ${states[0].letter} “${first.label}”`,
    remarks: [
      setups[i + 1].sameHornAsFirst
        ? `${letter} and ${states[0].letter} are one horn: what was read once errs alike in both and leaves the difference.`
        : `${letter} and ${states[0].letter} are two horns, which err each on their own.`,
    ],
  }));
  return { states, differences };
}

/** A group of columns. @param of null for words, which have no reason */
export function group(
  title: string,
  heads: readonly Head[],
  kind: CellGroup['kind'],
  of: ReasonKind | null,
): CellGroup {
  return {
    title,
    kind,
    heads: heads.map(({ letter, of: whose, remarks }) => ({
      letter,
      reason: of === null ? null : { ...columnReason(of, `${title}, ${letter}`, whose), remarks },
    })),
  };
}
