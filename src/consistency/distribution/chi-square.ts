import { lowerGamma } from './incomplete-gamma.ts';
import { inverse, reaching } from './inverse.ts';

/** Distribution function of chi-square with `degrees` of freedom, which need not be whole. */
export function chiSquare(x: number, degrees: number): number {
  return lowerGamma(degrees / 2, x / 2);
}

/** @param share more than 0, less than 1 */
export function chiSquareQuantile(share: number, degrees: number): number {
  const rising = (x: number): number => chiSquare(x, degrees);
  return inverse(rising, share, 0, reaching(rising, share, degrees));
}
