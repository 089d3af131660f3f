/**
 * Akaike's information criterion with the correction for few points (Hurvich and Tsai 1989, Biometrika 76:297) of a
 * fit by least squares; the smaller, the better, and a difference below 2 decides nothing. Null where there are too few
 * points for it, or the curve goes through all of them.
 *
 * @param residualSquares sum of squared distances
 * @param points how many
 * @param parameters of the curve; the deviation about it is counted as one more
 */
export function correctedInformation(
  residualSquares: number,
  points: number,
  parameters: number,
): number | null {
  const k = parameters + 1;
  if (points - k - 1 <= 0 || !(residualSquares > 0)) return null;
  return points * Math.log(residualSquares / points) + 2 * k + (2 * k * (k + 1)) / (points - k - 1);
}
