/** Where a true value lies. */
export interface Interval {
  readonly low: number;
  readonly high: number;
  /**
   * Share of such intervals that hold the true value, as it was attained: order statistics jump, and few values
   * may not reach the level that was asked for.
   */
  readonly level: number;
}

/** The level that is asked for where nobody says otherwise. */
export const USUAL_LEVEL = 0.95;
