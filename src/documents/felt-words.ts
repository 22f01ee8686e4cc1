import type { ComparedKeyReport, KeyDifferenceReport } from './comparison-report.ts';
import { formatLength, type LengthUnit } from './length-format.ts';
import { lengthWithPlusMinus, sign } from './length-plus-minus.ts';
import { listed } from './listed.ts';
import { stackOf } from './stacks.ts';

/** A player feels a key that stands apart by this much at the front, mm. **Source:** ours, from common practice. */
export const FELT_APART_MM = 0.5;

/** How many keys are named before the rest are counted. */
const NAMED = 3;
/** A stack is told as one from so many keys. */
const FEWEST_OF_STACK = 3;

/** One key with how it stands beside the first setup. */
interface Felt {
  readonly key: ComparedKeyReport;
  readonly d: KeyDifferenceReport;
}

/**
 * What the player’s fingers would feel of one setup beside the first, before a note is blown: stacks that stand
 * higher or lower as one, then single keys; null where no key can be compared.
 *
 * The ± of a stack’s mean is the mean of its keys’ ±: as much as it can be, should they all err alike.
 *
 * @param index of the difference: 0 for the second setup
 */
export function feltWords(
  keys: readonly ComparedKeyReport[],
  index: number,
  unit: LengthUnit = 'mm',
): string | null {
  const all = keys.flatMap((key): Felt[] => {
    const d = key.differences[index];
    return d === null ? [] : [{ key, d }];
  });
  if (all.length === 0) return null;
  if (isOneMove(all) && isAlike(all)) return `every key stands ${stackWords(all, unit)}`;
  const stacks = (['lower stack', 'upper stack'] as const).flatMap((name) => {
    const open = all.filter(({ key }) => key.restsOpen && stackOf(key.number) === name);
    return isOneMove(open) ? [{ name, open }] : [];
  });
  const inStack = new Set(stacks.flatMap(({ open }) => open));
  const lone = all
    .filter((felt) => !inStack.has(felt) && isFelt(felt))
    .sort((a, b) => Math.abs(b.d.frontMm) - Math.abs(a.d.frontMm));
  const told = [
    ...stacks.map(({ name, open }) => ({ who: `the ${name}`, how: stackWords(open, unit) })),
    ...lone.slice(0, NAMED).map(({ key, d }) => ({
      who: key.name,
      how: apart(d.frontMm, d.frontPlusMinusMm, unit),
    })),
  ];
  const more = lone.length - NAMED;
  const words = [
    ...told.map(({ who, how }, i) => `${who}${i === 0 ? ' stands' : ''} ${how}`),
    ...(more > 0 ? [`${more} more ${more === 1 ? 'key' : 'keys'}`] : []),
  ];
  if (words.length > 0) return listed(words);
  const least = formatLength(FELT_APART_MM, unit);
  return all.every(({ d }) => Math.abs(d.frontMm) + d.frontPlusMinusMm < FELT_APART_MM)
    ? `every key stands alike, within ${least}`
    : `no key can be shown to stand ${least} higher or lower`;
}

const isShown = ({ d }: Felt): boolean => Math.abs(d.frontMm) > d.frontPlusMinusMm;
const isFelt = (felt: Felt): boolean => isShown(felt) && Math.abs(felt.d.frontMm) >= FELT_APART_MM;

/** Whether every key of a stack stands the same way apart, at least one as far as is felt. */
function isOneMove(open: readonly Felt[]): boolean {
  return (
    open.length >= FEWEST_OF_STACK &&
    open.every(isShown) &&
    open.every(({ d }) => d.frontMm > 0 === open[0].d.frontMm > 0) &&
    open.some(isFelt)
  );
}

function sizesOf(open: readonly Felt[]): {
  readonly least: number;
  readonly most: number;
  readonly mean: number;
  readonly plusMinus: number;
} {
  const sizes = open.map(({ d }) => Math.abs(d.frontMm));
  const meanOf = (of: readonly number[]): number => of.reduce((sum, each) => sum + each, 0) / of.length;
  const plusMinus = meanOf(open.map(({ d }) => d.frontPlusMinusMm));
  return { least: Math.min(...sizes), most: Math.max(...sizes), mean: meanOf(sizes), plusMinus };
}

/** Whether keys that stand the same way apart do so by the same, as far as their ± can tell. */
function isAlike(open: readonly Felt[]): boolean {
  const { least, most, plusMinus } = sizesOf(open);
  return most - least <= 2 * plusMinus;
}

/** `2.0 ± 0.3 mm lower`, or `1.2 to 2.8 mm lower, each ± 0.3 mm` where its keys differ by more than their ±. */
function stackWords(open: readonly Felt[], unit: LengthUnit): string {
  const { least, most, mean, plusMinus } = sizesOf(open);
  const way = open[0].d.frontMm;
  if (isAlike(open)) return apart(Math.sign(way) * mean, plusMinus, unit);
  const bare = (mm: number): string => formatLength(mm, unit).replace(/ (mm|in)$/, '');
  const from = bare(least);
  return `${from} to ${bare(most)} ${sign(unit)} ${wayOf(way)} (each ± ${formatLength(plusMinus, unit)})`;
}

const apart = (mm: number, plusMinusMm: number, unit: LengthUnit): string =>
  `${lengthWithPlusMinus(Math.abs(mm), plusMinusMm, unit).replaceAll('\u00a0', ' ')} ${wayOf(mm)}`;

const wayOf = (mm: number): string => (mm > 0 ? 'higher' : 'lower');
