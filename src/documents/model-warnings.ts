import {
  DEFAULT_PAD_MODEL,
  padEnd,
  standingPad,
  type AirColumn,
  type Horn,
  type Setup,
} from '../acoustics/index.ts';

/** Where a pad, or the air, leaves what its model holds for. */
export interface ModelWarning {
  /** the pad's name; null for the air */
  readonly pad: string | null;
  readonly text: string;
}

/** Where the air or a pad as it stands lies outside what its model holds for, in sentences. */
export function modelWarnings(horn: Horn, setup: Setup, air: AirColumn): ModelWarning[] {
  const pads = horn.holes.flatMap((hole) =>
    hole.hinge === null
      ? []
      : padEnd(hole, setup, standingPad(horn, setup, hole.id).pose, DEFAULT_PAD_MODEL).warnings.map(
          (text) => ({ pad: hole.name, text }),
        ),
  );
  return [...air.warnings.map((text) => ({ pad: null, text })), ...pads];
}
