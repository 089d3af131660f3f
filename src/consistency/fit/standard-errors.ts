import { type CurveProblem, residuals, sumOfSquares } from './curve-problem.ts';
import { inverseDiagonal, solveLeastSquares } from './qr.ts';
import { slopesOfCurve } from './slopes-of-curve.ts';

/**
 * Standard errors of fitted parameters, as if the curve were straight in them near its best place. Null with no more
 * points than parameters, or where the points do not tell the parameters apart.
 */
export function standardErrors(
  problem: CurveProblem,
  parameters: readonly number[],
): readonly number[] | null {
  const degrees = problem.x.length - parameters.length;
  const rest = residuals(problem, parameters);
  const solved = degrees < 1 ? null : solveLeastSquares(slopesOfCurve(problem, parameters), rest);
  if (solved === null) return null;
  const variance = sumOfSquares(rest) / degrees;
  return Array.from(inverseDiagonal(solved.triangle), (unit) => Math.sqrt(variance * unit));
}
