import { mean } from '../mean.ts';

/** How far values lie apart within a group and between groups, in their own unit. */
export interface Repeatability {
  /** Standard deviation within a group, for practices: from rep to rep on one day. */
  readonly within: number;
  /** Standard deviation of the true group means, 0 where the data show none. */
  readonly between: number;
  /** Of a single value of any group: both together. */
  readonly reproducibility: number;
  /** Two values of one group differ by less than this in 95 of 100 cases. */
  readonly repeatabilityLimit: number;
  /** Two values of different groups differ by less than this in 95 of 100 cases. */
  readonly reproducibilityLimit: number;
  /** Size of a group as it counts where groups are unequal. */
  readonly meanSize: number;
  readonly groups: number;
  readonly values: number;
}

/** A difference of two normal values stays below 1.96 times the square root of 2 deviations; the standard rounds. */
const LIMIT = 2.8;

/**
 * Repeatability and reproducibility by ISO 5725-2:2019, 7.4: one-way analysis of variance of groups of unequal size,
 * here the practices of one driver. Null with fewer than two groups, or where no group holds two values.
 *
 * @param groups values of each group; empty groups do not count
 */
export function repeatability(groups: readonly (readonly number[])[]): Repeatability | null {
  const filled = groups.filter(({ length }) => length > 0);
  const values = filled.reduce((sum, { length }) => sum + length, 0);
  if (filled.length < 2 || values === filled.length) return null;
  const { squaresWithin, squaresBetween } = sumsOfSquares(filled);
  const varianceWithin = squaresWithin / (values - filled.length);
  const squaredSizes = filled.reduce((sum, { length }) => sum + length ** 2, 0);
  const meanSize = (values - squaredSizes / values) / (filled.length - 1);
  const meanSquareBetween = squaresBetween / (filled.length - 1);
  const varianceBetween = Math.max(0, (meanSquareBetween - varianceWithin) / meanSize);
  const reproducibility = Math.sqrt(varianceWithin + varianceBetween);
  return {
    within: Math.sqrt(varianceWithin),
    between: Math.sqrt(varianceBetween),
    reproducibility,
    repeatabilityLimit: LIMIT * Math.sqrt(varianceWithin),
    reproducibilityLimit: LIMIT * reproducibility,
    meanSize,
    groups: filled.length,
    values,
  };
}

function sumsOfSquares(groups: readonly (readonly number[])[]): {
  readonly squaresWithin: number;
  readonly squaresBetween: number;
} {
  let [sum, values, squaresWithin, squaresBetween] = [0, 0, 0, 0];
  for (const group of groups) {
    values += group.length;
    for (let i = 0; i < group.length; i++) sum += group[i]!;
  }
  const overall = sum / values;
  for (const group of groups) {
    const centre = mean(group)!;
    squaresBetween += group.length * (centre - overall) ** 2;
    for (let i = 0; i < group.length; i++) squaresWithin += (group[i]! - centre) ** 2;
  }
  return { squaresWithin, squaresBetween };
}
