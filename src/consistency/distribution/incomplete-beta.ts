import { logGamma } from './log-gamma.ts';
import { nonZero } from './non-zero.ts';

const PRECISION = 2 * Number.EPSILON;

/**
 * Regularised incomplete beta function I_x(a, b), the distribution function of a beta variate (Abramowitz and Stegun
 * 26.5.8, evaluated by the method of Lentz on the side where it converges fast).
 *
 * @param x 0..1
 * @param a,b positive
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(
    logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x),
  );
  return x < (a + 1) / (a + b + 2)
    ? (front * continuedFraction(x, a, b)) / a
    : 1 - (front * continuedFraction(1 - x, b, a)) / b;
}

function continuedFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / nonZero(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1, change = 0; Math.abs(change - 1) > PRECISION && m < 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonZero(1 + even * d);
    c = nonZero(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + odd * d);
    c = nonZero(1 + odd / c);
    change = d * c;
    h *= change;
  }
  return h;
}
