import type { TypedText } from './horn-on-bench.ts';

/** A value that came back by another route counts as the one that was typed. */
const SAME = 1e-9;

/**
 * What a field shows: what was typed, as long as it was refused or still stands for the value in use; else the
 * value as the bench writes it.
 */
export function textInField(typed: TypedText | undefined, value: number, written: string): string {
  if (typed === undefined) return written;
  if (typed.problem !== null) return typed.text;
  return typed.value === null || Math.abs(typed.value - value) < SAME ? typed.text : written;
}
