import { WORD_ROWS, type ChartModel } from './chart.model.ts';

/** How a figure shares out its room: px, and shares of its height. */

export const ROW_PX = 17;
export const TOP_PX = WORD_ROWS * ROW_PX + 5;
export const BOTTOM_PX = 46;
export const LEFT_PX = 58;
/** The share panel takes the lower part, the notes the upper. */
export const SHARE_TOP = 0.27;
export const NOTES_BOTTOM = 0.35;
export const LABEL_GAP_PX = 15;
export const LABEL_CHAR_PX = 7;
export const NARROW_PX = 520;
export const WORD_CHAR_PX = 7.4;

/** Room for the longest line name. */
export function rightMargin(model: ChartModel, width: number): number {
  const longest = Math.max(4, ...model.lines.map((line) => nameAt(line.label, width).length));
  return 18 + LABEL_CHAR_PX * longest;
}

/** A narrow picture has no room for the long way of saying which fingers. */
export function nameAt(label: string, width: number): string {
  return width < NARROW_PX ? label.replace('one-and-one', '1+1') : label;
}
