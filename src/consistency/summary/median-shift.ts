import { type Interval, USUAL_LEVEL } from '../interval.ts';
import { median } from '../median.ts';

/** How much larger one group of values is than another. */
export interface MedianShift {
  /** Median of all differences between a value of the one and a value of the other. */
  readonly shift: number;
  /** Exact for continuous values; the level is the one attained. */
  readonly interval: Interval;
}

/** The exact distribution costs the product of both sizes and their sum. */
const MOST_VALUES = 60;

/**
 * Shift between two independent groups by Hodges and Lehmann, with the interval that inverts the rank-sum test of
 * Wilcoxon, Mann and Whitney (Hollander, Wolfe and Chicken, Nonparametric Statistical Methods, 3rd ed., 4.2 and 4.3). Of few values
 * none of the intervals reaches the level; the widest is given then with the level that it has. Null where a group
 * is empty.
 *
 * @param from,to each the newest 60 values at most
 */
export function medianShift(
  from: readonly number[],
  to: readonly number[],
  level: number = USUAL_LEVEL,
): MedianShift | null {
  const [a, b] = [from.slice(-MOST_VALUES), to.slice(-MOST_VALUES)];
  const differences = Float64Array.from(b.flatMap((y) => a.map((x) => y - x))).sort();
  const shift = median(differences);
  if (shift === null) return null;
  const cumulative = rankSumDistribution(a.length, b.length);
  let place = 0;
  while (1 - 2 * cumulative[place + 1]! >= level) place++;
  return {
    shift,
    interval: {
      low: differences[place]!,
      high: differences[differences.length - 1 - place]!,
      level: 1 - 2 * cumulative[place]!,
    },
  };
}

/**
 * P(U <= u) of the Mann-Whitney statistic: all choices of `m` ranks out of `m + n` are equally likely, and the k-th
 * chosen one adds by how many places it stands above the lowest possible.
 */
function rankSumDistribution(m: number, n: number): Float64Array {
  const size = m * n + 1;
  const chosen = Array.from({ length: m + 1 }, () => new Float64Array(size));
  chosen[0]![0] = 1;
  for (let rank = 1; rank <= m + n; rank++)
    for (let k = Math.min(rank, m); k >= 1; k--) {
      const [fewer, ways] = [chosen[k - 1]!, chosen[k]!];
      for (let u = rank - k; u < size; u++) ways[u] = ways[u]! + fewer[u - rank + k]!;
    }
  const total = chosen[m]!.reduce((all, ways) => all + ways, 0);
  let sum = 0;
  return chosen[m]!.map((ways) => {
    sum += ways;
    return sum / total;
  });
}
