const G = 7;
const COEFFICIENTS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313,
  -176.61502916214059, 12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6,
  1.5056327351493116e-7,
] as const;

/**
 * Logarithm of the gamma function of a positive number, to about 14 digits (Lanczos 1964, SIAM Journal on Numerical
 * Analysis B 1:86, with g = 7 and nine terms).
 */
export function logGamma(x: number): number {
  // small arguments by the recurrence: the series is made for x >= 1
  if (x < 1) return logGamma(x + 1) - Math.log(x);
  const shifted = x - 1;
  let series: number = COEFFICIENTS[0];
  for (let i = 1; i < COEFFICIENTS.length; i++) series += COEFFICIENTS[i]! / (shifted + i);
  const t = shifted + G + 0.5;
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(t) - t + Math.log(series);
}
