import { panelPlace } from './panel-place.model.ts';

/** As wide as a hand holds: there the panel comes from below. */
const FROM_BELOW = '(max-width: 700px)';

/**
 * Puts a panel beside what it belongs to and shows it. On a phone it lies below, and the page is moved so that
 * what it belongs to stays in sight.
 *
 * @returns undoes what was done to the page
 */
export function placePanel(panel: HTMLElement, beside: HTMLElement): () => void {
  const undo = matchMedia(FROM_BELOW).matches ? moveAbove(panel, beside) : placeBeside(panel, beside);
  panel.dataset.placed = '';
  return () => {
    delete panel.dataset.placed;
    undo();
  };
}

function placeBeside(panel: HTMLElement, beside: HTMLElement): () => void {
  const figure = beside.getClientRects()[0] ?? beside.getBoundingClientRect();
  const { offsetWidth: width, offsetHeight: height } = panel;
  const screen = { width: document.documentElement.clientWidth, height: innerHeight };
  const { left, top, mostHeight } = panelPlace(figure, { width, height }, screen);
  panel.style.left = `${left + scrollX}px`;
  panel.style.top = `${top + scrollY}px`;
  if (height > mostHeight) panel.style.maxHeight = `${mostHeight}px`;
  return () => {
    for (const name of ['left', 'top', 'max-height']) panel.style.removeProperty(name);
  };
}

/** Room kept between the figure and the panel. */
const CLEAR_PX = 16;

function moveAbove(panel: HTMLElement, beside: HTMLElement): () => void {
  const { body } = document;
  // Also the last line of the page can be moved above the panel.
  body.style.paddingBottom = `${panel.offsetHeight}px`;
  const over = beside.getBoundingClientRect().bottom + CLEAR_PX - (innerHeight - panel.offsetHeight);
  if (over > 0) scrollBy({ top: over, behavior: 'instant' });
  return () => {
    body.style.paddingBottom = '';
  };
}
