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

/** Where a panel goes, px from the screen’s upper left corner, and how high it may be. */
export interface PanelPlace {
  readonly left: number;
  readonly top: number;
  readonly mostHeight: number;
}

/**
 * Where a panel goes that belongs to a figure: under it where there is room, else over it where there is room, else
 * where there is more, as high as the room is. It never covers the figure.
 */
export function panelPlace(figure: ScreenBox, panel: ScreenSize, screen: ScreenSize): PanelPlace {
  const left = Math.max(MARGIN, Math.min(figure.left, screen.width - panel.width - MARGIN));
  const under = screen.height - figure.bottom - GAP - MARGIN;
  const over = figure.top - GAP - MARGIN;
  const isUnder = panel.height <= under || (panel.height > over && under >= over);
  const mostHeight = isUnder ? under : over;
  const height = Math.min(panel.height, mostHeight);
  return { left, top: isUnder ? figure.bottom + GAP : figure.top - GAP - height, mostHeight };
}
