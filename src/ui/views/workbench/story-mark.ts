import type { StoryMark } from '../../state/story-cards.ts';

const SELECTORS: Readonly<Record<StoryMark, string>> = {
  answer: 'main h1',
  slider: 'main vw-opening-slider',
  curve: 'main vw-chart',
};

const MARKED = 'data-story-mark';

/** As long as a view may take to come, ms. */
const PATIENCE_MS = 4000;

let wanted: StoryMark | null = null;

/** Marks what a card speaks of, and only that, as soon as its view stands; null marks nothing. */
export async function markOnly(mark: StoryMark | null): Promise<void> {
  wanted = mark;
  const until = performance.now() + PATIENCE_MS;
  while (wanted === mark) {
    const found = mark === null ? null : document.querySelector(SELECTORS[mark]);
    for (const old of document.querySelectorAll(`[${MARKED}]`))
      if (old !== found) old.removeAttribute(MARKED);
    if (found !== null) {
      // The room a card takes is known a frame after it is drawn.
      await nextFrame();
      await nextFrame();
      if (wanted === mark) show(found);
      return;
    }
    if (mark === null || performance.now() > until) return;
    await nextFrame();
  }
}

const nextFrame = (): Promise<number> => new Promise((done) => requestAnimationFrame(done));

/** Once marked, a person may scroll it away. */
function show(element: Element): void {
  if (element.hasAttribute(MARKED)) return;
  element.setAttribute(MARKED, '');
  const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
  element.scrollIntoView({ block: 'nearest', behavior: calm ? 'auto' : 'smooth' });
}
