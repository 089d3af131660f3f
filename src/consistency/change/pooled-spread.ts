import { mean } from '../mean.ts';

/** The spread within groups, all groups together. */
export interface PooledSpread {
  readonly deviation: number;
  /** Values in groups of two and more. */
  readonly values: number;
  /** Those less one for each group. */
  readonly degrees: number;
  /** Sum of the fourth powers of the deviations, for how heavy the tails are. */
  readonly fourthPowers: number;
}

/** Values that differ by a smaller share do so by rounding. */
const ROUNDING = 1e-14;

/**
 * Standard deviation from value to value within a group, which shifts between groups do not touch (repeatability by
 * ISO 5725-2). Null where no group holds two values.
 */
export function pooledSpread(groups: readonly (readonly number[])[]): PooledSpread | null {
  let [values, degrees, squares, fourthPowers] = [0, 0, 0, 0];
  for (const group of groups) {
    if (group.length < 2) continue;
    const centre = mean(group)!;
    values += group.length;
    degrees += group.length - 1;
    // deviations of a small group are smaller by this than those from its true mean
    const shrunk = (group.length - 1) / group.length;
    for (const value of group) {
      const square = (value - centre) ** 2;
      squares += square;
      fourthPowers += (square / shrunk) ** 2;
    }
  }
  if (degrees === 0) return null;
  const deviation = Math.sqrt(squares / degrees);
  const isRounding = deviation <= ROUNDING * largest(groups);
  return { deviation: isRounding ? 0 : deviation, values, degrees, fourthPowers };
}

function largest(groups: readonly (readonly number[])[]): number {
  let most = 0;
  for (const group of groups) for (const value of group) most = Math.max(most, Math.abs(value));
  return most;
}
