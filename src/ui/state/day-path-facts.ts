import type { BenchContents } from '../../documents/bench-contents.ts';
import type { VisitDocument } from '../../documents/visit-document.ts';
import { listed } from '../parts/note-names.ts';
import type { FieldId, HeadFieldId } from './fields.ts';
import type { Keeping, KnownVisit } from './keeping.ts';
import type { ViewName } from './view-names.ts';
import type { WorkPlan } from './work-plan.ts';

/** How far a step of the day is. */
export type StepStanding = 'not begun' | 'begun' | 'done' | 'not needed';

/** Where a step is worked on: a view, the key in hand there, and the field that asks for a hand first. */
export interface StepGoal {
  readonly view: ViewName;
  readonly keyId: string | null;
  readonly field:
    | { readonly kind: 'head'; readonly id: HeadFieldId }
    | { readonly kind: 'cell'; readonly pad: string; readonly id: FieldId }
    | null;
}

/** What a step comes to by what is on the bench alone. */
export interface StepFacts {
  readonly standing: StepStanding;
  /** what can be counted of it; null where nothing can */
  readonly count: { readonly done: number; readonly of: number } | null;
  /** how its standing is told, where the count by itself would tell too much or too little */
  readonly words?: string;
  /** what is missing, or what was done, a sentence */
  readonly told: string;
  /** how the step may be settled otherwise than by doing it; told as long as nobody settled it */
  readonly advice?: string;
  /** what to do next for it, as a button says it */
  readonly act: string;
  readonly goal: StepGoal;
}

/** What the steps of the day are told by. */
export interface DayFacts {
  readonly contents: BenchContents;
  readonly visit: VisitDocument;
  /** the work from as found to what is proposed */
  readonly plan: WorkPlan;
  readonly view: ViewName;
  readonly keyId: string;
  /** visits of this horn on days before this one’s, the latest first */
  readonly earlier: readonly KnownVisit[];
  readonly keeping: Keeping['kind'];
  /** whether the browser may clear its library; null while that is not known */
  readonly mayBeCleared: boolean | null;
}

export { stackOf, type StackName } from '../../documents/stacks.ts';

/** Pads as a sentence lists them: the first few by name. */
export function named(keys: readonly { readonly name: string }[], most = 3): string {
  const names = keys.map(({ name }) => name);
  if (names.length <= most) return listed(names);
  return `${names.slice(0, most - 1).join(', ')} and ${names.length - most + 1} more`;
}

export function counted(n: number, one: string): string {
  return `${n} ${one}${n === 1 ? '' : 's'}`;
}

export const NOWHERE = { keyId: null, field: null } as const;
