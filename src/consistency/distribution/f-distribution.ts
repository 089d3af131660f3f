import { incompleteBeta } from './incomplete-beta.ts';
import { inverse, reaching } from './inverse.ts';

/**
 * Distribution function of F, the ratio of two independent variances of normal samples.
 *
 * @param upper,lower degrees of freedom of the variance above and below the line; they need not be whole
 */
export function fDistribution(x: number, upper: number, lower: number): number {
  if (x <= 0) return 0;
  return incompleteBeta((upper * x) / (upper * x + lower), upper / 2, lower / 2);
}

/** @param share more than 0, less than 1 */
export function fQuantile(share: number, upper: number, lower: number): number {
  const rising = (x: number): number => fDistribution(x, upper, lower);
  return inverse(rising, share, 0, reaching(rising, share));
}
