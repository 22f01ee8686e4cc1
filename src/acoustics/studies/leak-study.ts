import type { AirColumn } from '../air/air.ts';
import { gapsIn, leakEndsIn, type Leaks, type PadGap } from '../holes/leak-ends.ts';
import { widestGap } from '../holes/leak-gap.ts';
import { WIDEST_LEAK } from '../holes/leak-slit.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { HoleEnd } from '../holes/hole-tube.ts';
import { holeOf, type Horn, type Setup } from '../horn.ts';
import { centsBetween, FINGERINGS, noteFrequency, type Fingering } from '../keywork/fingerings.ts';
import { findThreshold } from '../numerics/find-root.ts';
import { makeNetwork, withHoleEnds, type Network, type NetworkOptions } from '../network/network.ts';
import { followResonance, resonanceNear, type NoteOutcome, type Resonance } from '../resonance/resonances.ts';
import { decibelsBetween } from './decibels.ts';

/**
 * The leak study: some pads do not seal, and every note that shuts one of them is played with and without.
 *
 *   lost height in dB   20 log₁₀(height sealed / height leaking), heights as peak impedance
 */
export interface LeakOptions extends Omit<NetworkOptions, 'leaks'> {
  /** Hz, sounding A4, default 440 */
  readonly a4?: number;
  readonly fingerings?: readonly Fingering[];
}

/** One note with a leak. */
export interface LeakingNote {
  readonly fingering: Fingering;
  /** pads that leak in it, with the gap of each */
  readonly gaps: ReadonlyMap<string, PadGap>;
  /** Hz, equal temperament */
  readonly target: number;
  /** all pads sealing */
  readonly sealed: Resonance;
  readonly played:
    | { readonly found: true; readonly resonance: Resonance; readonly loss: LeakLoss }
    | { readonly found: false; readonly reason: string };
}

/** What a leak does to a note. */
export interface LeakLoss {
  /** change of pitch */
  readonly cents: number;
  /** dB of height lost, ≥ 0 as a rule */
  readonly lostDb: number;
  /** s, change of the rise time: less is a resonance that carries less */
  readonly riseTime: number;
}

/** A leak on every note it touches, in the order of the fingerings, and what to know about it. */
export interface LeakStudy {
  readonly notes: readonly LeakingNote[];
  readonly warnings: readonly string[];
}

/** Plays every note that a leak touches. @throws RangeError for a pad or link the horn does not have */
export function studyLeak(
  horn: Horn,
  setup: Setup,
  leaks: Leaks,
  air: AirColumn,
  options: LeakOptions = {},
): LeakStudy {
  const notes = (options.fingerings ?? FINGERINGS).flatMap((fingering) => {
    const sealed = sealedNote(horn, setup, fingering, air, options);
    return sealed === null ? [] : (leakingNote(horn, setup, leaks, sealed, options) ?? []);
  });
  return { notes, warnings: warningsFor(horn, notes) };
}

/** A note with all pads sealing, to be played with leaks. */
export interface SealedNote {
  readonly fingering: Fingering;
  readonly target: number;
  readonly network: Network;
  readonly resonance: Resonance;
}

/** A note with all pads sealing; null where it has no resonance. */
export function sealedNote(
  horn: Horn,
  setup: Setup,
  fingering: Fingering,
  air: AirColumn,
  options: LeakOptions,
): SealedNote | null {
  const target = noteFrequency(fingering.note, horn.transposition, options.a4);
  const network = makeNetwork(horn, setup, fingering, air, options);
  const outcome = resonanceNear(network, target);
  return outcome.found ? { fingering, target, network, resonance: outcome.resonance } : null;
}

/** The note with leaks; null where none of them acts in its fingering. */
export function leakingNote(
  horn: Horn,
  setup: Setup,
  leaks: Leaks,
  { fingering, target, network, resonance: sealed }: SealedNote,
  options: LeakOptions,
): LeakingNote | null {
  const gaps = gapsIn(horn, setup, fingering.touches, leaks);
  if (gaps.size === 0) return null;
  const ends = leakEndsIn(horn, setup, fingering.touches, leaks, options.padModel ?? DEFAULT_PAD_MODEL);
  const outcome = followLeak(network, ends, sealed);
  const note = { fingering, gaps, target, sealed };
  if (!outcome.found) return { ...note, played: outcome };
  const { resonance } = outcome;
  return { ...note, played: { found: true, resonance, loss: lossBetween(sealed, resonance) } };
}

/** What a leak did to a note, from its resonance sealed and leaking. */
export function lossBetween(sealed: Resonance, leaking: Resonance): LeakLoss {
  return {
    cents: centsBetween(sealed.frequency, leaking.frequency),
    lostDb: decibelsBetween(leaking.height, sealed.height),
    riseTime: leaking.riseTime - sealed.riseTime,
  };
}

/** Cents: a leak that moves a note further than this at once is opened in steps, so that it stays the same resonance. */
const SURE_CENTS = 20;
const STEPS = 8;

/** The note's resonance after its pads have begun to leak. */
function followLeak(network: Network, ends: ReadonlyMap<string, HoleEnd>, sealed: Resonance): NoteOutcome {
  const direct = followResonance(withHoleEnds(network, ends), sealed.frequency);
  if (direct.found && Math.abs(centsBetween(sealed.frequency, direct.resonance.frequency)) < SURE_CENTS) {
    return direct;
  }
  let near = sealed.frequency;
  for (let step = 1; step <= STEPS; step++) {
    const part = new Map([...ends].map(([id, end]) => [id, partOf(end, step / STEPS)]));
    const outcome = followResonance(withHoleEnds(network, part), near);
    if (!outcome.found) return outcome;
    if (step === STEPS) return outcome;
    near = outcome.resonance.frequency;
  }
  return direct;
}

/** A leak with its gaps scaled; an open pad's end is taken as it is. */
function partOf(end: HoleEnd, share: number): HoleEnd {
  if (end.leak === undefined || share === 1) return end;
  const stretches = end.leak.stretches.map((s) => ({ ...s, gap: s.gap * share }));
  return { ...end, leak: { ...end.leak, stretches } };
}

function warningsFor(horn: Horn, notes: readonly LeakingNote[]): string[] {
  const wide = new Map<string, number>();
  for (const { gaps } of notes) {
    for (const [id, { gap }] of gaps) wide.set(id, Math.max(wide.get(id) ?? 0, widestGap(gap)));
  }
  return [...wide].flatMap(([id, gap]) => {
    const limit = WIDEST_LEAK * holeOf(horn, id).holeRadius;
    if (gap <= limit) return [];
    return [
      `The gap under ${holeOf(horn, id).name} is ${mm(gap)} mm; leaks are reckoned up to ${mm(limit)} mm on this hole, beyond that the pad stands open.`,
    ];
  });
}

function mm(metres: number): string {
  return (metres * 1000).toFixed(2);
}

/** The largest leak a note bears, or why there is none to give. */
export type LargestLeak =
  | { readonly found: true; readonly gap: number; readonly note: LeakingNote }
  | { readonly found: false; readonly reason: string };

/** m: gaps the search looks between. */
const LEAST_GAP = 1e-6;
/** m, how fine the search ends. */
const FINEST_GAP = 1e-8;
const SEARCH_STEPS = 24;

/**
 * The gap at which a note has lost so many dB of height: how far out of regulation a pad may be.
 *
 * The first crossing from below is meant: a gap wide enough to be an opening may give another note its height
 * back.
 *
 * @param leaksAt what leaks at a gap, m
 * @param ask     the note, dB > 0, and how far to look, m (default 0.5 mm)
 */
export function findLargestLeak(
  horn: Horn,
  setup: Setup,
  leaksAt: (gap: number) => Leaks,
  air: AirColumn,
  ask: {
    readonly fingering: Fingering;
    readonly lostDb: number;
    readonly widest?: number;
    readonly options?: LeakOptions;
  },
): LargestLeak {
  const { fingering, lostDb, widest = 0.5e-3, options = {} } = ask;
  if (!(lostDb > 0)) throw new RangeError(`invalid lost height: ${lostDb} dB; expected more than 0 dB`);
  const sealed = sealedNote(horn, setup, fingering, air, options);
  if (sealed === null) return { found: false, reason: `${fingering.id} has no resonance` };
  const at = (gap: number): LeakingNote | null => leakingNote(horn, setup, leaksAt(gap), sealed, options);
  if (at(widest) === null) {
    return {
      found: false,
      reason: `${fingering.id} is not touched: it does not shut the pad, or shuts it well by another way`,
    };
  }
  const lost = (gap: number): boolean => {
    const played = at(gap)?.played;
    return played !== undefined && (!played.found || played.loss.lostDb >= lostDb);
  };
  // Gaps in equal ratios up to the first that loses enough, then bisection.
  const ratio = (widest / LEAST_GAP) ** (1 / SEARCH_STEPS);
  for (let i = 0; i <= SEARCH_STEPS; i++) {
    const above = i === SEARCH_STEPS ? widest : LEAST_GAP * ratio ** i;
    if (!lost(above)) continue;
    const gap = i === 0 ? above : findThreshold(lost, above / ratio, above, FINEST_GAP)!;
    return { found: true, gap, note: at(gap)! };
  }
  const most = at(widest)!.played;
  const there = most.found ? `${most.loss.lostDb.toFixed(1)} dB` : 'the note';
  return { found: false, reason: `${fingering.id} loses only ${there} at ${mm(widest)} mm` };
}
