/** Fewest reps between which a spread says anything. */
const LEAST_REPS = 3;

/**
 * How far curves differ from each other: the root mean square over the grid of the standard deviation (n - 1)
 * between curves at each place. Null under three curves.
 *
 * @param curves levels on one common grid
 */
export function spreadOf(curves: readonly Float64Array[]): number | null {
  const first = curves[0];
  if (first === undefined || curves.length < LEAST_REPS) return null;
  const variances = first.map((_, place) => variance(curves, place));
  return Math.sqrt(variances.reduce((sum, v) => sum + v, 0) / variances.length);
}

/** Two passes: the textbook sum of squares loses everything on levels that hardly differ. */
function variance(curves: readonly Float64Array[], place: number): number {
  const n = curves.length;
  const mean = curves.reduce((sum, curve) => sum + curve[place]!, 0) / n;
  return curves.reduce((sum, curve) => sum + (curve[place]! - mean) ** 2, 0) / (n - 1);
}
