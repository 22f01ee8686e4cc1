import type { DayStepName, Said } from '../../documents/day-steps.ts';
import type { DayPath, DayStep } from '../state/day-path.ts';
import type { StepStanding } from '../state/day-path-facts.ts';

/** A small key that shuts as its step is filled: open, on its way, down on its rim, or not there at all. */
export interface StepKey {
  readonly standing: StepStanding;
  /** how far the pad stands open, degrees */
  readonly openDeg: number;
  readonly isHere: boolean;
  readonly isNext: boolean;
}

/** One step as it is listed. */
export interface StepRow {
  readonly name: DayStepName;
  readonly title: string;
  readonly key: StepKey;
  /** `begun, 18 of 23` */
  readonly standing: string;
  readonly told: string;
  readonly act: string;
  /** whether a person may say it is done or not needed, or take back having said so; null where counting tells */
  readonly hand: 'say' | 'take back' | null;
}

/** Everything the path of the day shows. */
export interface DayPathView {
  readonly rows: readonly StepRow[];
  /** where the page is: `As found, 18 of 23`; empty where it serves no step */
  readonly where: string;
  /** `Next: read 5 more openings`; null when the day is through */
  readonly next: string | null;
  readonly nextName: DayStepName | null;
  /** `3 of 11` */
  readonly through: string;
}

/** How far a key stands open before its step is begun, degrees. */
const OPEN_DEG = 27;
/** A step that was begun and cannot be counted stands about half way. */
const HALF = 0.5;
/** A step that is begun never looks as one that is not, or as one that is done. */
const BEGUN = { least: 0.25, most: 0.75 };

export function makeDayPathView({ steps, next, here }: DayPath): DayPathView {
  const rows = steps.map((step) => rowOf(step, step.name === here, step === next));
  const at = rows.find(({ name }) => name === here);
  const through = steps.filter(({ standing }) => standing === 'done' || standing === 'not needed').length;
  return {
    rows,
    where: at === undefined ? '' : `${at.title}: ${at.standing}`,
    next: next === null ? null : `Next: ${lowerFirst(next.act)}`,
    nextName: next?.name ?? null,
    through: `${through} of ${steps.length}`,
  };
}

function rowOf(step: DayStep, isHere: boolean, isNext: boolean): StepRow {
  const { name, title, standing, told, act, said } = step;
  return {
    name,
    title,
    key: { standing, openDeg: openDeg(step), isHere, isNext },
    standing: standingWords(step),
    told,
    act,
    hand: said !== null ? 'take back' : standing === 'done' || standing === 'not needed' ? null : 'say',
  };
}

function openDeg({ standing, count }: DayStep): number {
  if (standing === 'done') return 0;
  if (standing !== 'begun') return OPEN_DEG;
  const share = count === null || count.of === 0 ? HALF : count.done / count.of;
  return OPEN_DEG * (1 - Math.min(Math.max(share, BEGUN.least), BEGUN.most));
}

function standingWords({ standing, count, words }: DayStep): string {
  if (words !== undefined) return words;
  return standing === 'begun' && count !== null ? `${count.done} of ${count.of}` : standing;
}

/** What a person’s word on a step is called on its button. */
export const SAY_WORDS: Readonly<Record<Said, string>> = { done: 'Done', 'not needed': 'Not needed' };

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
