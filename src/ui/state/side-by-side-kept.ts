import { FEWEST_COMPARED, MOST_COMPARED } from '../../acoustics/index.ts';
import type { HornOnBench } from './horn-on-bench.ts';
import type { Column, SideBySideState, SideOrder } from './side-by-side-state.ts';

/** What of the comparison outlives the page. */
export interface KeptSide {
  readonly chosen: readonly Column[] | null;
  readonly order: SideOrder;
}

/**
 * What is kept. The setups of a horn that nothing was done to are made anew with the page: such a column is kept
 * as the horn alone, as it was left.
 */
export function keptSide(
  { chosen, order, fetched }: SideBySideState,
  opened: Readonly<Record<string, Pick<HornOnBench, 'past' | 'future'>>>,
): KeptSide {
  const isOfPage = ({ hornId, setupId }: Column): boolean => {
    const horn = opened[hornId];
    const stored = fetched[hornId];
    const isUntouched = horn !== undefined && horn.past.length + horn.future.length === 0;
    return (
      isUntouched && stored?.kind === 'fetched' && !stored.records.setups.some(({ id }) => id === setupId)
    );
  };
  return {
    chosen: chosen?.map((column) => (isOfPage(column) ? { ...column, setupId: null } : column)) ?? null,
    order,
  };
}

/** What was kept, as far as it can be read: a column that makes no sense leaves the visit on the bench there. */
export function readKeptSide(value: unknown): KeptSide {
  const { chosen, order } = isRecord(value) ? value : {};
  const columns = Array.isArray(chosen) ? chosen.flatMap(readColumn) : [];
  const isWhole =
    Array.isArray(chosen) &&
    columns.length === chosen.length &&
    columns.length >= FEWEST_COMPARED &&
    columns.length <= MOST_COMPARED;
  return { chosen: isWhole ? columns : null, order: order === 'pitch' ? 'pitch' : 'difference' };
}

function readColumn(value: unknown): Column[] {
  const { hornId, setupId } = isRecord(value) ? value : {};
  if (typeof hornId !== 'string' || (typeof setupId !== 'string' && setupId !== null)) return [];
  return [{ hornId, setupId }];
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;
