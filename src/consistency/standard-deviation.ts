import { mean } from './mean.ts';

/**
 * Standard deviation of a sample (divided by n - 1); null of fewer than two values.
 *
 * Two passes, the second corrected for the rounding of the mean: the one-pass textbook formula subtracts two large
 * sums and can even come out negative (Chan, Golub, LeVeque 1983, The American Statistician 37:242).
 */
export function standardDeviation(values: readonly number[]): number | null {
  const centre = mean(values);
  if (centre === null || values.length < 2) return null;
  let [sum, squares] = [0, 0];
  for (const value of values) {
    sum += value - centre;
    squares += (value - centre) ** 2;
  }
  return Math.sqrt((squares - (sum * sum) / values.length) / (values.length - 1));
}
