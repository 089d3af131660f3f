import { chiSquareQuantile } from '../distribution/chi-square.ts';
import { type Interval, USUAL_LEVEL } from '../interval.ts';

/**
 * Where the standard deviation of a normal population lies (NIST/SEMATECH e-Handbook 7.2.3.1, chi-square).
 *
 * @param deviation of the sample
 * @param degrees of freedom: values less the means they were taken from
 */
export function spreadInterval(
  deviation: number,
  degrees: number,
  level: number = USUAL_LEVEL,
): Interval {
  const tail = (1 - level) / 2;
  return {
    low: deviation * Math.sqrt(degrees / chiSquareQuantile(1 - tail, degrees)),
    high: deviation * Math.sqrt(degrees / chiSquareQuantile(tail, degrees)),
    level,
  };
}
