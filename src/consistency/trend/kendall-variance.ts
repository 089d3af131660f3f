import { ties } from './ties.ts';

/**
 * Variance of Kendall's S of values in random order, less what ties take away (Kendall and Gibbons, Rank Correlation
 * Methods, 5th ed., 4.3).
 *
 * @param lists what ties are looked for in: the values, and the times where those repeat
 */
export function kendallVariance(n: number, ...lists: readonly (readonly number[])[]): number {
  const part = (t: number): number => t * (t - 1) * (2 * t + 5);
  const lost = lists.flatMap(ties).reduce((sum, t) => sum + part(t), 0);
  return (part(n) - lost) / 18;
}
