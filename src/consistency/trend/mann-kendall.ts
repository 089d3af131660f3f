import { normalUpper } from '../distribution/normal.ts';
import { kendallUpper } from './kendall-distribution.ts';
import { kendallVariance } from './kendall-variance.ts';
import { ties } from './ties.ts';

/** Up to here the chances are counted; above, the normal distribution is near enough. */
export const COUNTED_UP_TO = 10;

/** Whether values rise or fall over time more than chance. */
export interface MannKendall {
  /** Pairs that rise less pairs that fall. */
  readonly s: number;
  /** Of S in values without a trend, corrected for ties. */
  readonly variance: number;
  /** S in its standard deviations, one pair nearer to 0 for S goes in steps; 0 where S is. */
  readonly z: number;
  /** Share of trendless series with so large an S on either side. */
  readonly chance: number;
  /** Counted for few values without ties, else by the normal distribution. */
  readonly method: 'counted' | 'normal';
}

/**
 * The test of Mann (1945), Econometrica 13:245, and Kendall, which asks nothing of the distribution, only that values
 * do not depend on their neighbours. Of four values no order is rarer than 8 in 100. Null of fewer than three.
 *
 * @param values in time order
 */
export function mannKendall(values: readonly number[]): MannKendall | null {
  const n = values.length;
  if (n < 3) return null;
  const s = risingLessFalling(values);
  const variance = kendallVariance(n, values);
  const z = s === 0 || variance === 0 ? 0 : (s - Math.sign(s)) / Math.sqrt(variance);
  const isCounted = n <= COUNTED_UP_TO && ties(values).length === 0;
  const tail = isCounted ? kendallUpper(Math.abs(s), n) : normalUpper(Math.abs(z));
  return {
    s,
    variance,
    z,
    chance: Math.min(1, 2 * tail),
    method: isCounted ? 'counted' : 'normal',
  };
}

function risingLessFalling(values: readonly number[]): number {
  let s = 0;
  for (const [i, earlier] of values.entries())
    for (let j = i + 1; j < values.length; j++) s += Math.sign(values[j]! - earlier);
  return s;
}
