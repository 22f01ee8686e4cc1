import { hornInHand, type BenchState } from './bench-state.ts';
import { STORY, STORY_HORN, type StoryCard, type StoryMark } from './story-cards.ts';

/** A card of the story as it is shown. */
export interface StoryView {
  readonly card: number;
  /** `2 of 8` */
  readonly count: string;
  readonly title: string;
  readonly text: string;
  /** what of the view it speaks of, while that view is shown */
  readonly mark: StoryMark | null;
  /** whether the page shows what it speaks of */
  readonly isThere: boolean;
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

const WAITING = 'The numbers are on their way …';
const ELSEWHERE = 'You have gone to look at something else. The story goes on where you left it.';

/** @param card from 0; one out of range is the nearest there is */
export function makeStoryView(state: BenchState, card: number): StoryView {
  const at = Math.min(Math.max(Math.trunc(card), 0), STORY.length - 1);
  const { title, place, tell } = STORY[at];
  const isThere = isAt(state, STORY[at]);
  return {
    card: at,
    count: `${at + 1} of ${STORY.length}`,
    title,
    text: isThere ? (tell(state) ?? WAITING) : ELSEWHERE,
    mark: isThere ? (place?.mark ?? null) : null,
    isThere,
    isFirst: at === 0,
    isLast: at === STORY.length - 1,
  };
}

function isAt(state: BenchState, { place }: StoryCard): boolean {
  if (place === null) return true;
  const isKey = place.keyId === null || hornInHand(state).keyId === place.keyId;
  return state.hornId === STORY_HORN && state.view === place.view && isKey;
}
