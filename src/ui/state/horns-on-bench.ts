import type { BenchContents } from '../../documents/bench-contents.ts';
import type { BenchState } from './bench-state.ts';
import { onBench, rested, type HornOnBench } from './horn-on-bench.ts';

// Which horns are on the bench, and which horn and key are in hand: each takes a state and gives the next.

/** Takes up a horn that is on the bench already, with all that was done to it. */
export function takeUp(state: BenchState, hornId: string): BenchState {
  return state.horns[hornId] === undefined ? state : { ...state, hornId, point: null };
}

/** Puts a visit of a horn on the bench, afresh. */
export function putOnBench(state: BenchState, contents: BenchContents): BenchState {
  const { id, document } = contents.horn;
  const known = state.shelf.some((entry) => entry.id === id);
  return {
    ...state,
    hornId: id,
    point: null,
    shelf: known ? state.shelf : [...state.shelf, { id, label: document.name }],
    horns: { ...state.horns, [id]: onBench(contents) },
  };
}

/** Takes a horn that is not in hand off the bench. */
export function leaveBench(state: BenchState, hornId: string): BenchState {
  if (hornId === state.hornId) return state;
  const horns = { ...state.horns };
  delete horns[hornId];
  return { ...state, horns };
}

/** A change of a horn on the bench: what it is, and what is known of it. */
export function withHornOf(
  state: BenchState,
  hornId: string,
  change: (horn: HornOnBench) => HornOnBench,
): BenchState {
  const horn = state.horns[hornId];
  const next = change(horn);
  return next === horn ? state : { ...state, horns: { ...state.horns, [hornId]: next } };
}

/** The same of the horn in hand. */
export function withHorn(state: BenchState, change: (horn: HornOnBench) => HornOnBench): BenchState {
  return withHornOf(state, state.hornId, change);
}

/** The hand rests, on every horn: what it does next is a step of its own, and what it did can be saved. */
export function endMovements(state: BenchState): BenchState {
  return Object.keys(state.horns).reduce((now, hornId) => withHornOf(now, hornId, rested), state);
}

export function chooseKey(state: BenchState, keyId: string): BenchState {
  return withHorn({ ...state, point: null }, (horn) => ({ ...horn, keyId }));
}
