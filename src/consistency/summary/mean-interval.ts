import { studentQuantile } from '../distribution/student-t.ts';
import { type Interval, USUAL_LEVEL } from '../interval.ts';
import { mean } from '../mean.ts';
import { standardDeviation } from '../standard-deviation.ts';

/** Where the mean of a normal population lies (Student's t; NIST/SEMATECH e-Handbook 1.3.5.2). Null of fewer than two values. */
export function meanInterval(
  values: readonly number[],
  level: number = USUAL_LEVEL,
): Interval | null {
  return around(values, level, Math.sqrt(1 / values.length));
}

/**
 * Where the next value of a normal population falls (NIST/SEMATECH e-Handbook 1.3.5.2 with the variance of one more
 * value added). Null of fewer than two values.
 */
export function nextValueInterval(
  values: readonly number[],
  level: number = USUAL_LEVEL,
): Interval | null {
  return around(values, level, Math.sqrt(1 + 1 / values.length));
}

function around(values: readonly number[], level: number, factor: number): Interval | null {
  const [centre, deviation] = [mean(values), standardDeviation(values)];
  if (centre === null || deviation === null) return null;
  const half = studentQuantile((1 + level) / 2, values.length - 1) * deviation * factor;
  return { low: centre - half, high: centre + half, level };
}
