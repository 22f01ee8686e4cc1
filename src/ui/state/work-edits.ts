import type { BenchContents } from '../../documents/bench-contents.ts';
import type { Reading } from '../../documents/readings.ts';
import type { SetupDocument } from '../../documents/setup-document.ts';
import { withOpeningReading } from '../../documents/sheet-edits.ts';
import type { DoneWork, LeakingSeat, VisitDocument } from '../../documents/visit-document.ts';
import { MEASURED } from './key-lengths.ts';
import { withPadSet } from './new-pads.ts';

// What is done at the bench goes into the visit’s list and, as a value, into the setup as set.

/** A move made. */
export function withDone(contents: BenchContents, entry: DoneWork): BenchContents {
  const work = [...(contents.visit.document.work ?? []), entry];
  return withSetFrom(withVisit(contents, { work }), entry.move);
}

/** A move taken back by its place in the list: the value before it is as set again. */
export function withoutDone(contents: BenchContents, index: number): BenchContents {
  const before = contents.visit.document.work ?? [];
  const entry = before[index];
  if (entry === undefined) return contents;
  return withSetFrom(withVisit(contents, { work: before.filter((_, i) => i !== index) }), entry.move);
}

/** A seat that leaks as found, or, with null, one that seals. */
export function withLeakingSeat(
  contents: BenchContents,
  pad: string,
  seat: Omit<LeakingSeat, 'pad'> | null,
): BenchContents {
  const before = contents.visit.document.leakingSeats ?? [];
  const others = before.filter((s) => s.pad !== pad);
  const leakingSeats =
    seat === null
      ? others
      : before.some((s) => s.pad === pad)
        ? before.map((s) => (s.pad === pad ? { pad, ...seat } : s))
        : [...others, { pad, ...seat }];
  return withVisit(contents, { leakingSeats });
}

/** An empty list is left out. */
function withVisit(
  contents: BenchContents,
  change: Partial<Pick<VisitDocument, 'work' | 'leakingSeats'>>,
): BenchContents {
  const { visit } = contents;
  const document: VisitDocument = { ...visit.document, ...change };
  if (document.work?.length === 0) delete document.work;
  if (document.leakingSeats?.length === 0) delete document.leakingSeats;
  return { ...contents, visit: { ...visit, document } };
}

/** What was checked off without reading it is within the tolerance of a height at best. */
const ASKED: Reading = { origin: 'derived', plusMinusMm: 0.2 };

/** Writes the last value of a move as set; where there is none any more it is as found. */
function withSetFrom(contents: BenchContents, move: string): BenchContents {
  const { asSet, visit } = contents;
  const last = visit.document.work?.findLast((entry) => entry.move === move) ?? null;
  const [kind, ...words] = move.split(' ');
  const name = words.join(' ');
  if (kind === 'seat') return withPadSet(contents, name, last !== null);
  const document =
    kind === 'height'
      ? withOpeningReading(
          asSet.document,
          name,
          last === null ? null : { mm: last.valueMm, at: 'front' },
          last?.read === false ? ASKED : MEASURED,
        )
      : withLinkSet(asSet.document, name, last?.valueMm ?? null);
  return { ...contents, asSet: { ...asSet, document } };
}

function withLinkSet(setup: SetupDocument, name: string, drivenGapMm: number | null): SetupDocument {
  const [driver, driven] = name.split(' > ');
  const before = setup.links ?? [];
  const same = (l: { readonly driver: string; readonly driven: string }): boolean =>
    l.driver === driver && l.driven === driven;
  const { drivenGapMm: _old, ...known } = before.find(same) ?? { driver, driven };
  const after = drivenGapMm === null ? known : { ...known, drivenGapMm };
  const isEmpty = drivenGapMm === null && known.travelRatio === undefined;
  const others = before.filter((l) => !same(l));
  const links = isEmpty
    ? others
    : before.some(same)
      ? before.map((l) => (same(l) ? after : l))
      : [...others, after];
  const { links: _before, ...rest } = setup;
  return links.length === 0 ? rest : { ...rest, links };
}
