/** A point of a chart of exponentially weighted means. */
export interface EwmaPoint {
  readonly value: number;
  readonly upper: number;
  readonly lower: number;
}

/** How a chart of weighted means is drawn; the centre and the deviation come from the baseline. */
interface EwmaOptions {
  readonly centre: number;
  readonly deviation: number;
  /** Weight of the newest value, 0..1. */
  readonly weight: number;
  /** Limits in deviations of the weighted mean. */
  readonly reach: number;
}

/**
 * Exponentially weighted moving averages with the limits of each (NIST/SEMATECH e-Handbook 6.3.2.4, with the exact
 * limits, which are narrower for the first values): small lasting changes show here before they leave the limits of
 * single values.
 */
export function ewma(values: readonly number[], options: EwmaOptions): EwmaPoint[] {
  const { centre, deviation, weight, reach } = options;
  let mean = centre;
  return values.map((value, i) => {
    mean = weight * value + (1 - weight) * mean;
    const growth = 1 - (1 - weight) ** (2 * (i + 1));
    const half = reach * deviation * Math.sqrt((weight / (2 - weight)) * growth);
    return { value: mean, upper: centre + half, lower: centre - half };
  });
}
