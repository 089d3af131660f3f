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
  let count = 0;
  for (const row of table) for (const cell of row) count += cell;
  if (count === 0) return null;
  const { rows, columns, seen } = shares(table, count, weight);
  let expected = 0;
  const [ofRow, ofColumn] = [zeros(kinds), zeros(kinds)];
  for (let i = 0; i < kinds; i++)
    for (let j = 0; j < kinds; j++) {
      const bad = weight(i, j);
      expected += rows[i]! * columns[j]! * bad;
      ofRow[i]! += columns[j]! * bad;
      ofColumn[j]! += rows[i]! * bad;
    }
  if (expected === 0) return null;
  const ratio = seen / expected;
  let variance = 0;
  for (let i = 0; i < kinds; i++)
    for (let j = 0; j < kinds; j++) {
      // the ratio's first-order change with each judgement; its variance is that of the mean of these
      const influence = weight(i, j) - ratio * (ofRow[i]! + ofColumn[j]!) + ratio * expected;
      variance += (table[i]![j]! / count) * influence ** 2;
    }
  const half = reachOf(level) * Math.sqrt(variance / expected ** 2 / count);
  return {
    kappa: 1 - ratio,
    interval: { low: 1 - ratio - half, high: 1 - ratio + half, level },
  };
}

/** Share of each row and column, and how bad the disagreement that was seen is. */
function shares(
  table: readonly (readonly number[])[],
  count: number,
  weight: (i: number, j: number) => number,
): {
  readonly rows: readonly number[];
  readonly columns: readonly number[];
  readonly seen: number;
} {
  const kinds = table.length;
  const [rows, columns] = [zeros(kinds), zeros(kinds)];
  let seen = 0;
  for (let i = 0; i < kinds; i++)
    for (let j = 0; j < kinds; j++) {
      const share = table[i]![j]! / count;
      rows[i]! += share;
      columns[j]! += share;
      seen += share * weight(i, j);
    }
  return { rows, columns, seen };
}

const zeros = (count: number): number[] => new Array<number>(count).fill(0);

let usualReach: number | null = null;

/** Standard errors either side. The usual one is asked for week after week. */
function reachOf(level: number): number {
  if (level !== USUAL_LEVEL) return normalQuantile((1 + level) / 2);
  usualReach ??= normalQuantile((1 + level) / 2);
  return usualReach;
}
