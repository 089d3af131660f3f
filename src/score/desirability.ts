import type { Limits } from './score-version.ts';

/**
 * Smaller-is-better desirability: 1 up to `full`, 0 from `none` on, linear between (Derringer and Suich, Journal of
 * Quality Technology 12, 1980; NIST/SEMATECH e-Handbook of Statistical Methods, section 5.5.3.2.2).
 */
export function desirability(value: number, { full, none }: Limits): number {
  if (value <= full) return 1;
  if (!(value < none)) return 0;
  return (none - value) / (none - full);
}
