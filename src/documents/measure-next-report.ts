import {
  compareSetups,
  FINGERINGS,
  holeOf,
  playWholeHorn,
  scaleBudgets,
  studyVenting,
  type AirColumn,
  type Budget,
  type Fingering,
  type Horn,
} from '../acoustics/index.ts';
import { noteLabel } from './note-label.ts';
import { plusMinusOf } from './plus-minus.ts';
import type { LoadedHorn } from './to-acoustics.ts';
import {
  nextSentence,
  reportBudget,
  reportNext,
  type BudgetReport,
  type NextReport,
  type SideNames,
} from './uncertainty-report.ts';

/** An answer, how sure it is, and what to measure next to be surer. */
export interface MeasureNextReport {
  /** what was asked, in words */
  readonly question: string;
  /** null where there is no answer, with the reason */
  readonly value: number | null;
  readonly reason: string | null;
  readonly unit: 'mm' | 'cents';
  readonly budget: BudgetReport | null;
  /** the best first */
  readonly next: readonly NextReport[];
  /** a sentence for each of `next`, and one where playing tells more than measuring */
  readonly sentences: readonly string[];
}

/** The day a question is asked on. */
export interface AskedDay {
  readonly air: AirColumn;
  readonly a4Hz: number;
}

/** What would narrow where more height on a key stops helping. @param id of a pad with a hinge */
export function nextForKey(loaded: LoadedHorn, id: string, { air, a4Hz }: AskedDay): MeasureNextReport {
  const { horn, setup } = loaded;
  const { diminishingReturn: found, budgets } = studyVenting(horn, setup, id, air, {
    a4: a4Hz,
    points: 2,
    plusMinus: plusMinusOf(loaded),
  });
  const question = `Where more height on the ${holeOf(horn, id).name} key stops helping, at the front`;
  if (found.kind === 'none in reach') return noAnswer(question, found.reason, 'mm');
  if (budgets.diminishingReturn === null) {
    return noAnswer(question, 'nothing grows even from the least opening', 'mm');
  }
  return answer(
    horn,
    question,
    { value: found.at.pose.front * 1e3, unit: 'mm' },
    budgets.diminishingReturn,
    1e3,
  );
}

/** What would narrow a note's pitch. */
export function nextForNote(
  loaded: LoadedHorn,
  fingering: Fingering,
  { air, a4Hz }: AskedDay,
): MeasureNextReport {
  const { horn, setup } = loaded;
  const options = { a4: a4Hz, fingerings: [fingering] };
  const [{ outcome }] = playWholeHorn(horn, setup, air, { ...options, answers: false });
  const question = `The pitch of ${noteLabel(fingering.id)}, from equal temperament`;
  const budgets = scaleBudgets(horn, setup, air, { ...options, plusMinus: plusMinusOf(loaded) });
  const budget = budgets.get(fingering.id);
  if (!outcome.found || budget === undefined) {
    return noAnswer(question, outcome.found ? 'it has no answer here' : outcome.reason, 'cents');
  }
  return answer(horn, question, { value: outcome.cents, unit: 'cents' }, budget.cents, 1);
}

/**
 * What would narrow a difference between two setups, the first the reference.
 *
 * @param fingering null asks of the note that can be shown to differ most
 */
export function nextForComparison(
  loaded: readonly [LoadedHorn, LoadedHorn],
  fingering: Fingering | null,
  { air, a4Hz }: AskedDay,
): MeasureNextReport {
  const compared = loaded.map((each, i) => ({
    label: i === 0 ? 'the first' : 'the second',
    horn: each.horn,
    setup: each.setup,
    air,
    a4: a4Hz,
    plusMinus: plusMinusOf(each),
  }));
  const { notes } = compareSetups(compared, { fingerings: fingering === null ? FINGERINGS : [fingering] });
  const note = notes.find(({ differences }) => differences[0] !== null) ?? notes[0];
  const question = `How much ${noteLabel(note.fingering.id)} differs in the second setup`;
  const [difference] = note.differences;
  if (difference === null) return noAnswer(question, 'it has no resonance in one of the two', 'cents');
  const { cents, budget } = difference;
  return answer(loaded[0].horn, question, { value: cents.value, unit: 'cents' }, budget, 1, {
    first: 'the first',
    other: 'the second',
  });
}

function noAnswer(question: string, reason: string, unit: MeasureNextReport['unit']): MeasureNextReport {
  return { question, value: null, reason, unit, budget: null, next: [], sentences: [] };
}

function answer(
  horn: Horn,
  question: string,
  { value, unit }: { readonly value: number; readonly unit: MeasureNextReport['unit'] },
  budget: Budget,
  scale: number,
  sides?: SideNames,
): MeasureNextReport {
  const next = reportNext(horn, budget, scale, sides);
  const plusMinus = budget.plusMinus * scale;
  const sentences = next.map((each) => nextSentence(each, plusMinus, unit));
  return {
    question,
    value,
    reason: null,
    unit,
    budget: reportBudget(horn, budget, scale, sides),
    next,
    sentences: [...sentences, ...byPlaying(budget), ...byNothing(budget, next)],
  };
}

/** What played notes tell: the part of an absolute pitch that no ruler reaches. */
function byPlaying({ plusMinus, wholeHorn, readings }: Budget): string[] {
  const day = readings.filter(({ reading }) => reading.id === 'horn').map(({ effect }) => effect);
  const part = Math.hypot(wholeHorn, ...day);
  if (!(part > 0.5 * plusMinus)) return [];
  return [
    `±${part.toFixed(0)} cents of it are the whole horn’s model, its mouthpiece and its air: only played notes can narrow those. Log some and calibrate.`,
  ];
}

function byNothing({ plusMinus, padModel }: Budget, next: readonly NextReport[]): string[] {
  if (next.length > 0 || plusMinus === 0) return [];
  const model = Math.abs(padModel) > 0.7 * plusMinus ? ' Most of it is the pad model’s own.' : '';
  return [`No single measurement would narrow it by more than 2 %.${model}`];
}
