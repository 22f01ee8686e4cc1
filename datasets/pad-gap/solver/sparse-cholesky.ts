/**
 * Sparse Cholesky factorisation of a symmetric positive definite matrix whose unknowns are already in elimination order.
 *
 * **Source:** elimination tree and up-looking factorisation, Davis 2006, *Direct Methods for Sparse Linear Systems*, chapter 4,
 * from memory.
 */

/** Upper triangle by columns: rows `index[start[j]…start[j+1])` of column j, all ≤ j. */
export interface UpperPattern {
  size: number;
  start: Int32Array;
  index: Int32Array;
}

/** Everything about the factor that does not depend on the numbers. */
export interface FactorPattern {
  size: number;
  parent: Int32Array;
  start: Int32Array;
  /** Row k of the factor's strictly lower part is `rows[rowStart[k]…rowStart[k+1])`, in elimination (topological) order. */
  rowStart: Int32Array;
  rows: Int32Array;
}

/** Lower factor by columns, the diagonal entry first in each column. */
export interface Factor {
  pattern: FactorPattern;
  index: Int32Array;
  value: Float64Array;
}

/** Finds the shape of the factor. */
export const analyse = ({ size, start, index }: UpperPattern): FactorPattern => {
  const parent = new Int32Array(size).fill(-1);
  const ancestor = new Int32Array(size).fill(-1);
  for (let k = 0; k < size; k++) {
    for (let p = start[k]; p < start[k + 1]; p++) {
      for (let i = index[p]; i !== -1 && i < k;) {
        const next = ancestor[i];
        ancestor[i] = k;
        if (next === -1) parent[i] = k;
        i = next;
      }
    }
  }
  const mark = new Int32Array(size).fill(-1);
  const count = new Int32Array(size).fill(1);
  const rowStart = new Int32Array(size + 1);
  const path = new Int32Array(size);
  const stack = new Int32Array(size);
  let rows = new Int32Array(16 * index.length);
  let filled = 0;
  for (let k = 0; k < size; k++) {
    let top = size;
    mark[k] = k;
    for (let p = start[k]; p < start[k + 1]; p++) {
      let length = 0;
      for (let i = index[p]; i < k && mark[i] !== k; i = parent[i]) {
        path[length++] = i;
        mark[i] = k;
      }
      while (length > 0) stack[--top] = path[--length];
    }
    if (filled + size - top > rows.length) {
      const bigger = new Int32Array(2 * rows.length + size);
      bigger.set(rows);
      rows = bigger;
    }
    for (; top < size; top++) {
      count[stack[top]]++;
      rows[filled++] = stack[top];
    }
    rowStart[k + 1] = filled;
  }
  const columnStart = new Int32Array(size + 1);
  for (let k = 0; k < size; k++) columnStart[k + 1] = columnStart[k] + count[k];
  return { size, parent, start: columnStart, rowStart, rows: rows.subarray(0, filled) };
};

/**
 * Computes the factor.
 * @param value the entries of the upper triangle, in the order of the pattern
 * @throws RangeError if the matrix is not positive definite
 */
export const factorise = (upper: UpperPattern, pattern: FactorPattern, value: Float64Array): Factor => {
  const { size } = upper;
  const { start, rowStart, rows } = pattern;
  const fill = Int32Array.from(start.subarray(0, size));
  const index = new Int32Array(start[size]);
  const factor = new Float64Array(start[size]);
  const row = new Float64Array(size);
  for (let k = 0; k < size; k++) {
    for (let p = upper.start[k]; p < upper.start[k + 1]; p++) row[upper.index[p]] += value[p];
    let diagonal = row[k];
    row[k] = 0;
    for (let t = rowStart[k]; t < rowStart[k + 1]; t++) {
      const i = rows[t];
      const entry = row[i] / factor[start[i]];
      row[i] = 0;
      const end = fill[i];
      for (let p = start[i] + 1; p < end; p++) row[index[p]] -= factor[p] * entry;
      diagonal -= entry * entry;
      index[end] = k;
      factor[end] = entry;
      fill[i] = end + 1;
    }
    if (!(diagonal > 0)) throw new RangeError(`invalid matrix: pivot ${k} is ${diagonal}; expected positive`);
    index[fill[k]] = k;
    factor[fill[k]++] = Math.sqrt(diagonal);
  }
  return { pattern, index, value: factor };
};

/** Solves in place: `x` holds the right side on entry and the answer on return. */
export const solveInPlace = ({ pattern, index, value }: Factor, x: Float64Array): void => {
  const { size, start } = pattern;
  for (let j = 0; j < size; j++) {
    const xj = (x[j] /= value[start[j]]);
    for (let p = start[j] + 1; p < start[j + 1]; p++) x[index[p]] -= value[p] * xj;
  }
  for (let j = size - 1; j >= 0; j--) {
    let sum = x[j];
    for (let p = start[j] + 1; p < start[j + 1]; p++) sum -= value[p] * x[index[p]];
    x[j] = sum / value[start[j]];
  }
};
