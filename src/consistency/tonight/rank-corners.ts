import type { CornerForm } from './corner-form.ts';

/** How many corners an evening has room for. */
const TONIGHT = 3;
/** Expected errors that lie in the same step are a tie: no figure is known better than this, as a level. */
const STEP_LEVEL = 0.005;

/** A corner to work on, and what its place was decided by. */
export interface RankedCorner<Corner> {
  readonly corner: Corner;
  /** The next one of the order where both are as far off; null for none. */
  readonly tiedWith: Corner | null;
}

/** What to work on tonight. */
export interface CornerRanking<Corner> {
  /** At most three, the one that is expected to lose most first. */
  readonly tonight: readonly RankedCorner<Corner>[];
  /** Without reps enough to say anything, in lap order. */
  readonly notRanked: readonly Corner[];
}

/**
 * The corners that are expected to lose most on a first lap, by `expectedErrorLevel`. Figures are compared in steps of
 * half a percent of full scale; of a tie the corner that was left alone for longest goes first, then the one that comes
 * first in the lap. A corner with too few reps is not ranked: a guess would send the driver to the wrong one.
 *
 * @param corners in lap order
 */
export function rankCorners<Corner>(
  corners: readonly Corner[],
  formOf: (corner: Corner) => CornerForm,
): CornerRanking<Corner> {
  const step = (corner: Corner): number => {
    const level = formOf(corner).expectedErrorLevel;
    return level === null ? Number.NEGATIVE_INFINITY : Math.round(level / STEP_LEVEL);
  };
  const lastDay = (corner: Corner): string => formOf(corner).lastDay ?? '';
  const known = corners.filter((corner) => formOf(corner).expectedErrorLevel !== null);
  const order = known.toSorted((a, b) => step(b) - step(a) || lastDay(a).localeCompare(lastDay(b)));
  return {
    tonight: order.slice(0, TONIGHT).map((corner, i) => {
      const next = order[i + 1];
      return { corner, tiedWith: next !== undefined && step(next) === step(corner) ? next : null };
    }),
    notRanked: corners.filter((corner) => formOf(corner).expectedErrorLevel === null),
  };
}
