import { mean } from '../mean.ts';

/** Limits that were set once and stay. */
export interface ChartLimits {
  readonly centre: number;
  readonly upper: number;
  readonly lower: number;
  /** Mean of the moving ranges, the distances of neighbours. */
  readonly meanMovingRange: number;
  readonly movingRangeUpper: number;
  /** Values they were made of. */
  readonly baseline: number;
}

/** Mean range of two values of a normal distribution in its standard deviations, as tables give it. */
const RANGE_OF_TWO = 1.128;
/** Upper limit of a range of two over its mean, as tables give it. */
const RANGE_LIMIT = 3.267;

/**
 * Limits of an individuals and moving-range chart (NIST/SEMATECH e-Handbook 6.3.2.2): three deviations either side of
 * the mean, the deviation taken from neighbours so that a drift in the baseline does not widen them. Null of fewer
 * than two values.
 *
 * @param baseline the values the limits are made of, in time order
 */
export function individualsLimits(baseline: readonly number[]): ChartLimits | null {
  const centre = mean(baseline);
  const meanMovingRange = mean(movingRanges(baseline));
  if (centre === null || meanMovingRange === null) return null;
  const reach = (3 * meanMovingRange) / RANGE_OF_TWO;
  return {
    centre,
    upper: centre + reach,
    lower: centre - reach,
    meanMovingRange,
    movingRangeUpper: RANGE_LIMIT * meanMovingRange,
    baseline: baseline.length,
  };
}

/** Standard deviation that the limits stand for. */
export function deviationOf({ meanMovingRange }: ChartLimits): number {
  return meanMovingRange / RANGE_OF_TWO;
}

/** Distances of neighbours, one fewer than the values. */
export function movingRanges(values: readonly number[]): number[] {
  return values.slice(1).map((value, i) => Math.abs(value - values[i]!));
}
