/** Keeps the steps of a continued fraction from dividing by zero (Lentz's method, modified). */
export const TINY = 1e-300;

export function nonZero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
