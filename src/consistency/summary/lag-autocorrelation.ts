import { mean } from '../mean.ts';

/** Above this neighbours are so alike that limits and tests made for independent values alarm several times too often. */
export const NOTABLE_AUTOCORRELATION = 0.25;

/**
 * How much neighbours resemble each other, -1..1: the sum of products of neighbouring deviations from the mean over
 * the sum of squared deviations (NIST/SEMATECH e-Handbook 1.3.5.12). Null of fewer than three values, and of values
 * that are all the same.
 *
 * @param values in the order in which they came
 */
export function lagAutocorrelation(values: readonly number[]): number | null {
  const centre = mean(values);
  if (centre === null || values.length < 3) return null;
  const deviations = centred(values, centre);
  let [products, squares] = [0, 0];
  for (const [i, deviation] of deviations.entries()) {
    squares += deviation ** 2;
    if (i > 0) products += deviation * deviations[i - 1]!;
  }
  return squares === 0 ? null : products / squares;
}

/** The second pass takes off what rounding left in the mean. */
function centred(values: readonly number[], centre: number): number[] {
  const deviations = values.map((value) => value - centre);
  const rest = mean(deviations) ?? 0;
  return deviations.map((deviation) => deviation - rest);
}
