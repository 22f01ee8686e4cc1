import type { AirColumn } from '../air/air.ts';
import { ownPose } from '../holes/pad-over-hole.ts';
import { withOpening } from '../horn.ts';
import type { CalibratedNote, Calibration, LoggedSetup } from './calibration.ts';
import { airWith, hornWith } from './calibration-unknowns.ts';
import { playWholeHorn, type WholeHornOptions } from './whole-horn.ts';

/**
 * Which key's venting could explain what a fit leaves of a note.
 *
 * For one key at a time: the change of its own stop that brings all notes it governs closest to how they were
 * played, in the sum of squares over their ±; links followed, every trial played in full. It could explain a note
 * where it brings that note within its ±, and the sum falls by more than chance would have it. That it does, no
 * log can tell.
 */
export interface Cause {
  /** hole id of the key */
  readonly key: string;
  /** m at the front that its stop would stand higher than described */
  readonly change: number;
  /** m, how well the notes it governs tell that: their ± only, all else as fitted */
  readonly plusMinus: number;
  /** cents left of the note then */
  readonly left: number;
  /** by how much the sum of squares over all notes it governs falls */
  readonly gain: number;
  /** fingering ids of the notes it governs that were played */
  readonly governs: readonly string[];
}

/** How much higher a stop may be thought, m, and the least of an opening that must be left; ours. */
const MOST_HIGHER = 3e-3;
const LEAST_LEFT = 0.1;

/** The sum of squares must fall by this much: one chance in a hundred for a key that stands as described; ours. */
const LEAST_GAIN = 6.6;

/** A note that answers to a stop by less does not belong to it, cents per mm. */
const GOVERNED = 0.2;

const MOST_STEPS = 12;
/** m */
const LAST_STEP = 1e-6;

/**
 * Keys that could explain each note that is off by more than its ±, the best first; none where none could.
 *
 * @returns by place in `calibration.notes`; a note within its ± has no entry
 */
export function findCauses(
  calibration: Calibration,
  played: readonly LoggedSetup[],
  air: AirColumn,
  options: Omit<WholeHornOptions, 'answers' | 'fingerings' | 'near'> = {},
): Map<number, Cause[]> {
  const causes = new Map<number, Cause[]>();
  calibration.notes.forEach(({ fit }, i) => {
    if (fit !== null && Math.abs(fit.residual) > fit.plusMinus) causes.set(i, []);
  });
  const there = airWith(air, calibration.amounts);
  played.forEach((one, setup) => {
    const horn = hornWith(one.horn, calibration.amounts);
    for (const hole of horn.holes) {
      if (hole.hinge === null) continue;
      const governed = calibration.notes.flatMap((note, i) =>
        note.setup === setup && note.fit !== null && answerTo(note, hole.id) !== 0 ? [i] : [],
      );
      // A note left out of the fit is judged with the rest, but the rest without it.
      const isLeftOut = (i: number): boolean => calibration.notes[i].standing === 'left out';
      const rest = governed.filter((i) => !isLeftOut(i));
      for (const together of [rest, ...governed.filter(isLeftOut).map((i) => [...rest, i])]) {
        const asked = together.filter((i) => causes.has(i) && (together === rest || isLeftOut(i)));
        if (asked.length === 0) continue;
        const notes = together.map((i) => calibration.notes[i]);
        const best = bestChange({ ...one, horn }, there, hole.id, notes, options);
        if (best === null || !(best.gain > LEAST_GAIN)) continue;
        const governs = notes.map(({ note }) => note.fingering.id);
        for (const i of asked) {
          const left = best.left[together.indexOf(i)];
          if (!(Math.abs(left) <= calibration.notes[i].fit!.plusMinus)) continue;
          const { change, plusMinus } = best;
          causes.get(i)!.push({ key: hole.id, change, plusMinus, left, gain: best.gain, governs });
        }
      }
    }
  });
  for (const found of causes.values()) found.sort((a, b) => b.gain - a.gain);
  return causes;
}

/** cents per m of a key's own stop; 0 where the note hardly hears it */
function answerTo({ fit }: CalibratedNote, key: string): number {
  const slope = fit!.answers.keys.find(({ id }) => id === key)!.opening.cents;
  return Math.abs(slope) * 1e-3 < GOVERNED ? 0 : slope;
}

/** The change of one stop that serves all its notes best, by Gauss's steps between its ends, halved where they overshoot. */
function bestChange(
  { horn, setup }: LoggedSetup,
  air: AirColumn,
  key: string,
  notes: readonly CalibratedNote[],
  options: Omit<WholeHornOptions, 'answers' | 'fingerings' | 'near'>,
): Change | null {
  const front = ownPose(horn, setup, key).front;
  const [least, most] = [(LEAST_LEFT - 1) * front, MOST_HIGHER];
  const fingerings = notes.map(({ note }) => note.fingering);
  const residuals = notes.map(({ fit }) => fit!.residual);
  const at = (change: number): Trial | null => {
    const moved = withOpening(setup, key, { at: 'front', height: front + change });
    const heard = playWholeHorn(horn, moved, air, { ...options, fingerings });
    const cents = heard.map(({ outcome }) => (outcome.found ? outcome : null));
    if (cents.includes(null)) return null;
    const left = cents.map((now, n) => residuals[n] - (now!.cents - asPlayed[n]));
    const slopes = cents.map((now) => now!.answers!.keys.find(({ id }) => id === key)!.opening.cents);
    return { change, left, slopes, sum: sumOf(left, notes) };
  };
  // Without the player's trend, which no key explains.
  const asPlayed = playWholeHorn(horn, setup, air, { ...options, fingerings, answers: false }).map(
    ({ outcome }) => (outcome.found ? outcome.cents : NaN),
  );
  const first = at(0);
  if (first === null) return null;
  let best = first;
  for (let i = 0; i < MOST_STEPS; i++) {
    const wanted = best.change + gaussStep(best, notes);
    let step = Math.min(Math.max(wanted, least), most) - best.change;
    let next = at(best.change + step);
    while (Math.abs(step) > LAST_STEP && (next === null || next.sum > best.sum)) {
      step /= 2;
      next = at(best.change + step);
    }
    if (next === null || !(next.sum < best.sum)) break;
    best = next;
    if (Math.abs(step) <= LAST_STEP) break;
  }
  const { change, left } = best;
  return { change, plusMinus: 1 / Math.sqrt(squaresOf(best, notes)), left, gain: first.sum - best.sum };
}

/** The best change of one stop, and what it comes to. */
interface Change extends Pick<Cause, 'change' | 'plusMinus' | 'gain'> {
  /** cents, of each note */
  readonly left: readonly number[];
}

interface Trial {
  readonly change: number;
  readonly left: readonly number[];
  readonly slopes: readonly number[];
  readonly sum: number;
}

function sumOf(left: readonly number[], notes: readonly CalibratedNote[]): number {
  return left.reduce((sum, cents, n) => sum + (cents / notes[n].fit!.plusMinus) ** 2, 0);
}

function gaussStep(trial: Trial, notes: readonly CalibratedNote[]): number {
  const { left, slopes } = trial;
  const up = slopes.reduce((sum, slope, n) => sum + weightOf(notes[n]) * slope * left[n], 0);
  const square = squaresOf(trial, notes);
  return square > 0 ? up / square : 0;
}

/** Squares of the slopes by the notes' weights: one over the variance of a change fitted to them. */
function squaresOf({ slopes }: Trial, notes: readonly CalibratedNote[]): number {
  return slopes.reduce((sum, slope, n) => sum + weightOf(notes[n]) * slope * slope, 0);
}

const weightOf = ({ fit }: CalibratedNote): number => fit!.plusMinus ** -2;
