import { meanCurve } from '../../drill/diagnosis/mean-curve.ts';
import { smoothingSpline } from './smoothing-spline.ts';

/** How much a mean curve is smoothed, and what that was chosen by. */
export interface Smoothing {
  /** Of the spline, s^3. */
  readonly penaltyS3: number;
  /** Where a sine would come through at half its height: what is quicker is taken for chance. */
  readonly halfHeightHz: number;
  /** Root mean square by which the smoothed mean of the other reps misses a rep. */
  readonly missLevel: number;
}

/** From far below what a foot does on purpose (2 Hz) to the score's own filter, 12 Hz, in steps of a tenth. */
const SLOWEST_HZ = 0.5;
const QUICKEST_HZ = 12;
const STEP_FACTOR = 1.1;

/**
 * The smoothing with which the mean of all other reps comes closest to the rep that was left out, over all reps (Rice
 * and Silverman, J. R. Stat. Soc. B 53 (1991) 233-243). Whole reps are left out and not single values, because within
 * a rep a level that is off stays off for a while: criteria that leave out single values take that for the curve.
 *
 * @param curves two or more registered reps at equal steps
 */
export function chooseSmoothing(curves: readonly Float64Array[], stepS: number): Smoothing {
  const others = curves.map((_, i) => meanCurve(curves.filter((_curve, k) => k !== i))!);
  let best: Smoothing | null = null;
  for (let hz = SLOWEST_HZ; hz <= QUICKEST_HZ; hz *= STEP_FACTOR) {
    const penaltyS3 = penaltyFor(hz, stepS);
    const squares = curves.map((curve, i) =>
      meanSquare(curve, smoothingSpline(others[i]!, stepS, penaltyS3)),
    );
    const missLevel = Math.sqrt(squares.reduce((a, b) => a + b, 0) / curves.length);
    if (best === null || missLevel < best.missLevel)
      best = { penaltyS3, halfHeightHz: hz, missLevel };
  }
  return best!;
}

/** Far from its ends the spline passes a sine of angular frequency w with the gain `1 / (1 + penalty * step * w^4)`. */
export function penaltyFor(halfHeightHz: number, stepS: number): number {
  return 1 / (stepS * (2 * Math.PI * halfHeightHz) ** 4);
}

function meanSquare(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, value, i) => sum + (value - b[i]!) ** 2, 0) / a.length;
}
