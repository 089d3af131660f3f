/** Six decimals: below anything a rig can tell apart. */
export function rounded(value: number): number {
  return roundedTo(value, 6);
}

/** A number as a file or an answer holds it, without a negative zero. */
export function roundedTo(value: number, decimals: number): number {
  return Number(value.toFixed(decimals)) + 0;
}
