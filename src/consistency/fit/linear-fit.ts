import { inverseDiagonal, solveLeastSquares } from './qr.ts';

/** A sum of columns, each times its coefficient, nearest to the values in the sense of least squares. */
interface LinearFit {
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  readonly residualSquares: number;
  /** Residual squares over values less coefficients, as a deviation; null where there are no more values. */
  readonly residualDeviation: number | null;
}

/**
 * Linear regression by orthogonal reflections. Null where the columns do not tell the coefficients apart.
 *
 * @param columns for a straight line one of ones and one of the times
 */
export function linearFit(
  columns: readonly (readonly number[])[],
  values: readonly number[],
): LinearFit | null {
  const solved = solveLeastSquares(
    columns.map((column) => Float64Array.from(column)),
    values,
  );
  if (solved === null) return null;
  const coefficients = Array.from(solved.solution);
  const residualSquares = values.reduce((sum, value, i) => {
    const fitted = coefficients.reduce((total, c, j) => total + c * columns[j]![i]!, 0);
    return sum + (value - fitted) ** 2;
  }, 0);
  const degrees = values.length - columns.length;
  const residualDeviation = degrees > 0 ? Math.sqrt(residualSquares / degrees) : null;
  const standardErrors = Array.from(
    inverseDiagonal(solved.triangle),
    (unit) => Math.sqrt(unit) * (residualDeviation ?? 0),
  );
  return { coefficients, standardErrors, residualSquares, residualDeviation };
}
