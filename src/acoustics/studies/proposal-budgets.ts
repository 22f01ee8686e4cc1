import type { AirColumn } from '../air/air.ts';
import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { Horn, Setup } from '../horn.ts';
import { DEFAULT_THRESHOLDS, type ReturnThresholds } from './diminishing-return.ts';
import { enoughBudgets } from './enough-budgets.ts';
import type { Proposal } from './proposal.ts';
import { asItStands, EXACT, prepareReadings, type PlusMinus } from './readings.ts';
import type { Knowledge } from './scale-budgets.ts';
import {
  budgetOf,
  combined,
  differenceBudget,
  noteSlopes,
  uncalibrated,
  type AnswerThere,
  type Budget,
} from './uncertainty.ts';
import { playWholeHorn, type WholeHornOptions } from './whole-horn.ts';

/** How sure a proposal is: what it does to the pitch, as differences on one horn, and where height stops helping. */
export interface ProposalBudgets {
  /** of each note's change, cents, by fingering id */
  readonly notes: ReadonlyMap<string, Budget>;
  /** of each note's pitch by itself, cents */
  readonly found: ReadonlyMap<string, Budget>;
  readonly proposed: ReadonlyMap<string, Budget>;
  /** of every pad's enough, m at the front, by pad id; none where it is not within reach */
  readonly enough: ReadonlyMap<string, Budget>;
  /** of the spread's change, cents */
  readonly spread: Budget;
}

/**
 * The ± of what a proposal changes, from as found to as proposed.
 *
 * An opening that is moved is meant: as proposed only what was read elsewhere may be off.
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
  options: Omit<WholeHornOptions, 'near' | 'answers' | 'fingerings'> &
    Knowledge & { readonly thresholds?: ReturnThresholds } = {},
): ProposalBudgets {
  const { plusMinus = EXACT, absolute = uncalibrated, thresholds = DEFAULT_THRESHOLDS, ...playing } = options;
  const meant = withMeant(plusMinus, proposal);
  const padModel = playing.padModel ?? DEFAULT_PAD_MODEL;
  const fingerings = proposal.notes.map(({ fingering }) => fingering);
  const sides = [
    { setup: found, known: plusMinus },
    { setup: proposal.setup, known: meant },
  ];
  const [was, is] = sides.map(({ setup, known }) => {
    const standing = asItStands(horn, setup);
    const played = playWholeHorn(standing.horn, standing.setup, air, { ...playing, fingerings });
    const answers = played.flatMap(({ fingering, outcome }) =>
      outcome.found && outcome.answers !== null ? [[fingering.id, outcome.answers] as const] : [],
    );
    const slopes = new Map(answers.map(([id, of]) => [id, noteSlopes(of, 'cents')]));
    const readings = prepareReadings(horn, setup, air, known);
    const absolutes = answers.map(([id, of]) => {
      const budget = budgetOf(readings, noteSlopes(of, 'cents'), padModel, absolute(of, 'cents'));
      return [id, budget] as const;
    });
    return { readings, slopes, absolutes: new Map(absolutes) };
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
    found: was.absolutes,
    proposed: is.absolutes,
    enough: enoughBudgets(
      { horn, setup: proposal.setup, air, playing, padModel, readings: is.readings, step: thresholds.step },
      proposal.keys,
    ),
    spread: differenceBudget(spreadOf(was, 'found'), spreadOf(is, 'proposed'), 'same horn'),
  };
}

/** The same ± with every opening that is moved meant and not read. */
function withMeant(plusMinus: PlusMinus, { keys }: Proposal): PlusMinus {
  const moved = new Set(keys.flatMap(({ id, found, proposed }) => (found === proposed ? [] : [id])));
  return {
    ...plusMinus,
    keys: new Map([...plusMinus.keys].map(([id, key]) => [id, moved.has(id) ? { ...key, opening: 0 } : key])),
  };
}
