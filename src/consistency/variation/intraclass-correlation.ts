import { mean } from '../mean.ts';

/**
 * Intraclass correlations by Shrout and Fleiss (1979), Psychological Bulletin 86:420: how much of the variance is that
 * between rows. The first number of a name says the model (1: one-way; 2: columns drawn at random, agreement;
 * 3: fixed columns, consistency), `Mean` that it is of the mean of all columns.
 */
interface IntraclassCorrelation {
  readonly oneWay: number;
  readonly agreement: number;
  readonly consistency: number;
  readonly oneWayMean: number;
  readonly agreementMean: number;
  readonly consistencyMean: number;
}

/**
 * It depends on how different the rows are, says nothing of one driver alone, and is for comparing drivers of a team;
 * for one driver use `repeatability`. Null with fewer than two rows or columns, or where all values are the same.
 *
 * @param rows drivers, each with the same number of values
 */
export function intraclassCorrelation(
  rows: readonly (readonly number[])[],
): IntraclassCorrelation | null {
  const [n, k] = [rows.length, rows[0]?.length ?? 0];
  if (n < 2 || k < 2 || rows.some(({ length }) => length !== k)) return null;
  const { betweenRows, betweenColumns, rest } = meanSquares(rows, n, k);
  const within = (betweenColumns * (k - 1) + rest * (n - 1) * (k - 1)) / (n * (k - 1));
  const columns = (betweenColumns - rest) / n;
  if (betweenRows === 0) return null;
  return {
    oneWay: (betweenRows - within) / (betweenRows + (k - 1) * within),
    agreement: (betweenRows - rest) / (betweenRows + (k - 1) * rest + k * columns),
    consistency: (betweenRows - rest) / (betweenRows + (k - 1) * rest),
    oneWayMean: (betweenRows - within) / betweenRows,
    agreementMean: (betweenRows - rest) / (betweenRows + columns),
    consistencyMean: (betweenRows - rest) / betweenRows,
  };
}

function meanSquares(
  rows: readonly (readonly number[])[],
  n: number,
  k: number,
): { readonly betweenRows: number; readonly betweenColumns: number; readonly rest: number } {
  const overall = mean(rows.flat())!;
  const rowMeans = rows.map((row) => mean(row)!);
  const columnMeans = rows[0]!.map((_, j) => mean(rows.map((row) => row[j]!))!);
  const squares = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + (value - overall) ** 2, 0);
  const rest = rows.flatMap((row, i) =>
    row.map((value, j) => value - rowMeans[i]! - columnMeans[j]! + overall),
  );
  return {
    betweenRows: (k * squares(rowMeans)) / (n - 1),
    betweenColumns: (n * squares(columnMeans)) / (k - 1),
    rest: rest.reduce((sum, value) => sum + value ** 2, 0) / ((n - 1) * (k - 1)),
  };
}
