/** Fewest curves between which a spread says anything. */
export const LEAST_CURVES = 3;

/** The mean of curves at each place; null without a curve. */
export function meanCurve(curves: readonly Float64Array[]): Float64Array | null {
  const first = curves[0];
  if (first === undefined) return null;
  return first.map(
    (_, place) => curves.reduce((sum, curve) => sum + curve[place]!, 0) / curves.length,
  );
}

/**
 * The standard deviation (n - 1) between curves at each place; null under three curves. It holds at each instant, not
 * for a whole curve at once.
 */
export function spreadCurve(curves: readonly Float64Array[]): Float64Array | null {
  const mean = meanCurve(curves);
  if (mean === null || curves.length < LEAST_CURVES) return null;
  // two passes: the textbook sum of squares loses everything on levels that hardly differ
  return mean.map((centre, place) => {
    const squares = curves.reduce((sum, curve) => sum + (curve[place]! - centre) ** 2, 0);
    return Math.sqrt(squares / (curves.length - 1));
  });
}
