/**
 * The middle value, or the mean of the two middle ones; null of nothing. Half of all values may be wild before it
 * is, which is why baselines, blocks and days are summed up by it.
 */
export function median(values: ArrayLike<number>): number | null {
  const sorted = Float64Array.from(values).sort();
  if (sorted.length === 0) return null;
  const upper = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[upper]! : (sorted[upper - 1]! + sorted[upper]!) / 2;
}
