import { FEWEST_COMPARED, MOST_COMPARED, type MatchedBy } from '../../acoustics/index.ts';
import type { LibraryRecords } from '../../documents/library-file.ts';
import type { ComparedColumns } from './side-by-side-answer.ts';

/** A setup of a horn, by the ids of their records. */
export interface Column {
  readonly hornId: string;
  /** null: the setup the horn was left with, once its records are known */
  readonly setupId: string | null;
}

/** What the tables are sorted by. */
export type SideOrder = 'difference' | 'pitch';

/** A horn by its name. */
export interface ListedHorn {
  readonly id: string;
  readonly label: string;
}

/** A horn fetched from the library: its records, or why there are none. */
export type FetchedHorn =
  | { readonly kind: 'fetched'; readonly records: LibraryRecords }
  | { readonly kind: 'failed'; readonly message: string };

/** The comparison: what stands in it, and what came of it. */
export interface SideBySideState {
  /** the first is the reference; null as long as nobody chose, when the visit on the bench stands in it */
  readonly chosen: readonly Column[] | null;
  readonly order: SideOrder;
  /** the fingering whose ± is looked at; null for the note that differs most */
  readonly noteId: string | null;
  /** what a horn set like another has in common with it */
  readonly likeBy: MatchedBy;
  /** the column it is to be like; null for the last that can be taken */
  readonly likeColumn: number | null;
  /** every horn of the library by name, once it has been asked */
  readonly shelf: readonly ListedHorn[];
  /** by horn id */
  readonly fetched: Readonly<Record<string, FetchedHorn>>;
  readonly answer: ComparedColumns | null;
  /** counts what was asked; the answer is current when it answers the last */
  readonly asked: number;
  readonly answered: number;
  readonly problem: string | null;
}

export function makeSideBySideState(): SideBySideState {
  return {
    chosen: null,
    order: 'difference',
    noteId: null,
    likeBy: 'front',
    likeColumn: null,
    shelf: [],
    fetched: {},
    answer: null,
    asked: 0,
    answered: 0,
    problem: null,
  };
}

// Actions: each takes a state and gives the next.

/** Puts other setups side by side; too many or too few leave what stands. */
export function chooseColumns(side: SideBySideState, columns: readonly Column[] | null): SideBySideState {
  if (columns !== null && (columns.length < FEWEST_COMPARED || columns.length > MOST_COMPARED)) return side;
  return { ...side, chosen: columns };
}

export function sideAsked(side: SideBySideState, asked: number): SideBySideState {
  return { ...side, asked };
}

export function sideArrived(
  side: SideBySideState,
  answered: number,
  answer: ComparedColumns,
): SideBySideState {
  return { ...side, answered, answer, problem: null };
}

export function sideFailed(side: SideBySideState, answered: number, problem: string): SideBySideState {
  return { ...side, answered, problem };
}

/** A horn came from the library, or did not. */
export function hornFetched(side: SideBySideState, hornId: string, fetched: FetchedHorn): SideBySideState {
  return { ...side, fetched: { ...side.fetched, [hornId]: fetched } };
}

/** The library has these horns. */
export function hornsListed(side: SideBySideState, shelf: readonly ListedHorn[]): SideBySideState {
  return { ...side, shelf };
}

/** What is in the library has changed: it is fetched again when it is next needed. */
export function hornForgotten(side: SideBySideState, hornId: string): SideBySideState {
  if (side.fetched[hornId] === undefined) return side;
  const fetched = { ...side.fetched };
  delete fetched[hornId];
  return { ...side, fetched };
}
