import { studentQuantile } from '../../consistency/distribution/student-t.ts';

/** Share of further reps that lie inside the band at each moment. */
export const HELD_SHARE = 0.8;

/**
 * Half width around a curve that holds four of five further reps of the same driver at each moment, each moment by
 * itself: Student's t of the spread about the curve, with the variance of one more rep (NIST/SEMATECH e-Handbook,
 * 1.3.5.2).
 *
 * @param curves reps as the drill lays them over each other, three or more
 * @param centre what they are held against
 */
export function spreadBand(curves: readonly Float64Array[], centre: Float64Array): Float64Array {
  const n = curves.length;
  const factor = studentQuantile((1 + HELD_SHARE) / 2, n - 1) * Math.sqrt(1 + 1 / n);
  return centre.map((level, i) => {
    const squares = curves.reduce((sum, curve) => sum + (curve[i]! - level) ** 2, 0);
    return factor * Math.sqrt(squares / (n - 1));
  });
}
