import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, it } from 'vitest';
import {
  airWith,
  calibrate,
  EXPECTED,
  FINGERINGS,
  hornWith,
  makeAirColumn,
  octavesFromA4,
  playWholeHorn,
  UNKNOWNS,
  type Amounts,
} from '../../src/acoustics/index.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { seededNormal } from '../acoustics/seeded.ts';

const { horn, setup } = demoHorn('alto');
const air = makeAirColumn();
const fingerings = FINGERINGS.filter(({ way }, i) => way === '' && i % 3 !== 0);

function pitches(amounts: Amounts): number[] {
  const notes = playWholeHorn(hornWith(horn, amounts), setup, airWith(air, amounts), {
    fingerings,
    answers: false,
  });
  return notes.map(({ fingering, outcome }) =>
    outcome.found ? outcome.cents + (amounts['player’s trend'] ?? 0) * octavesFromA4(fingering.note) : NaN,
  );
}

/** A general fitter steps by differences and stops by its own rule; in shares of what was known beforehand. */
const FITTER = 2e-3;

describe('a general-purpose fitter of another package', () => {
  it('comes to the same amounts on the same objective', () => {
    const normal = seededNormal(31);
    const truth = Object.fromEntries(UNKNOWNS.map((u) => [u, EXPECTED[u] * normal()])) as Amounts;
    const cents = pitches(truth).map((c) => c + 3 * normal());
    const notes = fingerings.map((fingering, i) => ({ fingering, cents: cents[i], plusMinus: 3 }));
    const found = calibrate([{ horn, setup, notes }], air, UNKNOWNS);
    expect(found.notes.every(({ standing }) => standing === 'fitted')).toBe(true);

    const amountsOf = (x: readonly number[]): Amounts =>
      Object.fromEntries(UNKNOWNS.map((u, j) => [u, EXPECTED[u] * x[j]]));
    const sigma = Math.hypot(3, found.unexplained);
    // All in units of its own ±: the notes first, then one line for each amount, known to be 0 ± 1.
    const lines = [...cents.map((c) => c / sigma), ...UNKNOWNS.map(() => 0)];
    let last: { readonly x: readonly number[]; readonly pitches: number[] } | null = null;
    const at = (x: readonly number[]) => {
      if (last === null || last.x.some((value, j) => value !== x[j])) {
        last = { x: [...x], pitches: pitches(amountsOf(x)) };
      }
      const { pitches: heard, x: there } = last;
      return (line: number): number =>
        line < heard.length ? heard[line] / sigma : there[line - heard.length];
    };
    const fit = levenbergMarquardt({ x: lines.map((_, i) => i), y: lines }, at, {
      initialValues: UNKNOWNS.map(() => 0.1),
      gradientDifference: UNKNOWNS.map(() => 1e-3),
      centralDifference: true,
      damping: 1e-3,
      maxIterations: 40,
      errorTolerance: 1e-12,
    });
    found.fitted.forEach(({ unknown, amount }, j) => {
      expect(Math.abs(amount / EXPECTED[unknown] - fit.parameterValues[j])).toBeLessThan(FITTER);
    });
  });
});
