import { mean } from '../../consistency/mean.ts';

/** How many reps are compared at each end. */
const FATIGUE_REPS = 10;

/**
 * Reps in a row after each of which the limit is passed, before the driver is told. Of forty fresh reps of a zone 15 in
 * 100 pass it somewhere, and 8 in 100 three times in a row: as many as if it were asked after every tenth rep only. Both
 * together warn in 10 of 100 such practices.
 */
export const TIRED_REPS = 3;

/** Late reps that are worse than early ones by more than reps differ anyway. Levels 0..1. */
export interface Fatigue {
  readonly riseLevel: number;
  readonly limitLevel: number;
}

/**
 * Whether the last ten reps of a zone are worse than its first ten after the warm-up. The limit is the critical
 * difference of two means under repeatability, s_r 2.8 sqrt(1/(2 n1) + 1/(2 n2)) (ISO 5725-6:1994, 4.2), with s_r from
 * within the two groups. Each time it is asked, fresh reps set it off in 3 to 4 of 100 cases, so that one answer is not
 * enough where it is asked after every rep: see `TIRED_REPS`.
 *
 * @param errors release errors of the zone in the order in which they were driven, warm-up left out
 * @param factor 2.8 unless the coach says otherwise
 * @param reference errors of earlier practices under the same condition, in place of today's first reps; null for none
 * @returns null where nothing has to be said, or where there are too few reps to say it
 */
export function fatigue(
  errors: readonly number[],
  factor: number,
  reference: readonly number[] | null = null,
): Fatigue | null {
  const early = reference ?? errors.slice(0, FATIGUE_REPS);
  const late = errors.slice(-FATIGUE_REPS);
  const needed = reference === null ? 2 * FATIGUE_REPS : FATIGUE_REPS;
  if (errors.length < needed || early.length < FATIGUE_REPS) return null;
  const riseLevel = mean(late)! - mean(early)!;
  const limitLevel =
    factor * withinDeviation(early, late) * Math.sqrt(0.5 / early.length + 0.5 / late.length);
  return riseLevel > limitLevel ? { riseLevel, limitLevel } : null;
}

/** Repeatability standard deviation of two groups together. */
function withinDeviation(...groups: readonly (readonly number[])[]): number {
  const squares = groups.map((values) => {
    const centre = mean(values)!;
    return values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
  });
  const freedom = groups.reduce((sum, { length }) => sum + length - 1, 0);
  return Math.sqrt(squares.reduce((sum, value) => sum + value, 0) / freedom);
}
