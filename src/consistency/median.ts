/**
 * The middle value, or the mean of the two middle ones; null of nothing. Half of all values may be wild before it
 * is, which is why blocks and days are summed up by it.
 */
export function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[upper]! : (sorted[upper - 1]! + sorted[upper]!) / 2;
}
