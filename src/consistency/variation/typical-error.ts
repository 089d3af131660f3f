import { type Interval, USUAL_LEVEL } from '../interval.ts';
import { standardDeviation } from '../standard-deviation.ts';
import { spreadInterval } from '../summary/spread-interval.ts';

/**
 * How far a value from one practice strays without any change in the driver: the standard deviation of the differences
 * of neighbouring practices over the square root of 2 (Hopkins 2000, Sports Medicine 30:1). A steady trend drops out.
 * Null of fewer than three values.
 *
 * @param values one of each practice, in time order
 */
export function typicalError(values: readonly number[]): number | null {
  const deviation = standardDeviation(values.slice(1).map((value, i) => value - values[i]!));
  return deviation === null ? null : deviation / Math.SQRT2;
}

/**
 * Where the typical error lies, for values that stray normally. Neighbouring differences share a value, so they say less
 * than as many of their own: of m of them, their mean taken off, the mean square is (m + 1) / m of what it should be,
 * and the degrees of freedom are those of a quadratic form with the same mean and variance (Satterthwaite 1946,
 * Biometrics Bulletin 2:110), about two thirds of m. Null of fewer than three values.
 *
 * @param values one of each practice, in time order
 */
export function typicalErrorInterval(
  values: readonly number[],
  level: number = USUAL_LEVEL,
): Interval | null {
  const error = typicalError(values);
  if (error === null) return null;
  const m = values.length - 1;
  const degrees = (2 * m - 2 / m) ** 2 / (6 * m - 2 - 4 / m + 4 / m ** 2);
  return spreadInterval(error * Math.sqrt(m / (m + 1)), degrees, level);
}
