import { findFingering } from '../keywork/fingerings.ts';
import { withOpening, type Horn, type Setup } from '../horn.ts';
import type { PadModel } from '../holes/pad-models/pad-model.ts';
import type { AirColumn } from '../air/air.ts';
import { asItStands, type Readings, type Slopes } from './readings.ts';
import type { ProposedKey } from './proposal-reasons.ts';
import { budgetOf, combined, noteSlopes, shareSlopes, type Budget } from './uncertainty.ts';
import { playWholeHorn, type WholeHornOptions } from './whole-horn.ts';

/** Where enough is asked about. */
export interface EnoughThere {
  readonly horn: Horn;
  /** every pad as it is to stand */
  readonly setup: Setup;
  readonly air: AirColumn;
  readonly readings: Readings;
  readonly padModel: PadModel;
  readonly playing: Omit<WholeHornOptions, 'near' | 'answers' | 'fingerings'>;
  /** m, the step whose gain is asked about */
  readonly step: number;
}

/**
 * The ± of every pad's enough, m at the front: by the implicit function theorem as in venting-budgets.ts, with the
 * note, or the vent share, that decides it. Its own opening does not enter: enough does not depend on where it stands.
 *
 * @returns by pad id; none where enough is not within reach, or its note is lost there
 */
export function enoughBudgets(there: EnoughThere, keys: readonly ProposedKey[]): Map<string, Budget> {
  return new Map(
    keys.flatMap((key) => {
      const budget = enoughBudget(there, key);
      return budget === null ? [] : [[key.id, budget] as const];
    }),
  );
}

function enoughBudget(there: EnoughThere, { id, enough }: ProposedKey): Budget | null {
  if (!enough.reached) return null;
  const { step, readings, padModel } = there;
  const [here, next] = [enough.front, enough.front + step].map((front) =>
    gainingAt(there, id, enough.fingering, front),
  );
  if (here === null || next === null) return null;
  const gain = combined([
    [1, next],
    [-1, here],
  ]);
  const { front: perHeight = 0, ...rest } = gain.keys.get(id) ?? {};
  if (perHeight === 0) return null;
  const held = { ...gain, keys: new Map(gain.keys).set(id, rest) };
  return budgetOf(readings, combined([[-1 / perHeight, held]]), padModel);
}

/** Slopes of what decides with the pad at this front, all others where they stand; null where its note is lost. */
function gainingAt(there: EnoughThere, id: string, fingering: string | null, front: number): Slopes | null {
  const { horn, setup, air, playing, padModel } = there;
  const standing = asItStands(horn, setup);
  const raised = withOpening(standing.setup, id, { at: 'front', height: front });
  if (fingering === null) return shareSlopes(standing.horn, raised, id, padModel);
  const fingerings = [findFingering(fingering)!];
  const [{ outcome }] = playWholeHorn(standing.horn, raised, air, { ...playing, fingerings });
  return outcome.found && outcome.answers !== null ? noteSlopes(outcome.answers, 'cents') : null;
}
