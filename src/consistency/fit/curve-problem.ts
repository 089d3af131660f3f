/** A curve to be laid through points by the least sum of squared distances. */
export interface CurveProblem {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  /** The curve at one place; what is not a number there is no fit. */
  readonly model: (x: number, parameters: ArrayLike<number>) => number;
  /** How the curve at each place changes with each parameter, a column each; from differences where it is not given. */
  readonly slopes?: (parameters: ArrayLike<number>) => Float64Array[];
  /** Least and largest of each parameter, if they are bounded. */
  readonly lower?: readonly number[];
  readonly upper?: readonly number[];
}

/** Where a search ended. */
export interface CurveFit {
  readonly parameters: readonly number[];
  /** Sum of the squared distances. */
  readonly residualSquares: number;
  readonly iterations: number;
}

/** Distances of the points from the curve. */
export function residuals(problem: CurveProblem, parameters: ArrayLike<number>): Float64Array {
  const { x, y, model } = problem;
  const rest = new Float64Array(x.length);
  for (let i = 0; i < rest.length; i++) rest[i] = y[i]! - model(x[i]!, parameters);
  return rest;
}

/** Sum of squares; infinite where the curve is no number. */
export function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return Number.isFinite(sum) ? sum : Number.POSITIVE_INFINITY;
}

/** Moved into the bounds. */
export function bounded(problem: CurveProblem, parameters: ArrayLike<number>): Float64Array {
  const { lower, upper } = problem;
  const moved = new Float64Array(parameters.length);
  for (let j = 0; j < moved.length; j++) {
    const raised = Math.max(lower?.[j] ?? Number.NEGATIVE_INFINITY, parameters[j]!);
    moved[j] = Math.min(upper?.[j] ?? Number.POSITIVE_INFINITY, raised);
  }
  return moved;
}
