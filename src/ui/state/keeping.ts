import { SETUP_ROLES, type BenchContents } from '../../documents/bench-contents.ts';
import type { HornRecord, VisitRecord } from '../../documents/library-file.ts';
import { nameWith } from './library-copies.ts';
import { isAlike } from './unsaved.ts';

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

/** What a copy is called after. */
const COPY = '(kept from another tab)';

/** The longest notes a visit takes, letters. */
const LONGEST_NOTES = 20_000;

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
  const isSame = theirs !== null && isAlike(theirs.document, contents.horn.document);
  const horn = isSame
    ? theirs
    : {
        id: makeId(),
        document: { ...contents.horn.document, name: nameWith(contents.horn.document.name, COPY) },
      };
  const [asFound, proposed, asSet] = SETUP_ROLES.map((role) => {
    const { document } = contents[role];
    return {
      id: makeId(),
      hornId: horn.id,
      document: { ...document, name: nameWith(document.name, COPY) },
    };
  });
  const { document } = contents.visit;
  const notes = document.notes === undefined ? COPY : `${document.notes}\n${COPY}`;
  const visit = {
    id: makeId(),
    hornId: horn.id,
    document: {
      ...document,
      ...(notes.length <= LONGEST_NOTES ? { notes } : {}),
      asFound: asFound.id,
      proposed: proposed.id,
      asSet: asSet.id,
    },
  };
  return { horn, visit, asFound, proposed, asSet };
}
