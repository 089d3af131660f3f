/**
 * The value below which a share of the sample lies, interpolated linearly between order statistics so that share 0 is
 * the smallest and 1 the largest (definition 7 of Hyndman and Fan 1996, The American Statistician 50:361). Null of
 * nothing.
 *
 * @param share 0..1
 */
export function quantile(values: ArrayLike<number>, share: number): number | null {
  const sorted = Float64Array.from(values).sort();
  if (sorted.length === 0) return null;
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const [low, high] = [sorted[below]!, sorted[Math.min(below + 1, sorted.length - 1)]!];
  return low + (place - below) * (high - low);
}
