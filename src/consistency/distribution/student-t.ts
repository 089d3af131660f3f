import { fQuantile } from './f-distribution.ts';

/**
 * The place below which a share of Student's t distribution lies: t squared is F with 1 degree of freedom above.
 *
 * @param share more than 0, less than 1
 */
export function studentQuantile(share: number, degrees: number): number {
  if (share < 0.5) return -studentQuantile(1 - share, degrees);
  return share === 0.5 ? 0 : Math.sqrt(fQuantile(2 * share - 1, 1, degrees));
}
