import { quantile } from './quantile.ts';
import { RELEASE_POINTS, type ReleasePoint, targetTimes } from './release-points.ts';
import type { RepScore } from './rep-score.ts';
import { sharedGroup } from './shared-group.ts';

/** The moment at which a release was furthest from its target, and by how much: positive is late. */
export interface KeyPointFault {
  readonly point: ReleasePoint;
  readonly errorS: number;
}

/** The part of the plateau that a release falls by from each moment to the next, by the estimator: 90, 50, 10, 0 %. */
const FALLS: readonly number[] = [0.4, 0.4, 0.1];

/**
 * Where a release left its target most, for one whose start, pace and weight do not tell: of its moments the one at
 * which the time missed, times how steeply the target falls there, is the most pressure.
 *
 * @param least what is nearer than this many seconds is not worth a word
 * @returns null where no moment is further off
 */
export function keyPointFault(rep: RepScore, least: number): KeyPointFault | null {
  const steepness = steepnessOf(targetTimes(rep));
  let most = 0;
  let worst: KeyPointFault | null = null;
  RELEASE_POINTS.forEach((point, place) => {
    const errorS = rep.keyPointErrorsS[point];
    if (errorS === null || Math.abs(errorS) < least) return;
    const level = Math.abs(errorS) * steepness[place]!;
    if (worst !== null && level <= most) return;
    most = level;
    worst = { point, errorS };
  });
  return worst;
}

/** A moment that several reps missed the same way. */
interface SharedMoment {
  /** By the median of how far those reps were off. */
  readonly fault: KeyPointFault;
  readonly reps: readonly RepScore[];
}

/**
 * The moment that most of these reps missed the same way.
 *
 * @returns null unless at least three reps share one
 */
export function sharedKeyPointFault(reps: readonly RepScore[], least: number): SharedMoment | null {
  const missed = reps.flatMap((rep) => {
    const fault = keyPointFault(rep, least);
    return fault === null ? [] : { rep, fault };
  });
  const shared = sharedGroup(missed, ({ fault }) => `${fault.point} ${Math.sign(fault.errorS)}`);
  if (shared === null) return null;
  const errors = shared.map(({ fault }) => fault.errorS);
  const middle = { point: shared[0].fault.point, errorS: quantile(errors, 0.5)! };
  return { fault: middle, reps: shared.map(({ rep }) => rep) };
}

/** Share of the plateau per second around each moment: the mean of what falls before and after it. */
function steepnessOf(timesS: readonly (number | null)[]): readonly number[] {
  const falls = FALLS.map((fall, i) => {
    const [from, to] = [timesS[i]!, timesS[i + 1]!];
    return from === null || to === null || !(to > from) ? null : fall / (to - from);
  });
  return RELEASE_POINTS.map((_, i) => {
    const beside = [falls[i - 1], falls[i]].filter((fall) => fall !== null && fall !== undefined);
    return beside.reduce((sum, fall) => sum + fall, 0) / Math.max(1, beside.length);
  });
}
