import type { AirColumn } from '../air/air.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { PadModel } from '../holes/pad-models/pad-model.ts';
import { withOpening } from '../horn.ts';
import type { DiminishingReturn, ReturnThresholds } from './diminishing-return.ts';
import { asItStands, EXACT, prepareReadings, type Readings, type Slopes } from './readings.ts';
import type { Knowledge } from './scale-budgets.ts';
import {
  budgetOf,
  combined,
  differenceBudget,
  frontSlopes,
  noteSlopes,
  shareSlopes,
  uncalibrated,
  type Budget,
} from './uncertainty.ts';
import type { VentingContext } from './venting.ts';
import { playWholeHorn, type NoteAnswers } from './whole-horn.ts';

/**
 * How sure the answers of a venting study are.
 *
 * The point of diminishing return h is where the next step s of height buys just what the threshold asks:
 *
 *   G(h, q) = g(h + s, q) − g(h, q) − threshold = 0      g the deciding note's cents, or the vent share
 *   dh/dq = −(∂G/∂q)/(∂G/∂h)
 *
 * with every ∂g exact at both openings. Its own key's opening does not enter: the point does not depend on where
 * the key stands now. **Source:** ours, by the implicit function theorem; checked by moving each reading in the tests.
 * **Holds for:** readings off so little that the same note goes on deciding.
 */
export interface VentingBudgets {
  /** of the key as it stands: its front, m, and its vent share */
  readonly front: Budget;
  readonly ventShare: Budget;
  /** of the point of diminishing return, m at the front; null where there is none, or the least opening decides */
  readonly diminishingReturn: Budget | null;
  /** by fingering id of every governed note as it stands: of its pitch, cents */
  readonly notes: ReadonlyMap<string, Budget>;
  /** by fingering id: of its change from where the key stands to the point of diminishing return, cents */
  readonly changes: ReadonlyMap<string, Budget>;
  /** the same of the logarithm of its resonance's height */
  readonly heights: ReadonlyMap<string, Budget>;
}

/** One governed key, ready for the budgets. */
interface Asked {
  readonly context: VentingContext;
  readonly air: AirColumn;
  readonly readings: Readings;
  readonly padModel: PadModel;
}

/** How sure the answers of a prepared key are. */
export function ventingBudgets(
  context: VentingContext,
  found: DiminishingReturn,
  thresholds: ReturnThresholds,
  air: AirColumn,
  { plusMinus = EXACT, absolute = uncalibrated }: Knowledge,
): VentingBudgets {
  const { horn, setup, hole, standing } = context;
  const padModel = context.options.padModel ?? DEFAULT_PAD_MODEL;
  const asked = { context, air, padModel, readings: prepareReadings(horn, setup, air, plusMinus) };
  const sure = (slopes: Slopes): Budget => budgetOf(asked.readings, slopes, padModel);
  const now = answersAt(asked, standing.pose.front);
  const then =
    found.kind === 'none in reach' ? new Map<string, NoteAnswers>() : answersAt(asked, found.at.pose.front);
  return {
    front: sure(frontSlopes(hole.id)),
    ventShare: sure(shareSlopes(horn, setup, hole.id, padModel)),
    diminishingReturn: returnBudget(asked, found, thresholds),
    notes: new Map(
      [...now].map(([id, answers]) => [
        id,
        budgetOf(asked.readings, noteSlopes(answers, 'cents'), padModel, absolute(answers, 'cents')),
      ]),
    ),
    changes: changesBetween(asked, now, then, 'cents'),
    heights: changesBetween(asked, now, then, 'logHeight'),
  };
}

/**
 * How sure the governed notes’ changes are from where a prepared key stands to any front opening, by fingering id.
 *
 * @returns takes m at the front, gives cents
 */
export function prepareChangeBudgets(
  context: VentingContext,
  air: AirColumn,
  { plusMinus = EXACT }: Knowledge,
): (front: number) => ReadonlyMap<string, Budget> {
  const { horn, setup, standing, options } = context;
  const readings = prepareReadings(horn, setup, air, plusMinus);
  const asked = { context, air, padModel: options.padModel ?? DEFAULT_PAD_MODEL, readings };
  let now: ReadonlyMap<string, NoteAnswers> | null = null;
  return (front) => {
    now ??= answersAt(asked, standing.pose.front);
    return changesBetween(asked, now, answersAt(asked, front), 'cents');
  };
}

/** Of every note’s change from where the key stands to another opening. */
function changesBetween(
  { context, readings, padModel }: Asked,
  now: ReadonlyMap<string, NoteAnswers>,
  then: ReadonlyMap<string, NoteAnswers>,
  of: 'cents' | 'logHeight',
): Map<string, Budget> {
  const there = { readings, padModel };
  return new Map(
    [...then].flatMap(([id, answers]) => {
      const before = now.get(id);
      if (before === undefined) return [];
      // The opening aimed at is meant, not read: only where the key stands now is off by its reading.
      const slopes = frontHeld(noteSlopes(answers, of), context.hole.id);
      const first = { ...there, slopes: noteSlopes(before, of) };
      return [[id, differenceBudget(first, { ...there, slopes }, 'same horn')] as const];
    }),
  );
}

function returnBudget(asked: Asked, found: DiminishingReturn, { step }: ReturnThresholds): Budget | null {
  if (found.kind === 'none in reach' || found.decidedBy.by === 'least opening') return null;
  const { id } = asked.context.hole;
  const { front } = found.at.pose;
  const slopesAt = (height: number): Slopes | undefined => {
    if (found.decidedBy.by === 'vent share') return shareSlopesAt(asked, height);
    const answers = answersAt(asked, height).get((found.decidedBy as { fingering: string }).fingering);
    return answers === undefined ? undefined : noteSlopes(answers, 'cents');
  };
  const [here, next] = [slopesAt(front), slopesAt(front + step)];
  if (here === undefined || next === undefined) return null;
  const gain = combined([
    [1, next],
    [-1, here],
  ]);
  const perHeight = gain.keys.get(id)?.front ?? 0;
  if (perHeight === 0) return null;
  return budgetOf(asked.readings, combined([[-1 / perHeight, frontHeld(gain, id)]]), asked.padModel);
}

/** The slopes with one pad's front held. */
function frontHeld(slopes: Slopes, id: string): Slopes {
  const { front: _, ...rest } = slopes.keys.get(id) ?? {};
  return { ...slopes, keys: new Map(slopes.keys).set(id, rest) };
}

/** Answers of every governed note with the key standing at a front opening, all other pads where they are. */
function answersAt({ context, air }: Asked, front: number): Map<string, NoteAnswers> {
  const { governed, options } = context;
  const standing = standingAt(context, front);
  const notes = playWholeHorn(standing.horn, standing.setup, air, {
    ...options,
    fingerings: governed.map(({ fingering }) => fingering),
    near: new Map(governed.map(({ fingering, present }) => [fingering.id, present.frequency])),
  });
  return new Map(
    notes.flatMap(({ fingering, outcome }) =>
      outcome.found && outcome.answers !== null ? [[fingering.id, outcome.answers] as const] : [],
    ),
  );
}

function shareSlopesAt({ context, padModel }: Asked, front: number): Slopes {
  const standing = standingAt(context, front);
  return shareSlopes(standing.horn, standing.setup, context.hole.id, padModel);
}

function standingAt({ horn, setup, hole }: VentingContext, front: number): ReturnType<typeof asItStands> {
  const standing = asItStands(horn, setup);
  return { ...standing, setup: withOpening(standing.setup, hole.id, { at: 'front', height: front }) };
}
