import type { LengthUnit } from './length-format.ts';
import type { PlayerSheetFacts } from './player-sheet-facts.ts';
import { bothWithPlusMinus, many, withPlusMinus } from './player-sheet-lengths.ts';
import type { SetLike } from './set-like.ts';
import { tenths } from './tenths.ts';

/** One pad as it leaves, less the other horn’s: mm at the front, or vent share in points of a hundred. */
interface Apart {
  readonly name: string;
  readonly value: number;
  readonly plusMinus: number;
}

/** What is read the same on the page: half of its last digit. */
const SAME = 0.05;

/** That this horn is set like another, and how near it comes. What that changes is the page’s own headline and table. */
export function likeSentence(like: SetLike, facts: PlayerSheetFacts, unit: LengthUnit): string {
  const by =
    like.by === 'front'
      ? 'by the same front opening, so that the fingers feel the same'
      : 'by the same vent share, so that the notes vent the same';
  const set = `${facts.isProposal ? 'This horn is to be set' : 'This horn is set'} like ${like.horn}, ${by}.`;
  return `${set} ${nearWords(apartOf(like, facts), like, unit)}`;
}

function apartOf({ by, pads }: SetLike, { comparison }: PlayerSheetFacts): Apart[] {
  return pads.flatMap(({ pad, ...wanted }) => {
    const key = comparison.keys.find(({ id }) => id === pad);
    const leaves = key?.setups[1] ?? null;
    if (key === undefined || leaves === null) return [];
    const [value, own, theirs] =
      by === 'front'
        ? [leaves.frontMm - wanted.frontMm, leaves.frontPlusMinusMm, wanted.frontPlusMinusMm]
        : [
            100 * leaves.ventShare - wanted.ventSharePercent,
            100 * leaves.ventSharePlusMinus,
            wanted.ventSharePlusMinusPercent,
          ];
    // Two horns err each on their own.
    return [{ name: key.name, value, plusMinus: Math.hypot(own, theirs) }];
  });
}

/** The worst of all pads; one that can be shown before one that cannot. */
function nearWords(all: readonly Apart[], { by }: SetLike, unit: LengthUnit): string {
  const isShown = ({ value, plusMinus }: Apart): boolean =>
    Math.abs(value) >= SAME && Math.abs(value) > plusMinus;
  const shown = all.filter(isShown);
  const [worst] = [...(shown.length > 0 ? shown : all)].sort((a, b) => Math.abs(b.value) - Math.abs(a.value));
  if (worst === undefined) return 'The two have no key in common.';
  const keys = many(all.length, 'key');
  if (Math.abs(worst.value) < SAME) {
    return `All of ${keys} that both have come to the same, within ${within(worst, by, unit)}.`;
  }
  const amount = amountWords(worst, by, unit);
  return shown.length > 0
    ? `Of ${keys} that both have, ${shown.length === 1 ? 'one' : shown.length} can be shown to differ; the furthest off is ${worst.name}, ${amount}.`
    : `Of ${keys} that both have, none can be shown to differ; the widest, ${worst.name}, ${amount}, lies inside its ±.`;
}

function amountWords({ value, plusMinus }: Apart, by: SetLike['by'], unit: LengthUnit): string {
  return by === 'front'
    ? `${bothWithPlusMinus(Math.abs(value), plusMinus, unit)} ${value < 0 ? 'lower' : 'higher'}`
    : `${withPlusMinus(value, plusMinus)} % vent share ${value < 0 ? 'less' : 'more'}`;
}

const within = ({ plusMinus }: Apart, by: SetLike['by'], unit: LengthUnit): string =>
  by === 'front' ? `± ${bothWithPlusMinus(plusMinus, null, unit)}` : `± ${tenths(plusMinus)} % vent share`;
