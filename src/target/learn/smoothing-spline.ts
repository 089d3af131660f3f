/**
 * The natural cubic spline f that makes `sum (y - f)^2 + penalty * integral f''^2` least, at the places of the values:
 * Reinsch's algorithm (Numer. Math. 10 (1967) 177-183; Green and Silverman, Nonparametric Regression and Generalized
 * Linear Models, section 2.3), in time proportional to the number of values.
 *
 * @param values three or more, at equal steps
 * @param stepS between them, seconds
 * @param penalty in s^3, 0 gives the values back
 */
export function smoothingSpline(
  values: Float64Array,
  stepS: number,
  penalty: number,
): Float64Array {
  const inner = values.length - 2;
  if (inner < 1) return values.slice();
  const bend = Float64Array.from(
    { length: inner },
    (_, i) => (values[i]! - 2 * values[i + 1]! + values[i + 2]!) / stepS,
  );
  const scale = penalty / stepS ** 2;
  const second = solveBanded(bend, [(2 * stepS) / 3 + 6 * scale, stepS / 6 - 4 * scale, scale]);
  const at = (i: number): number => (i < 0 || i >= inner ? 0 : second[i]!);
  return values.map((value, i) => value - (penalty / stepS) * (at(i - 2) - 2 * at(i - 1) + at(i)));
}

/** Solves a symmetric matrix with the same two side diagonals all along, by its factors L D L'. */
function solveBanded(right: Float64Array, band: readonly [number, number, number]): Float64Array {
  const n = right.length;
  const diagonal = new Float64Array(n);
  const first = new Float64Array(n);
  const second = new Float64Array(n);
  const x = right.slice();
  for (let i = 0; i < n; i++) {
    const one = i > 0 ? first[i - 1]! : 0;
    const two = i > 1 ? second[i - 2]! : 0;
    diagonal[i] = band[0] - one * one * (diagonal[i - 1] ?? 0) - two * two * (diagonal[i - 2] ?? 0);
    first[i] =
      (band[1] - one * (i > 0 ? second[i - 1]! : 0) * (diagonal[i - 1] ?? 0)) / diagonal[i]!;
    second[i] = band[2] / diagonal[i]!;
    x[i] = x[i]! - one * (x[i - 1] ?? 0) - two * (x[i - 2] ?? 0);
  }
  for (let i = n - 1; i >= 0; i--)
    x[i] = x[i]! / diagonal[i]! - first[i]! * (x[i + 1] ?? 0) - second[i]! * (x[i + 2] ?? 0);
  return x;
}
