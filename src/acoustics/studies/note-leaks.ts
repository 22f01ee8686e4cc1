import type { AirColumn } from '../air/air.ts';
import { leakEndsIn, seatLeak, type Leaks } from '../holes/leak-ends.ts';
import { ringGap } from '../holes/leak-gap.ts';
import { LEAK_ERROR } from '../holes/leak-slit.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { HoleEnd } from '../holes/hole-tube.ts';
import { keySetupOf, type Horn, type Setup } from '../horn.ts';
import type { Rest } from '../keywork/linkage.ts';
import { withHoleEnds } from '../network/network.ts';
import { followResonance, type Resonance } from '../resonance/resonances.ts';
import { DB_PER_NEPER, scaledBudget } from './decibels.ts';
import { leakingNote, lossBetween, type LeakLoss, type LeakOptions, type SealedNote } from './leak-study.ts';
import { asItStands, EXACT, prepareReadings, type Reading, type Readings } from './readings.ts';
import type { Knowledge } from './scale-budgets.ts';
import { differenceBudget, makeBudget, noteSlopes, type Budget } from './uncertainty.ts';
import { playWholeHorn, type NoteAnswers } from './whole-horn.ts';

/**
 * What a leak at every pad that a note shuts would cost it, each alone, the pad's whole ring open by one gap.
 *
 * The ± of a loss: the gap is meant, so it is exact. What was read for the note sealed and leaking errs in both alike
 * and counts by the difference of its slopes. What only the slit hears, the rim and the pad's edge, and the slit's own
 * error, is played again, off by its whole ± to either side: a slit answers too steeply for a slope, and more to one
 * side than to the other. The one ± takes the wider side of each.
 */
export interface PadLeak {
  readonly pad: string;
  /** how the pad stands with no finger down: one at rest closed is shut by its spring */
  readonly rests: Rest;
  /** one entry per gap, in their order */
  readonly at: readonly LeakAtGap[];
}

/** One gap all round under one pad. */
export interface LeakAtGap {
  /** m */
  readonly gap: number;
  /** null where the note is lost */
  readonly cost: LeakCost | null;
}

/** What a leak costs a note, and how sure that is; a ± is null where the note's slopes are not known. */
export interface LeakCost extends LeakLoss {
  readonly lostBudget: Budget | null;
  readonly centsBudget: Budget | null;
  /** dB that more, and that less, may be lost: the ± of the loss side by side */
  readonly lostSides: Sides | null;
}

/** How far an answer may be off to either side, both ≥ 0. */
export interface Sides {
  readonly more: number;
  readonly less: number;
}

/** A sealed note with all that its leaks are reckoned from. */
interface Asked {
  readonly horn: Horn;
  readonly setup: Setup;
  readonly air: AirColumn;
  readonly note: SealedNote;
  readonly options: LeakOptions;
  readonly readings: Readings;
  readonly sealed: NoteAnswers | null;
}

/**
 * @param gaps m, ascending
 * @returns the pad whose leak of the widest gap costs most first
 */
export function leaksFor(
  horn: Horn,
  setup: Setup,
  note: SealedNote,
  air: AirColumn,
  { gaps, plusMinus = EXACT, ...options }: LeakOptions & Knowledge & { readonly gaps: readonly number[] },
): PadLeak[] {
  const readings = prepareReadings(horn, setup, air, plusMinus);
  const before = { horn, setup, air, note, options, readings, sealed: null };
  const asked: Asked = { ...before, sealed: answersOf(before, note.resonance, null) };
  return horn.holes
    .filter(({ hinge }) => hinge !== null)
    .flatMap(({ id }) => {
      const at = gaps.flatMap((gap) => leakAt(asked, id, gap) ?? []);
      return at.length === 0 ? [] : [{ pad: id, rests: horn.keywork.rests.get(id)!, at }];
    })
    .sort((a, b) => lossAtWidest(b) - lossAtWidest(a));
}

/** dB lost at the widest gap; Infinity where the note is. */
export function lossAtWidest({ at }: PadLeak): number {
  return at[at.length - 1].cost?.lostDb ?? Infinity;
}

/** Null where the note does not shut the pad. */
function leakAt(asked: Asked, pad: string, gap: number): LeakAtGap | null {
  const { horn, setup, note, options } = asked;
  const leaks = seatLeak(pad, ringGap(gap));
  const leaking = leakingNote(horn, setup, leaks, note, options);
  if (leaking === null) return null;
  if (!leaking.played.found) return { gap, cost: null };
  const { resonance, loss } = leaking.played;
  return { gap, cost: { ...loss, ...budgetsOf(asked, pad, leaks, resonance, loss) } };
}

function budgetsOf(
  asked: Asked,
  pad: string,
  leaks: Leaks,
  leaking: Resonance,
  loss: LeakLoss,
): Pick<LeakCost, 'lostBudget' | 'centsBudget' | 'lostSides'> {
  const { readings, sealed } = asked;
  const then = answersOf(asked, leaking, leaks);
  if (sealed === null || then === null) return { lostBudget: null, centsBudget: null, lostSides: null };
  const again = playedAgain(asked, pad, leaks, leaking);
  const padModel = asked.options.padModel ?? DEFAULT_PAD_MODEL;
  const bySlopes = (of: 'cents' | 'logHeight', scale: number): Budget => {
    const there = (answers: NoteAnswers) => ({ readings, padModel, slopes: noteSlopes(answers, of) });
    return scaledBudget(differenceBudget(there(sealed), there(then), 'same horn'), scale);
  };
  const whole = (slopes: Budget, value: (of: LeakLoss) => number): Budget => {
    const effect = (off: readonly LeakLoss[]): number => widerEffect(off.map((o) => value(o) - value(loss)));
    const own = again.lengths.map(({ reading, off }) => ({ reading, effect: effect(off) }));
    const model = Math.hypot(slopes.padModel, effect(again.slit));
    return makeBudget([...slopes.readings, ...own], { padModel: model });
  };
  const height = bySlopes('logHeight', -DB_PER_NEPER);
  const off = [...again.lengths.map((length) => length.off), again.slit];
  return {
    lostBudget: whole(height, ({ lostDb }) => lostDb),
    centsBudget: whole(bySlopes('cents', 1), ({ cents }) => cents),
    lostSides: sidesOf(
      height.plusMinus,
      off.map((losses) => losses.map(({ lostDb }) => lostDb - loss.lostDb)),
    ),
  };
}

/** The wider of what a reading does off to either side, with the sign of the first. */
function widerEffect(effects: readonly number[]): number {
  const size = Math.max(0, ...effects.map(Math.abs));
  return (effects[0] ?? 0) < 0 ? -size : size;
}

/** @param even what is off alike to both sides @param off of every other reading, what it does off either way */
function sidesOf(even: number, off: readonly (readonly number[])[]): Sides {
  const side = (sign: number): number =>
    Math.hypot(even, ...off.map((effects) => Math.max(0, ...effects.map((effect) => sign * effect))));
  return { more: side(1), less: side(-1) };
}

/** The note's slopes at a resonance of its own; null where it cannot be followed there. */
function answersOf(
  { horn, setup, air, note, options }: Omit<Asked, 'sealed'>,
  { frequency }: Resonance,
  leaks: Leaks | null,
): NoteAnswers | null {
  const standing = asItStands(horn, setup);
  const { fingering } = note;
  const [{ outcome }] = playWholeHorn(standing.horn, standing.setup, air, {
    ...options,
    ...(leaks === null ? {} : { leaks }),
    fingerings: [fingering],
    near: new Map([[fingering.id, frequency]]),
  });
  return outcome.found ? outcome.answers : null;
}

const EITHER_WAY = [1, -1] as const;

/** The lengths that only a leak's slit hears. */
const SLIT_LENGTHS = ['rimThickness', 'padRadius'] as const;

/** The same leak with each of the slit's own lengths, and then its model, off by its ± either way; lost ones left out. */
function playedAgain(
  { horn, setup, note, options, readings }: Asked,
  pad: string,
  leaks: Leaks,
  leaking: Resonance,
): { readonly lengths: readonly { reading: Reading; off: LeakLoss[] }[]; readonly slit: LeakLoss[] } {
  const model = options.padModel ?? DEFAULT_PAD_MODEL;
  const { touches } = note.fingering;
  const play = (ends: ReadonlyMap<string, HoleEnd>): LeakLoss[] => {
    const outcome = followResonance(withHoleEnds(note.network, ends), leaking.frequency);
    return outcome.found ? [lossBetween(note.resonance, outcome.resonance)] : [];
  };
  const lengths = readings.list.flatMap((reading) => {
    const kind = SLIT_LENGTHS.find((length) => length === reading.kind);
    if (reading.id !== pad || kind === undefined || reading.plusMinus === 0) return [];
    const off = EITHER_WAY.flatMap((sign) => {
      const other = withLonger(horn, setup, pad, kind, sign * reading.plusMinus);
      return play(leakEndsIn(other.horn, other.setup, touches, leaks, model));
    });
    return [{ reading, off }];
  });
  const ends = leakEndsIn(horn, setup, touches, leaks, model);
  const slit = EITHER_WAY.flatMap((sign) =>
    play(new Map([...ends].map(([id, end]) => [id, wider(end, sign * LEAK_ERROR)]))),
  );
  return { lengths, slit };
}

/** A slit that lets through more by a share. */
function wider(end: HoleEnd, share: number): HoleEnd {
  if (end.leak === undefined) return end;
  const stretches = end.leak.stretches.map((s) => ({ ...s, width: s.width * (1 + share) }));
  return { ...end, leak: { ...end.leak, stretches } };
}

function withLonger(
  horn: Horn,
  setup: Setup,
  pad: string,
  kind: (typeof SLIT_LENGTHS)[number],
  by: number,
): { readonly horn: Horn; readonly setup: Setup } {
  if (kind === 'padRadius') {
    const key = keySetupOf(setup, pad);
    return { horn, setup: { keys: new Map(setup.keys).set(pad, { ...key, padRadius: key.padRadius + by }) } };
  }
  const holes = horn.holes.map((hole) =>
    hole.id === pad ? { ...hole, rimThickness: hole.rimThickness + by } : hole,
  );
  return { horn: { ...horn, holes }, setup };
}
