import {
  airWith,
  calibrate,
  calibratedParts,
  findCauses,
  findFingering,
  hornWith,
  uncalibrated,
  UNKNOWNS,
  type AirColumn,
  type Calibration,
  type Cause,
  type Knowledge,
  type LoggedNote,
  type LoggedSetup,
  type Unknown,
} from '../acoustics/index.ts';
import { notesPlayed, PLAYED_SETUPS, type PlayedNote, type PlayedSetup, type Take } from './pitch-log.ts';
import { plusMinusOf, withoutTheDay } from './plus-minus.ts';
import type { ReadOutcome } from './schema-parts.ts';
import type { SetupDocument } from './setup-document.ts';
import { loadSetupOver, type LoadedHorn } from './to-acoustics.ts';

/**
 * A horn calibrated to its pitch log. Nothing of it is stored: the fit is worked out from the takes whenever it
 * is needed.
 */

/** What is fitted, and to what. */
export interface CalibrationSource {
  readonly takes: readonly Take[];
  readonly unknowns: readonly Unknown[];
  /** sparse, read over as found */
  readonly asSet: SetupDocument;
}

/** The air and the tuning of the day the notes were played. */
export interface PlayedDay {
  readonly air: AirColumn;
  readonly a4Hz: number;
}

/** A fit with what it was fitted to. */
export interface CalibratedVisit {
  readonly calibration: Calibration;
  readonly played: readonly LoggedSetup[];
  /** in the order of the calibration's notes */
  readonly log: readonly { readonly setup: PlayedSetup; readonly note: PlayedNote }[];
}

/**
 * How a player repeats one note in a session, cents: no take counts as surer.
 *
 * **Source:** common practice, no source; from memory, ±3–5 cents.
 */
export const REPEAT_CENTS = 3;

/** What is fitted where nobody chose: the player's trend is for those who ask for it. */
export const USUAL_UNKNOWNS: readonly Unknown[] = UNKNOWNS.filter((unknown) => unknown !== 'player’s trend');

/** The middle of several takes is that much less sure than their mean, for normal errors. */
const MEDIAN_WIDER = Math.sqrt(Math.PI / 2);

/**
 * The ± of one fingering's takes together, cents: their spread by the root of their number, or the spread within
 * a single one; never below {@link REPEAT_CENTS}.
 */
export function plusMinusOfNote({ takes, count, spreadCents }: PlayedNote): number {
  const within = takes.filter(({ leftOut }) => leftOut !== true).map((take) => take.spreadCents ?? 0);
  const single = Math.max(spreadCents ?? 0, ...(count === 1 ? within : []));
  return Math.max(REPEAT_CENTS, ((count > 2 ? MEDIAN_WIDER : 1) * single) / Math.sqrt(Math.max(1, count)));
}

/**
 * Fits a visit's log. @param found the horn as found
 *
 * @returns every issue of the setup it leaves with, where takes were played in that
 */
export function calibrateVisit(
  found: LoadedHorn,
  source: CalibrationSource,
  { air, a4Hz }: PlayedDay,
): ReadOutcome<CalibratedVisit> {
  const log: { setup: PlayedSetup; note: PlayedNote }[] = [];
  const played: LoggedSetup[] = [];
  for (const setup of PLAYED_SETUPS) {
    const notes = notesPlayed(source.takes.filter((take) => take.setup === setup)).filter(
      ({ count }) => count > 0,
    );
    if (notes.length === 0) continue;
    const loaded =
      setup === 'as found' ? { ok: true as const, value: found } : loadSetupOver(found, source.asSet);
    if (!loaded.ok) return loaded;
    log.push(...notes.map((note) => ({ setup, note })));
    played.push({ horn: loaded.value.horn, setup: loaded.value.setup, notes: notes.map(loggedNote) });
  }
  const calibration = calibrate(played, air, source.unknowns, { a4: a4Hz });
  return { ok: true, value: { calibration, played, log } };
}

function loggedNote(note: PlayedNote): LoggedNote {
  return {
    fingering: findFingering(note.fingering)!,
    cents: note.cents!,
    plusMinus: plusMinusOfNote(note),
  };
}

/** Which keys could explain what the fit leaves, by place in the calibration's notes. */
export function causesOf(
  { calibration, played }: CalibratedVisit,
  { air, a4Hz }: PlayedDay,
): ReadonlyMap<number, readonly Cause[]> {
  return findCauses(calibration, played, air, { a4: a4Hz });
}

/** A horn and its air to be asked for pitches, and how well both are known. */
export interface HornInAir {
  readonly loaded: LoadedHorn;
  readonly air: AirColumn;
  readonly knowledge: Required<Knowledge>;
}

/** A horn as it is described, or as its log says. @param calibration null as long as none is in use */
export function hornInAir(loaded: LoadedHorn, air: AirColumn, calibration: Calibration | null): HornInAir {
  const plusMinus = plusMinusOf(loaded);
  if (calibration === null) return { loaded, air, knowledge: { plusMinus, absolute: uncalibrated } };
  return {
    loaded: { ...loaded, horn: hornWith(loaded.horn, calibration.amounts) },
    air: airWith(air, calibration.amounts),
    knowledge: { plusMinus: withoutTheDay(plusMinus), absolute: calibratedParts(calibration) },
  };
}
