import type { DayStepName, Said } from '../../documents/day-steps.ts';
import { keyedHoles } from '../../documents/horn-document.ts';
import { stackOf, type DayFacts, type StepFacts, type StepStanding } from './day-path-facts.ts';
import { findAsFound, findAsSet } from './day-path-openings.ts';
import { findHornIn, findLastVisit, findPlayersSheet, findShopsFile } from './day-path-steps.ts';
import type { ViewName } from './view-names.ts';
import { findPlayed, findSeals, findStack } from './day-path-work.ts';

/** A step: what it is called, and how far it is. */
interface DayStepPlan {
  readonly name: DayStepName;
  readonly title: string;
  find(facts: DayFacts): StepFacts;
}

/** In the order of the day. */
const DAY_STEP_PLANS: readonly DayStepPlan[] = [
  { name: 'horn in', title: 'Horn in', find: findHornIn },
  { name: 'as found', title: 'As found', find: findAsFound },
  { name: 'seals and links', title: 'Seals and links', find: findSeals },
  { name: 'lower stack', title: 'Lower stack', find: (facts) => findStack('lower stack', facts) },
  { name: 'upper stack', title: 'Upper stack', find: (facts) => findStack('upper stack', facts) },
  { name: 'other keys', title: 'The other keys', find: (facts) => findStack('other keys', facts) },
  { name: 'played', title: 'Played', find: findPlayed },
  { name: 'as set', title: 'As set', find: findAsSet },
  { name: 'player’s sheet', title: 'The player’s sheet', find: findPlayersSheet },
  { name: 'shop’s file', title: 'The shop’s file', find: findShopsFile },
  { name: 'last visit', title: 'Last visit', find: findLastVisit },
];

/** One step of the day. */
export interface DayStep extends StepFacts {
  readonly name: DayStepName;
  readonly title: string;
  /** a person’s own word, which goes before what was counted; null where nobody spoke */
  readonly said: Said | null;
}

/** The day at the bench: how far every step is, which is next, and where the page is now. */
export interface DayPath {
  readonly steps: readonly DayStep[];
  /** the first that is neither done nor needless; null at the end of the day */
  readonly next: DayStep | null;
  /** the step the view on screen belongs to; null where it serves none */
  readonly here: DayStepName | null;
  /** visits of days before, the latest first */
  readonly earlier: DayFacts['earlier'];
}

/** Where the day stands by what is on the bench. Nothing is asked for, nothing is in the way. */
export function makeDayPath(facts: DayFacts): DayPath {
  const steps = DAY_STEP_PLANS.map(({ name, title, find }): DayStep => {
    const found = find(facts);
    const said = facts.visit.daySteps?.find((entry) => entry.step === name)?.said ?? null;
    return { ...withWord(found, said), name, title, said };
  });
  const inOrder = facts.earlier.length === 0 ? steps : withLastVisitEarly(steps);
  return {
    steps: inOrder,
    next: inOrder.find(({ standing }) => standing === 'not begun' || standing === 'begun') ?? null,
    here: hereOf(inOrder, facts),
    earlier: facts.earlier,
  };
}

/** A word goes before what was counted, and does not hide it. */
function withWord(found: StepFacts, said: Said | null): StepFacts {
  const { words, advice, told, ...facts } = found;
  if (said === null) return { ...found, told: advice === undefined ? told : `${told} ${advice}` };
  if (said === found.standing) return { ...facts, told, ...(words === undefined ? {} : { words }) };
  if (said === 'not needed') return { ...facts, standing: said, told: 'Marked as not needed.' };
  const marked = found.standing === 'begun' ? `Marked as done. ${told}` : 'Marked as done.';
  return { ...facts, standing: said, told: marked };
}

/** Of a horn that was here before, how it was left is of use once it has been read again. */
function withLastVisitEarly(steps: readonly DayStep[]): DayStep[] {
  const last = steps.filter(({ name }) => name === 'last visit');
  const others = steps.filter(({ name }) => name !== 'last visit');
  const after = others.findIndex(({ name }) => name === 'as found') + 1;
  return [...others.slice(0, after), ...last, ...others.slice(after)];
}

/** Views where what leaks is found; the work on it has a view of its own. */
const REGULATION: readonly ViewName[] = ['links', 'leaks', 'pads'];

/** Of several steps that one view serves, the first that is under way, else that is open; at a key, its stack. */
function hereOf(steps: readonly DayStep[], { view, keyId, contents }: DayFacts): DayStepName | null {
  if (view === 'key') {
    const key = keyedHoles(contents.horn.document).find(({ id }) => id === keyId);
    return key === undefined ? null : stackOf(key.number);
  }
  if (REGULATION.includes(view)) return 'seals and links';
  const served = steps.filter(({ goal }) => goal.view === view);
  const first = (wanted: StepStanding): DayStep | undefined =>
    served.find(({ standing }) => standing === wanted);
  return (first('begun') ?? first('not begun') ?? served.at(-1))?.name ?? null;
}
