import { dual, linear, lnOf, over, plus, powerOf, times, type Dual } from '../../numerics/dual.ts';
import { flangedEndLength, flangedEndSlope } from '../../bore/open-end.ts';

/**
 * The published end lengths that our own fits stand on, in hole radii: h `height`, w `rim`, d `pad`.
 */

/**
 * Open chimney with a rim, no pad.
 *
 * **Source:** Dalmont, Nederveen & Joly 2001 → bore/open-end.ts.
 */
export function publishedOpenLength(rim: Dual): Dual {
  const value = flangedEndLength(1, rim.value);
  // L(b, w) is of first degree in both: ∂L/∂w = (L − b ∂L/∂b)/w.
  const slope = rim.value === 0 ? 0 : (value - flangedEndSlope(1, rim.value)) / rim.value;
  return dual(value, slope * rim.slope);
}

/**
 * What a parallel pad adds: 1/[3.5 h^0.8 (h + 3w)^−0.4 + 30 (h/d)^2.6].
 *
 * **Source:** Dalmont, Nederveen & Joly 2001 (from memory). **Holds for:** a pad that covers the rim,
 * h ≥ 0.15: within 5 % of the solved flow, 1 % rms.
 */
export function publishedParallelPad(height: Dual, rim: Dual, pad: Dual): Dual {
  const near = linear(times(powerOf(height, 0.8), powerOf(plus(height, linear(rim, 3)), -0.4)), 3.5);
  const far = linear(powerOf(over(height, pad), 2.6), 30);
  return over(dual(1), plus(near, far));
}

/** ln(min(d, 1 + w)): the outer end of the gap between rim and pad, r = 1 the inner. */
export function lnOuterEnd(rim: Dual, pad: Dual): Dual {
  return lnOf(pad.value < 1 + rim.value ? pad : linear(rim, 1, 1));
}
