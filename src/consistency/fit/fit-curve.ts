import type { CurveFit, CurveProblem } from './curve-problem.ts';
import { walkDown } from './levenberg-marquardt.ts';

/**
 * The best of the minima below several starts: one start alone may end in a false one. Null where the curve is no
 * number at any of them.
 */
export function fitCurve(
  problem: CurveProblem,
  starts: readonly (readonly number[])[],
): CurveFit | null {
  let best: CurveFit | null = null;
  for (const start of starts) {
    const found = walkDown(problem, start);
    if (
      found !== null &&
      found.residualSquares < (best?.residualSquares ?? Number.POSITIVE_INFINITY)
    )
      best = found;
  }
  return best;
}
