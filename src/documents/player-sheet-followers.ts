import type { ComparedKeyReport } from './comparison-report.ts';
import type { LengthUnit } from './length-format.ts';
import { nameOf, type PlayerSheetFacts } from './player-sheet-facts.ts';
import { movedKeys } from './player-sheet-leaving.ts';
import { both, bothWithPlusMinus, inARow, many } from './player-sheet-lengths.ts';

/** As many followers as are told of one by one. */
const TOLD = 1;

/** A key that stands otherwise though nobody set it: the one that drives it was set. */
export interface Follower {
  readonly key: ComparedKeyReport;
  /** id of the key whose arm held it or holds it; null where no arm did */
  readonly driver: string | null;
  /** whether the arm let it go, so that its own stop holds it now */
  readonly isLetGo: boolean;
}

/** Keys that follow others, the one whose venting changed most first. */
export function followersOf({ comparison, setByHand }: FollowedFacts): Follower[] {
  return movedKeys(comparison).flatMap((key) => {
    if (setByHand.includes(key.id)) return [];
    const [found, set] = [key.setups[0]!, key.setups[1]!];
    return [{ key, driver: set.ruledBy ?? found.ruledBy, isLetGo: set.ruledBy === null }];
  });
}

type FollowedFacts = Pick<PlayerSheetFacts, 'comparison' | 'setByHand'>;

/** `The F♯ auxiliary key follows the D key, whose arm had held it: from 6.5 mm … to 7.2 ± 0.2 mm …, reckoned, not read.` */
export function followerSentences(facts: FollowedFacts, unit: LengthUnit): { pad: string; text: string }[] {
  const followers = followersOf(facts);
  const told = followers.slice(0, TOLD).map(({ key, driver, isLetGo }) => {
    const [found, set] = [key.setups[0]!, key.setups[1]!];
    const why =
      driver === null
        ? 'stands otherwise with its new pad'
        : `follows the ${nameOf(facts.comparison, driver)} key, whose arm ${isLetGo ? 'had held it down' : 'holds it down'}`;
    const to = bothWithPlusMinus(set.frontMm, set.frontPlusMinusMm, unit);
    return {
      pad: key.id,
      text: `The ${key.name} key ${why}: from ${both(found.frontMm, unit)} to ${to} at the front, reckoned and not read.`,
    };
  });
  const rest = followers.slice(TOLD);
  if (rest.length === 0) return told;
  const names = inARow(rest.map(({ key }) => key.name));
  const more = `${names} ${rest.length === 1 ? 'follows the key that drives it' : 'follow the keys that drive them'}.`;
  return [...told, { pad: 'others', text: more }];
}

/** `, and F♯ auxiliary follows it`: what a headline says of them. */
export function followingWords(facts: FollowedFacts): string {
  const followers = followersOf(facts);
  if (followers.length === 0) return '';
  return followers.length === 1
    ? `, and ${followers[0].key.name} follows`
    : `, and ${many(followers.length, 'key')} follow`;
}
