import type { BenchContents } from '../../documents/bench-contents.ts';
import type { PlayerSheetFacts, PlayerSheetQuestion } from '../../documents/player-sheet-facts.ts';
import { nothingAsked, type AskedAnswer } from './asked-answer.ts';
import type { TypedText } from './horn-on-bench.ts';

/** What the player’s sheet shows besides what is on the bench. */
export interface PlayerSheetState {
  readonly facts: AskedAnswer<PlayerSheetFacts>;
  /** a text for the opening wished for that was refused, by horn id */
  readonly wishTyped: Readonly<Record<string, TypedText>>;
}

export function makePlayerSheetState(hornId: string): PlayerSheetState {
  return { facts: nothingAsked(hornId), wishTyped: {} };
}

/** The sheet with a text for the wish kept for a horn, or, with null, none. */
export function withWishText(
  state: PlayerSheetState,
  hornId: string,
  typed: TypedText | null,
): PlayerSheetState {
  const { [hornId]: _before, ...others } = state.wishTyped;
  return { ...state, wishTyped: typed === null ? others : { ...others, [hornId]: typed } };
}

/** What the player’s sheet of what is on the bench is worked out from. */
export function playerSheetQuestion(contents: BenchContents): PlayerSheetQuestion {
  const { horn, asFound, proposed, asSet, visit } = contents;
  const { airC, a4Hz, wishKey = null, wishOpeningMm = null, wishShiftMm = null } = visit.document;
  return {
    horn: horn.document,
    setups: { asFound: asFound.document, proposed: proposed.document, asSet: asSet.document },
    airC,
    a4Hz,
    wishKey,
    wishOpeningMm,
    wishShiftMm,
  };
}
