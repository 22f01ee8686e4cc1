import {
  planRegulation,
  type DoneMove,
  type Move,
  type MovedHeight,
  type MoveKind,
  type MoveTest,
  type RegulationPlan,
} from '../acoustics/index.ts';
import { formatBoth } from './length-format.ts';
import { PAPER_MM } from './leak-report.ts';
import { lostMotionOf, type LostMotionReport } from './lost-motion.ts';
import { goesWords } from './lost-motion-words.ts';
import { inARow } from './player-sheet-lengths.ts';
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
  /** of a link set once more: the pads whose heights have moved, or are still to move */
  readonly after: readonly MovedHeight[];
  /** of a link: what it loses once heights are as wanted; null where that is no more than as found */
  readonly lostMotion: LostMotionReport | null;
  readonly sentence: string;
}

/** The work that is left, bench units. */
export interface RegulationReport {
  readonly horn: string;
  readonly done: readonly { readonly id: string; readonly valueMm: number; readonly within: boolean }[];
  readonly moves: readonly MoveReport[];
  /** links that nothing above sets and nobody read */
  readonly untested: readonly MoveReport[];
  /** what links lose once heights are as wanted, more than as found */
  readonly lostMotion: readonly LostMotionReport[];
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
  return report(asFound, plan, facts.footPerFront, lostMotionOf(asFound, asSet));
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
  { done, moves, untested, warnings }: RegulationPlan,
  footPerFront: ReadonlyMap<string, number>,
  lostMotion: readonly LostMotionReport[],
): RegulationReport {
  const nameOf = (id: string): string => documents.horn.holes.find((h) => h.id === id)?.name ?? id;
  const moveReport = (move: Move, isTest: boolean): MoveReport => {
    const foot = footPerFront.get(move.pad);
    const raise = move.kind === 'height' && move.from !== null ? move.to - move.from : null;
    const thinnerCorkMm = foot === undefined || raise === null ? null : (raise * foot) / MM;
    const lost =
      lostMotion.find(({ driver, driven }) => driver === move.driver && driven === move.pad) ?? null;
    const { id, kind, pad, driver, test, again, after } = move;
    return {
      ...{ id, kind, pad, driver },
      fromMm: move.from === null ? null : move.from / MM,
      toMm: move.to / MM,
      toleranceMm: move.tolerance / MM,
      ...{ thinnerCorkMm, test, again, after, lostMotion: lost },
      sentence: isTest ? testSentence(move, nameOf) : sentenceFor(move, nameOf, thinnerCorkMm, lost),
    };
  };
  return {
    horn: horn.name,
    done: done.map(({ id, value, within }) => ({ id, valueMm: value / MM, within })),
    moves: moves.map((move) => moveReport(move, false)),
    untested: untested.map((move) => moveReport(move, true)),
    lostMotion,
    warnings,
  };
}

const papersOf = (metres: number): string => (Math.abs(metres) / MM / PAPER_MM).toFixed(1);

/** `Test D to F♯ auxiliary, never read: papers under both, within 1.0 paper.` */
function testSentence({ driver, pad, test, tolerance }: Move, nameOf: (id: string) => string): string {
  return `Test ${nameOf(driver!)} to ${nameOf(pad)}, never read: ${test}, within ${papersOf(tolerance)} paper.`;
}

/** ` after raising D`; empty where no height moved. */
export function afterWords(after: readonly MovedHeight[], nameOf: (id: string) => string): string {
  const names = (up: boolean): string[] =>
    after.filter(({ raised }) => raised === up).map(({ pad }) => nameOf(pad));
  const ways = [
    { way: 'raising', pads: names(true) },
    { way: 'lowering', pads: names(false) },
  ].flatMap(({ way, pads }) => (pads.length === 0 ? [] : [`${way} ${inARow(pads)}`]));
  return ways.length === 0 ? '' : ` after ${ways.join(' and ')}`;
}

function sentenceFor(
  move: Move,
  nameOf: (id: string) => string,
  thinnerCorkMm: number | null,
  lost: LostMotionReport | null,
): string {
  const pad = nameOf(move.pad);
  if (move.kind === 'seat') {
    return `Seat ${pad}: ${papersOf(move.from ?? 0)} papers open. Test: ${move.test}; nothing over ${papersOf(move.tolerance)} of a paper.`;
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
  const together = move.to === 0 ? 'both shut at once' : `${pad} is left ${papersOf(move.to)} papers`;
  const test = `Test: ${move.test}, within ${papersOf(move.tolerance)} paper.`;
  const left = lost === null ? '' : ` ${goesWords([lost], 'mm').replaceAll('\u00a0', ' ')}.`;
  if (move.from === null) {
    return `Set ${pad} to ${driver}${move.again ? ' again' : ''}${afterWords(move.after, nameOf)}: ${together}. ${test}${left}`;
  }
  const late =
    move.from > 0
      ? `${pad} hangs by ${papersOf(move.from)} papers`
      : `${driver} is kept off by ${papersOf(move.from)} papers`;
  return `Set ${pad} to ${driver}: ${late}; ${together}. ${test}`;
}
