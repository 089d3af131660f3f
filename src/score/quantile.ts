/** The value a share `p` of the sorted values lies below, linear between neighbours; null without values. */
export function quantile(values: ArrayLike<number>, p: number): number | null {
  if (values.length === 0) return null;
  const sorted = Float64Array.from(values).sort();
  const place = p * (sorted.length - 1);
  const low = Math.floor(place);
  const high = Math.min(low + 1, sorted.length - 1);
  return sorted[low]! + (place - low) * (sorted[high]! - sorted[low]!);
}
