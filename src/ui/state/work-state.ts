import type { TypedText } from './horn-on-bench.ts';

/** Texts about the work that were not taken, and nothing else: what was taken is in the visit. */
export interface WorkState {
  /** by horn id, then by move */
  readonly typed: Readonly<Record<string, Readonly<Record<string, TypedText>>>>;
}

export function makeWorkState(): WorkState {
  return { typed: {} };
}

export function withWorkText(
  work: WorkState,
  hornId: string,
  move: string,
  typed: TypedText | null,
): WorkState {
  const texts = { ...work.typed[hornId] };
  if (typed === null) delete texts[move];
  else texts[move] = typed;
  return { ...work, typed: { ...work.typed, [hornId]: texts } };
}
