/** How a rep differs from what the driver has in mind. */
export interface RepErrors {
  /** Start of release, seconds; positive is late. */
  readonly timingS: number;
  /** Length of the release over the meant one: above 1 is slow. */
  readonly timeRatio: number;
  /** Pressure over the meant one: above 1 is heavy. */
  readonly amountRatio: number;
  /** Length of the rise over the meant one. */
  readonly riseRatio: number;
  /** Pressure going back up during the release; null for none. */
  readonly reapplication: Reapplication | null;
}

export interface Reapplication {
  /** Seconds after the start of release. */
  readonly atS: number;
  readonly lengthS: number;
  readonly heightLevel: number;
}
