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
 * error, is played again, off by its whole ±: a slit answers too steeply for a slope.
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
): Pick<LeakCost, 'lostBudget' | 'centsBudget'> {
  const { readings, sealed } = asked;
  const then = answersOf(asked, leaking, leaks);
  if (sealed === null || then === null) return { lostBudget: null, centsBudget: null };
  const again = playedAgain(asked, pad, leaks, leaking);
  const padModel = asked.options.padModel ?? DEFAULT_PAD_MODEL;
  const budget = (of: 'cents' | 'logHeight', scale: number, value: (of: LeakLoss) => number): Budget => {
    const there = (answers: NoteAnswers) => ({ readings, padModel, slopes: noteSlopes(answers, of) });
    const slopes = scaledBudget(differenceBudget(there(sealed), there(then), 'same horn'), scale);
    const own = again.lengths.map(({ reading, loss: off }) => ({
      reading,
      effect: value(off) - value(loss),
    }));
    const slit = again.slit === null ? 0 : value(again.slit) - value(loss);
    return makeBudget([...slopes.readings, ...own], { padModel: Math.hypot(slopes.padModel, slit) });
  };
  return {
    lostBudget: budget('logHeight', -DB_PER_NEPER, ({ lostDb }) => lostDb),
    centsBudget: budget('cents', 1, ({ cents }) => cents),
  };
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

/** The lengths that only a leak's slit hears. */
const SLIT_LENGTHS = ['rimThickness', 'padRadius'] as const;

/** The same leak with each of the slit's own lengths, and then its model, off by its ±; lost ones left out. */
function playedAgain(
  { horn, setup, note, options, readings }: Asked,
  pad: string,
  leaks: Leaks,
  leaking: Resonance,
): { readonly lengths: readonly { reading: Reading; loss: LeakLoss }[]; readonly slit: LeakLoss | null } {
  const model = options.padModel ?? DEFAULT_PAD_MODEL;
  const { touches } = note.fingering;
  const play = (ends: ReadonlyMap<string, HoleEnd>): LeakLoss | null => {
    const outcome = followResonance(withHoleEnds(note.network, ends), leaking.frequency);
    return outcome.found ? lossBetween(note.resonance, outcome.resonance) : null;
  };
  const lengths = readings.list.flatMap((reading) => {
    const kind = SLIT_LENGTHS.find((length) => length === reading.kind);
    if (reading.id !== pad || kind === undefined || reading.plusMinus === 0) return [];
    const off = withLonger(horn, setup, pad, kind, reading.plusMinus);
    const loss = play(leakEndsIn(off.horn, off.setup, touches, leaks, model));
    return loss === null ? [] : [{ reading, loss }];
  });
  const ends = leakEndsIn(horn, setup, touches, leaks, model);
  return { lengths, slit: play(new Map([...ends].map(([id, end]) => [id, wider(end)]))) };
}

/** A slit that lets through more by its model's error. */
function wider(end: HoleEnd): HoleEnd {
  if (end.leak === undefined) return end;
  const stretches = end.leak.stretches.map((s) => ({ ...s, width: s.width * (1 + LEAK_ERROR) }));
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
