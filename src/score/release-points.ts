import { quantile } from './quantile.ts';
import type { RepScore } from './rep-score.ts';

/** The moments of a release whose time is measured. */
export type ReleasePoint = keyof RepScore['keyPointErrorsS'];

/** In the order in which they come: the falls through 90, 50 and 10 % of the plateau, and brake off. */
export const RELEASE_POINTS: readonly ReleasePoint[] = [
  'startOfRelease',
  'halfRelease',
  'finalRelease',
  'brakeOff',
];

/** When the target's release was at each moment, on the rep's clock; null where the rep never got there. */
export function targetTimes({
  keyPoints,
  keyPointErrorsS: errors,
}: RepScore): readonly (number | null)[] {
  const own: Readonly<Record<ReleasePoint, number | null>> = {
    startOfRelease: keyPoints.startOfReleaseS,
    halfRelease: keyPoints.halfReleaseS,
    finalRelease: keyPoints.finalReleaseS,
    brakeOff: keyPoints.brakeOffS,
  };
  return RELEASE_POINTS.map((point) => {
    const [timeS, errorS] = [own[point], errors[point]];
    return timeS === null || errorS === null ? null : timeS - errorS;
  });
}

/**
 * Seconds that the target took from the start of release to brake off, by the same estimators as the reps: the median
 * over the reps, since the live car's differs from rep to rep. Null where no rep got to both.
 */
export function targetReleaseS(reps: readonly RepScore[]): number | null {
  const lengths = reps.flatMap((rep) => {
    const [start, , , off] = targetTimes(rep);
    return start == null || off == null ? [] : [off - start];
  });
  return quantile(lengths, 0.5);
}
