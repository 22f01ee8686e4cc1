import { FITS, type Fit } from './player-sheet-view.model.ts';

/**
 * Finds the largest type a page fits its paper with, on a copy laid out as on paper: what is on screen may be
 * narrower, and shows what a hand needs.
 *
 * @returns the type, and whether the page fits at all
 */
export function fitPage(page: HTMLElement): { readonly fit: Fit; readonly fits: boolean } {
  const room = document.createElement('div');
  room.className = 'ps-measure';
  room.setAttribute('aria-hidden', 'true');
  const copy = page.cloneNode(true) as HTMLElement;
  for (const named of copy.querySelectorAll('[id]')) named.removeAttribute('id');
  room.append(copy);
  page.parentElement!.append(room);
  copy.style.setProperty('height', 'var(--ps-height)');
  copy.style.setProperty('min-height', '0');
  const paperPx = copy.getBoundingClientRect().height;
  copy.style.setProperty('height', 'auto');
  const isIn = (fit: Fit): boolean => {
    setFit(copy, fit);
    return copy.getBoundingClientRect().height <= paperPx;
  };
  const fit = FITS.find(isIn) ?? FITS[FITS.length - 1];
  const fits = isIn(fit);
  room.remove();
  return { fit, fits };
}

/** Sets a page in a type. */
export function setFit(page: HTMLElement, { size, line, gap, isTight }: Fit): void {
  page.style.setProperty('--ps-size', size);
  page.style.setProperty('--ps-line', line);
  page.style.setProperty('--ps-gap', gap);
  page.toggleAttribute('data-tight', isTight);
}
