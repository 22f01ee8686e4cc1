import { dual, type Dual } from '../../numerics/dual.ts';

/**
 * A small smooth function of several variables: layers of weighted sums bent by tanh, the last layer straight.
 * Fitted offline to the solved flows of `datasets/pad-gap`; here it is only evaluated, together with its exact
 * derivative along the direction its inputs move in.
 *
 *   out = W_n tanh(… tanh(W_1 x + b_1) …) + b_n
 *
 * **Source:** the multilayer perceptron, Rumelhart, Hinton & Williams 1986 (from memory); the fits are ours.
 */
export interface SmoothNet {
  /** inputs, hidden widths, outputs */
  readonly sizes: readonly number[];
  /** layer after layer: matrix (from × to, row by row), then offsets (to) */
  readonly weights: readonly number[];
}

/**
 * Evaluates a net and its derivative.
 *
 * @param inputs as many as the net takes
 * @returns as many as it gives
 */
export function netAt({ sizes, weights }: SmoothNet, inputs: readonly Dual[]): Dual[] {
  let signals = [...inputs];
  let at = 0;
  for (let layer = 0; layer + 1 < sizes.length; layer++) {
    const from = sizes[layer];
    const to = sizes[layer + 1];
    const straight = layer + 2 === sizes.length;
    const next = new Array<Dual>(to);
    for (let j = 0; j < to; j++) {
      let value = weights[at + from * to + j];
      let slope = 0;
      for (let i = 0; i < from; i++) {
        const weight = weights[at + i * to + j];
        value += weight * signals[i].value;
        slope += weight * signals[i].slope;
      }
      const bent = Math.tanh(value);
      next[j] = straight ? dual(value, slope) : dual(bent, slope * (1 - bent * bent));
    }
    at += (from + 1) * to;
    signals = next;
  }
  return signals;
}

/** Where a quantity is followed, and how softly it levels off beyond. */
export interface Range {
  readonly low: number;
  readonly high: number;
  readonly soft: number;
}

/** Follows x between `low` and `high` and levels off smoothly within `soft` beyond either, twice differentiable. */
export function leveledOff(x: Dual, { low, high, soft }: Range): Dual {
  const end = x.value < low ? low : x.value > high ? high : x.value;
  if (end === x.value) return x;
  const bend = Math.tanh((x.value - end) / soft);
  return dual(end + soft * bend, x.slope * (1 - bend * bend));
}
