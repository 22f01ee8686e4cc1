import type { PathFold } from '../state/guidance-state.ts';
import { rememberedBench } from './remembered.ts';

const PATH = 'ventwright.path';
const STORY = 'ventwright.story';

/** How the path was left; on a line where nobody put it away. */
export function rememberedFold(): PathFold {
  try {
    return localStorage.getItem(PATH) === 'away' ? 'away' : 'line';
  } catch {
    // A browser that keeps nothing shows the line.
    return 'line';
  }
}

export function rememberFold(fold: PathFold): void {
  try {
    localStorage.setItem(PATH, fold);
  } catch {
    // Only comfort is lost.
  }
}

/** Whether nobody has been here before: no horn was kept, and the story was not shown. */
export function isFirstVisit(): boolean {
  try {
    return localStorage.getItem(STORY) === null && rememberedBench() === null;
  } catch {
    // A browser that keeps nothing would tell the story on every visit: it is told on asking there.
    return false;
  }
}

/** The story has been shown: it comes again only on asking. */
export function rememberStory(): void {
  try {
    localStorage.setItem(STORY, 'shown');
  } catch {
    // See above: without memory it is not shown of itself.
  }
}
