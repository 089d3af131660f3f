import { normalUpper } from '../distribution/normal.ts';
import { type Interval, USUAL_LEVEL } from '../interval.ts';
import { median } from '../median.ts';
import { kendallUpper } from './kendall-distribution.ts';
import { kendallVariance } from './kendall-variance.ts';
import { COUNTED_UP_TO } from './mann-kendall.ts';
import { ties } from './ties.ts';

/** A straight line that a few wild values do not move. */
export interface TheilSen {
  /** Per unit of time. */
  readonly slope: number;
  readonly slopeInterval: Interval;
  /** Median value less the slope times the median time; other conventions give other intercepts, the same slope. */
  readonly intercept: number;
}

/**
 * Median of the slopes of all pairs at different times, with the interval of Sen (1968), JASA 63:1379, from Kendall's
 * S: counted for few values without ties, else by the normal distribution. Null of fewer than three values, or where
 * all times are the same.
 */
export function theilSen(
  times: readonly number[],
  values: readonly number[],
  level: number = USUAL_LEVEL,
): TheilSen | null {
  const slopes = pairSlopes(times, values).sort();
  if (values.length < 3 || slopes.length === 0) return null;
  const slope = median(slopes)!;
  const place = innermost(slopes.length, level, chanceOfS(times, values));
  return {
    slope,
    slopeInterval: {
      low: slopes[place.place - 1]!,
      high: slopes[slopes.length - place.place]!,
      level: place.level,
    },
    intercept: median(values)! - slope * median(times)!,
  };
}

function pairSlopes(times: readonly number[], values: readonly number[]): Float64Array {
  const slopes = new Float64Array((times.length * (times.length - 1)) / 2);
  let count = 0;
  for (let i = 0; i < times.length; i++)
    for (let j = i + 1; j < times.length; j++)
      if (times[i] !== times[j])
        slopes[count++] = (values[j]! - values[i]!) / (times[j]! - times[i]!);
  return slopes.subarray(0, count);
}

/** Chance that the S of values without a trend is so large or larger on either side. */
function chanceOfS(times: readonly number[], values: readonly number[]): (s: number) => number {
  const n = values.length;
  if (n <= COUNTED_UP_TO && ties(values).length === 0 && ties(times).length === 0)
    return (s) => Math.min(1, 2 * kendallUpper(s, n));
  const deviation = Math.sqrt(kendallVariance(n, values, times));
  return (s) => (deviation === 0 ? 0 : Math.min(1, 2 * normalUpper((s - 1) / deviation)));
}

/** The largest place from the ends of the sorted slopes that still reaches the level, from 1. */
function innermost(
  slopes: number,
  level: number,
  chance: (s: number) => number,
): { readonly place: number; readonly level: number } {
  const attained = (place: number): number => 1 - chance(slopes - 2 * (place - 1));
  let [reached, missed] = [1, Math.floor(slopes / 2) + 1];
  while (missed - reached > 1) {
    const middle = (reached + missed) >> 1;
    if (attained(middle) >= level) reached = middle;
    else missed = middle;
  }
  return { place: reached, level: attained(reached) };
}
