const DAY_MS = 86_400_000;

/** Days from one date to another, negative where it lies before. @param from For example `2026-11-25`. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);
}
