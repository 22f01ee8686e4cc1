import { DEFAULT_PAD_MODEL } from '../holes/pad-models/index.ts';
import type { Link } from '../keywork/linkage.ts';
import { readLinks, type LinkedHorn } from './linked-horn.ts';
import { budgetOf, differenceBudget, type Budget } from './uncertainty.ts';

/** Motion that a driver loses before its driven pad stirs, m at the driver's front, before a change and after. */
export interface LostMotion {
  readonly link: Link;
  /** m, how the driver stands after */
  readonly driverFront: number;
  /** m, what the driver then lets the driven pad open */
  readonly allows: number;
  readonly before: number;
  readonly after: number;
  /** of what is lost after, and of what that is more than before */
  readonly budgets: { readonly after: Budget; readonly more: Budget };
}

/**
 * What every link with a known ratio loses in two setups of one horn.
 *
 * @param isAsked whether a link that loses so much before and after, m, is asked about: only then is its ± worked out
 */
export function compareLostMotion(
  before: LinkedHorn,
  after: LinkedHorn,
  isAsked: (link: Link, before: number, after: number) => boolean = () => true,
): LostMotion[] {
  const [first, other] = [before, after].map(readLinks);
  return after.horn.keywork.links.flatMap((link) => {
    const was = first.linkOf(link);
    const is = other.linkOf(link);
    if (was === null || is === null || !isAsked(link, was.lost, is.lost)) return [];
    return [
      {
        link,
        driverFront: is.driverFront,
        allows: is.allows,
        before: was.lost,
        after: is.lost,
        budgets: {
          after: budgetOf(other.readings, is.lostSlopes, DEFAULT_PAD_MODEL),
          more: differenceBudget(first.with(was.lostSlopes), other.with(is.lostSlopes), 'same horn'),
        },
      },
    ];
  });
}
