import { upperGamma } from './incomplete-gamma.ts';
import { inverse } from './inverse.ts';

/** Share of a standard normal distribution above `x`; keeps its digits far out in the tail. */
export function normalUpper(x: number): number {
  const half = upperGamma(0.5, (x * x) / 2) / 2;
  return x >= 0 ? half : 1 - half;
}

/**
 * The place below which a share of a standard normal distribution lies.
 *
 * @param share more than 0, less than 1
 */
export function normalQuantile(share: number): number {
  if (share < 0.5) return -normalQuantile(1 - share);
  return inverse((x) => -normalUpper(x), share - 1, 0, 40);
}
