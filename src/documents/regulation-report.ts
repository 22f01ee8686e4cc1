import {
  planRegulation,
  type DoneMove,
  type Move,
  type MoveKind,
  type MoveTest,
  type RegulationPlan,
} from '../acoustics/index.ts';
import { formatBoth } from './length-format.ts';
import { PAPER_MM } from './leak-report.ts';
import { regulationFacts } from './regulation-facts.ts';
import type { LoadedHorn } from './to-acoustics.ts';

/** One move, bench units. */
export interface MoveReport {
  readonly id: string;
  readonly kind: MoveKind;
  readonly pad: string;
  readonly driver: string | null;
  /** null where it must be read again first */
  readonly fromMm: number | null;
  readonly toMm: number;
  readonly toleranceMm: number;
  /** of a height: how much thinner the foot cork must be; null where the leverage is not known */
  readonly thinnerCorkMm: number | null;
  readonly test: MoveTest;
  readonly again: boolean;
  readonly sentence: string;
}

/** The work that is left, bench units. */
export interface RegulationReport {
  readonly horn: string;
  readonly done: readonly { readonly id: string; readonly valueMm: number; readonly within: boolean }[];
  readonly moves: readonly MoveReport[];
  readonly warnings: readonly string[];
}

/** A move that was made, and what was read after it. */
export interface DoneMoveMm {
  readonly id: string;
  readonly valueMm: number;
}

const MM = 1e-3;

/** What is not in a setup: seats that leak, as the light shows them, by pad. */
export type SeatGapsMm = ReadonlyMap<string, number>;

/**
 * The order of work from one setup of a horn to another.
 *
 * @param asFound the horn as found; @param asSet the same horn as it is to be set
 */
export function reportRegulation(
  asFound: LoadedHorn,
  asSet: LoadedHorn,
  seatGapsMm: SeatGapsMm = new Map(),
  done: readonly DoneMoveMm[] = [],
): RegulationReport {
  const facts = regulationFacts(asFound);
  const seats = new Map([...seatGapsMm].map(([pad, gapMm]) => [pad, gapMm * MM]));
  const plan = planRegulation(
    facts.horn,
    { setup: asFound.setup, screws: facts.screws, seats },
    // A link that the setup to be says nothing of is to shut both at once.
    { setup: asSet.setup, screws: wantedScrews(asFound, asSet), seats: new Map() },
    done.map(({ id, valueMm }): DoneMove => ({ id, value: valueMm * MM })),
  );
  return report(asFound, plan, facts.footPerFront);
}

/** A gap the setup to be gives itself; one it only took over from the setup it is read over is a fault. */
function wantedScrews(asFound: LoadedHorn, asSet: LoadedHorn) {
  const found = regulationFacts(asFound).screws;
  return regulationFacts(asSet).screws.filter(
    (w) => !found.some((f) => f.driver === w.driver && f.driven === w.driven && f.left === w.left),
  );
}

function report(
  { documents, horn }: LoadedHorn,
  { done, moves, warnings }: RegulationPlan,
  footPerFront: ReadonlyMap<string, number>,
): RegulationReport {
  const nameOf = (id: string): string => documents.horn.holes.find((h) => h.id === id)?.name ?? id;
  return {
    horn: horn.name,
    done: done.map(({ id, value, within }) => ({ id, valueMm: value / MM, within })),
    moves: moves.map((move) => {
      const foot = footPerFront.get(move.pad);
      const raise = move.kind === 'height' && move.from !== null ? move.to - move.from : null;
      const thinnerCorkMm = foot === undefined || raise === null ? null : (raise * foot) / MM;
      return {
        id: move.id,
        kind: move.kind,
        pad: move.pad,
        driver: move.driver,
        fromMm: move.from === null ? null : move.from / MM,
        toMm: move.to / MM,
        toleranceMm: move.tolerance / MM,
        thinnerCorkMm,
        test: move.test,
        again: move.again,
        sentence: sentenceFor(move, nameOf, thinnerCorkMm),
      };
    }),
    warnings,
  };
}

function sentenceFor(move: Move, nameOf: (id: string) => string, thinnerCorkMm: number | null): string {
  const pad = nameOf(move.pad);
  const papers = (metres: number): string => (Math.abs(metres) / MM / PAPER_MM).toFixed(1);
  if (move.kind === 'seat') {
    return `Seat ${pad}: ${papers(move.from ?? 0)} papers open. Test: ${move.test}; nothing over ${papers(move.tolerance)} of a paper.`;
  }
  if (move.kind === 'height') {
    const way = move.from !== null && move.to > move.from ? 'Raise' : 'Lower';
    const cork =
      thinnerCorkMm === null
        ? ''
        : `, foot cork ${Math.abs(thinnerCorkMm).toFixed(2)} mm ${thinnerCorkMm > 0 ? 'thinner' : 'thicker'}`;
    const from = move.from === null ? '' : ` from ${formatBoth(move.from / MM, 'mm')}`;
    return `${way} ${pad}${from} to ${formatBoth(move.to / MM, 'mm')} at the front${cork}. Test: ${move.test}, ±${(move.tolerance / MM).toFixed(1)} mm.`;
  }
  const driver = nameOf(move.driver!);
  const together = move.to === 0 ? 'both shut at once' : `${pad} is left ${papers(move.to)} papers`;
  const test = `Test: ${move.test}, within ${papers(move.tolerance)} paper.`;
  if (move.from === null) return `Set ${pad} to ${driver}${move.again ? ' again' : ''}: ${together}. ${test}`;
  const late =
    move.from > 0
      ? `${pad} hangs by ${papers(move.from)} papers`
      : `${driver} is kept off by ${papers(move.from)} papers`;
  return `Set ${pad} to ${driver}: ${late}; ${together}. ${test}`;
}
