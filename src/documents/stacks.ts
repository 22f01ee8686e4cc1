import type { DayStepName } from './day-steps.ts';

/** Keys that are worked on together. */
export type StackName = Extract<DayStepName, 'lower stack' | 'upper stack' | 'other keys'>;

/** The stack a pad belongs to, by its number from the bell. **Source:** common practice, no source. */
export function stackOf(number: number): StackName {
  if (number >= 6 && number <= 10) return 'lower stack';
  return number >= 11 && number <= 18 ? 'upper stack' : 'other keys';
}
