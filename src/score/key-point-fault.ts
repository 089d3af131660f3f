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
  const [worst] = missedMoments(rep, least).toSorted((a, b) => b.level - a.level);
  return worst === undefined ? null : { point: worst.point, errorS: worst.errorS };
}

/** A moment and the pressure that was missed there, as a share of the plateau. */
interface MissedMoment extends KeyPointFault {
  readonly rep: RepScore;
  readonly level: number;
}

function missedMoments(rep: RepScore, least: number): readonly MissedMoment[] {
  const steepness = steepnessOf(targetTimes(rep));
  return RELEASE_POINTS.flatMap((point, place) => {
    const errorS = rep.keyPointErrorsS[point];
    if (errorS === null || Math.abs(errorS) < least) return [];
    return { rep, point, errorS, level: Math.abs(errorS) * steepness[place]! };
  });
}

/** A moment that several reps missed the same way. */
interface SharedMoment {
  /** By the median of how far those reps were off. */
  readonly fault: KeyPointFault;
  readonly reps: readonly RepScore[];
}

/**
 * The moment that most of these reps missed the same way: where they missed most; where that differs from rep to rep,
 * the dearest of those that more than half of them missed the same way.
 *
 * @returns null unless at least three reps share one
 */
export function sharedKeyPointFault(reps: readonly RepScore[], least: number): SharedMoment | null {
  const missed = reps.map((rep) => missedMoments(rep, least));
  const worst = missed.flatMap((moments) => moments.toSorted((a, b) => b.level - a.level)[0] ?? []);
  const shared = sharedGroup(worst, keyOf) ?? dearestOfMost(missed.flat(), reps.length);
  if (shared === null) return null;
  const errorS = middle(shared.map((moment) => moment.errorS));
  return { fault: { point: shared[0].point, errorS }, reps: shared.map(({ rep }) => rep) };
}

type Shared = readonly [MissedMoment, ...MissedMoment[]];

function dearestOfMost(missed: readonly MissedMoment[], of: number): Shared | null {
  const groups = RELEASE_POINTS.map((at) =>
    sharedGroup(
      missed.filter(({ point }) => point === at),
      keyOf,
    ),
  ).filter((group) => group !== null && 2 * group.length > of) as readonly Shared[];
  const levelOf = (group: Shared): number => middle(group.map(({ level }) => level));
  return groups.toSorted((a, b) => levelOf(b) - levelOf(a))[0] ?? null;
}

const keyOf = ({ point, errorS }: KeyPointFault): string => `${point} ${Math.sign(errorS)}`;
const middle = (values: readonly number[]): number => quantile(values, 0.5)!;

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
