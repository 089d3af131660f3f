import { mean } from '../mean.ts';

interface Line {
  readonly atZero: number;
  readonly slope: number;
  readonly residualSquares: number;
}

/**
 * The line of least squares through points, among those that neither begin below zero nor fall. Where the free line,
 * by sums about the means, is none of them, the best has one of the two at zero: the sum of squares is convex.
 */
export function risingLine(x: readonly number[], y: readonly number[]): Line {
  const [meanX, meanY] = [mean(x) ?? 0, mean(y) ?? 0];
  const slope = slopeAbout(meanX, meanY, x, y);
  const free = lineOf(meanY - slope * meanX, slope, x, y);
  if (free.atZero >= 0 && free.slope >= 0) return free;
  const level = lineOf(Math.max(0, meanY), 0, x, y);
  const fromZero = lineOf(0, Math.max(0, slopeAbout(0, 0, x, y)), x, y);
  return level.residualSquares < fromZero.residualSquares ? level : fromZero;
}

/** Slope of the line of least squares through one point; 0 where all of `x` is there. */
function slopeAbout(atX: number, atY: number, x: readonly number[], y: readonly number[]): number {
  let [products, squares] = [0, 0];
  for (let i = 0; i < x.length; i++) {
    products += (x[i]! - atX) * (y[i]! - atY);
    squares += (x[i]! - atX) ** 2;
  }
  return squares === 0 ? 0 : products / squares;
}

function lineOf(atZero: number, slope: number, x: readonly number[], y: readonly number[]): Line {
  let residualSquares = 0;
  for (let i = 0; i < x.length; i++) residualSquares += (y[i]! - atZero - slope * x[i]!) ** 2;
  return { atZero, slope, residualSquares };
}
