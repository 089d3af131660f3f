/** Both sums after a value. */
export interface CusumPoint {
  readonly high: number;
  readonly low: number;
  readonly signal: 'high' | 'low' | null;
}

/** In the unit of the values. */
interface CusumOptions {
  readonly centre: number;
  /** Slack: half of the change that matters, usually half a deviation. */
  readonly slack: number;
  /** What a sum has to pass, usually four or five deviations. */
  readonly limit: number;
}

/**
 * Cumulative sums of what lies beyond the slack above and below the centre (NIST/SEMATECH e-Handbook 6.3.2.3). With a
 * slack of half a deviation and a limit of four they call out once in 168 values by chance, and find a change of one
 * deviation after eight.
 */
export function cusum(values: readonly number[], options: CusumOptions): CusumPoint[] {
  const { centre, slack, limit } = options;
  let [high, low] = [0, 0];
  return values.map((value) => {
    high = Math.max(0, high + value - centre - slack);
    low = Math.max(0, low + centre - slack - value);
    return { high, low, signal: high > limit ? 'high' : low > limit ? 'low' : null };
  });
}
