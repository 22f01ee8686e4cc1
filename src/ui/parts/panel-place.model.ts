/** Where something stands on the screen, px from its upper left corner. */
export interface ScreenBox {
  readonly left: number;
  readonly top: number;
  readonly bottom: number;
}

/** How large something is, px. */
export interface ScreenSize {
  readonly width: number;
  readonly height: number;
}

/** Between a figure and its panel, and between the panel and the screen's edge, px. */
const GAP = 10;
const MARGIN = 8;

/**
 * Where a panel goes that belongs to a figure: under it where there is room, else over it where there is room, else
 * under it, past the screen's end. It never covers the figure.
 *
 * @returns px from the screen's upper left corner
 */
export function panelPlace(
  figure: ScreenBox,
  panel: ScreenSize,
  screen: ScreenSize,
): { readonly left: number; readonly top: number } {
  const left = Math.max(MARGIN, Math.min(figure.left, screen.width - panel.width - MARGIN));
  const under = figure.bottom + GAP;
  const over = figure.top - GAP - panel.height;
  const isRoomUnder = under + panel.height + MARGIN <= screen.height;
  return { left, top: isRoomUnder || over < MARGIN ? under : over };
}
