import {
  asItStands,
  budgetOf,
  DEFAULT_PAD_MODEL,
  differenceBudget,
  FINGERINGS,
  noteSlopes,
  playWholeHorn,
  prepareReadings,
  uncalibrated,
  type AbsoluteParts,
  type Budget,
  type NoteAnswers,
  type PlusMinus,
  type Readings,
  type Setup,
  type Slopes,
} from '../../acoustics/index.ts';
import {
  reportBudget,
  reportNext,
  type BudgetReport,
  type NextReport,
} from '../../documents/uncertainty-report.ts';
import type { ProposedOpenings } from './scale-report.ts';
import { proposedSetup, type PreparedScale } from './whole-scale.ts';

/** The ± of one answer in cents, and what to measure next, the best first. */
export interface CentsSureness {
  readonly budget: BudgetReport;
  readonly next: readonly NextReport[];
}

/** How sure the whole horn is, in the report's order of fingerings. */
export interface ScaleSureness {
  /** of every pitch as found; null where the note is lost */
  readonly found: readonly (CentsSureness | null)[];
  /** of every move as proposed; null where a note is lost or nothing moves it */
  readonly moves: readonly (CentsSureness | null)[];
}

/** The same of a few fingerings in a row: a hand that starts to move waits for no more than these. */
export interface SurenessSlice extends ScaleSureness {
  /** the place of the first in the report's order */
  readonly from: number;
}

/** What is known of a horn's readings, and of the model of the whole. */
export interface ScaleKnowledge {
  readonly plusMinus: PlusMinus;
  readonly absolute: AbsoluteParts;
}

/** What is known before any note was played. */
export function beforePlaying(plusMinus: PlusMinus): ScaleKnowledge {
  return { plusMinus, absolute: uncalibrated };
}

/** So many fingerings are worked out at a time. */
const SLICE = 6;
/** More measurements than these are never proposed. */
const MOST_NEXT = 3;

/** Some notes of one setup, ready for their ±; null for one that is lost. */
type Played = readonly ({
  readonly cents: number;
  readonly answers: NoteAnswers;
  readonly slopes: Slopes;
  readonly readings: Readings;
} | null)[];

/** What no proposal changes. */
interface AsFound {
  readonly played: Played;
  readonly found: SurenessSlice['found'];
}

/** How sure a prepared horn is: `(proposed, from)` tells a few fingerings, of what is found and what moves. */
export type SurenessOf = (proposedMm: ProposedOpenings, from: number) => SurenessSlice;

/** Makes a horn's sureness ready; what no proposal changes is worked out once. */
export function makeSurenessOf(prepared: PreparedScale, knowledge: ScaleKnowledge): SurenessOf {
  const { horn, setup } = prepared;
  const { plusMinus, absolute } = knowledge;
  const padModel = DEFAULT_PAD_MODEL;
  const reported = (budget: Budget): CentsSureness => ({
    budget: reportBudget(horn, budget),
    next: reportNext(horn, budget).slice(0, MOST_NEXT),
  });
  const known = new Map<number, AsFound>();
  const asFound = (from: number): AsFound => {
    const played = play(prepared, setup, plusMinus, from);
    const found = played.map((note) =>
      note === null
        ? null
        : reported(budgetOf(note.readings, note.slopes, padModel, absolute(note.answers, 'cents'))),
    );
    known.set(from, { played, found });
    return { played, found };
  };
  return (proposedMm, from) => {
    const { played, found } = known.get(from) ?? asFound(from);
    const ids = Object.keys(proposedMm);
    if (ids.length === 0) return { from, found, moves: found.map(() => null) };
    // What is proposed is meant, not read.
    const meant = ids.map((id) => [id, { ...plusMinus.keys.get(id), opening: 0 }] as const);
    const keys = new Map([...plusMinus.keys, ...meant]);
    const proposed = play(prepared, proposedSetup(prepared, proposedMm), { ...plusMinus, keys }, from);
    const moves = proposed.map((after, i): CentsSureness | null => {
      const before = played[i];
      if (after === null || before === null || after.cents === before.cents) return null;
      return reported(differenceBudget({ ...before, padModel }, { ...after, padModel }, 'same horn'));
    });
    return { from, found, moves };
  };
}

/** Plays some notes where every pad stands, with all that moves them. */
function play(
  { horn, air, a4Hz, near }: PreparedScale,
  setup: Setup,
  plusMinus: PlusMinus,
  from: number,
): Played {
  const readings = prepareReadings(horn, setup, air, plusMinus);
  const standing = asItStands(horn, setup);
  const fingerings = FINGERINGS.slice(from, from + SLICE);
  return playWholeHorn(standing.horn, standing.setup, air, { a4: a4Hz, near, fingerings }).map(
    ({ outcome }) => {
      if (!outcome.found || outcome.answers === null) return null;
      const { cents, answers } = outcome;
      return { cents, answers, slopes: noteSlopes(answers, 'cents'), readings };
    },
  );
}
