/** A matrix as its columns, all of one length. */
export type Columns = readonly Float64Array[];

/** The solution of a least-squares problem. */
interface QrSolution {
  readonly solution: Float64Array;
  /** Upper triangle R of the decomposition as its columns: its inverse gives the standard errors. */
  readonly triangle: Columns;
}

/**
 * Solves A x = b in the sense of least squares by Householder reflections (Golub and Van Loan, Matrix Computations,
 * 4th ed., algorithm 5.3.2). The normal equations would square the condition of A and lose twice the digits. Null
 * where a column depends on the others, or there are fewer rows than columns.
 */
export function solveLeastSquares(columns: Columns, right: ArrayLike<number>): QrSolution | null {
  const a = columns.map((column) => column.slice());
  const b = Float64Array.from(right);
  if (b.length < a.length) return null;
  const largest = Math.max(...a.map((column) => length(column, 0)));
  for (let k = 0; k < a.length; k++) {
    const norm = length(a[k]!, k);
    if (!(norm > 1e-15 * largest)) return null;
    reflect(a, b, k, norm);
  }
  return { solution: backSubstitute(a, b), triangle: a };
}

/** Makes column `k` zero below its diagonal, and turns what stands to its right with it. @param norm of it from there */
function reflect(a: readonly Float64Array[], b: Float64Array, k: number, norm: number): void {
  const v = a[k]!;
  const sign = v[k]! < 0 ? -1 : 1;
  v[k] = v[k]! + sign * norm;
  const squares = dot(v, v, k);
  for (let j = k + 1; j <= a.length; j++) {
    const column = a[j] ?? b;
    const factor = (2 * dot(v, column, k)) / squares;
    for (let i = k; i < v.length; i++) column[i] = column[i]! - factor * v[i]!;
  }
  v.fill(0, k);
  v[k] = -sign * norm;
}

function backSubstitute(triangle: Columns, b: Float64Array): Float64Array {
  const x = Float64Array.from(triangle, (_, i) => b[i]!);
  for (let i = x.length - 1; i >= 0; i--) {
    for (let j = i + 1; j < x.length; j++) x[i] = x[i]! - triangle[j]![i]! * x[j]!;
    x[i] = x[i]! / triangle[i]![i]!;
  }
  return x;
}

/**
 * Diagonal of the inverse of A'A, by which the residual variance is multiplied for the variances of the solution.
 *
 * @param triangle R, of which A'A is R'R
 */
export function inverseDiagonal(triangle: Columns): Float64Array {
  const size = triangle.length;
  const diagonal = new Float64Array(size);
  for (let k = 0; k < size; k++) {
    const unit = new Float64Array(size);
    unit[k] = 1;
    const column = backSubstitute(triangle, unit); // column k of the inverse of R
    for (let i = 0; i < size; i++) diagonal[i] = diagonal[i]! + column[i]! ** 2;
  }
  return diagonal;
}

function length(v: Float64Array, from: number): number {
  return Math.sqrt(dot(v, v, from));
}

/** Of the places from one on. */
function dot(a: Float64Array, b: Float64Array, from: number): number {
  let sum = 0;
  for (let i = from; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
