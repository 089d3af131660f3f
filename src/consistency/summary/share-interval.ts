import { incompleteBeta } from '../distribution/incomplete-beta.ts';
import { inverse } from '../distribution/inverse.ts';
import { type Interval, USUAL_LEVEL } from '../interval.ts';

/**
 * Where the share of a population lies of which `hits` out of `trials` were seen: the exact interval of Clopper and
 * Pearson (1934, Biometrika 26:404), which holds the true share at least as often as its level says.
 *
 * @param hits 0 to `trials`
 * @param trials at least 1
 */
export function shareInterval(hits: number, trials: number, level: number = USUAL_LEVEL): Interval {
  const tail = (1 - level) / 2;
  const below = (x: number): number => incompleteBeta(x, hits, trials - hits + 1);
  const above = (x: number): number => incompleteBeta(x, hits + 1, trials - hits);
  return {
    low: hits === 0 ? 0 : inverse(below, tail, 0, 1),
    high: hits === trials ? 1 : inverse(above, 1 - tail, 0, 1),
    level,
  };
}
