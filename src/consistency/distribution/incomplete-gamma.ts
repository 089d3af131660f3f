import { logGamma } from './log-gamma.ts';
import { nonZero, TINY } from './non-zero.ts';

const PRECISION = 2 * Number.EPSILON;

/**
 * Regularised lower incomplete gamma function P(a, x), the distribution function of a gamma variate of shape `a > 0` at
 * `x` (Abramowitz and Stegun 6.5.29 below `a + 1`, the continued fraction 6.5.31 above).
 */
export function lowerGamma(a: number, x: number): number {
  if (x <= 0) return 0;
  return x < a + 1 ? series(a, x) : 1 - continuedFraction(a, x);
}

/** 1 - P(a, x), without losing the digits of a small tail. */
export function upperGamma(a: number, x: number): number {
  if (x <= 0) return 1;
  return x < a + 1 ? 1 - series(a, x) : continuedFraction(a, x);
}

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = a + 1; Math.abs(term) > Math.abs(sum) * PRECISION; n++) {
    term *= x / n;
    sum += term;
  }
  return sum * weight(a, x);
}

/** By the method of Lentz (1976), which needs no guess of how many terms it takes. */
function continuedFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let h = d;
  for (let i = 1, change = 0; Math.abs(change - 1) > PRECISION && i < 10_000; i++) {
    const an = -i * (i - a);
    b += 2;
    d = 1 / nonZero(an * d + b);
    c = nonZero(b + an / c);
    change = d * c;
    h *= change;
  }
  return h * weight(a, x);
}

function weight(a: number, x: number): number {
  return Math.exp(-x + a * Math.log(x) - logGamma(a));
}
