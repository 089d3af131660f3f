/** First index in [from, to] at or above the level, or null. */
export function firstAtOrAbove(
  signal: Float64Array,
  level: number,
  from: number,
  to: number,
): number | null {
  for (let i = from; i <= to; i++) if (signal[i]! >= level) return i;
  return null;
}

/**
 * Index of the sample after the last fall through the level in [from, to], or null where the signal is not below it
 * at the end. The last one, so that what was pumped back up does not count as released.
 */
export function lastFallBelow(
  signal: Float64Array,
  level: number,
  from: number,
  to: number,
): number | null {
  for (let i = to; i > from; i--) {
    if (signal[i]! < level && signal[i - 1]! >= level) return i;
  }
  return null;
}

/** Index of the largest value in [from, to]. */
export function highest(signal: Float64Array, from: number, to: number): number {
  let best = from;
  for (let i = from; i <= to; i++) if (signal[i]! > signal[best]!) best = i;
  return best;
}
