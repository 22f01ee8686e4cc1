import * as z from 'zod';
import type { VisitDocument } from './visit-document.ts';
import { choice } from './schema-parts.ts';

/** The steps of a day at the bench, in the order they are usually taken. **Source:** common practice, no source. */
export const DAY_STEPS = [
  'horn in',
  'as found',
  'seals and links',
  'lower stack',
  'upper stack',
  'other keys',
  'played',
  'as set',
  'player’s sheet',
  'shop’s file',
  'last visit',
] as const;
export type DayStepName = (typeof DAY_STEPS)[number];

/** What a person may say of a step that the numbers cannot tell. */
export const SAID = ['done', 'not needed'] as const;
export type Said = (typeof SAID)[number];

const saidStep = z.strictObject({
  step: choice('step of the day', DAY_STEPS),
  said: choice('word on the step', SAID),
});

/** Steps a person spoke of, each once. */
export const daySteps = z
  .array(saidStep)
  .max(DAY_STEPS.length, `expected at most ${DAY_STEPS.length} steps of the day`)
  .refine((steps) => new Set(steps.map(({ step }) => step)).size === steps.length, {
    error: 'invalid steps of the day: one is told twice; expected each once',
  });

/** What was said of a step; null where nobody spoke of it. */
export function saidOf(visit: VisitDocument, step: DayStepName): Said | null {
  return visit.daySteps?.find((entry) => entry.step === step)?.said ?? null;
}

/** A visit with a step said to be done or not needed; null takes the word back. */
export function withSaid(visit: VisitDocument, step: DayStepName, said: Said | null): VisitDocument {
  const { daySteps: before = [], ...rest } = visit;
  const others = before.filter((entry) => entry.step !== step);
  const after = said === null ? others : [...others, { step, said }];
  return after.length === 0 ? rest : { ...rest, daySteps: after };
}
