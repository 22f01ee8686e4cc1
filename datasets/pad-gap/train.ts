import type { SmoothNet } from '../../src/acoustics/holes/pad-gap/smooth-net.ts';

/**
 * Fits a net by damped least squares with a small penalty on its weights.
 *
 * Minimises Σ weight² (Σ_k factor_k out_k − target)² + ridge |weights|².
 * **Source:** Levenberg 1944, Marquardt 1963; back-propagation for the derivatives; from memory.
 */
export interface Sample {
  inputs: readonly number[];
  /** What the outputs are multiplied with before they are added; [1] for a plain fit. */
  factors: readonly number[];
  target: number;
  weight: number;
}

export interface TrainPlan {
  sizes: readonly number[];
  ridge: number;
  steps: number;
  uniform: () => number;
}

const start = (sizes: readonly number[], uniform: () => number): Float64Array => {
  const weights: number[] = [];
  const bell = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  for (let l = 0; l + 1 < sizes.length; l++) {
    for (let k = 0; k < sizes[l] * sizes[l + 1]; k++) weights.push(bell() / Math.sqrt(sizes[l]));
    for (let k = 0; k < sizes[l + 1]; k++) weights.push(0.3 * bell());
  }
  return Float64Array.from(weights);
};

/** Weighted sum of the outputs; fills `gradient` with its derivative by every weight if given. */
const predict = (
  sizes: readonly number[],
  weights: Float64Array,
  { inputs, factors }: Sample,
  gradient?: Float64Array,
): number => {
  const layers: number[][] = [[...inputs]];
  const starts: number[] = [];
  let at = 0;
  for (let l = 0; l + 1 < sizes.length; l++) {
    starts.push(at);
    const [from, to] = [sizes[l], sizes[l + 1]];
    const out: number[] = [];
    for (let j = 0; j < to; j++) {
      let sum = weights[at + from * to + j];
      for (let i = 0; i < from; i++) sum += weights[at + i * to + j] * layers[l][i];
      out.push(l + 2 === sizes.length ? sum : Math.tanh(sum));
    }
    layers.push(out);
    at += (from + 1) * to;
  }
  const outputs = layers[layers.length - 1];
  if (gradient) {
    let pull = [...factors];
    for (let l = sizes.length - 2; l >= 0; l--) {
      const [from, to] = [sizes[l], sizes[l + 1]];
      const next = new Array<number>(from).fill(0);
      for (let i = 0; i < from; i++) {
        const value = layers[l][i];
        let sum = 0;
        for (let j = 0; j < to; j++) {
          gradient[starts[l] + i * to + j] = value * pull[j];
          sum += weights[starts[l] + i * to + j] * pull[j];
        }
        next[i] = sum * (1 - value * value);
      }
      for (let j = 0; j < to; j++) gradient[starts[l] + from * to + j] = pull[j];
      pull = next;
    }
  }
  return outputs.reduce((sum, out, k) => sum + out * factors[k], 0);
};

/** Solves a symmetric positive definite system by Cholesky; returns undefined if it is not one. */
const solveSymmetric = (
  size: number,
  matrix: Float64Array,
  right: Float64Array,
): Float64Array | undefined => {
  const a = matrix.slice();
  const x = right.slice();
  for (let j = 0; j < size; j++) {
    for (let i = j; i < size; i++) {
      let sum = a[i * size + j];
      for (let k = 0; k < j; k++) sum -= a[i * size + k] * a[j * size + k];
      if (i === j) {
        if (!(sum > 0)) return undefined;
        a[j * size + j] = Math.sqrt(sum);
      } else a[i * size + j] = sum / a[j * size + j];
    }
  }
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) x[i] -= a[i * size + k] * x[k];
    x[i] /= a[i * size + i];
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) x[i] -= a[k * size + i] * x[k];
    x[i] /= a[i * size + i];
  }
  return x;
};

/** Fits. @returns the net with weights rounded to seven digits, and the final cost */
export const trainNet = (samples: readonly Sample[], plan: TrainPlan): { net: SmoothNet; cost: number } => {
  const { sizes, ridge, steps, uniform } = plan;
  let weights = start(sizes, uniform);
  const size = weights.length;
  const costOf = (trial: Float64Array): number => {
    let cost = 0;
    for (const sample of samples)
      cost += (sample.weight * (predict(sizes, trial, sample) - sample.target)) ** 2;
    for (const value of trial) cost += ridge * value * value;
    return cost;
  };
  let cost = costOf(weights);
  let damping = 0.1;
  const gradient = new Float64Array(size);
  for (let step = 0; step < steps; step++) {
    const normal = new Float64Array(size * size);
    const right = new Float64Array(size);
    for (const sample of samples) {
      const residual = sample.weight * (predict(sizes, weights, sample, gradient) - sample.target);
      for (let i = 0; i < size; i++) gradient[i] *= sample.weight;
      for (let i = 0; i < size; i++) {
        const gi = gradient[i];
        right[i] += gi * residual;
        for (let j = 0; j <= i; j++) normal[i * size + j] += gi * gradient[j];
      }
    }
    for (let i = 0; i < size; i++) {
      right[i] += ridge * weights[i];
      normal[i * size + i] += ridge;
    }
    let improved = false;
    for (let attempt = 0; attempt < 8 && !improved; attempt++) {
      const damped = normal.slice();
      for (let i = 0; i < size; i++) damped[i * size + i] += damping;
      const move = solveSymmetric(size, damped, right);
      const trial = move ? weights.map((value, i) => value - move[i]) : weights;
      const trialCost = move ? costOf(trial) : Infinity;
      if (trialCost < cost) {
        improved = true;
        weights = trial;
        cost = trialCost;
        damping = Math.max(damping / 4, 1e-12);
      } else damping *= 4;
    }
    if (!improved) break;
  }
  return { net: { sizes, weights: Array.from(weights, (x) => Number(x.toPrecision(7))) }, cost };
};
