import { standardDeviation } from '../standard-deviation.ts';

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
