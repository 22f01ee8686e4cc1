import type { BenchContents } from '../../documents/bench-contents.ts';
import { layered } from '../../documents/complete-setup.ts';
import { reportRegulation, type RegulationReport } from '../../documents/regulation-report.ts';
import type { SetupDocument } from '../../documents/setup-document.ts';
import { loadHorn } from '../../documents/to-acoustics.ts';
import type { DoneWork } from '../../documents/visit-document.ts';
import { openingAt } from './key-lengths.ts';
import { memoLast } from './memo-last.ts';
import { keysWithNewPads, withNewPadsIn } from './new-pads.ts';

/** The work on a horn, or why it cannot be planned. */
export type WorkPlan =
  | { readonly ok: true; readonly report: RegulationReport; readonly done: readonly KnownWork[] }
  | { readonly ok: false; readonly message: string };

/** A move that was made, as known: from the list, or from an opening as set that was typed on the sheet. */
export interface KnownWork extends DoneWork {
  /** its place in the visit’s list; null where it is from the sheet */
  readonly index: number | null;
}

/** A seat that leaks by nobody knows how much: worse than any that was read. */
const UNKNOWN_GAP_MM = Infinity;

/** Openings that differ by less are one, mm. */
const SAME_MM = 0.005;

/**
 * The order of work from as found to what is proposed, with what was done so far. Where nothing is proposed for
 * a key its opening as set is what was wanted. A new pad is to be seated, and the key starts from how it will
 * stand with that pad at its old stop.
 */
export const planWork = memoLast((contents: BenchContents): WorkPlan => {
  try {
    return planned(contents);
  } catch (error) {
    // A hinge that cannot take a pad: the plan says so instead of the page breaking.
    if (error instanceof RangeError) return { ok: false, message: `${error.message}.` };
    throw error;
  }
});

function planned(contents: BenchContents): WorkPlan {
  const { horn, asFound, proposed, asSet, visit } = contents;
  const found = loadHorn({ horn: horn.document, setup: asFound.document });
  const wanted = loadHorn({
    horn: horn.document,
    setup: layered(proposed.document, layered(openingsOf(asSet.document), asFound.document)),
  });
  for (const read of [found, wanted]) {
    if (!read.ok) return { ok: false, message: read.issues.map((issue) => issue.message).join(' ') };
  }
  if (!found.ok || !wanted.ok) return { ok: false, message: '' };
  const isKnown = (move: string): boolean => isMoveOf(contents, move);
  const done = doneWork(contents).filter(({ move }) => isKnown(move));
  const seats = new Map(
    (visit.document.leakingSeats ?? []).flatMap(({ pad, gapMm }): [string, number][] =>
      horn.document.holes.some((h) => h.id === pad) ? [[pad, gapMm ?? UNKNOWN_GAP_MM]] : [],
    ),
  );
  const padded = keysWithNewPads(contents);
  for (const { pad } of padded) seats.set(pad, UNKNOWN_GAP_MM);
  const start = loadHorn({ horn: horn.document, setup: withNewPadsIn(found.value, padded) });
  if (!start.ok) return { ok: false, message: start.issues.map((issue) => issue.message).join(' ') };
  const report = reportRegulation(
    start.value,
    wanted.value,
    seats,
    done.map(({ move, valueMm }) => ({ id: move, valueMm })),
  );
  return { ok: true, report, done };
}

/** Only what a person set as opening, with its pad; links as set came back from the work and are not wanted. */
function openingsOf(setup: SetupDocument): SetupDocument {
  const { links, ...rest } = setup;
  return { ...rest, keys: setup.keys.filter((key) => key.openingMm !== undefined) };
}

/** Whether a horn has what a move works on: a horn may have been edited since. */
function isMoveOf({ horn }: BenchContents, move: string): boolean {
  const { holes, links } = horn.document;
  const [kind, ...words] = move.split(' ');
  const name = words.join(' ');
  if (kind === 'seat') return holes.some((h) => h.id === name);
  if (kind === 'height') return holes.some((h) => h.id === name && h.key !== null);
  return kind === 'link' && links.some((l) => name === `${l.driver} > ${l.driven}`);
}

/** What was done, in order; an opening as set that nobody entered here counts as the last word on its key. */
function doneWork(contents: BenchContents): KnownWork[] {
  const { horn, asFound, asSet, visit } = contents;
  const list = (visit.document.work ?? []).map((entry, index): KnownWork => ({ ...entry, index }));
  const documents = { horn: horn.document, setup: asFound.document };
  const fromSheet = asSet.document.keys.flatMap(({ pad, openingMm, measuredAt }): KnownWork[] => {
    if (openingMm === undefined || measuredAt === undefined) return [];
    const move = `height ${pad}`;
    const valueMm = openingAt(documents, pad, { mm: openingMm, at: measuredAt }, 'front');
    const last = list.findLast((entry) => entry.move === move);
    if (last !== undefined && Math.abs(last.valueMm - valueMm) < SAME_MM) return [];
    return [{ move, valueMm, read: true, index: null }];
  });
  return [...list, ...fromSheet];
}
