import { saysNothing } from '../../../documents/complete-setup.ts';
import type { BenchState } from '../../state/bench-state.ts';
import {
  recordsOfHorn,
  standingOf,
  type ColumnSource,
  type ColumnSources,
} from '../../state/side-by-side-columns.ts';
import { setupOffers, type SetupOffers } from '../../state/side-by-side-offers.ts';
import type { Column, ListedHorn } from '../../state/side-by-side-state.ts';
import { kept, letterOf } from './letters.ts';

/** One of the columns as a person chooses it. */
export interface ColumnView {
  readonly letter: string;
  readonly column: Column;
  readonly horns: readonly ListedHorn[];
  readonly setups: readonly SetupOffers[];
  /** horn and setup in words, where nothing can be chosen */
  readonly onPaper: string;
  readonly waiting: boolean;
  readonly problem: string | null;
  /** where its setup says nothing of its own: a sentence, and the setup as which it stands; null elsewhere */
  readonly nothingOwn: { readonly words: string; readonly asId: string | null } | null;
}

/** What was opened and what the library has, each once; what is on the bench has the newer name. */
export function hornsOf({ horns, shelf, sideBySide, hornId }: BenchState): ListedHorn[] {
  const opened = Object.values(horns).map(({ contents: { horn } }) => ({
    id: horn.id,
    label: horn.document.name,
  }));
  const first = opened.filter(({ id }) => id === hornId);
  const all = [...first, ...opened, ...sideBySide.shelf, ...shelf];
  return all.filter(({ id }, i) => all.findIndex((other) => other.id === id) === i);
}

export function makeColumn(
  state: BenchState,
  sources: ColumnSources,
  column: Column,
  index: number,
  horns: readonly ListedHorn[],
): ColumnView {
  const records = recordsOfHorn(sources, column.hornId);
  const standing = standingOf(sources, column);
  const setups = records === null ? [] : setupOffers(records, column.hornId);
  const listed = horns.find(({ id }) => id === column.hornId)?.label;
  const named = standing.kind === 'there' ? standing.source.horn.document.name : 'a horn that is gone';
  const horn = listed ?? named;
  const setup = setups.flatMap(({ offers }) => offers).find(({ id }) => id === column.setupId)?.label;
  return {
    letter: letterOf(index),
    column,
    horns,
    setups,
    onPaper: setup === undefined ? horn : `${horn}: ${setup}`,
    waiting: standing.kind === 'on its way',
    problem:
      standing.kind === 'missing' ? standing.message : (state.sideBySide.answer?.problems[index] ?? null),
    nothingOwn: standing.kind === 'there' ? nothingOwn(horn, standing.source) : null,
  };
}

/** `nothing is proposed on Larkfield alto, visit of 2026-05-04: it stands as found.` */
function nothingOwn(horn: string, { setup, under, role, visit }: ColumnSource): ColumnView['nothingOwn'] {
  if (under === null || !saysNothing(setup.document)) return null;
  const done = role === 'asSet' ? 'set' : 'proposed';
  const on = visit === null ? horn : `${horn}, visit of ${visit.document.date}`;
  return {
    words: kept(`nothing is ${done} on ${on}: it stands as found.`),
    asId: visit?.document.asFound ?? null,
  };
}
