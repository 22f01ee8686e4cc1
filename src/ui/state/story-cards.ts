import type { BenchState } from './bench-state.ts';
import {
  howItVents,
  STORY_KEY,
  whatItHoldsDown,
  whatLoweringCosts,
  whatRaisingBuys,
  withStudy,
} from './story-key.ts';
import { heightOrLeak, whatIsProposed, whatSheIsTold } from './story-verdict.ts';
import type { ViewName } from './view-names.ts';

/** The story's horn: the example that every bench has. */
export const STORY_HORN = 'demo-alto';

/** What of a view a card speaks of. */
export type StoryMark = 'answer' | 'slider' | 'curve';

/** One card: where it is told, and what it says by the reports at hand. */
export interface StoryCard {
  readonly title: string;
  /** null where it can be told anywhere */
  readonly place: {
    readonly view: ViewName;
    readonly keyId: string | null;
    readonly mark: StoryMark | null;
  } | null;
  /** in sentences; null while what it tells is being worked out */
  tell(state: BenchState): string | null;
}

/** In the order they are told. The player and her questions are invented. */
export const STORY: readonly StoryCard[] = [
  {
    title: 'Runa comes in with her alto',
    place: null,
    tell: () =>
      'She has two questions. Why is my low E stuffy? And could the keys come down a little? Three minutes, and nothing on this bench is changed.',
  },
  {
    title: 'Low E speaks under the D key',
    place: { view: 'key', keyId: STORY_KEY, mark: 'answer' },
    tell: (state) => withStudy(state, howItVents),
  },
  {
    title: 'Is the key too low, then?',
    place: { view: 'key', keyId: STORY_KEY, mark: 'slider' },
    tell: (state) => withStudy(state, whatRaisingBuys),
  },
  {
    title: 'And if the keys came down?',
    place: { view: 'key', keyId: STORY_KEY, mark: 'curve' },
    tell: (state) => withStudy(state, whatLoweringCosts),
  },
  {
    title: 'One key leans on another',
    place: { view: 'links', keyId: null, mark: 'answer' },
    tell: whatItHoldsDown,
  },
  {
    title: 'All keys at once',
    place: { view: 'proposal', keyId: null, mark: 'answer' },
    tell: whatIsProposed,
  },
  {
    title: 'Height, or a leak?',
    place: { view: 'leaks', keyId: STORY_KEY, mark: 'answer' },
    tell: heightOrLeak,
  },
  {
    title: 'What Runa is told',
    place: { view: 'player-sheet', keyId: STORY_KEY, mark: null },
    tell: whatSheIsTold,
  },
];
