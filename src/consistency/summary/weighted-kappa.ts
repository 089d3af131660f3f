import { normalQuantile } from '../distribution/normal.ts';
import { type Interval, USUAL_LEVEL } from '../interval.ts';

/** How far two judgements of the same things agree beyond chance. */
export interface WeightedKappa {
  /** 1 is full agreement, 0 what chance would give, below 0 worse than that. */
  readonly kappa: number;
  /** By the standard error of Fleiss, Cohen and Everitt; it is for many judgements and rough under some twenty. */
  readonly interval: Interval;
}

/**
 * Weighted kappa (Cohen 1968, Psychological Bulletin 70:213) with the large-sample standard error of Fleiss, Cohen and
 * Everitt (1969, Psychological Bulletin 72:323).
 *
 * @param table counts: row i by the one judge, column j by the other
 * @param weight how bad a disagreement is, 0 for none; by default the distance between the categories
 * @returns null where chance alone leaves no room to disagree
 */
export function weightedKappa(
  table: readonly (readonly number[])[],
  weight: (i: number, j: number) => number = (i, j) => Math.abs(i - j),
  level: number = USUAL_LEVEL,
): WeightedKappa | null {
  const kinds = table.length;
  const over = (f: (i: number) => number): number => {
    let sum = 0;
    for (let i = 0; i < kinds; i++) sum += f(i);
    return sum;
  };
  const each = (f: (i: number, j: number) => number): number => over((i) => over((j) => f(i, j)));
  const count = each((i, j) => table[i]![j]!);
  if (count === 0) return null;
  const share = (i: number, j: number): number => table[i]![j]! / count;
  const rows = table.map((_, i) => over((j) => share(i, j)));
  const columns = table.map((_, j) => over((i) => share(i, j)));
  const seen = each((i, j) => share(i, j) * weight(i, j));
  const expected = each((i, j) => rows[i]! * columns[j]! * weight(i, j));
  if (expected === 0) return null;
  const ofRow = rows.map((_, i) => over((j) => columns[j]! * weight(i, j)));
  const ofColumn = columns.map((_, j) => over((i) => rows[i]! * weight(i, j)));
  const ratio = seen / expected;
  // the ratio's first-order change with each judgement; its variance is that of the mean of these
  const influence = (i: number, j: number): number =>
    weight(i, j) - ratio * (ofRow[i]! + ofColumn[j]!) + ratio * expected;
  const variance = each((i, j) => share(i, j) * influence(i, j) ** 2) / expected ** 2;
  const half = reachOf(level) * Math.sqrt(variance / count);
  return {
    kappa: 1 - ratio,
    interval: { low: 1 - ratio - half, high: 1 - ratio + half, level },
  };
}

let usualReach: number | null = null;

/** Standard errors either side. The usual one is asked for week after week. */
function reachOf(level: number): number {
  if (level !== USUAL_LEVEL) return normalQuantile((1 + level) / 2);
  usualReach ??= normalQuantile((1 + level) / 2);
  return usualReach;
}
