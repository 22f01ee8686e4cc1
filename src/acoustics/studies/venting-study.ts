import type { AirColumn } from '../air/air.ts';
import type { Horn, Setup } from '../horn.ts';
import {
  DEFAULT_THRESHOLDS,
  findDiminishingReturn,
  type DiminishingReturn,
  type ReturnThresholds,
} from './diminishing-return.ts';
import type { Knowledge } from './scale-budgets.ts';
import { ventingBudgets, type VentingBudgets } from './venting-budgets.ts';
import {
  heldDownBy,
  LEAST_OPENING,
  prepareVenting,
  ventingAt,
  withParallelPad,
  type HeldDown,
  type VentingContext,
  type VentingOptions,
  type VentingPoint,
} from './venting.ts';

/** The whole answer for one key: the curve, where it stands, where more height stops helping. */
export interface VentingStudy {
  readonly context: VentingContext;
  /** the key as it stands, links considered */
  readonly present: VentingPoint;
  /** evenly spaced front openings from the least to the reach */
  readonly curve: readonly VentingPoint[];
  /** the same front openings with a pad that rises parallel to the rim: what tilt costs */
  readonly parallelCurve: readonly VentingPoint[];
  /** the key as it stands, were its pad parallel at the same front opening */
  readonly presentParallel: VentingPoint;
  readonly diminishingReturn: DiminishingReturn;
  /** how sure all this is */
  readonly budgets: VentingBudgets;
  readonly thresholds: ReturnThresholds;
  /** pads whose arms this key would hold down if set lower */
  readonly holdsDown: readonly HeldDown[];
  /** sentences for the technician: where the answer leaves a model's range, and what was left out */
  readonly warnings: readonly string[];
}

/** Choices about the study. */
export interface VentingStudyOptions extends VentingOptions, Knowledge {
  readonly thresholds?: ReturnThresholds;
  /** how many openings the curve has, default 41 */
  readonly points?: number;
}

/** Runs the venting study for one key. See venting.ts and diminishing-return.ts for the definitions. */
export function studyVenting(
  horn: Horn,
  setup: Setup,
  id: string,
  air: AirColumn,
  options: VentingStudyOptions = {},
): VentingStudy {
  const context = prepareVenting(horn, setup, id, air, options);
  const thresholds = options.thresholds ?? DEFAULT_THRESHOLDS;
  const points = options.points ?? 41;
  const fronts = Array.from(
    { length: points },
    (_, i) => LEAST_OPENING + ((context.reach - LEAST_OPENING) * i) / (points - 1),
  );
  const parallel = withParallelPad(context);
  const presentFront = Math.min(context.standing.pose.front, context.reach);
  const present = ventingAt(context, presentFront);
  const diminishingReturn = findDiminishingReturn(context, thresholds);
  const shown = diminishingReturn.kind === 'none in reach' ? [] : diminishingReturn.at.end.warnings;
  const warnings = [...new Set([...present.end.warnings, ...shown, ...air.warnings])];
  if (context.governed.length === 0) warnings.push('No note moves by more than a cent when this key moves.');
  return {
    context,
    present,
    curve: fronts.map((front) => ventingAt(context, front)),
    parallelCurve: fronts.map((front) => ventingAt(parallel, front)),
    presentParallel: ventingAt(parallel, presentFront),
    diminishingReturn,
    budgets: ventingBudgets(context, diminishingReturn, thresholds, air, options),
    thresholds,
    holdsDown: heldDownBy(horn, setup, id),
    warnings,
  };
}
