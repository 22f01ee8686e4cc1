import type { AirColumn } from '../air/air.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { Horn, Setup } from '../horn.ts';
import type { Proposal } from './proposal.ts';
import { asItStands, EXACT, prepareReadings, type PlusMinus } from './readings.ts';
import { combined, differenceBudget, noteSlopes, type AnswerThere, type Budget } from './uncertainty.ts';
import { playWholeHorn, type WholeHornOptions } from './whole-horn.ts';

/** How sure it is what a proposal does to the pitch: differences on one horn. */
export interface ProposalBudgets {
  /** of each note's change, cents, by fingering id */
  readonly notes: ReadonlyMap<string, Budget>;
  /** of the spread's change, cents */
  readonly spread: Budget;
}

/**
 * The ± of what a proposal changes, from as found to as proposed.
 *
 * The spread S = √(Σ w·a²/Σ w) has the slope w·a/(S·Σ w) per cent of a note that stands a from its mean.
 *
 * @throws RangeError for a ± that is negative or no number
 */
export function proposalBudgets(
  horn: Horn,
  found: Setup,
  proposal: Proposal,
  air: AirColumn,
  options: Omit<WholeHornOptions, 'near' | 'answers' | 'fingerings'> & {
    readonly plusMinus?: PlusMinus;
  } = {},
): ProposalBudgets {
  const { plusMinus = EXACT, ...playing } = options;
  const padModel = playing.padModel ?? DEFAULT_PAD_MODEL;
  const fingerings = proposal.notes.map(({ fingering }) => fingering);
  const [was, is] = [found, proposal.setup].map((setup) => {
    const standing = asItStands(horn, setup);
    const played = playWholeHorn(standing.horn, standing.setup, air, { ...playing, fingerings });
    const slopes = new Map(
      played.flatMap(({ fingering, outcome }) =>
        outcome.found && outcome.answers !== null
          ? [[fingering.id, noteSlopes(outcome.answers, 'cents')] as const]
          : [],
      ),
    );
    return { readings: prepareReadings(horn, setup, air, plusMinus), slopes };
  });
  const there = ({ readings }: typeof was, slopes: AnswerThere['slopes']): AnswerThere => ({
    readings,
    slopes,
    padModel,
  });
  const weights = proposal.notes.reduce((sum, { weight }) => sum + weight, 0);
  const spreadOf = (played: typeof was, at: 'found' | 'proposed'): AnswerThere =>
    there(
      played,
      combined(
        proposal.notes.flatMap(({ fingering, weight, [at]: { about } }) => {
          const slopes = played.slopes.get(fingering.id);
          const spread = proposal.spread[at];
          return slopes === undefined || spread === 0
            ? []
            : [[(weight * about) / (spread * weights), slopes] as const];
        }),
      ),
    );
  const notes = fingerings.flatMap(({ id }) => {
    const [a, b] = [was.slopes.get(id), is.slopes.get(id)];
    return a === undefined || b === undefined
      ? []
      : [[id, differenceBudget(there(was, a), there(is, b), 'same horn')] as const];
  });
  return {
    notes: new Map(notes),
    spread: differenceBudget(spreadOf(was, 'found'), spreadOf(is, 'proposed'), 'same horn'),
  };
}
