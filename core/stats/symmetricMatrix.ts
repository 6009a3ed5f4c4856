/** A square matrix by rows. */
export type Matrix = readonly (readonly number[])[];

/** A pivot this small beside its diagonal element means that the row says nothing new. */
const SINGULAR = 1e-11;

/**
 * Lower factor L of the Cholesky decomposition of a symmetric positive definite matrix, or null if it is
 * singular to working precision. O(n^3).
 */
export function cholesky(matrix: Matrix): Matrix | null {
  const factor: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    const made: number[] = [];
    for (let j = 0; j <= i; j++) {
      const other = j === i ? made : (factor[j] as number[]);
      let sum = row[j] as number;
      for (let k = 0; k < j; k++) sum -= (made[k] as number) * (other[k] as number);
      if (j < i) {
        made.push(sum / (other[j] as number));
      } else {
        if (!(sum > SINGULAR * (row[i] as number))) return null;
        made.push(Math.sqrt(sum));
      }
    }
    factor.push(made);
  }
  return factor;
}

/** The x with L L' x = b, for a Cholesky factor L. */
export function choleskySolve(factor: Matrix, b: readonly number[]): number[] {
  const x = [...b];
  for (const [i, row] of factor.entries()) {
    for (let k = 0; k < i; k++) x[i] = (x[i] as number) - (row[k] as number) * (x[k] as number);
    x[i] = (x[i] as number) / (row[i] as number);
  }
  for (let i = factor.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < factor.length; k++) {
      x[i] = (x[i] as number) - ((factor[k] as readonly number[])[i] as number) * (x[k] as number);
    }
    x[i] = (x[i] as number) / ((factor[i] as readonly number[])[i] as number);
  }
  return x;
}

/** Inverse of the matrix whose Cholesky factor is given. */
export function choleskyInverse(factor: Matrix): Matrix {
  return factor.map((_, column) => choleskySolve(factor, factor.map((__, row) => (row === column ? 1 : 0))));
}

/** b' M^-1 b for a symmetric positive definite M, or null if M is singular. */
export function inverseQuadraticForm(matrix: Matrix, b: readonly number[]): number | null {
  const factor = cholesky(matrix);
  if (factor === null) return null;
  return choleskySolve(factor, b).reduce((sum, x, i) => sum + x * (b[i] as number), 0);
}
