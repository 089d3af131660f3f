import {
  bounded,
  type CurveFit,
  type CurveProblem,
  residuals,
  sumOfSquares,
} from './curve-problem.ts';
import { type Columns, solveLeastSquares } from './qr.ts';
import { slopesOfCurve } from './slopes-of-curve.ts';

const MOST_ITERATIONS = 500;
/** A step smaller than this share of every parameter ends the search. */
const SMALLEST_STEP = 1e-13;
/** Squares that fall by a smaller share than this fall by rounding. */
const SMALLEST_FALL = 1e-15;

/**
 * Walks down from one start to the nearest minimum by the method of Levenberg and Marquardt, each parameter measured
 * by how much it moves the curve (Moré 1978, Lecture Notes in Mathematics 630:105), the damping by how well the last
 * step went (Nielsen 1999, report IMM-REP-1999-05). A parameter at a bound that wants to leave it stays there. The
 * nearest minimum may be a false one: see `fitCurve`. Null where the curve is no number at the start.
 */
export function walkDown(problem: CurveProblem, start: ArrayLike<number>): CurveFit | null {
  let parameters = bounded(problem, start);
  let rest = residuals(problem, parameters);
  let squares = sumOfSquares(rest);
  if (!Number.isFinite(squares)) return null;
  let [damping, growth, iterations] = [1e-3, 2, 0];
  const scales = new Float64Array(parameters.length);
  let slopes = measured(problem, parameters, scales);
  for (; iterations < MOST_ITERATIONS; iterations++) {
    const step = dampedStep(problem, parameters, slopes, rest, scales, damping);
    if (step === null) break;
    const next = bounded(
      problem,
      parameters.map((value, j) => value + step[j]!),
    );
    if (isTooSmall(parameters, next)) break;
    const nextRest = residuals(problem, next);
    const nextSquares = sumOfSquares(nextRest);
    if (nextSquares < squares) {
      const isDown = squares - nextSquares <= SMALLEST_FALL * squares;
      const promised = promisedFall(slopes, rest, parameters, next);
      const kept = Math.max(1 / 3, 1 - (2 * ((squares - nextSquares) / promised) - 1) ** 3);
      [damping, growth] = [Math.max(1e-15, damping * kept), 2];
      [parameters, rest, squares] = [next, nextRest, nextSquares];
      if (isDown) break;
      slopes = measured(problem, parameters, scales);
    } else {
      damping *= growth;
      growth *= 2;
    }
  }
  return { parameters: Array.from(parameters), residualSquares: squares, iterations };
}

/** The slopes, with the scale of each parameter grown to the steepest seen so far. */
function measured(
  problem: CurveProblem,
  parameters: Float64Array,
  scales: Float64Array,
): Float64Array[] {
  const slopes = slopesOfCurve(problem, parameters);
  for (const [j, column] of slopes.entries())
    scales[j] = Math.max(scales[j]!, Math.sqrt(sumOfSquares(column)));
  return slopes;
}

/** The step of least squares, held back by the damping; null where nothing is left to move. */
function dampedStep(
  problem: CurveProblem,
  parameters: Float64Array,
  slopes: Columns,
  rest: Float64Array,
  scales: Float64Array,
  damping: number,
): Float64Array | null {
  const free = slopes.flatMap((column, j) =>
    scales[j]! > 0 && Number.isFinite(scales[j]!) && !isHeld(problem, parameters, j, column, rest)
      ? [j]
      : [],
  );
  if (free.length === 0) return null;
  const columns = free.map((j, place) => {
    const column = new Float64Array(rest.length + free.length);
    column.set(slopes[j]!);
    column[rest.length + place] = Math.sqrt(damping) * scales[j]!;
    return column;
  });
  const right = new Float64Array(rest.length + free.length);
  right.set(rest);
  const solved = solveLeastSquares(columns, right);
  if (solved === null) return null;
  const step = new Float64Array(parameters.length);
  for (const [place, j] of free.entries()) step[j] = solved.solution[place]!;
  return step.every(Number.isFinite) ? step : null;
}

/** At a bound, and downhill lies outside. */
function isHeld(
  { lower, upper }: CurveProblem,
  parameters: Float64Array,
  j: number,
  column: Float64Array,
  rest: Float64Array,
): boolean {
  let downhill = 0;
  for (let i = 0; i < column.length; i++) downhill += column[i]! * rest[i]!;
  return (
    (parameters[j] === lower?.[j] && downhill <= 0) ||
    (parameters[j] === upper?.[j] && downhill >= 0)
  );
}

/** By how much the squares would have fallen if the curve were straight in its parameters. */
function promisedFall(
  slopes: Columns,
  rest: Float64Array,
  before: Float64Array,
  after: Float64Array,
): number {
  const left = rest.slice();
  for (const [j, column] of slopes.entries()) {
    const step = after[j]! - before[j]!;
    for (let i = 0; i < left.length; i++) left[i] = left[i]! - column[i]! * step;
  }
  return Math.max(Number.MIN_VALUE, sumOfSquares(rest) - sumOfSquares(left));
}

function isTooSmall(before: Float64Array, after: Float64Array): boolean {
  return before.every((value, j) => Math.abs(after[j]! - value) <= SMALLEST_STEP * Math.abs(value));
}
