import { median } from '../median.ts';

/** Makes the median deviation of a normal distribution its standard deviation: 1 over its third quartile. */
const NORMAL_CONSISTENCY = 1.482602218505602;

/**
 * Median distance from the median, times 1.4826 so that it estimates the standard deviation of a normal distribution
 * (Hampel 1974, JASA 69:383). Up to half of the values may be wild. Null of fewer than two values.
 */
export function medianDeviation(values: ArrayLike<number>): number | null {
  const centre = median(values);
  if (centre === null || values.length < 2) return null;
  const distance = median(Float64Array.from(values, (value) => Math.abs(value - centre)));
  return NORMAL_CONSISTENCY * distance!;
}
