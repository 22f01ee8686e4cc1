import type { BenchContents } from '../../documents/bench-contents.ts';
import type { HornRecord, VisitRecord } from '../../documents/library-file.ts';

/** Whether what is on the bench is kept. */
export type Keeping =
  /** a horn the workbench brings with it, as it came */
  | { readonly kind: 'untouched' }
  | { readonly kind: 'saving' }
  | { readonly kind: 'saved' }
  | { readonly kind: 'refused'; readonly message: string }
  /** another tab wrote meanwhile */
  | { readonly kind: 'conflict'; readonly hornId: string };

/** Visits of the horn in hand that the library holds, latest first. */
export interface KnownVisits {
  readonly hornId: string;
  readonly list: readonly KnownVisit[];
}

export interface KnownVisit {
  readonly id: string;
  readonly date: string;
  readonly player: string | null;
}

export function knownVisits(hornId: string, visits: readonly VisitRecord[]): KnownVisits {
  const list = visits
    .filter((visit) => visit.hornId === hornId)
    .map(({ id, document }) => ({ id, date: document.date, player: document.player ?? null }))
    .sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0));
  return { hornId, list };
}

/** A note on what a copy is. */
const COPY = 'kept from another tab';

/**
 * What is on the bench under ids of its own, so that it can be kept beside what another tab wrote. Where the
 * horn itself differs it becomes a horn of its own too.
 *
 * @param theirs the horn as the other tab left it; null where it took it away
 */
export function keptCopy(
  contents: BenchContents,
  theirs: HornRecord | null,
  makeId: () => string,
): BenchContents {
  const isSame =
    theirs !== null && JSON.stringify(theirs.document) === JSON.stringify(contents.horn.document);
  const horn = isSame
    ? theirs
    : {
        id: makeId(),
        document: {
          ...contents.horn.document,
          name: `${contents.horn.document.name}, ${COPY}`.slice(0, 200),
        },
      };
  const copy = <R extends { readonly id: string; readonly hornId: string }>(record: R): R => ({
    ...record,
    id: makeId(),
    hornId: horn.id,
  });
  const [asFound, proposed, asSet] = [contents.asFound, contents.proposed, contents.asSet].map(copy);
  const { document } = contents.visit;
  const visit = {
    ...copy(contents.visit),
    document: {
      ...document,
      notes: `${document.notes ?? ''}${document.notes === undefined ? '' : '\n'}(${COPY})`,
      asFound: asFound.id,
      proposed: proposed.id,
      asSet: asSet.id,
    },
  };
  return { horn, visit, asFound, proposed, asSet };
}
