import { inverse, Matrix, QrDecomposition, SingularValueDecomposition, solve } from 'ml-matrix';

/** Real linear systems: the one door by which the matrix package comes in. */
export { Matrix, solve };

/**
 * The x that brings many equations closest to what they ask, in the sum of squares, by Householder's QR.
 *
 * @param rows   at least as many as unknowns, of full rank
 * @param wanted one number per row
 */
export function solveLeastSquares(rows: readonly (readonly number[])[], wanted: readonly number[]): number[] {
  const qr = new QrDecomposition(new Matrix(rows.map((row) => [...row])));
  return qr.solve(Matrix.columnVector([...wanted])).to1DArray();
}

/** (AᵀA)⁻¹ of rows of full rank: from R of A = QR, (AᵀA)⁻¹ = R⁻¹R⁻ᵀ. */
export function inverseOfSquares(rows: readonly (readonly number[])[]): number[][] {
  const r = new QrDecomposition(new Matrix(rows.map((row) => [...row]))).upperTriangularMatrix;
  const inverseR = inverse(r);
  return inverseR.mmul(inverseR.transpose()).to2DArray();
}

/** Singular values of some rows, the greatest first, each with its direction among the columns. */
export function singularDirections(
  rows: readonly (readonly number[])[],
): { readonly value: number; readonly direction: readonly number[] }[] {
  const svd = new SingularValueDecomposition(new Matrix(rows.map((row) => [...row])), {
    autoTranspose: true,
  });
  const directions = svd.rightSingularVectors;
  return svd.diagonal.map((value, i) => ({ value, direction: directions.getColumn(i) }));
}
