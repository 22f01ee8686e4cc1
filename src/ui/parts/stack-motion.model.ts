import { contactOffset, type Keywork, type LinkScrews } from '../../acoustics/index.ts';

/** How far pads stand, m at their fronts, before a driver is pressed and when it is home. */
export interface PressedEnds {
  /** as stops and links let them stand */
  readonly standing: (pad: string) => number;
  /** with the driver home */
  readonly home: ReadonlyMap<string, number>;
}

/**
 * Where every pad stands that a driver reaches, m at its front, while a finger is on its way down.
 *
 * A driven pad stays on its stop until the arm meets it, then follows h ≤ k·h_driver + c, and ends where it is
 * left when the driver is home. A pad with a link of unknown ratio on the way is told only at both ends.
 *
 * @param pressed 0 at rest … 1 home
 * @returns metres at the front by pad, the driver first; null where it cannot be said
 */
export function frontsUnderPress(
  keywork: Keywork,
  screws: LinkScrews,
  driver: string,
  { standing, home }: PressedEnds,
  pressed: number,
): Map<string, number | null> {
  const rest = standing(driver);
  const end = home.get(driver) ?? 0;
  const fronts = new Map<string, number | null>([[driver, rest + (end - rest) * pressed]]);
  const follow = (from: string): void => {
    for (const link of keywork.links) {
      if (link.driver !== from) continue;
      const { driven } = link;
      const left = home.get(driven) ?? 0;
      const above = fronts.get(from) ?? null;
      const before = fronts.get(driven);
      const arm =
        link.ratio === undefined || above === null
          ? null
          : Math.max(0, link.ratio * above + contactOffset(link, screws));
      const now =
        pressed === 0 ? standing(driven) : pressed === 1 ? left : armed(arm, standing(driven), left);
      fronts.set(driven, before === undefined ? now : lower(before, now));
      if (link.effect === 'closes') follow(driven);
    }
  };
  follow(driver);
  return fronts;
}

function armed(arm: number | null, rest: number, left: number): number | null {
  return arm === null ? null : Math.max(left, Math.min(rest, arm));
}

function lower(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : Math.min(a, b);
}
