import { spreadCurve } from './diagnosis/mean-curve.ts';

/**
 * How far curves differ from each other: the root mean square over the grid of the standard deviation (n - 1)
 * between curves at each place. Null under three curves.
 *
 * @param curves levels on one common grid
 */
export function spreadOf(curves: readonly Float64Array[]): number | null {
  const spread = spreadCurve(curves);
  if (spread === null || spread.length === 0) return null;
  return Math.sqrt(spread.reduce((sum, deviation) => sum + deviation ** 2, 0) / spread.length);
}
