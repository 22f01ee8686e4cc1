import { singularDirections } from '../numerics/linear-system.ts';
import { EXPECTED, type Unknown } from './calibration-unknowns.ts';

/**
 * What notes can tell of each unknown, and what they cannot.
 *
 * All in units of what was known beforehand: there the ± before is 1 every way, and along the direction v_i of
 * a singular value s_i of the weighed slopes it becomes 1/√(1 + s_i²). Where s_i < 1 the notes say less than was
 * known.
 */
export interface Told {
  readonly unknowns: readonly ToldUnknown[];
  /** in how many independent ways the notes say more than was known; the number of singular values above 1 */
  readonly ways: number;
  /** pairs that play nearly the same, the closest first */
  readonly alike: readonly AlikePair[];
}

export interface ToldUnknown {
  readonly unknown: Unknown;
  /** its ± after by its ± before, 0…1 */
  readonly narrowed: number;
  readonly standing: 'told' | 'told only together' | 'not told';
}

/** Two unknowns that notes cannot tell apart. */
export interface AlikePair {
  readonly first: Unknown;
  readonly second: Unknown;
  /** −1…1, of what is left of the two */
  readonly correlation: number;
  /** how much of the second, in its unit, plays nearly the same as one unit more of the first undone */
  readonly secondPerFirst: number;
}

/** Where half of the variance is left, the notes say less than was known before. */
const NOT_TOLD = Math.SQRT1_2;

/** Two amounts correlated more than this are as good as one; ours. */
const ALIKE = 0.9;

/**
 * @param slopes of the notes, in units of their ± per unit of what was known; one row per note
 * @param scaled covariance of the amounts in units of what was known
 */
export function whatIsTold(
  fitting: readonly Unknown[],
  slopes: readonly (readonly number[])[],
  scaled: readonly (readonly number[])[],
): Told {
  const alike = fitting
    .flatMap((first, i) =>
      fitting.slice(i + 1).map((second, n) => alikePair([first, second], scaled, [i, i + 1 + n])),
    )
    .filter(({ correlation }) => Math.abs(correlation) > ALIKE)
    .sort((a, b) => Math.abs(b.correlation) - Math.abs(a.correlation));
  const unknowns = fitting.map((unknown, j): ToldUnknown => {
    const narrowed = Math.sqrt(scaled[j][j]);
    const isTogether = alike.some(
      ({ first, second }, n) =>
        (first === unknown || second === unknown) && ridge(alike[n], fitting, scaled) > NOT_TOLD ** 2,
    );
    if (isTogether) return { unknown, narrowed, standing: 'told only together' };
    return { unknown, narrowed, standing: narrowed > NOT_TOLD ? 'not told' : 'told' };
  });
  const directions = slopes.length === 0 || fitting.length === 0 ? [] : singularDirections(slopes);
  return { unknowns, alike, ways: directions.filter(({ value }) => value > 1).length };
}

function alikePair(
  [first, second]: readonly [Unknown, Unknown],
  scaled: readonly (readonly number[])[],
  [i, j]: readonly [number, number],
): AlikePair {
  const correlation = scaled[i][j] / Math.sqrt(scaled[i][i] * scaled[j][j]);
  const { along } = widest(scaled[i][i], scaled[i][j], scaled[j][j]);
  return {
    first,
    second,
    correlation,
    secondPerFirst: (along * EXPECTED[second]) / EXPECTED[first],
  };
}

/** The variance left along the direction in which a pair is least told. */
function ridge(
  { first, second }: AlikePair,
  fitting: readonly Unknown[],
  scaled: readonly (readonly number[])[],
): number {
  const [i, j] = [fitting.indexOf(first), fitting.indexOf(second)];
  return widest(scaled[i][i], scaled[i][j], scaled[j][j]).variance;
}

/** The greatest variance of [[a, b], [b, c]], and how far its direction goes along the second per first. */
function widest(a: number, b: number, c: number): { readonly variance: number; readonly along: number } {
  const variance = (a + c) / 2 + Math.hypot((a - c) / 2, b);
  return { variance, along: b === 0 ? Infinity : (variance - a) / b };
}
