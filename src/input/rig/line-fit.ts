/** A straight line through points: y = intercept + slope x. */
interface LineFit {
  readonly slope: number;
  readonly intercept: number;
  /** Standard deviation of the residuals, n - 2 degrees of freedom; null for two points, which any line fits. */
  readonly residual: number | null;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * Ordinary least squares. Sums are taken about the means, so that large offsets cost no digits.
 * @returns null where all x are equal or fewer than two points are given.
 */
export function lineFit(points: readonly Point[]): LineFit | null {
  const meanX = mean(points.map(({ x }) => x));
  const meanY = mean(points.map(({ y }) => y));
  const sumXX = sum(points.map(({ x }) => (x - meanX) ** 2));
  if (points.length < 2 || sumXX === 0) return null;
  const slope = sum(points.map(({ x, y }) => (x - meanX) * (y - meanY))) / sumXX;
  const squares = sum(points.map(({ x, y }) => (y - meanY - slope * (x - meanX)) ** 2));
  return {
    slope,
    intercept: meanY - slope * meanX,
    residual: points.length > 2 ? Math.sqrt(squares / (points.length - 2)) : null,
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function mean(values: readonly number[]): number {
  return sum(values) / values.length;
}
