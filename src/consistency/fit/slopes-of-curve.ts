import type { CurveProblem } from './curve-problem.ts';

/** Third root of the distance between neighbouring numbers: best for differences from both sides. */
const STEP = Math.cbrt(Number.EPSILON);

/** How the curve at each place changes with each parameter: one column each. */
export function slopesOfCurve(
  problem: CurveProblem,
  parameters: ArrayLike<number>,
): Float64Array[] {
  return problem.slopes?.(parameters) ?? byDifferences(problem, parameters);
}

/** From differences on both sides. */
function byDifferences({ x, model }: CurveProblem, parameters: ArrayLike<number>): Float64Array[] {
  return Array.from(parameters, (value, j) => {
    const h = STEP * (value === 0 ? 1 : Math.abs(value));
    const [above, below] = [value + h, value - h].map((changed) => {
      const moved = Float64Array.from(parameters);
      moved[j] = changed;
      return moved;
    });
    const width = above![j]! - below![j]!;
    const column = new Float64Array(x.length);
    for (let i = 0; i < column.length; i++)
      column[i] = (model(x[i]!, above!) - model(x[i]!, below!)) / width;
    return column;
  });
}
