/**
 * How much two ratings agree beyond chance: 1 always, 0 as by chance (Cohen 1968, Psychological Bulletin 70:213). Null
 * of nothing, or where chance alone would agree.
 *
 * @param table how often the first rating was the row and the second the column; counts or shares
 * @param disagreement how bad it is if they are so far apart, 0 for the same
 */
export function weightedKappa(
  table: readonly (readonly number[])[],
  disagreement: (row: number, column: number) => number,
): number | null {
  const total = sum(table.map(sum));
  if (total === 0) return null;
  const rows = table.map((row) => sum(row) / total);
  const columns = rows.map((_, j) => sum(table.map((row) => row[j]!)) / total);
  let [seen, byChance] = [0, 0];
  for (const [i, row] of table.entries())
    for (const [j, count] of row.entries()) {
      seen += (disagreement(i, j) * count) / total;
      byChance += disagreement(i, j) * rows[i]! * columns[j]!;
    }
  return byChance === 0 ? null : 1 - seen / byChance;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
