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

/** What one group adds to it. */
export interface GroupSums extends Omit<PooledSpread, 'deviation'> {
  /** Sum of the squared deviations from the group's mean. */
  readonly squares: number;
  /** The most that a value is away from zero. */
  readonly largest: number;
}

/** Values that differ by a smaller share do so by rounding. */
const ROUNDING = 1e-14;

/**
 * Standard deviation from value to value within a group, which shifts between groups do not touch (repeatability by
 * ISO 5725-2). Null where no group holds two values.
 */
export function pooledSpread(groups: readonly (readonly number[])[]): PooledSpread | null {
  return pooled(groups.map(groupSums));
}

/** The same of groups that were summed up. */
export function pooled(groups: readonly GroupSums[]): PooledSpread | null {
  let [values, degrees, squares, fourthPowers, largest] = [0, 0, 0, 0, 0];
  for (const group of groups) {
    values += group.values;
    degrees += group.degrees;
    squares += group.squares;
    fourthPowers += group.fourthPowers;
    largest = Math.max(largest, group.largest);
  }
  if (degrees === 0) return null;
  const deviation = Math.sqrt(squares / degrees);
  const isRounding = deviation <= ROUNDING * largest;
  return { deviation: isRounding ? 0 : deviation, values, degrees, fourthPowers };
}

export function groupSums(group: readonly number[]): GroupSums {
  let [squares, fourthPowers, largest] = [0, 0, 0];
  const centre = mean(group) ?? 0;
  // deviations of a small group are smaller by this than those from its true mean
  const shrunk = (group.length - 1) / group.length;
  for (let i = 0; i < group.length; i++) {
    largest = Math.max(largest, Math.abs(group[i]!));
    const square = (group[i]! - centre) ** 2;
    squares += square;
    fourthPowers += (square / shrunk) ** 2;
  }
  if (group.length < 2) return { values: 0, degrees: 0, squares: 0, fourthPowers: 0, largest };
  return { values: group.length, degrees: group.length - 1, squares, fourthPowers, largest };
}
