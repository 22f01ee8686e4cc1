/**
 * One-dimensional polynomial tools for the flow solver: Gauss and Gauss–Lobatto points, and the matrices that carry nodal
 * values to values and derivatives at other points. Reference interval −1…+1.
 *
 * **Source:** standard numerical analysis (Newton on Legendre polynomials, barycentric Lagrange form), from memory.
 */

/** Legendre polynomial P_n and its derivative at x, by the three-term recurrence; |x| < 1. */
const legendreAt = (n: number, x: number): { value: number; derivative: number } => {
  let before = 1;
  let value = x;
  for (let k = 2; k <= n; k++) {
    const next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
    before = value;
    value = next;
  }
  return { value, derivative: (n * (before - x * value)) / (1 - x * x) };
};

/**
 * Gauss–Legendre rule with n points, exact for polynomials up to degree 2n − 1.
 * @param n number of points, at least 2
 * @returns points (ascending) and weights, both of length n
 */
export const gaussRule = (n: number): { points: Float64Array; weights: Float64Array } => {
  const points = new Float64Array(n);
  const weights = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    for (let pass = 0; pass < 50; pass++) {
      const { value, derivative } = legendreAt(n, x);
      const step = value / derivative;
      x -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    const { derivative } = legendreAt(n, x);
    points[i] = x;
    weights[i] = 2 / ((1 - x * x) * derivative * derivative);
  }
  return { points, weights };
};

/**
 * Gauss–Lobatto nodes for polynomials of degree p: the ends and the zeros of P_p'.
 * @param p degree, at least 1
 * @returns p + 1 nodes, ascending
 */
export const lobattoNodes = (p: number): Float64Array => {
  const nodes = new Float64Array(p + 1);
  nodes[0] = -1;
  nodes[p] = 1;
  for (let i = 1; i < p; i++) {
    let x = -Math.cos((Math.PI * i) / p);
    for (let pass = 0; pass < 50; pass++) {
      const { value, derivative } = legendreAt(p, x);
      // Legendre's equation gives P'' = (2x P' − p(p+1) P)/(1 − x²).
      const step = derivative / ((2 * x * derivative - p * (p + 1) * value) / (1 - x * x));
      x -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    nodes[i] = x;
  }
  return nodes;
};

/**
 * Matrices that carry values at `nodes` to values and to derivatives at `points`.
 * @returns row-major matrices, points.length × nodes.length
 */
export const interpolation = (
  nodes: Float64Array,
  points: Float64Array,
): { value: Float64Array; derivative: Float64Array } => {
  const n = nodes.length;
  const value = new Float64Array(points.length * n);
  const derivative = new Float64Array(points.length * n);
  for (let q = 0; q < points.length; q++) {
    for (let j = 0; j < n; j++) {
      let product = 1;
      let slope = 0;
      for (let k = 0; k < n; k++) {
        if (k === j) continue;
        const factor = (points[q] - nodes[k]) / (nodes[j] - nodes[k]);
        slope = slope * factor + product / (nodes[j] - nodes[k]);
        product *= factor;
      }
      value[q * n + j] = product;
      derivative[q * n + j] = slope;
    }
  }
  return { value, derivative };
};
