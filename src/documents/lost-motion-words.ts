import { formatFine, formatLength, type LengthUnit } from './length-format.ts';
import { lengthBothWithPlusMinus, lengthWithPlusMinus } from './length-plus-minus.ts';
import type { LostMotionReport, TakingUpReport } from './lost-motion.ts';
import { capital, inARow } from './player-sheet-lengths.ts';

// Lost motion in words: how much, and what takes it up.

/** A sentence for each pad that is driven late, by all the keys that drive it, the most lost first. */
export function lostMotionSentences(lost: readonly LostMotionReport[], unit: LengthUnit): string[] {
  return byDriven(lost).map((links) => `${goesWords(links, unit)}. ${takingUpSentence(links[0], unit)}`);
}

/**
 * The most of it in one line, with the other pads that are late by name: `D goes 1.2 ± 0.5 mm before F♯ auxiliary
 * stirs, 1.0 ± 0.2 mm more than as found; F♯ auxiliary at 8.1 mm takes it up. bis is late too`.
 */
export function lostMotionInShort(lost: readonly LostMotionReport[], unit: LengthUnit): string {
  const [most, ...others] = byDriven(lost);
  const [first, ...along] = most[0].takenUpBy.map((pad) => toWords(pad, unit));
  const cure =
    first === undefined
      ? `only ${most[0].driverName} set lower takes it up`
      : `${first}${along.length === 0 ? '' : `, with ${inARow(along)},`} takes it up`;
  const late = others.map(([{ drivenName }]) => drivenName);
  const too = late.length === 0 ? '' : ` ${inARow(late)} ${late.length === 1 ? 'is' : 'are'} late too.`;
  return `${goesWords(most, unit, { short: true })}; ${cure}.${too}`;
}

function byDriven(lost: readonly LostMotionReport[]): LostMotionReport[][] {
  const driven = [...new Set(lost.map((link) => link.driven))];
  return driven.map((pad) => lost.filter((link) => link.driven === pad));
}

/** `D goes 1.2 ± 0.5 mm (0.048 in) at the front before F♯ auxiliary stirs, 1.0 ± 0.2 mm more than as found`. */
export function goesWords(
  links: readonly LostMotionReport[],
  unit: LengthUnit,
  { short = false } = {},
): string {
  const [most] = links;
  const each = links.map(({ driverName, lostMm, lostPlusMinusMm }, i) => {
    const tell = short ? lengthWithPlusMinus : lengthBothWithPlusMinus;
    const much = tell(lostMm, lostPlusMinusMm, unit);
    return i === 0 ? `${driverName} goes ${much}` : `${driverName} ${much}`;
  });
  const more = `${links.length === 1 ? '' : 'up to '}${lengthWithPlusMinus(most.moreMm, most.morePlusMinusMm, unit)} more than as found`;
  const sure = most.shown ? '' : ', which these readings cannot show';
  return `${capital(inARow(each))}${short ? '' : ' at the front'} before ${most.drivenName} stirs, ${more}${sure}`;
}

/** What takes the lost motion of a link up: heights, never its screw. */
export function takingUpSentence(
  { takenUpBy, driverName, drivenName }: LostMotionReport,
  unit: LengthUnit,
): string {
  const [first, ...others] = takenUpBy;
  if (first === undefined) return `Only ${driverName} set lower takes it up.`;
  const along =
    others.length === 0
      ? ''
      : `, with ${inARow(others.map((pad) => toWords(pad, unit)))} so that ${others.length === 1 ? 'its arm lets' : 'their arms let'} it`;
  return (
    `${capital(toWords(first, unit))}${corkWords(first, unit)} takes it up${along}; ` +
    `the link’s screw cannot: it sets how ${driverName} and ${drivenName} shut.`
  );
}

function toWords({ name, toMm }: TakingUpReport, unit: LengthUnit): string {
  return `${name} at ${formatLength(toMm, unit)}`;
}

function corkWords({ thinnerCorkMm }: TakingUpReport, unit: LengthUnit): string {
  return thinnerCorkMm === null ? '' : ` (foot cork ${formatFine(thinnerCorkMm, unit)} thinner)`;
}
