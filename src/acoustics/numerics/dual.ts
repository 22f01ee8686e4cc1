/**
 * A number and its derivative along one direction: forward differentiation, exact to rounding. Enough of the
 * calculus for a formula to be written once and differentiated along whatever its inputs move along.
 *
 * **Source:** the chain rule.
 */
export interface Dual {
  readonly value: number;
  readonly slope: number;
}

/** A number that moves by `slope` along the direction; 0 for one that stands still. */
export const dual = (value: number, slope = 0): Dual => ({ value, slope });

export const plus = (a: Dual, b: Dual): Dual => ({ value: a.value + b.value, slope: a.slope + b.slope });
export const minus = (a: Dual, b: Dual): Dual => ({ value: a.value - b.value, slope: a.slope - b.slope });

export const times = (a: Dual, b: Dual): Dual => ({
  value: a.value * b.value,
  slope: a.slope * b.value + a.value * b.slope,
});

/** a/b; b must not be zero. */
export const over = (a: Dual, b: Dual): Dual => {
  const value = a.value / b.value;
  return { value, slope: (a.slope - value * b.slope) / b.value };
};

/** k·a + c. */
export const linear = (a: Dual, k: number, c = 0): Dual => ({ value: k * a.value + c, slope: k * a.slope });

/** a function of a, from its value and its derivative there. */
export const through = (a: Dual, value: number, derivative: number): Dual => ({
  value,
  slope: derivative * a.slope,
});

export const lnOf = (a: Dual): Dual => through(a, Math.log(a.value), 1 / a.value);

export const expOf = (a: Dual): Dual => {
  const value = Math.exp(a.value);
  return through(a, value, value);
};

/** aⁿ for a > 0 and a fixed n. */
export const powerOf = (a: Dual, n: number): Dual => {
  const value = a.value ** n;
  return through(a, value, (n * value) / a.value);
};

export const sinOf = (a: Dual): Dual => through(a, Math.sin(a.value), Math.cos(a.value));

export const asinOf = (a: Dual): Dual => through(a, Math.asin(a.value), 1 / Math.sqrt(1 - a.value * a.value));

/** atan(a/b) in the right quadrant. */
export const atan2Of = (a: Dual, b: Dual): Dual => {
  const size = a.value * a.value + b.value * b.value;
  return { value: Math.atan2(a.value, b.value), slope: (a.slope * b.value - b.slope * a.value) / size };
};

export const hypotOf = (a: Dual, b: Dual): Dual => {
  const value = Math.hypot(a.value, b.value);
  return { value, slope: (a.value * a.slope + b.value * b.slope) / value };
};
